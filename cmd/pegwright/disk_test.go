//go:build unix

package main

import (
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

// confined returns a process of the command whose files can grow to so many
// blocks of 512 bytes (ulimit of the POSIX shell; some shells count 1,024).
func (d *folder) confined(t *testing.T, blocks string, args []string) *exec.Cmd {
	t.Helper()
	run := process(t, args...)
	cmd := exec.Command("/bin/sh", append([]string{"-c", "ulimit -f " + blocks + " && exec \"$0\" \"$@\"", run.Path}, args...)...)
	cmd.Env, cmd.Dir = run.Env, d.dir
	return cmd
}

// fails demands exit code 3, one message that holds the words, and nothing on
// the output stream.
func fails(t *testing.T, cmd *exec.Cmd, words string) {
	t.Helper()
	var out, errs strings.Builder
	cmd.Stdout, cmd.Stderr = &out, &errs
	_ = cmd.Run() // the code tells
	if code := cmd.ProcessState.ExitCode(); code != 3 || !strings.Contains(errs.String(), words) || out.Len() > 0 || strings.Count(errs.String(), "\n") != 1 {
		t.Errorf("%v: exit code %d, want 3 and %q: %s%s", cmd.Args, code, words, errs.String(), out.String())
	}
}

// When a file cannot be written to its end the run changes nothing, whichever
// file of the packet it is, and says why.
func TestNoRoomForAFile(t *testing.T) {
	d := newFolder(t)
	before := d.whole(t)
	for _, blocks := range []string{"0", "1", "4", "16", "40"} {
		fails(t, d.confined(t, blocks, d.args[1-before]), "file too large; nothing was changed")
		if d.whole(t) != before {
			t.Error("the packet changed")
		}
		d.tidy(t)
		fails(t, d.confined(t, blocks, []string{"draw", "a.yaml", "--out", "q"}), "nothing was changed")
		absent(t, filepath.Join(d.dir, "q"))
	}
	fails(t, d.confined(t, "0", []string{"start", "new.yaml"}), "cannot write “new.yaml”")
	absent(t, filepath.Join(d.dir, "new.yaml"))
	d.tidy(t)
}

func absent(t *testing.T, name string) {
	t.Helper()
	if _, err := os.Lstat(name); !os.IsNotExist(err) {
		t.Errorf("%s is there: %v", name, err)
	}
}

// plainUser makes the command run without the rights of an administrator, whom
// permissions do not stop.
func plainUser(t *testing.T, d *folder, cmd *exec.Cmd) {
	t.Helper()
	if os.Getuid() != 0 {
		return
	}
	must(t, os.Chmod(filepath.Dir(d.dir), 0o755))
	copied := filepath.Join(filepath.Dir(d.dir), "command")
	if _, err := os.Stat(copied); err != nil {
		program, err := os.ReadFile(cmd.Path)
		must(t, err)
		must(t, os.WriteFile(copied, program, 0o755))
	}
	cmd.Path = copied
	const nobody = 65534
	cmd.SysProcAttr = &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: nobody, Gid: nobody}}
}

// A folder that may not be written, or an old packet that may not be read,
// stops the run with a reason and nothing changed.
func TestFolderWithoutPermission(t *testing.T) {
	d := newFolder(t)
	before := d.whole(t)
	for _, c := range []struct {
		name string
		perm os.FileMode
		line string
		word string
	}{
		{".", 0o555, "draw b.yaml --out p", "permission denied; nothing was changed"},
		{".", 0o555, "draw b.yaml --out q", "permission denied; nothing was changed"},
		{".", 0o555, "start new.yaml", "cannot write “new.yaml”: permission denied"},
		{"p/packet-manifest.json", 0, "draw b.yaml --out p", "permission denied"},
		{"p", 0, "draw b.yaml --out p", "permission denied"},
		{"b.yaml", 0, "draw b.yaml --out p", "cannot read “b.yaml”: permission denied"},
	} {
		name := filepath.Join(d.dir, c.name)
		st, err := os.Stat(name)
		must(t, err)
		must(t, os.Chmod(name, c.perm))
		cmd := process(t, strings.Fields(c.line)...)
		cmd.Dir = d.dir
		plainUser(t, d, cmd)
		fails(t, cmd, c.word)
		must(t, os.Chmod(name, st.Mode().Perm()))
		if d.whole(t) != before {
			t.Errorf("%+v: the packet changed", c)
		}
		d.tidy(t)
	}
	absent(t, filepath.Join(d.dir, "q"))
	absent(t, filepath.Join(d.dir, "new.yaml"))
}

// A reader of the output that goes away ends the command without a word; an
// output that is full is told; neither stops a packet from being written.
func TestOutputThatGoesAway(t *testing.T) {
	d := newFolder(t)
	for _, line := range []string{"lists a.yaml", "model a.yaml", "check a.yaml", "schema", "help", "manual"} {
		cmd := process(t, strings.Fields(line)...)
		cmd.Dir = d.dir
		cmd.Stdout = broken(t)
		_ = cmd.Run() // the code tells
		if code := cmd.ProcessState.ExitCode(); code != 3 {
			t.Errorf("%s: exit code %d, want 3", line, code)
		}
	}
	cmd := process(t, "schema")
	if full, err := os.OpenFile("/dev/full", os.O_WRONLY, 0); err == nil {
		defer full.Close()
		var errs strings.Builder
		cmd.Stdout, cmd.Stderr = full, &errs
		if _ = cmd.Run(); cmd.ProcessState.ExitCode() != 3 || !strings.Contains(errs.String(), "the disk is full") {
			t.Errorf("full: %v %s", cmd.ProcessState, errs.String())
		}
	}
	which := d.whole(t)
	cmd = process(t, d.args[1-which]...)
	cmd.Dir, cmd.Stdout, cmd.Stderr = d.dir, broken(t), broken(t)
	if err := cmd.Run(); err != nil || d.whole(t) == which {
		t.Errorf("with both streams closed: %v", err)
	}
	d.tidy(t)
}

// broken returns a pipe that nobody reads.
func broken(t *testing.T) io.Writer {
	t.Helper()
	r, w, err := os.Pipe()
	must(t, err)
	r.Close()
	t.Cleanup(func() { w.Close() })
	return w
}
