//go:build unix

package disk

import (
	"errors"
	"os"

	"golang.org/x/sys/unix"
)

// errLocked says that another run holds the lock.
var errLocked = errors.New("locked by another run")

// takeLock takes the lock file, which the system lets go when the process ends
// in whatever way. The file is removed while the lock is held; whoever locked
// a removed file begins again, so two runs never hold locks on two files of
// one name.
func takeLock(name string) (unlock func(), err error) {
	for range 100 {
		file, err := os.OpenFile(name, os.O_RDWR|os.O_CREATE|unix.O_NOFOLLOW, 0o666)
		if err != nil {
			return nil, err
		}
		err = unix.Flock(int(file.Fd()), unix.LOCK_EX|unix.LOCK_NB)
		if errors.Is(err, unix.EWOULDBLOCK) {
			file.Close()
			return nil, errLocked
		}
		if err != nil {
			file.Close()
			return nil, err
		}
		if still(file, name) {
			return func() { os.Remove(name); file.Close() }, nil
		}
		file.Close()
	}
	return nil, errLocked
}

// still reports whether the open file is the one of that name.
func still(file *os.File, name string) bool {
	a, err := file.Stat()
	if err != nil {
		return false
	}
	b, err := os.Lstat(name)
	return err == nil && os.SameFile(a, b)
}
