//go:build !linux

package disk

import (
	"io/fs"
	"os"
	"path/filepath"
)

// syncOne makes a file of a packet last through a loss of power.
func syncOne(f *os.File) error { return f.Sync() }

// syncAll syncs every folder below and including dir, where the names of the
// files stand.
func syncAll(dir string) error {
	return filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err != nil || !d.IsDir() {
			return err
		}
		if st, err := d.Info(); err != nil || st.Mode().Perm()&0o400 == 0 {
			return err
		}
		return syncPath(path)
	})
}
