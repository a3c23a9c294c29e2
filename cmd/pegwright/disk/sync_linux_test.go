package disk

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"testing"
)

// Both ways to sync a folder take whatever may be in it, and say when it is not
// there.
func TestSync(t *testing.T) {
	dir := t.TempDir()
	must(t, putFile(filepath.Join(dir, "svg", "a.svg"), []byte("a"), syncOne))
	must(t, putFile(filepath.Join(dir, "locked.svg"), []byte("b"), syncOne))
	must(t, os.Chmod(filepath.Join(dir, "locked.svg"), 0))
	must(t, os.Symlink("nowhere", filepath.Join(dir, "link")))
	for name, sync := range map[string]func(string) error{"all": syncAll, "each": syncEach} {
		if err := sync(dir); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		if err := sync(filepath.Join(dir, "absent")); !errors.Is(err, fs.ErrNotExist) {
			t.Errorf("%s, absent folder: %v", name, err)
		}
	}
}
