//go:build renderers

package main

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"syscall"
	"testing"

	"golang.org/x/sys/unix"
)

// ownMounts marks the process in which a test may mount disks.
const ownMounts = "PEGWRIGHT_TEST_OWN_MOUNTS"

// apart runs the test again in a process with users and mounts of its own, where
// anybody may mount a disk in memory and nobody else sees it
// (user_namespaces(7)). It reports whether this is that process.
func apart(t *testing.T) bool {
	t.Helper()
	if os.Getenv(ownMounts) != "" {
		return true
	}
	self, err := os.Executable()
	must(t, err)
	cmd := exec.Command(self, "-test.v", "-test.run=^"+t.Name()+"$")
	cmd.Env = append(os.Environ(), ownMounts+"=yes")
	cmd.SysProcAttr = &syscall.SysProcAttr{
		Cloneflags:  unix.CLONE_NEWUSER | unix.CLONE_NEWNS,
		UidMappings: []syscall.SysProcIDMap{{HostID: os.Getuid(), Size: 1}},
		GidMappings: []syscall.SysProcIDMap{{HostID: os.Getgid(), Size: 1}},
	}
	text, err := cmd.CombinedOutput()
	if cmd.Process == nil {
		t.Fatalf("no process with mounts of its own (%v): let this user make user namespaces, or leave these tests out with -skip Disk", err)
	}
	if err != nil || !bytes.Contains(text, []byte("--- PASS: "+t.Name()+" ")) {
		t.Fatalf("%v\n%s", err, text)
	}
	return false
}

// mounted is a small disk in memory.
func mounted(t *testing.T, options string) string {
	t.Helper()
	dir := t.TempDir()
	must(t, unix.Mount("small", dir, "tmpfs", 0, options))
	t.Cleanup(func() {
		if err := unix.Unmount(dir, unix.MNT_DETACH); err != nil {
			t.Error(err)
		}
	})
	return dir
}

// onDisk moves the packets of newFolder to the disk.
func onDisk(t *testing.T, dir string) *folder {
	t.Helper()
	d := newFolder(t)
	must(t, os.CopyFS(dir, os.DirFS(d.dir)))
	d.dir, d.out = dir, filepath.Join(dir, "p")
	return d
}

// A disk that is full, of bytes or of files, at whatever moment of writing,
// keeps the old packet and nothing of the new, and the message says so; with
// room again the next run succeeds.
func TestFullDisk(t *testing.T) {
	if !apart(t) {
		return
	}
	for _, options := range []string{"size=16m", "nr_inodes=400"} {
		t.Run(options, func(t *testing.T) {
			d := onDisk(t, mounted(t, options))
			before := d.whole(t)
			tries := 0
			for room := 0; ; room += 160 << 10 {
				if room > 16<<20 {
					t.Fatal("not even the whole disk is enough")
				}
				release := fill(t, d.dir, room, options == "nr_inodes=400")
				cmd := process(t, d.args[1-before]...)
				cmd.Dir = d.dir
				text, err := cmd.CombinedOutput()
				release()
				if err == nil {
					break
				}
				tries++
				if cmd.ProcessState.ExitCode() != 3 || !bytes.Contains(text, []byte("the disk is full; nothing was changed")) {
					t.Fatalf("room for %d: %v %s", room, err, text)
				}
				if d.whole(t) != before {
					t.Fatal("the packet changed")
				}
				d.tidy(t)
			}
			if d.whole(t) == before || tries < 4 {
				t.Errorf("with room enough the packet is old, or only %d sizes were too small", tries)
			}
			d.tidy(t)
		})
	}
}

// fill takes the disk's room but so many bytes, or its files but one for each
// 20 kB of them, and gives it back.
func fill(t *testing.T, dir string, room int, files bool) (release func()) {
	t.Helper()
	var st unix.Statfs_t
	must(t, unix.Statfs(dir, &st))
	ballast := filepath.Join(dir, "ballast")
	must(t, os.Mkdir(ballast, 0o777))
	if files {
		for n := int(st.Ffree) - 1 - room/(20<<10); n > 0; n-- {
			must(t, os.WriteFile(filepath.Join(ballast, string(rune('一'+n))), nil, 0o666))
		}
	} else if n := int(st.Bavail)*int(st.Bsize) - room; n > 0 {
		must(t, os.WriteFile(filepath.Join(ballast, "fill"), make([]byte, n), 0o666))
	}
	return func() { must(t, os.RemoveAll(ballast)) }
}

// A disk that can only be read stops every command that writes.
func TestReadOnlyDisk(t *testing.T) {
	if !apart(t) {
		return
	}
	d := onDisk(t, mounted(t, "size=16m"))
	before := d.whole(t)
	must(t, unix.Mount("small", d.dir, "tmpfs", unix.MS_REMOUNT|unix.MS_RDONLY, ""))
	for _, args := range [][]string{d.args[1-before], {"draw", "a.yaml", "--out", "q"}, {"start", "new.yaml"}} {
		cmd := process(t, args...)
		cmd.Dir = d.dir
		fails(t, cmd, "read-only file system")
	}
	if d.whole(t) != before {
		t.Error("the packet changed")
	}
	d.tidy(t)
}
