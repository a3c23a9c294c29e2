package disk

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"

	"golang.org/x/sys/unix"
)

// createUnnamed writes a file that has no name until it is whole (O_TMPFILE and
// linkat, open(2)); errNoUnnamed where the file system has no such files.
func createUnnamed(name string, data []byte) error {
	file, err := os.OpenFile(filepath.Dir(name), os.O_WRONLY|unix.O_TMPFILE, 0o666)
	for _, none := range []error{unix.EOPNOTSUPP, unix.EISDIR, unix.EINVAL, unix.ENOENT} {
		if errors.Is(err, none) {
			return errNoUnnamed
		}
	}
	if err != nil {
		return err
	}
	defer file.Close()
	if _, err := file.Write(data); err != nil {
		return err
	}
	if err := file.Sync(); err != nil {
		return err
	}
	err = unix.Linkat(unix.AT_FDCWD, fmt.Sprintf("/proc/self/fd/%d", file.Fd()), unix.AT_FDCWD, name, unix.AT_SYMLINK_FOLLOW)
	if errors.Is(err, unix.ENOENT) { // no /proc
		return errNoUnnamed
	}
	if err != nil {
		return &os.PathError{Op: "open", Path: name, Err: err}
	}
	return nil
}
