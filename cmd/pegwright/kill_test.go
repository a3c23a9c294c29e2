package main

import (
	"errors"
	"io/fs"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"

	"pegwright/cmd/pegwright/disk/disktest"
	"pegwright/samples"
)

// kills is how many processes are killed in each test: PEGWRIGHT_KILLS, or 20.
func kills() int {
	if n, err := strconv.Atoi(os.Getenv("PEGWRIGHT_KILLS")); err == nil {
		return n
	}
	return 20
}

// folder is one in which one frame is drawn in two ways, one after the
// other, with the packets that must come of it.
type folder struct {
	dir, out string
	args     [2][]string
	want     [2]map[string]string
	took     time.Duration // one whole run
}

const mine = "not of the packet\n"

// newFolder draws both ways once and leaves the first, with a file of the
// user's in it and two beside it.
func newFolder(t *testing.T) *folder {
	d := &folder{dir: t.TempDir()}
	d.out = filepath.Join(d.dir, "p")
	put(t, filepath.Join(d.dir, "a.yaml"), rail(t))
	put(t, filepath.Join(d.dir, "b.yaml"), strings.ReplaceAll(rail(t), "Rail and post", "Rail and its post"))
	put(t, filepath.Join(d.dir, ".p.pegwright-notes"), mine)
	put(t, filepath.Join(d.dir, "p.txt"), mine)
	for i, file := range []string{"a.yaml", "b.yaml"} {
		d.args[i] = []string{"draw", file, "--out", "p"}
		d.mustRun(t, d.args[i])
		d.want[i] = disktest.Tree(t, d.out)
		d.want[i]["svg/mine.txt"] = mine
	}
	begun := time.Now()
	d.mustRun(t, d.args[0])
	d.took = time.Since(begun)
	put(t, filepath.Join(d.out, "svg", "mine.txt"), mine)
	return d
}

func (d *folder) start(t *testing.T, args []string) *exec.Cmd {
	t.Helper()
	cmd := process(t, args...)
	cmd.Dir = d.dir
	must(t, cmd.Start())
	return cmd
}

func (d *folder) mustRun(t *testing.T, args []string) {
	t.Helper()
	cmd := process(t, args...)
	cmd.Dir = d.dir
	if text, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("%v: %v: %s", args, err, text)
	}
}

// anyMoment waits for some moment of a run that has begun: one of the whole
// run, of the writing, or of the instant after the swap, in turn, because the
// last two would else be met too seldom.
func (d *folder) anyMoment(i int, random *rand.Rand) {
	some := func(most time.Duration) { time.Sleep(time.Duration(random.Int64N(int64(most)))) }
	before, err := os.Lstat(d.out)
	switch i % 3 {
	case 0:
		some(d.took * 3 / 2)
	case 1:
		d.until(func() bool { _, err := os.Lstat(filepath.Join(d.dir, ".p.pegwright-new")); return err == nil })
		some(d.took)
	case 2:
		d.until(func() bool {
			now, err2 := os.Lstat(d.out)
			return err == nil && err2 == nil && !os.SameFile(before, now)
		})
		some(2 * time.Millisecond)
	}
}

// until waits for what happens, but not for ever.
func (d *folder) until(happened func() bool) {
	for late := time.Now().Add(20 * d.took); time.Now().Before(late) && !happened(); {
		time.Sleep(time.Millisecond / 10)
	}
}

// whole demands that the folder is one of the two packets, byte for byte, that
// its manifest agrees, and that nothing else was touched.
func (d *folder) whole(t *testing.T) (which int) {
	t.Helper()
	foreign, err := disktest.Verify(d.out)
	if err != nil || len(foreign) != 1 || foreign[0] != "svg/mine.txt" {
		t.Fatalf("%v, foreign files %v", err, foreign)
	}
	got := disktest.Tree(t, d.out)
	if got["index.html"] != d.want[0]["index.html"] {
		which = 1
	}
	disktest.Same(t, d.want[which], got)
	for _, name := range []string{".p.pegwright-notes", "p.txt"} {
		if text, err := os.ReadFile(filepath.Join(d.dir, name)); err != nil || string(text) != mine {
			t.Fatalf("%s: %q %v", name, text, err)
		}
	}
	return which
}

// tidy demands that nothing of a run is left beside the packet.
func (d *folder) tidy(t *testing.T) {
	t.Helper()
	if left := disktest.Leftovers(t, d.dir); len(left) != 1 {
		t.Errorf("left behind: %v", left)
	}
}

// A draw over an existing packet that is killed at any moment leaves one whole
// packet, the old or the new, and everything else as it was; the lock ends with
// the process, and the next run clears away what was left.
func TestDrawKilledAtAnyMoment(t *testing.T) {
	d := newFolder(t)
	random := rand.New(rand.NewPCG(3, 5))
	halfway, seen := 0, [2]int{}
	for i := range kills() {
		before := d.whole(t)
		cmd := d.start(t, d.args[1-before])
		d.anyMoment(i, random)
		_ = cmd.Process.Kill() // it may be over: then this fails
		_ = cmd.Wait()
		if len(disktest.Leftovers(t, d.dir)) > 1 {
			halfway++
		}
		if d.whole(t) == before {
			seen[0]++
		} else {
			seen[1]++
		}
		d.free(t)
	}
	t.Logf("%d kills, %d of them while writing; old and new packets: %v", kills(), halfway, seen)
	if halfway == 0 || seen[0] == 0 {
		t.Error("no kill came while a packet was being written")
	}
	last := 1 - d.whole(t)
	d.mustRun(t, d.args[last])
	if d.whole(t) != last {
		t.Error("the last run did not write its packet")
	}
	d.tidy(t)
}

// A run that the terminal or the system asks to end does so with code 3 and
// leaves the old packet and nothing beside it, unless it was done already.
func TestDrawInterruptedAtAnyMoment(t *testing.T) {
	d := newFolder(t)
	random := rand.New(rand.NewPCG(8, 13))
	codes := map[int]int{}
	for i := range kills() / 2 {
		before := d.whole(t)
		cmd := d.start(t, d.args[1-before])
		d.anyMoment(i, random)
		_ = cmd.Process.Signal([]os.Signal{os.Interrupt, syscall.SIGTERM}[i/3%2]) // it may be over: then this fails
		_ = cmd.Wait()
		code := cmd.ProcessState.ExitCode()
		codes[code]++
		after := d.whole(t)
		switch {
		case code == 3 && after == before, code == 0 && after != before:
		case code == -1 && i%3 == 0 && after == before:
			// It came before the process could listen, and was a kill.
		default:
			t.Errorf("exit code %d, packet %d, was %d", code, after, before)
		}
		d.tidy(t)
	}
	t.Logf("exit codes: %v", codes)
	if codes[3] == 0 {
		t.Error("no run was interrupted")
	}
}

// Several runs over one packet at the same time: each writes its packet or is
// turned away, and at the end there is one whole packet.
func TestManyRunsAtOnce(t *testing.T) {
	d := newFolder(t)
	var runs []*exec.Cmd
	for i := range 6 {
		runs = append(runs, d.start(t, d.args[i%2]))
	}
	done := 0
	for _, cmd := range runs {
		_ = cmd.Wait()
		switch code := cmd.ProcessState.ExitCode(); code {
		case 0:
			done++
		case 3:
		default:
			t.Errorf("exit code %d", code)
		}
	}
	if done == 0 {
		t.Error("every run was turned away")
	}
	d.whole(t)
	d.tidy(t)
}

// A start that is killed leaves the whole file or none, and nothing beside it.
func TestStartKilledAtAnyMoment(t *testing.T) {
	dir := t.TempDir()
	src, _ := samples.Source(samples.Default())
	random := rand.New(rand.NewPCG(2, 4))
	begun := time.Now()
	must(t, process(t, "start", filepath.Join(dir, "first.yaml")).Run())
	took := time.Since(begun)
	whole := 0
	for i := range kills() {
		name := filepath.Join(dir, "f"+strconv.Itoa(i)+".yaml")
		cmd := process(t, "start", name)
		must(t, cmd.Start())
		time.Sleep(time.Duration(random.Int64N(int64(took))))
		_ = cmd.Process.Kill() // it may be over: then this fails
		_ = cmd.Wait()
		text, err := os.ReadFile(name)
		switch {
		case errors.Is(err, fs.ErrNotExist):
		case err != nil || string(text) != string(src):
			t.Errorf("after a kill there are %d bytes of %d, %v", len(text), len(src), err)
		default:
			whole++
		}
	}
	all, err := os.ReadDir(dir)
	if err != nil || len(all) != whole+1 {
		t.Errorf("%v, %d files for %d that are whole", err, len(all), whole)
	}
	t.Logf("%d kills, %d files written", kills(), whole)
}
