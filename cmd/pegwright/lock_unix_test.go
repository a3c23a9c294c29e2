//go:build unix

package main

import (
	"context"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"pegwright/cmd/pegwright/disk"
	"pegwright/cmd/pegwright/disk/disktest"
	"pegwright/draw/packet"
	"strings"
	"testing"

	"golang.org/x/sys/unix"
)

// held takes the lock file of a packet as another program would, by flock(2).
func held(t *testing.T, name string) *os.File {
	t.Helper()
	file, err := os.OpenFile(name, os.O_RDWR|os.O_CREATE, 0o666)
	must(t, err)
	if err := unix.Flock(int(file.Fd()), unix.LOCK_EX|unix.LOCK_NB); err != nil {
		t.Fatalf("another process holds %s: %v", name, err)
	}
	return file
}

// free demands that no dead process holds the lock.
func (d *folder) free(t *testing.T) {
	t.Helper()
	lock := held(t, filepath.Join(d.dir, ".p.pegwright-lock"))
	must(t, os.Remove(lock.Name()))
	must(t, lock.Close())
}

// A second run at the same time ends with code 3 and changes nothing.
func TestASecondRunIsTurnedAway(t *testing.T) {
	base := t.TempDir()
	dir := filepath.Join(base, "p")
	must(t, disk.Write(context.Background(), dir, []packet.File{{Path: "index.html", Data: []byte("index")}}))
	before := disktest.Tree(t, dir)
	lock := held(t, filepath.Join(base, ".p.pegwright-lock"))
	put(t, filepath.Join(base, "rail.yaml"), rail(t))
	cmd := process(t, "draw", filepath.Join(base, "rail.yaml"), "--out", dir)
	out, err := cmd.CombinedOutput()
	var exit *exec.ExitError
	if !errors.As(err, &exit) || exit.ExitCode() != 3 || !strings.Contains(string(out), "another run") {
		t.Errorf("%v: %s", err, out)
	}
	disktest.Same(t, before, disktest.Tree(t, dir))
	must(t, lock.Close())
	if out, err := process(t, "draw", filepath.Join(base, "rail.yaml"), "--out", dir).CombinedOutput(); err != nil {
		t.Errorf("the lock is free: %v: %s", err, out)
	}
}
