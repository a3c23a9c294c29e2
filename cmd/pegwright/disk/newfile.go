package disk

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

// errNoUnnamed is why a file cannot be written before it has a name.
var errNoUnnamed = errors.New("no unnamed files here")

// Create writes a new file. It gets its name when all of it is on the disk,
// so a kill leaves the whole file or none, and a file that is there already is
// never overwritten (fs.ErrExist).
func Create(name string, data []byte) error {
	if _, err := os.Lstat(name); err == nil {
		return &fs.PathError{Op: "open", Path: name, Err: fs.ErrExist}
	}
	err := createUnnamed(name, data)
	if errors.Is(err, errNoUnnamed) {
		err = createBeside(name, data)
	}
	if err != nil {
		return err
	}
	return syncPath(filepath.Dir(name))
}

// createBeside writes the file under a name of its own beside the one wanted,
// and then gives it that. A kill can leave the first.
func createBeside(name string, data []byte) error {
	beside := filepath.Join(filepath.Dir(name), fmt.Sprintf(".%s.pegwright-%d", filepath.Base(name), os.Getpid()))
	os.Remove(beside) // of a process that was killed and had our number
	defer os.Remove(beside)
	if err := createPlain(beside, data); err != nil {
		return err
	}
	err := os.Link(beside, name)
	if err == nil || errors.Is(err, fs.ErrExist) {
		return err
	}
	return createPlain(name, data) // a file system where a file has one name
}

// createPlain writes the file under its name from the start, and leaves none
// behind when it cannot.
func createPlain(name string, data []byte) error {
	file, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if err != nil {
		return err
	}
	_, err = file.Write(data)
	if err = finish(file, err); err != nil {
		os.Remove(name)
	}
	return err
}
