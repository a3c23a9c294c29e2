package joint_test

import (
	"math"
	"testing"

	"pegwright/geom"
	"pegwright/geom/joint"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// closed is a joint as cut, with both net bodies in frame axes.
type closed struct {
	r, e   *solid.Body
	rn, en *solid.Body // in their own axes
	res    joint.Result
}

// fit cuts a joint and lays the two net bodies in the frame.
func fit(t *testing.T, kind string, s joint.Site) closed {
	t.Helper()
	_, _, res := made(t, kind, s)
	net := func(tm *geom.Timber, cuts []geom.Cut) *solid.Body {
		b := solid.NewBody(tm.Blank)
		for _, c := range cuts {
			b.Subtract(c.Solid, c.Joint)
		}
		if n := len(b.Pieces()); n != 1 {
			t.Errorf("%s falls into %d pieces", tm.ID, n)
		}
		return b
	}
	c := closed{rn: net(s.R, res.R), en: net(s.E, res.E), res: res}
	c.r, c.e = c.rn.Moved(s.R.Place), c.en.Moved(s.E.Place)
	return c
}

// shared is the greatest thickness that any cell of one set has in common with
// one of the other, millimetres.
func shared(a, b []solid.Convex) float64 {
	most := 0.0
	for _, p := range a {
		for _, q := range b {
			most = max(most, solid.Common(p, q).Thickness())
		}
	}
	return most
}

func shifted(cells []solid.Convex, by vec.V) []solid.Convex {
	pl := vec.Identity
	pl.O = by
	var out []solid.Convex
	for _, c := range cells {
		out = append(out, c.Moved(pl))
	}
	return out
}

// clearPath carries cells back along legs, last leg first, in small steps and
// reports the most that they share with what stands still.
func clearPath(cells, still []solid.Convex, legs []geom.Move) float64 {
	most, at := shared(cells, still), vec.V{}
	for i := len(legs) - 1; i >= 0; i-- {
		const steps = 12
		for k := 1; k <= steps; k++ {
			by := at.Sub(legs[i].Direction.Mul(legs[i].Distance * float64(k) / steps))
			most = max(most, shared(shifted(cells, by), still))
		}
		at = at.Sub(legs[i].Direction.Mul(legs[i].Distance))
	}
	return most
}

const hair = 1e-3 // mm: thinner than this two bodies touch

// closes holds that a joint closes without sharing wood, that the enterer and
// each piece come home without meeting anything, and that pieces and timbers
// together leave no overlap.
func (c closed) closes(t *testing.T) {
	t.Helper()
	if m := clearPath(c.e.Cells(), c.r.Cells(), c.res.Joint.Moves); m > hair {
		t.Errorf("the enterer meets the receiver on its way by %.4f mm", m)
	}
	timbers := append(c.r.Cells(), c.e.Cells()...)
	for i, p := range c.res.Joint.Pieces {
		still := timbers
		for k, q := range c.res.Joint.Pieces {
			if k != i {
				still = append(still[:len(still):len(still)], q.Solid)
			}
		}
		if m := clearPath([]solid.Convex{p.Solid}, still, p.Moves); m > hair {
			t.Errorf("%s meets other wood on its way by %.4f mm", p.ID, m)
		}
		if p.ID == "" || p.Kind != "wedge" && p.Kind != "key" {
			t.Errorf("piece %q of kind %q", p.ID, p.Kind)
		}
	}
}

// locked holds that the closed joint cannot be moved by d without sharing wood.
func locked(cells, still []solid.Convex, d vec.V) bool {
	return shared(shifted(cells, d), still) > hair
}

// areaOf sums the faces of a role on a body, square inches.
func areaOf(b *solid.Body, role string, want func(solid.Plane) bool) float64 {
	sum := 0.0
	for _, p := range b.Boundary() {
		if p.Tags[0].Role == role && (want == nil || want(p.Plane)) {
			sum += math.Abs(p.Area())
		}
	}
	return sum / inch / inch
}
