package disk

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"

	"pegwright/cmd/pegwright/plain"
	"pegwright/draw/packet"
)

// ErrInterrupted is why a write that was interrupted did not happen.
var ErrInterrupted = errors.New("interrupted; nothing was changed")

// Write puts the files in the place of the packet in the folder out, as a whole,
// or changes nothing; see the promise of the package. The end of ctx stops it
// with ErrInterrupted as long as the new packet is not in its place. Other
// errors say in plain words what stood in the way, and that nothing was changed
// where that is so.
func Write(ctx context.Context, out string, files []packet.File) error {
	return writeWith(ctx, out, files, exchange)
}

// exchanger swaps two folders atomically, or says errNoExchange.
type exchanger func(a, b string) error

// errNoExchange is what an exchanger returns where the system has none.
var errNoExchange = errors.New("no atomic exchange here")

func writeWith(ctx context.Context, out string, files []packet.File, swap exchanger) error {
	p, err := placeOf(out)
	if err != nil {
		return err
	}
	unlock, err := takeLock(p.lock)
	if errors.Is(err, errLocked) {
		return fmt.Errorf("another run is writing %s at this moment; nothing was changed", plain.Quoted(out))
	}
	if err != nil {
		return p.failed(err)
	}
	defer unlock()
	if err := p.restore(); err != nil {
		return p.failed(err)
	}
	if err := p.check(); err != nil {
		return err
	}
	if err := p.build(ctx, files); err != nil {
		return errors.Join(p.failed(err), removeTree(p.fresh))
	}
	old, err := p.swap(swap)
	if err != nil {
		return errors.Join(p.failed(err), removeTree(p.fresh))
	}
	if err := p.retire(old); err != nil {
		return fmt.Errorf("the new packet is in %s, but files of yours are still in %s: %s", plain.Quoted(out), plain.Quoted(old), plain.Reason(err))
	}
	return syncPath(filepath.Dir(p.dir))
}

// failed says that nothing was changed.
func (p place) failed(err error) error {
	if errors.Is(err, ErrInterrupted) {
		return err
	}
	var c conflict
	if errors.As(err, &c) {
		return fmt.Errorf("%w; nothing was changed", err)
	}
	return fmt.Errorf("cannot write %s: %s; nothing was changed", plain.Quoted(p.shown), plain.Reason(err))
}

// build writes the new packet beside the old one, everything synced, then the
// manifest.
func (p place) build(ctx context.Context, files []packet.File) error {
	if err := os.Mkdir(p.fresh, 0o777); err != nil {
		return err
	}
	for _, f := range files {
		if ctx.Err() != nil {
			return ErrInterrupted
		}
		if err := putFile(filepath.Join(p.fresh, filepath.FromSlash(f.Path)), f.Data, syncOne); err != nil {
			return err
		}
	}
	if err := p.carry(ctx); err != nil {
		return err
	}
	text, err := manifestOf(files)
	if err != nil {
		return err
	}
	if err := syncAll(p.fresh); err != nil {
		return err
	}
	if err := writeFile(filepath.Join(p.fresh, manifestFile), text); err != nil {
		return err
	}
	if ctx.Err() != nil {
		return ErrInterrupted
	}
	return syncPath(p.fresh)
}

// swap puts the new packet in place and returns where the old one is now, ""
// when there was none.
func (p place) swap(exchange exchanger) (old string, err error) {
	if _, err := os.Lstat(p.dir); errors.Is(err, os.ErrNotExist) {
		return "", os.Rename(p.fresh, p.dir)
	}
	err = exchange(p.fresh, p.dir)
	if !errors.Is(err, errNoExchange) {
		return p.fresh, err
	}
	if err := os.Rename(p.dir, p.aside); err != nil {
		return "", err
	}
	if err := os.Rename(p.fresh, p.dir); err != nil {
		return "", errors.Join(err, os.Rename(p.aside, p.dir))
	}
	return p.aside, nil
}

// restore cleans up after a run that was killed: an old packet that was put
// aside with nothing in its place comes back, and what else is left beside the
// packet goes, foreign files rescued first.
func (p place) restore() error {
	_, err := os.Lstat(p.dir)
	if errors.Is(err, os.ErrNotExist) {
		if err := os.Rename(p.aside, p.dir); err != nil && !errors.Is(err, os.ErrNotExist) {
			return err
		}
	}
	for _, left := range []string{p.fresh, p.aside} {
		if err := p.retire(left); err != nil {
			return err
		}
	}
	return nil
}

// retire removes a packet that is no longer needed, after moving files that are
// not ours and not in the new packet there.
func (p place) retire(old string) error {
	if old == "" {
		return nil
	}
	if _, err := os.Lstat(old); errors.Is(err, os.ErrNotExist) {
		return nil
	}
	if m, err := readManifest(old); err == nil {
		if err := p.rescue(old, m); err != nil {
			return err
		}
	}
	return removeTree(old)
}
