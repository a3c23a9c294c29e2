package main

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
	"strings"
	"testing"
	"time"
)

// process returns the command as a process of its own.
func process(t *testing.T, args ...string) *exec.Cmd {
	t.Helper()
	self, err := os.Executable()
	must(t, err)
	cmd := exec.Command(self, args...)
	cmd.Env = append(os.Environ(), asCommand+"=run")
	return cmd
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
			cmd := exec.Command(self, dir)
			cmd.Env = append(os.Environ(), asCommand+"=write")
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
			foreign, err := verify(at)
			if err != nil || len(foreign) != 1 || foreign[0] != "svg/mine.txt" {
				t.Fatalf("%s after a kill: %v, foreign files %v", name, err, foreign)
			}
			if len(leftovers(t, filepath.Dir(dir))) > 0 {
				halfway++
			}
		}
		if halfway == 0 {
			t.Errorf("%s: no kill came while a packet was being written", name)
		}
		mustWrite(t, dir, 5)
		if foreign, err := verify(dir); err != nil || len(foreign) != 1 {
			t.Errorf("%s: %v, foreign files %v", name, err, foreign)
		}
		if left := leftovers(t, filepath.Dir(dir)); len(left) > 0 {
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
	before := tree(t, dir)
	must(t, os.Rename(dir, p.aside))
	ended, cancel := context.WithCancel(context.Background())
	cancel()
	if err := writePacket(ended, dir, generation(2)); !errors.Is(err, errInterrupted) {
		t.Errorf("%v, want %v", err, errInterrupted)
	}
	same(t, before, tree(t, dir))
	mustWrite(t, dir, 3)
	if foreign, err := verify(dir); err != nil || len(foreign) != 1 {
		t.Errorf("%v, foreign files %v", err, foreign)
	}
	if left := leftovers(t, filepath.Dir(dir)); len(left) > 0 {
		t.Errorf("left behind: %v", left)
	}
}

// The same description gives the same bytes, whatever the time zone, the number
// of processors and the folder it is read from.
func TestSameBytes(t *testing.T) {
	base := t.TempDir()
	must(t, os.Mkdir(filepath.Join(base, "sub"), 0o777))
	put(t, filepath.Join(base, "f.yaml"), rail(t))
	put(t, filepath.Join(base, "sub", "f.yaml"), rail(t))
	var first map[string]string
	for i, c := range []struct {
		file string
		env  []string
	}{
		{"f.yaml", []string{"TZ=UTC", "GOMAXPROCS=1"}},
		{"f.yaml", []string{"TZ=Pacific/Auckland", "GOMAXPROCS=2", "LANG=de_DE.UTF-8", "LC_ALL=de_DE.UTF-8"}},
		{filepath.Join(base, "sub", "f.yaml"), []string{"TZ=America/New_York", "HOME=/nonexistent"}},
	} {
		out := filepath.Join(base, fmt.Sprintf("p%d", i))
		cmd := process(t, "draw", c.file, "--out", out)
		cmd.Dir, cmd.Env = base, append(cmd.Env, c.env...)
		if text, err := cmd.CombinedOutput(); err != nil {
			t.Fatalf("%v: %s", err, text)
		}
		if first == nil {
			first = tree(t, out)
			continue
		}
		same(t, first, tree(t, out))
	}
	if len(first) < 10 {
		t.Errorf("only %d files", len(first))
	}
}

// An interrupt from the terminal ends the process with code 3 and changes
// nothing.
func TestInterruptSignal(t *testing.T) {
	base := t.TempDir()
	dir := filepath.Join(base, "p")
	mustWrite(t, dir, 0)
	before := tree(t, dir)
	cmd := process(t, "check", "-") // waits for its input
	in, err := cmd.StdinPipe()
	must(t, err)
	must(t, cmd.Start())
	// More than a pipe holds: when it is written, the process is reading.
	_, err = in.Write([]byte(strings.Repeat("# nothing yet\n", 20000)))
	must(t, err)
	must(t, cmd.Process.Signal(os.Interrupt))
	done := make(chan error, 1)
	go func() { done <- cmd.Wait() }()
	select {
	case err := <-done:
		var exit *exec.ExitError
		if !errors.As(err, &exit) || exit.ExitCode() != 3 {
			t.Errorf("%v, want exit code 3", err)
		}
	case <-time.After(5 * time.Second):
		t.Error("it does not end")
		must(t, cmd.Process.Kill())
	}
	in.Close()
	same(t, before, tree(t, dir))
}
