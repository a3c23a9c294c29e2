package check_test

import (
	"math"
	"strings"
	"testing"

	"pegwright/geom"
	"pegwright/geom/list"
	"pegwright/geom/vec"
	"pegwright/samples/trial"
)

// through returns how far the ray from p along dir runs in wood that in tells,
// in steps of a fiftieth of a millimetre; a skin of a millimetre is passed over.
func through(in func(vec.V) bool, p, dir vec.V) float64 {
	const step = 0.02
	x := 1.0
	for in(p.Add(dir.Mul(x))) {
		x += step
	}
	return x
}

// listedTaper returns the taper that the list of pegs gives for a peg, mm.
func listedTaper(t *testing.T, f *geom.Frame, g geom.Peg) float64 {
	t.Helper()
	l := list.Pegs(f, nil)
	at := map[string]int{}
	for i, c := range l.Columns {
		at[c.Name] = i
	}
	worst := math.Inf(-1)
	for _, row := range l.Values {
		if math.Abs(row[at["bore"]].(float64)-g.Bore)+math.Abs(row[at["length"]].(float64)-g.Length)+math.Abs(row[at["beyond far face"]].(float64)) < 0.01 {
			worst = math.Max(worst, row[at["taper length"]].(float64))
		}
	}
	return worst
}

// A peg in a blind hole holds by its full body alone: what is left of its length
// when the head, the wood of the first timber and the taper that the list gives
// are taken off. One bore and a half is the least (common practice, no source).
// The wood of both timbers is found by walking through the net solids along the
// peg; bores do not count as voids there. The peg may not touch the bottom, and
// half an inch stays behind it.
func TestBlindPegsHold(t *testing.T) {
	seen := 0
	trial.EachSample(t, func(t *testing.T, f *geom.Frame) {
		for _, j := range f.Joints {
			for _, g := range j.Pegs {
				if g.Exit != 0 {
					continue
				}
				seen++
				dir := g.To.Sub(g.From).Unit()
				first := through(j.Of.WoodAt, g.From, dir)
				under := g.Length - g.Head - first
				if full := under - listedTaper(t, f, g); full < 1.5*g.Bore-0.05 {
					t.Errorf("%s: %.1f mm of full body in %s, %.2f bores", g.ID, full, j.Into.ID, full/g.Bore)
				}
				into := through(j.Into.WoodAt, g.From.Add(dir.Mul(first)), dir)
				depth := g.From.Dist(g.To) - first
				if under > depth+0.05 {
					t.Errorf("%s bottoms out: %.1f mm in a hole of %.1f mm", g.ID, under, depth)
				}
				if left := into - depth; left < 12-0.05 { // metric frames keep 12 mm
					t.Errorf("%s: %.1f mm of wood behind its hole", g.ID, left)
				}
			}
		}
	})
	if seen == 0 {
		t.Error("no blind hole in any sample")
	}
}

// A plate too shallow for the peg of its seat: the finding tells how much of it
// holds. A 5 in plate, 4-1/2 in when brought to its size, over a mortise of
// 3-1/4 in with 1/2 in of wood between leaves 3/4 in, and of that the taper
// takes a quarter; a bore and a half is 1-1/8 in.
func TestPegThatHoldsTooLittleIsFound(t *testing.T) {
	f := trial.Frame(t, "test.yaml", trial.Hut("sections: {plate: 6 x 5}", ""))
	for _, x := range proofs(f) {
		if x.Rule == "peg grip" && strings.Contains(x.Text, "of full body in plate-") {
			return
		}
	}
	t.Errorf("not found:%s", texts(proofs(f)))
}
