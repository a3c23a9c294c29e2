package disk

import (
	"context"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"pegwright/cmd/pegwright/plain"
	"slices"
)

// conflict is a file of the user's that stands where the packet wants to put
// one of its own.
type conflict struct{ path string }

// Error names the file and says how to mend it.
func (c conflict) Error() string {
	return fmt.Sprintf("%s is not a file of the packet, and the new packet would need its place; move it away", plain.Quoted(c.path))
}

// foreign walks everything in a packet's folder that the manifest does not
// name, folders before what is in them. Paths are relative.
func foreign(dir string, m *manifest, visit func(rel string, st fs.FileInfo) error) error {
	files, dirs := m.own()
	return filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err != nil || path == dir {
			return err
		}
		rel, err := filepath.Rel(dir, path)
		if err != nil {
			return err
		}
		if d.Type().IsRegular() && files[rel] || d.IsDir() && dirs[rel] {
			return nil
		}
		st, err := d.Info()
		if err != nil {
			return err
		}
		return visit(rel, st)
	})
}

// carry brings the user's own files of the old packet into the new one: a
// second name for the same file where the system allows, else a copy.
func (p place) carry(ctx context.Context) error {
	m, err := readManifest(p.dir)
	if err != nil {
		return nil // there is no old packet: check has refused all else
	}
	perms := map[string]fs.FileMode{}
	err = foreign(p.dir, m, func(rel string, st fs.FileInfo) error {
		if ctx.Err() != nil {
			return ErrInterrupted
		}
		if st.IsDir() {
			perms[filepath.Join(p.fresh, rel)] = st.Mode().Perm()
		}
		return p.carryOne(rel, st)
	})
	if err != nil {
		return err
	}
	if st, err := os.Stat(p.dir); err == nil {
		perms[p.fresh] = st.Mode().Perm() | 0o700
	}
	inner := slices.Sorted(maps.Keys(perms))
	slices.Reverse(inner) // what is in a folder before the folder
	for _, dir := range inner {
		if err := os.Chmod(dir, perms[dir]); err != nil {
			return err
		}
	}
	return nil
}

// carryOne brings one file, link or folder. A folder is open to us until all is
// in it.
func (p place) carryOne(rel string, st fs.FileInfo) error {
	to := filepath.Join(p.fresh, rel)
	there, err := os.Lstat(to)
	switch {
	case err == nil && !(st.IsDir() && there.IsDir()):
		return conflict{filepath.Join(p.shown, rel)}
	case st.IsDir():
		return os.MkdirAll(to, 0o700)
	}
	if err := os.MkdirAll(filepath.Dir(to), 0o777); err != nil {
		if isFile(filepath.Dir(to)) {
			return conflict{filepath.Join(p.shown, rel)}
		}
		return err
	}
	return second(filepath.Join(p.dir, rel), to, st)
}

func isFile(name string) bool {
	st, err := os.Lstat(name)
	return err == nil && !st.IsDir()
}

// second gives a file or a link a second name, or copies it.
func second(from, to string, st fs.FileInfo) error {
	switch {
	case st.Mode().IsRegular():
		if os.Link(from, to) == nil {
			return nil
		}
		return copyFile(from, to, st)
	case st.Mode()&fs.ModeSymlink != 0:
		target, err := os.Readlink(from)
		if err != nil {
			return err
		}
		return os.Symlink(target, to)
	}
	return fmt.Errorf("%s is neither a file nor a folder; move it away", plain.Quoted(from))
}

// rescue moves files of the user's that came into the old packet after carry,
// or were saved anew since, into the packet that took its place.
func (p place) rescue(old string, m *manifest) error {
	if _, err := os.Lstat(p.dir); err != nil {
		return nil // nothing took its place: a first packet that was not finished
	}
	return foreign(old, m, func(rel string, st fs.FileInfo) error {
		from, to := filepath.Join(old, rel), filepath.Join(p.dir, rel)
		there, err := os.Lstat(to)
		switch {
		case st.IsDir() && err != nil:
			return os.MkdirAll(to, 0o777)
		case st.IsDir(), err == nil && !there.Mode().IsRegular(), err == nil && !st.ModTime().After(there.ModTime()):
			return nil
		}
		return os.Rename(from, to)
	})
}
