package disk

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"pegwright/cmd/pegwright/plain"
)

// place is where a packet goes, with the names beside it that writing needs.
// All are on one file system, so that a rename is enough to swap.
type place struct {
	shown string // as the user wrote it
	dir   string // the packet
	fresh string // where the next one is built
	aside string // where the last one waits when there is no atomic exchange
	lock  string
}

// placeOf resolves the folder. A symbolic link is followed, so that the folder
// it leads to is replaced and not the link.
func placeOf(out string) (place, error) {
	abs, err := filepath.Abs(out)
	if err == nil {
		if real, e := filepath.EvalSymlinks(abs); e == nil {
			abs = real
		} else if _, l := os.Lstat(abs); l == nil {
			err = e
		}
	}
	if err != nil {
		return place{}, fmt.Errorf("cannot write into %s: %s", plain.Quoted(out), plain.Reason(err))
	}
	parent, base := filepath.Split(abs)
	if base == "" {
		return place{}, fmt.Errorf("%s is not a packet of this program; name a folder of its own with --out", plain.Quoted(out))
	}
	if st, err := os.Stat(parent); err != nil || !st.IsDir() {
		return place{}, fmt.Errorf("cannot write %s: the folder that it goes into does not exist; make it first", plain.Quoted(out))
	}
	beside := func(what string) string { return filepath.Join(parent, "."+base+".pegwright-"+what) }
	return place{shown: out, dir: abs, fresh: beside("new"), aside: beside("old"), lock: beside("lock")}, nil
}

// check refuses a folder that is not a packet of ours; one that does not exist
// is fine.
func (p place) check() error {
	st, err := os.Lstat(p.dir)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return fmt.Errorf("cannot write %s: %s", plain.Quoted(p.shown), plain.Reason(err))
	case !st.IsDir():
		return fmt.Errorf("%s is not a folder; name another with --out", plain.Quoted(p.shown))
	}
	if _, err := readManifest(p.dir); err != nil {
		return fmt.Errorf("%s is not a packet of this program (%s), so it is left alone; name another folder with --out", plain.Quoted(p.shown), plain.Reason(err))
	}
	return nil
}

// Refusal says why Write would refuse the folder out, nil when it would not: so
// one learns it before the work and not after it. It changes nothing.
func Refusal(out string) error {
	p, err := placeOf(out)
	if err != nil {
		return err
	}
	return p.check()
}
