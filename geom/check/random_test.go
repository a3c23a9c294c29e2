package check_test

import (
	"fmt"
	"maps"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/solve"
	"pegwright/geom/spec"
)

// randomBuilding describes a building such as a user might write, its sizes
// drawn at random. Numbers are bare and take the file's unit. What the user
// alone decides is kept buildable: girts pass below the feet of the braces and
// below window rails, and braces reach below the ties.
func randomBuilding(r *rand.Rand) string {
	metric := r.IntN(3) == 0
	unit, k := "in", 1.0
	if metric {
		unit, k = "mm", 25
	}
	// len is a length of lo to hi inches in whole steps of the file's unit.
	length := func(lo, hi float64) string { return fmt.Sprintf("%.0f", (lo+r.Float64()*(hi-lo))*k) }
	pick := func(list ...string) string { return list[r.IntN(len(list))] }
	size := func(lo, hi int) float64 { return float64(lo+r.IntN(hi-lo+1)) * k }
	var b strings.Builder
	w := func(format string, a ...any) { fmt.Fprintf(&b, format+"\n", a...) }
	w("frame: Random")
	w("units: %s", unit)
	w("wood: {timbers: {species: %s, seasoning: %s}}", pick("eastern white pine", "eastern hemlock", "white oak", "norway spruce"), pick("green", "dry"))
	post, plate, tie := size(6, 8), size(6, 8), size(6, 8)
	if r.IntN(3) > 0 {
		w("sections: {post: %g x %g, plate: %g x %g, tie: %g x %g, girt: %g x %g, sill: %g x %g}", post, post, plate, plate, post, tie+k, size(5, 6), size(5, 6), size(6, 8), 8*k)
	}
	w("building:")
	w("  span: %s", length(72, 192))
	var bays []string
	for range 1 + r.IntN(1+r.IntN(1+r.IntN(4))) {
		bays = append(bays, length(84, 168))
	}
	w("  bays: [%s]", strings.Join(bays, ", "))
	w("  eave: %s", length(90, 120))
	pitch := fmt.Sprintf("%d in 12", 4+r.IntN(11))
	if metric {
		pitch = fmt.Sprintf("%d deg", 20+r.IntN(30))
	}
	if r.IntN(3) == 0 {
		w("  roof: {shape: gable, pitch: %s, overhang: %s, rafter spacing: %s, seat: %s, tail: %s}", pitch, length(4, 14), length(28, 40), pick("step-lap", "birdsmouth"), pick("square", "plumb"))
	}
	if r.IntN(2) == 0 {
		w("  sills: yes")
	} else {
		w("  piers: {size: %s x %s}", length(10, 12), length(10, 12))
	}
	if r.IntN(3) > 0 {
		w("  girts: {height: [%s], in: [%s]}", length(24, 30), pick("eave walls", "gable walls", "eave walls, gable walls"))
	}
	if r.IntN(5) > 0 {
		leg := length(24, 27)
		w("  braces: {legs: %s x %s, in: [%s]}", leg, leg, pick("bents", "walls", "bents, walls"))
	}
	if r.IntN(2) == 0 {
		w("  openings:")
		w("    - {name: door, wall: %s, bay: 1, width: %s, height: %s}", pick("south", "north"), length(28, 36), length(60, 66))
		if r.IntN(2) == 0 {
			w("    - {name: window, wall: %s, bay: 1, width: %s, height: %s, sill: %s}", pick("east", "west"), length(20, 26), length(54, 58), length(39, 42))
		}
	}
	return b.String()
}

// tally counts what a run of random buildings met, with one example of each.
type tally struct {
	count   map[string]int
	example map[string]string
}

func (y *tally) add(what, example string) {
	y.count[what]++
	if y.example[what] == "" {
		y.example[what] = example
	}
}

const randomFrames = 80

// Random buildings never make the program panic, never share wood, and leave
// every stick in one piece and every tenon inside its mortise.
func TestRandomBuildings(t *testing.T) {
	n := randomFrames
	if testing.Short() {
		n /= 5
	}
	for part := range 2 {
		t.Run(fmt.Sprint("part ", part+1), func(t *testing.T) {
			t.Parallel()
			randomPart(t, part, n/2)
		})
	}
}

func randomPart(t *testing.T, part, n int) {
	r := jitter(uint64(9 + part))
	y := tally{map[string]int{}, map[string]string{}}
	for i := range n {
		oneRandom(t, part*n+i, randomBuilding(r), &y)
	}
	if y.count["solved"] < n*9/10 || y.count["no stops"] < n*9/10 {
		t.Errorf("of %d descriptions %d could be solved and %d may be cut", n, y.count["solved"], y.count["no stops"])
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
		for _, x := range faults {
			y.add("fault: "+x.Text, src)
		}
		return
	}
	y.add("solved", "")
	list := proofs(f)
	clean := true
	for _, x := range list {
		if x.Severity == finding.Stop {
			clean = false
			y.add("stop "+x.Rule+": "+pattern(x.Text), x.Text+"\n"+src)
		}
		if x.Severity == finding.Stop && (x.Rule == "overlap" || x.Rule == "stick" || x.Rule == "tenon") {
			t.Errorf("frame %d: %s\n%s", i, x.Text, src)
		}
	}
	if clean {
		y.add("no stops", "")
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
