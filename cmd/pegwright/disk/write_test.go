package disk

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"pegwright/cmd/pegwright/disk/disktest"
	"pegwright/draw/packet"
)

// generation is a small packet whose files all tell its number.
func generation(n int) []packet.File {
	text := func(name string) []byte { return []byte(strings.Repeat(fmt.Sprintf("%s %d\n", name, n), 400)) }
	files := []packet.File{{Path: "index.html", Data: text("index")}}
	for i := range 6 {
		name := fmt.Sprintf("svg/%03d-sheet-%d.svg", i+1, n%3)
		files = append(files, packet.File{Path: name, Data: text(name)})
	}
	return files
}

func mustWrite(t *testing.T, dir string, n int) {
	t.Helper()
	if err := Write(context.Background(), dir, generation(n)); err != nil {
		t.Fatal(err)
	}
}

func noExchange(a, b string) error { return errNoExchange }

// exchangers are both ways to swap: that of the system, and two renames.
func exchangers() map[string]exchanger {
	return map[string]exchanger{"exchange": exchange, "renames": noExchange}
}

func TestWriteReplacesTheWholePacket(t *testing.T) {
	for name, swap := range exchangers() {
		t.Run(name, func(t *testing.T) {
			dir := filepath.Join(t.TempDir(), "p")
			for n := range 3 {
				if err := writeWith(context.Background(), dir, generation(n), swap); err != nil {
					t.Fatal(err)
				}
				disktest.Whole(t, dir)
				want := map[string]string{".": "folder", "svg": "folder"}
				for _, f := range generation(n) {
					want[f.Path] = string(f.Data)
				}
				got := disktest.Tree(t, dir)
				delete(got, "packet-manifest.json")
				disktest.Same(t, want, got)
			}
			if left := disktest.Leftovers(t, filepath.Dir(dir)); len(left) > 0 {
				t.Errorf("left behind: %v", left)
			}
		})
	}
}

// Folders and files that are not a packet of ours stay as they are.
func TestForeignFoldersAreRefused(t *testing.T) {
	for name, make := range map[string]func(dir string) error{
		"empty":     func(d string) error { return os.Mkdir(d, 0o777) },
		"documents": func(d string) error { return writeFile(filepath.Join(d, "letter.txt"), []byte("dear")) },
		"a file":    func(d string) error { return os.WriteFile(d, []byte("x"), 0o666) },
		"another manifest": func(d string) error {
			return writeFile(filepath.Join(d, "packet-manifest.json"), []byte(`{"format":"other/1"}`))
		},
		"a broken manifest": func(d string) error { return writeFile(filepath.Join(d, "packet-manifest.json"), []byte(`{"for`)) },
		"a manifest that points outside": func(d string) error {
			return writeFile(filepath.Join(d, "packet-manifest.json"), []byte(`{"format":"pegwright-packet/1","files":[{"path":"../letter.txt"}]}`))
		},
		"a manifest that is a folder": func(d string) error { return os.MkdirAll(filepath.Join(d, "packet-manifest.json"), 0o777) },
		"a link to nothing":           func(d string) error { return os.Symlink("nowhere", d) },
		"a link to documents": func(d string) error {
			if err := writeFile(filepath.Join(d+"-real", "letter.txt"), []byte("dear")); err != nil {
				return err
			}
			return os.Symlink(d+"-real", d)
		},
	} {
		t.Run(name, func(t *testing.T) {
			base := t.TempDir()
			dir := filepath.Join(base, "p")
			if err := make(dir); err != nil {
				t.Fatal(err)
			}
			before := disktest.Tree(t, base)
			if err := Write(context.Background(), dir, generation(1)); err == nil {
				t.Error("it was taken for a packet")
			}
			disktest.Same(t, before, disktest.Tree(t, base))
		})
	}
}

// Files of the user's in a packet travel to the next one, bytes, links, empty
// folders, permissions and all.
func TestForeignFilesTravel(t *testing.T) {
	for name, swap := range exchangers() {
		t.Run(name, func(t *testing.T) {
			dir := filepath.Join(t.TempDir(), "p")
			mustWrite(t, dir, 0)
			mine := map[string]string{"notes.txt": "mine", "svg/sketch.svg": "a sketch", "photos/2026/a.jpg": "a photo", "svg/001-sheet-9.svg": "a copy"}
			for n, text := range mine {
				if err := writeFile(filepath.Join(dir, n), []byte(text)); err != nil {
					t.Fatal(err)
				}
			}
			must(t, os.MkdirAll(filepath.Join(dir, "empty/folder"), 0o777))
			must(t, os.Symlink("../elsewhere", filepath.Join(dir, "a-link")))
			must(t, os.Chmod(filepath.Join(dir, "notes.txt"), 0o640))
			must(t, os.Chmod(filepath.Join(dir, "photos/2026"), 0o500))
			stamp := time.Date(2020, 3, 4, 5, 6, 7, 0, time.UTC)
			must(t, os.Chtimes(filepath.Join(dir, "notes.txt"), stamp, stamp))
			for n := 1; n < 4; n++ {
				must(t, writeWith(context.Background(), dir, generation(n), swap))
				got := disktest.Tree(t, dir)
				for f, text := range mine {
					if got[f] != text {
						t.Errorf("%s is %q, want %q", f, got[f], text)
					}
				}
				if got["empty/folder"] != "folder" || got["a-link"] != "link to ../elsewhere" {
					t.Errorf("folder %q, link %q", got["empty/folder"], got["a-link"])
				}
				foreign, err := disktest.Verify(dir)
				if err != nil || len(foreign) != len(mine)+1 {
					t.Errorf("%v, foreign files %v", err, foreign)
				}
				st, err := os.Stat(filepath.Join(dir, "notes.txt"))
				if err != nil || st.Mode().Perm() != 0o640 || !st.ModTime().Equal(stamp) {
					t.Errorf("notes.txt: %v %v %v", err, st.Mode(), st.ModTime())
				}
				if st, err := os.Stat(filepath.Join(dir, "photos/2026")); err != nil || st.Mode().Perm() != 0o500 {
					t.Errorf("photos/2026: %v %v", err, st.Mode())
				}
			}
			must(t, os.Chmod(filepath.Join(dir, "photos/2026"), 0o700))
			if left := disktest.Leftovers(t, filepath.Dir(dir)); len(left) > 0 {
				t.Errorf("left behind: %v", left)
			}
		})
	}
}

func must(t *testing.T, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// A file of the user's that stands where the new packet wants one of its own
// stops the run: it is neither changed nor lost.
func TestAFileInTheWay(t *testing.T) {
	for _, name := range []string{"svg/001-sheet-1.svg", "svg/001-sheet-1.svg/inside.txt"} {
		dir := filepath.Join(t.TempDir(), "p")
		mustWrite(t, dir, 0)
		must(t, writeFile(filepath.Join(dir, name), []byte("mine")))
		before := disktest.Tree(t, filepath.Dir(dir))
		err := Write(context.Background(), dir, generation(1))
		if err == nil || !strings.Contains(err.Error(), "move it away") {
			t.Errorf("%s: %v", name, err)
		}
		disktest.Same(t, before, disktest.Tree(t, filepath.Dir(dir)))
	}
}

// A packet reached through a symbolic link is replaced where it really is.
func TestWriteThroughALink(t *testing.T) {
	base := t.TempDir()
	real, link := filepath.Join(base, "real"), filepath.Join(base, "link")
	mustWrite(t, real, 0)
	must(t, os.Symlink("real", link))
	mustWrite(t, link, 1)
	if to, err := os.Readlink(link); err != nil || to != "real" {
		t.Errorf("the link is gone: %q %v", to, err)
	}
	disktest.Whole(t, real)
}

// A file that was saved into the old packet after its files had been carried
// over is not lost.
func TestAFileSavedWhileSwapping(t *testing.T) {
	for name, swap := range exchangers() {
		dir := filepath.Join(t.TempDir(), "p")
		mustWrite(t, dir, 0)
		must(t, writeFile(filepath.Join(dir, "notes.txt"), []byte("first")))
		late := func(a, b string) error {
			must(t, writeFile(filepath.Join(dir, "late/new.txt"), []byte("late")))
			must(t, os.Remove(filepath.Join(dir, "notes.txt")))
			must(t, writeFile(filepath.Join(dir, "notes.txt"), []byte("second")))
			now := time.Now().Add(time.Minute)
			must(t, os.Chtimes(filepath.Join(dir, "notes.txt"), now, now))
			return swap(a, b)
		}
		must(t, writeWith(context.Background(), dir, generation(1), late))
		got := disktest.Tree(t, dir)
		if got["late/new.txt"] != "late" || got["notes.txt"] != "second" {
			t.Errorf("%s: late file %q, notes %q", name, got["late/new.txt"], got["notes.txt"])
		}
	}
}

// A swap that fails leaves the old packet as it was.
func TestASwapThatFails(t *testing.T) {
	base := t.TempDir()
	dir := filepath.Join(base, "p")
	mustWrite(t, dir, 0)
	before := disktest.Tree(t, base)
	broken := func(a, b string) error { return errors.New("the disk is on fire") }
	if err := writeWith(context.Background(), dir, generation(1), broken); err == nil {
		t.Error("no error")
	}
	disktest.Same(t, before, disktest.Tree(t, base))
}

// While another run holds the lock nothing is changed; another packet is not
// held up.
func TestASecondRunIsTurnedAway(t *testing.T) {
	base := t.TempDir()
	dir := filepath.Join(base, "p")
	mustWrite(t, dir, 0)
	before := disktest.Tree(t, dir)
	p, err := placeOf(dir)
	must(t, err)
	unlock, err := takeLock(p.lock)
	must(t, err)
	if err := Write(context.Background(), dir, generation(1)); err == nil || !strings.Contains(err.Error(), "another run") {
		t.Errorf("%v", err)
	}
	disktest.Same(t, before, disktest.Tree(t, dir))
	mustWrite(t, filepath.Join(base, "q"), 0)
	unlock()
	mustWrite(t, dir, 1)
	if left := disktest.Leftovers(t, base); len(left) > 0 {
		t.Errorf("left behind: %v", left)
	}
}
