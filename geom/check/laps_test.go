package check_test

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"pegwright/geom"
	"pegwright/geom/check"
	"pegwright/geom/finding"
	"pegwright/geom/solid"
	"pegwright/geom/solve"
	"pegwright/geom/spec"
	"pegwright/samples/trial"
)

// One frame for every kind of lap and pocket, in inches and in millimetres.
var lapFrames = []struct{ name, src string }{
	{"cross lap", `frame: F
units: in
timbers:
  a: {role: sill, section: 6 x 6, from: [0, 0, 1'], to: [8', 0, 1']}
  b: {role: sill, section: 6 x 6, from: [4', -3', 1'], to: [4', 4', 1']}
joints: [{kind: cross lap, of: b, into: a, pegs: 2}]
`}, {"half lap", `frame: F
units: mm
timbers:
  a: {role: sill, section: 150 x 150, from: [0, 0, 300], to: [2400, 0, 300]}
  b: {role: joist, section: 100 x 150, from: [1200, 0, 300], to: [1200, 1800, 300]}
joints: [{kind: half lap, of: b, into: a, lap depth: 60}]
`}, {"corner lap", `frame: F
units: in
timbers:
  a: {role: sill, section: 6 x 6, from: [0, 0, 1'], to: [8', 0, 1']}
  b: {role: sill, section: 6 x 6, from: [0, 0, 1'], to: [0, 6', 1']}
joints: [{kind: corner lap, of: b, end: start, into: a}]
`}, {"rafters lapped at the peak", `frame: F
units: mm
timbers:
  s: {role: rafter, section: 100 x 150, from: [0, 0, 2400], to: [0, 1800, 3900], faces: [top, west]}
  n: {role: rafter, section: 100 x 150, from: [0, 3600, 2400], to: [0, 1800, 3900], faces: [top, west]}
joints: [{kind: corner lap, of: n, into: s}]
`}, {"half-dovetail lap", `frame: F
units: in
timbers:
  s: {role: rafter, section: 4 x 6, from: [0, 0, 8'], to: [0, 6', 12' 6"], faces: [top, west]}
  n: {role: rafter, section: 4 x 6, from: [0, 12', 8'], to: [0, 6', 12' 6"], faces: [top, west]}
  collar: {role: collar, section: 3 x 6, from: [0, 4', 11'], to: [0, 8', 11'], faces: [top, west]}
joints:
  - {kind: bridle, of: n, end: end, into: s}
  - {kind: half-dovetail lap, of: collar, end: start, into: s, wedge: yes, flare: 1 in 7}
  - {kind: half-dovetail lap, of: collar, end: end, into: n}
`}, {"half-dovetail lap of a joist", `frame: F
units: mm
timbers:
  a: {role: sill, section: 150 x 200, from: [0, 0, 300], to: [2400, 0, 300]}
  b: {role: joist, section: 100 x 150, from: [1200, 0, 300], to: [1200, 1800, 300]}
joints: [{kind: half-dovetail lap, of: b, end: start, into: a, flare: 1 in 6, wedge: yes}]
`}, {"drop-in pocket", `frame: F
units: in
timbers:
  beam: {role: beam, section: 8 x 10, from: [0, 0, 8'], to: [0, 10', 8']}
  east: {role: joist, section: 4 x 8, from: [8", 4', 8'], to: [6', 4', 8']}
  west: {role: joist, section: 4 x 8, from: [-6', 4', 8'], to: [0, 4', 8']}
joints:
  - {kind: drop-in pocket, of: east, end: start, into: beam}
  - {kind: drop-in pocket, of: west, end: end, into: beam}
`},
}

func TestLapsFit(t *testing.T) {
	for _, c := range lapFrames {
		t.Run(c.name, func(t *testing.T) { fitted(t, trial.Frame(t, c.name+".yaml", c.src)) })
	}
}

// fitted proves that a frame has no stop, that its timbers share no wood, and
// that its wedges lie in wood that both timbers have lost.
// A notch that leaves too little of a timber's depth is another matter.
func fitted(t *testing.T, f *geom.Frame) {
	t.Helper()
	list := proofs(f)
	for _, s := range list {
		if s.Severity == finding.Stop && s.Rule != "notch" {
			t.Errorf("stop: %s: %s", s.Rule, s.Text)
		}
	}
	for i, a := range f.Timbers {
		for _, b := range f.Timbers[i+1:] {
			if s := check.Shared(a.NetInFrame(), b.NetInFrame()); s > check.Thick {
				t.Errorf("%s and %s share wood %.3f mm thick", a.ID, b.ID, s)
			}
		}
	}
	for _, j := range f.Joints {
		for _, p := range j.Pieces {
			for _, tm := range f.Timbers {
				if s := check.Shared(solid.NewBody(p.Solid), tm.NetInFrame()); s > check.Thick {
					t.Errorf("%s fills wood of %s, %.3f mm thick", p.ID, tm.ID, s)
				}
			}
		}
	}
}

// Laps of all kinds at any angle, in sticks of any size, rough and planed,
// measured or not, share no wood.
func TestRandomLapsFit(t *testing.T) {
	n := 120
	if testing.Short() {
		n = 30
	}
	r := jitter(7)
	done := 0
	for i := range n {
		src := randomLap(r)
		d, faults := spec.Read("r.yaml", []byte(src), nil)
		if len(faults) > 0 {
			t.Fatalf("%v\n%s", faults, src)
		}
		f, faults := solve.Solve(d)
		if len(faults) > 0 {
			if !strings.Contains(faults[0].Text, "do not meet as") {
				t.Errorf("case %d: %v\n%s", i, faults, src)
			}
			continue
		}
		done++
		fitted(t, f)
		if t.Failed() {
			t.Fatalf("case %d:\n%s", i, src)
		}
	}
	if done < n*2/3 {
		t.Errorf("only %d of %d random laps could be cut", done, n)
	}
}

func randomLap(r *rand.Rand) string {
	kind := []string{"cross lap", "half lap", "corner lap", "half-dovetail lap"}[r.IntN(4)]
	w := func() int { return 5 + r.IntN(5) }
	size := [4]int{w(), w(), w(), w()}
	dx := r.IntN(160) - 80 // of the stick's run over 100 across
	from, to := "", ""
	end := ""
	switch kind {
	case "cross lap":
		from, to = fmt.Sprintf("[%d, -100, %%g]", 120-dx), fmt.Sprintf("[%d, 100, %%g]", 120+dx)
	case "corner lap":
		from, to, end = "[0, 0, %g]", fmt.Sprintf("[%d, 100, %%g]", dx/2), ", end: start"
	default:
		from, to, end = "[120, 0, %g]", fmt.Sprintf("[%d, 100, %%g]", 120+dx), ", end: start"
	}
	z := 12 + float64(r.IntN(5)-2)*0.5
	more := ""
	if r.IntN(2) == 0 {
		more += ", wedge: yes"
	}
	if r.IntN(3) == 0 {
		more += fmt.Sprintf(", lap depth: %d", 1+r.IntN(3))
	}
	s := "frame: R\nunits: in\n"
	if r.IntN(2) == 0 {
		s += "wood: {timbers: {planed: yes}}\n"
	}
	s += fmt.Sprintf("timbers:\n  a: {role: beam, section: %d x %d, from: [0, 0, 12], to: [240, 0, 12], faces: [top, %s]}\n", size[0], size[1], []string{"north", "south"}[r.IntN(2)])
	s += fmt.Sprintf("  b: {role: joist, section: %d x %d, from: "+from+", to: "+to+", faces: [top, %s]}\n", size[2], size[3], z, z, []string{"east", "west"}[r.IntN(2)])
	if r.IntN(3) == 0 {
		s += fmt.Sprintf("measured: {a: {foot: %d 1/8 x %d 1/4, top: %d 3/8 x %d}}\n", size[0], size[1], size[0], size[1])
	}
	return s + fmt.Sprintf("joints: [{kind: %s, of: b%s, into: a, pegs: 0%s}]\n", kind, end, more)
}
