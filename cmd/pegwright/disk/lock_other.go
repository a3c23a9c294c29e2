//go:build !unix

package disk

import (
	"errors"
	"os"
)

// errLocked says that another run holds the lock.
var errLocked = errors.New("locked by another run")

// takeLock takes the lock file. Where an open file cannot be removed, a file
// that a dead process left behind can, and one that is held cannot.
func takeLock(name string) (unlock func(), err error) {
	if err := os.Remove(name); err != nil && !errors.Is(err, os.ErrNotExist) {
		return nil, errLocked
	}
	file, err := os.OpenFile(name, os.O_RDWR|os.O_CREATE|os.O_EXCL, 0o666)
	if errors.Is(err, os.ErrExist) {
		return nil, errLocked
	}
	if err != nil {
		return nil, err
	}
	return func() { file.Close(); os.Remove(name) }, nil
}
