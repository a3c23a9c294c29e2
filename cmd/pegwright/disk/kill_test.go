package disk

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"pegwright/cmd/pegwright/disk/disktest"
	"strings"
	"testing"
	"time"
)

// asWriter makes the test binary write packets into the folder that it names
// until it is killed.
const asWriter = "PEGWRIGHT_TEST_AS_WRITER"

func TestMain(m *testing.M) {
	if dir := os.Getenv(asWriter); dir != "" {
		writeForever(dir)
	}
	os.Exit(m.Run())
}

// writeForever writes one generation after another until it is killed.
func writeForever(dir string) {
	swap := exchange
	if strings.HasSuffix(dir, "renames") {
		swap = noExchange
	}
	for n := 0; ; n++ {
		if err := writeWith(context.Background(), dir, generation(n), swap); err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(3)
		}
		if n == 0 {
			os.Stdout.Close() // tells whoever waits that writing goes on
		}
	}
}

// After a kill at any moment the folder is one whole packet, or, where there is
// no atomic exchange, absent with a whole old one beside it; files of the
// user's are still there; and the next run mends what is left.
func TestKilledAtAnyMoment(t *testing.T) {
	self, err := os.Executable()
	must(t, err)
	random := rand.New(rand.NewPCG(7, 11))
	for name := range exchangers() {
		dir := filepath.Join(t.TempDir(), name)
		mustWrite(t, dir, 0)
		halfway := 0 // kills that left something beside the packet
		must(t, writeFile(filepath.Join(dir, "svg", "mine.txt"), []byte("mine")))
		for range 12 {
			cmd := exec.Command(self)
			cmd.Env = append(os.Environ(), asWriter+"="+dir)
			out, err := cmd.StdoutPipe()
			must(t, err)
			must(t, cmd.Start())
			_, err = io.ReadAll(out) // until the first packet is written
			must(t, err)
			time.Sleep(time.Duration(random.IntN(40)) * time.Millisecond)
			must(t, cmd.Process.Kill())
			_ = cmd.Wait() // it was killed: the error says so
			at := dir
			if _, err := os.Stat(dir); name == "renames" && errors.Is(err, fs.ErrNotExist) {
				at = filepath.Join(filepath.Dir(dir), "."+name+".pegwright-old")
			}
			foreign, err := disktest.Verify(at)
			if err != nil || len(foreign) != 1 || foreign[0] != "svg/mine.txt" {
				t.Fatalf("%s after a kill: %v, foreign files %v", name, err, foreign)
			}
			if len(disktest.Leftovers(t, filepath.Dir(dir))) > 0 {
				halfway++
			}
		}
		if halfway == 0 {
			t.Errorf("%s: no kill came while a packet was being written", name)
		}
		mustWrite(t, dir, 5)
		if foreign, err := disktest.Verify(dir); err != nil || len(foreign) != 1 {
			t.Errorf("%s: %v, foreign files %v", name, err, foreign)
		}
		if left := disktest.Leftovers(t, filepath.Dir(dir)); len(left) > 0 {
			t.Errorf("%s: left behind: %v", name, left)
		}
	}
}

// A run that was killed between its two renames left the old packet aside and
// nothing in its place: the next run brings it back before it does anything, so
// that a refusal or an interrupt finds it there, and files of the user's stay.
func TestKilledBetweenTheRenames(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "p")
	p, err := placeOf(dir)
	must(t, err)
	mustWrite(t, p.fresh, 1) // the new packet that was ready
	mustWrite(t, dir, 0)
	must(t, writeFile(filepath.Join(dir, "notes.txt"), []byte("mine")))
	before := disktest.Tree(t, dir)
	must(t, os.Rename(dir, p.aside))
	ended, cancel := context.WithCancel(context.Background())
	cancel()
	if err := Write(ended, dir, generation(2)); !errors.Is(err, ErrInterrupted) {
		t.Errorf("%v, want %v", err, ErrInterrupted)
	}
	disktest.Same(t, before, disktest.Tree(t, dir))
	mustWrite(t, dir, 3)
	if foreign, err := disktest.Verify(dir); err != nil || len(foreign) != 1 {
		t.Errorf("%v, foreign files %v", err, foreign)
	}
	if left := disktest.Leftovers(t, filepath.Dir(dir)); len(left) > 0 {
		t.Errorf("left behind: %v", left)
	}
}
