package check_test

import (
	"flag"
	"fmt"
	"maps"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/solve"
	"pegwright/geom/spec"
	"pegwright/samples/trial"
)

// seed draws other random frames than the usual ones.
var seed = flag.Uint64("seed", 9, "seed of the random frames")

// tally counts what a run of random frames met, with one example of each.
type tally struct {
	count   map[string]int
	refused int
	example map[string]string
}

func (y *tally) add(what, example string) {
	y.count[what]++
	if y.example[what] == "" {
		y.example[what] = example
	}
}

// frames is how many random frames are tried: PEGWRIGHT_FRAMES, or a few.
func frames(t *testing.T) int {
	if n, err := strconv.Atoi(os.Getenv("PEGWRIGHT_FRAMES")); err == nil {
		return n
	}
	return 12
}

// Random frames never make the program panic, and nothing stops them: no two
// timbers share wood, every stick is one piece, every tenon lies inside its
// mortise, no void runs into another and there is an order to put them together.
// A truss or a lean-to that finds no room is refused with a mend, and so is a
// girt of a gable that would stand in the tie above it.
func TestRandomFrames(t *testing.T) {
	const parts = 2
	for part := range parts {
		t.Run(fmt.Sprint("part ", part+1), func(t *testing.T) {
			t.Parallel()
			randomPart(t, part, frames(t)/parts)
		})
	}
}

func randomPart(t *testing.T, part, n int) {
	r := jitter(*seed + uint64(part))
	y := tally{count: map[string]int{}, example: map[string]string{}}
	for i := range n {
		oneRandom(t, part*n+i, trial.Building(r), &y)
	}
	if y.count["no order"] > n/200 {
		t.Errorf("of %d frames %d cannot be put together", n, y.count["no order"])
	}
	if y.refused > 1+n/10 {
		t.Errorf("of %d frames %d are refused", n, y.refused)
	}
	for _, k := range slices.Sorted(maps.Keys(y.count)) {
		t.Logf("%4d %s\n%s", y.count[k], k, y.example[k])
	}
}

func oneRandom(t *testing.T, i int, src string, y *tally) {
	defer func() {
		if e := recover(); e != nil {
			t.Errorf("frame %d: panic: %v\n%s", i, e, src)
		}
	}()
	d, faults := spec.Read("random", []byte(src), nil)
	if len(faults) > 0 {
		t.Fatalf("frame %d cannot be read: %v\n%s", i, faults, src)
	}
	f, faults := solve.Solve(d)
	if len(faults) > 0 {
		x := faults[0]
		if x.Mend == "" || x.At.Line == 0 || !strings.Contains(src, "truss:") && !strings.Contains(src, "lean-tos:") && !strings.Contains(x.Text, "this girt's top") {
			t.Errorf("frame %d is refused: %v\n%s", i, faults, src)
		}
		y.add("refused: "+pattern(x.Text), x.Text+"\n"+src)
		y.refused++
		return
	}
	for _, x := range proofs(f) {
		switch {
		case x.Rule == "assembly" && x.Severity == finding.Stop && len(x.Timbers) > 1:
			y.add("no order", x.Text+"\n"+src)
		case x.Severity == finding.Stop:
			t.Errorf("frame %d: %s: %s\n%s", i, x.Rule, x.Text, src)
		case x.Severity == finding.Warn:
			y.add("warning "+x.Rule+": "+pattern(x.Text), x.Text+"\n"+src)
		case x.Rule == "generated":
			y.add("said: "+pattern(x.Text), x.Text)
		}
	}
	for _, tm := range f.Timbers {
		if n, err := len(tm.Net.Pieces()), tm.Net.Valid(); n != 1 || err != nil {
			t.Errorf("frame %d: %s in %d pieces, %v\n%s", i, tm.ID, n, err, src)
		}
	}
	inside(t, i, src, f)
}

// inside holds every tenon against its mortise's planes, apart from the proof.
func inside(t *testing.T, i int, src string, f *geom.Frame) {
	for _, j := range f.Joints {
		for _, v := range j.Tenon.V {
			for _, m := range j.Mortise.Faces {
				if h := m.Plane.N.Dot(v) - m.Plane.D; h > 1e-3 {
					t.Errorf("frame %d: %s: tenon %g mm outside its mortise\n%s", i, j.ID, h, src)
				}
			}
		}
	}
}

// pattern leaves the numbers and ids out of a text, so that like findings
// count together.
func pattern(s string) string {
	var b strings.Builder
	for _, w := range strings.Fields(s) {
		if strings.ContainsAny(w, "0123456789\"'") || strings.Contains(w, "-") {
			w = "#"
		}
		b.WriteString(w + " ")
	}
	return b.String()
}
