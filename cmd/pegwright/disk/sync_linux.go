package disk

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"golang.org/x/sys/unix"
)

// syncOne leaves a file of a packet to syncAll: to wait for the disk after
// every file would take longer than to draw them all.
func syncOne(*os.File) error { return nil }

// syncAll makes dir with all that was written in it last through a loss of
// power: with one call for the whole file system (syncfs), where that tells of
// a disk that fails, as it does since Linux 5.8.
func syncAll(dir string) error {
	if !tellsOfFaults() {
		return syncEach(dir)
	}
	d, err := os.Open(dir)
	if err != nil {
		return err
	}
	return closed(d, unix.Syncfs(int(d.Fd())))
}

// tellsOfFaults reports whether the kernel is 5.8 or later.
func tellsOfFaults() bool {
	var name unix.Utsname
	if unix.Uname(&name) != nil {
		return false
	}
	var major, minor int
	if n, _ := fmt.Sscanf(unix.ByteSliceToString(name.Release[:]), "%d.%d", &major, &minor); n < 2 {
		return false
	}
	return major > 5 || major == 5 && minor >= 8
}

// syncEach syncs every file and folder that can be read, one after the other.
func syncEach(dir string) error {
	return filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err != nil || !d.Type().IsRegular() && !d.IsDir() {
			return err
		}
		return syncPath(path)
	})
}
