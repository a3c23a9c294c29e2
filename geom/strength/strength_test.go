package strength

import (
	"math"
	"strings"
	"testing"

	"pegwright/geom"
	"pegwright/geom/peg"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
	"pegwright/geom/wood"
)

const (
	in    = 25.4
	pound = 0.45359237 * 9.80665 // N
)

func woodOf(t *testing.T, name string) wood.Wood {
	t.Helper()
	w, ok := wood.Lookup(name)
	if !ok {
		t.Fatalf("no wood %q", name)
	}
	return w
}

// pulled is a beam along y into a post along z, both of the timber named and
// dry: the tenon 1-1/2 in thick in the middle of a post 5-1/2 in thick along
// the pegs, which are 1 in and stand apart in a row up the post.
func pulled(t *testing.T, timber, pegs string, n int) (*geom.Frame, *geom.Joint) {
	t.Helper()
	w := woodOf(t, timber)
	post := &geom.Timber{ID: "post", Wood: w, Moisture: 12, Place: vec.Placement{X: vec.V{Z: 1}, Y: vec.V{X: 1}, Z: vec.V{Y: 1}}}
	beam := &geom.Timber{ID: "beam", Wood: w, Moisture: 12, Place: vec.Placement{X: vec.V{Y: 1}, Y: vec.V{Z: 1}, Z: vec.V{X: 1}}}
	j := &geom.Joint{ID: "j", Into: post, Of: beam, Tenon: solid.Box(vec.V{X: 2 * in}, vec.V{X: 3.5 * in, Y: 8 * in, Z: 12 * in})}
	for i := range n {
		at := vec.V{Y: 4 * in, Z: 4*in + float64(i)*4*in}
		j.Pegs = append(j.Pegs, geom.Peg{Bore: in, From: at, To: at.Add(vec.V{X: 5.5 * in}), Mortise: at.Add(vec.V{X: 2.75 * in}), Exit: 3})
	}
	cheeked(j)
	return &geom.Frame{Stock: geom.Stock{PegWood: woodOf(t, pegs), Service: 12}, Joints: []*geom.Joint{j}}, j
}

// cheeked gives the tenon's sides across the pegs their role.
func cheeked(j *geom.Joint) {
	for i, w := range j.Tenon.Faces {
		if math.Abs(w.Plane.N.X) == 1 {
			j.Tenon.Faces[i].Role = geom.RoleCheek
		}
	}
}

// The worked example of peg's own tests, from the solid geometry of a joint:
// 687.9 lb a peg, mode V; two pegs hold twice that, dry. Made green and used
// dry, two pegs count 0.4 and one counts 1 (NDS Table 11.3.3).
func TestCapacityOfAJoint(t *testing.T) {
	for _, c := range []struct {
		pegs int
		made float64
		want float64
	}{{1, 12, 687.9}, {2, 12, 1375.8}, {1, 80, 687.9}, {2, 80, 550.3}} {
		f, j := pulled(t, "eastern white pine", "northern red oak", c.pegs)
		j.Into.Moisture = c.made
		got := Of(f, j)
		if got.Reason != "" || got.Governing.Mode != peg.V || math.Abs(got.Tension/pound-c.want) > 0.2 {
			t.Errorf("%d pegs at %g %%: %.1f lb by %v, %q, want %.1f", c.pegs, c.made, got.Tension/pound, got.Governing.Mode, got.Reason, c.want)
		}
		if len(got.Modes) != 5 {
			t.Errorf("%d modes", len(got.Modes))
		}
	}
}

// A thinner cheek on one side alone is the one that counts: with the tenon
// 1 in off the entry face Is is 2 x 1 x 1 x 1386.7 / 5 = 554.7 lb (by hand).
func TestTheThinnerCheekCounts(t *testing.T) {
	f, j := pulled(t, "eastern white pine", "northern red oak", 1)
	j.Tenon = solid.Box(vec.V{X: 1 * in}, vec.V{X: 2.5 * in, Y: 8 * in, Z: 12 * in})
	cheeked(j)
	if got := Of(f, j); got.Governing.Mode != peg.Is || math.Abs(got.Tension/pound-554.7) > 0.1 {
		t.Errorf("%.1f lb by %v", got.Tension/pound, got.Governing.Mode)
	}
}

// What keeps a joint from a reference value, and how it is said.
func TestNoReferenceValue(t *testing.T) {
	for name, c := range map[string]struct {
		spoil func(f *geom.Frame, j *geom.Joint)
		want  string
	}{
		"short edge": {func(f *geom.Frame, j *geom.Joint) {
			r := peg.NewRule(peg.Edge, peg.MortiseHole, vec.P{X: 1}, 1.5*in, in, j.Into.Wood)
			e := peg.NewRule(peg.End, peg.TenonHole, vec.P{Y: 1}, 3.5*in, in, j.Of.Wood)
			j.Pegs[0].Window = peg.Place{Bore: in, Rules: []peg.Rule{e, r}}.Window()
		}, "no reference value: edge 1.5D of 4D"},
		"pegs too near each other": {func(f *geom.Frame, j *geom.Joint) {
			p := j.Pegs[0]
			p.Mortise.Z += 2 * in
			j.Pegs = append(j.Pegs, p)
		}, "no reference value: spacing 2D of 3D"},
		"blind":  {func(f *geom.Frame, j *geom.Joint) { j.Pegs[0].Exit = 0 }, "between two cheeks"},
		"no peg": {func(f *geom.Frame, j *geom.Joint) { j.Pegs = nil }, "not a pegged tenon"},
		"a lap": {func(f *geom.Frame, j *geom.Joint) {
			for i := range j.Tenon.Faces {
				j.Tenon.Faces[i].Role = ""
			}
		}, "not a pegged tenon"},
		"no tenon":   {func(f *geom.Frame, j *geom.Joint) { j.Tenon = solid.Convex{} }, "not a pegged tenon"},
		"a thin peg": {func(f *geom.Frame, j *geom.Joint) { j.Pegs[0].Bore = in / 2 }, "outside the range"},
	} {
		f, j := pulled(t, "eastern white pine", "northern red oak", 1)
		c.spoil(f, j)
		if got := Of(f, j); !strings.Contains(got.Reason, c.want) || got.Tension != 0 {
			t.Errorf("%s: %q and %g N, want %q", name, got.Reason, got.Tension, c.want)
		}
	}
}

// A denser peg or timber of the same kind never lowers a joint's value.
func TestDenserNeverWeaker(t *testing.T) {
	f, j := pulled(t, "eastern white pine", "northern red oak", 1)
	last := Of(f, j).Tension
	for range 10 {
		j.Into.Wood.Oven += 0.02
		j.Of.Wood.Oven += 0.02
		f.Stock.PegWood.Oven += 0.02
		if got := Of(f, j); got.Tension < last {
			t.Errorf("%g N under %g N", got.Tension, last)
		} else {
			last = got.Tension
		}
	}
}
