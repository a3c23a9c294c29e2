package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"pegwright/cmd/pegwright/disk"
	"pegwright/cmd/pegwright/disk/disktest"
	"pegwright/draw/packet"
)

// process returns the command as a process of its own.
func process(t testing.TB, args ...string) *exec.Cmd {
	t.Helper()
	self, err := os.Executable()
	must(t, err)
	cmd := exec.Command(self, args...)
	cmd.Env = append(os.Environ(), asCommand+"=run")
	return cmd
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
			first = disktest.Tree(t, out)
			continue
		}
		disktest.Same(t, first, disktest.Tree(t, out))
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
	must(t, disk.Write(context.Background(), dir, []packet.File{{Path: "index.html", Data: []byte("index")}}))
	before := disktest.Tree(t, dir)
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
	disktest.Same(t, before, disktest.Tree(t, dir))
}

func must(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}
