package disk

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
	return putFile(name, data, (*os.File).Sync)
}

// putFile writes a new file with its folders, and ends with the sync.
func putFile(name string, data []byte, sync func(*os.File) error) error {
	file, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if errors.Is(err, fs.ErrNotExist) {
		if err = os.MkdirAll(filepath.Dir(name), 0o777); err == nil {
			file, err = os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
		}
	}
	if err != nil {
		return err
	}
	if _, err = file.Write(data); err == nil {
		err = sync(file)
	}
	return closed(file, err)
}

// finish syncs and closes a file that was written, keeping the first error.
func finish(file *os.File, err error) error {
	if err == nil {
		err = file.Sync()
	}
	return closed(file, err)
}

// closed closes a file, keeping the first error.
func closed(file *os.File, err error) error {
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

// syncPath makes the names in a folder, or what is in a file, last through a
// loss of power. Systems that cannot sync a folder do so by themselves; what may
// be written but not read is left to them too.
func syncPath(path string) error {
	if runtime.GOOS == "windows" {
		return nil
	}
	d, err := os.Open(path)
	if errors.Is(err, fs.ErrPermission) {
		return nil
	}
	if err != nil {
		return err
	}
	return finish(d, nil)
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
