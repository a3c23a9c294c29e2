package main

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
)

// writeFile writes a new file with its folders, and syncs it.
func writeFile(name string, data []byte) error {
	if err := os.MkdirAll(filepath.Dir(name), 0o777); err != nil {
		return err
	}
	file, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if err != nil {
		return err
	}
	_, err = file.Write(data)
	return finish(file, err)
}

// finish syncs and closes a file that was written, keeping the first error.
func finish(file *os.File, err error) error {
	if err == nil {
		err = file.Sync()
	}
	if e := file.Close(); err == nil {
		err = e
	}
	return err
}

// copyFile copies a file with its permissions and times.
func copyFile(from, to string, st fs.FileInfo) error {
	in, err := os.Open(from)
	if err != nil {
		return err
	}
	defer in.Close()
	out, err := os.OpenFile(to, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
	if err != nil {
		return err
	}
	_, err = io.Copy(out, in)
	if err = finish(out, err); err != nil {
		return err
	}
	if err := os.Chmod(to, st.Mode().Perm()); err != nil {
		return err
	}
	return os.Chtimes(to, st.ModTime(), st.ModTime())
}

// syncDir makes the names in a folder last through a loss of power. Systems
// that cannot sync a folder do so by themselves; one that may be written but not
// read is left to them too.
func syncDir(dir string) error {
	if runtime.GOOS == "windows" {
		return nil
	}
	d, err := os.Open(dir)
	if errors.Is(err, fs.ErrPermission) {
		return nil
	}
	if err != nil {
		return err
	}
	return finish(d, nil)
}

// syncTree syncs every folder below and including dir.
func syncTree(dir string) error {
	return filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err != nil || !d.IsDir() {
			return err
		}
		if st, err := d.Info(); err != nil || st.Mode().Perm()&0o400 == 0 {
			return err
		}
		return syncDir(path)
	})
}

// removeTree removes a folder with all in it, folders without write permission
// too. One that is not there is fine.
func removeTree(dir string) error {
	if os.RemoveAll(dir) == nil {
		return nil
	}
	// Only permissions are mended here; RemoveAll reports what is left.
	_ = filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if d != nil && d.IsDir() {
			_ = os.Chmod(path, 0o700)
		}
		return nil
	})
	return os.RemoveAll(dir)
}
