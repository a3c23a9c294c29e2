package timber

import (
	"math"
	"slices"
	"testing"

	"pegwright/draw"
	"pegwright/draw/scene"
	"pegwright/draw/sheet/tidy"
	"pegwright/geom"
	"pegwright/geom/measure"
	"pegwright/geom/solid"
)

// halfStep is half the rounding step of a length at a joint: 1/32 in or 0.5 mm.
func halfStep(u measure.Units) float64 {
	if u == measure.Metric {
		return 0.25
	}
	return 25.4 / 64
}

// runs returns the lengths of the running dimension on sheets, read back from
// their texts.
func runs(t *testing.T, u measure.Units, sheets []*draw.Sheet) []float64 {
	t.Helper()
	var out []float64
	for _, s := range sheets {
		for _, it := range s.Items {
			if x, ok := it.(*draw.Text); ok && x.Mark == "running" {
				v, err := tidy.ReadLength(x.S, u)
				if err != nil {
					t.Fatal(err)
				}
				out = append(out, v)
			}
		}
	}
	return out
}

func nearest(list []float64, x float64) float64 {
	best := math.Inf(1)
	for _, v := range list {
		best = min(best, math.Abs(v-x))
	}
	return best
}

// The running dimension tells, read back from the sheet, where every bore and
// every square cut of the model begins and ends, within half the rounding step,
// and the finished length: it does not drift, whatever is broken out.
func TestRunningDimensionsAreTrue(t *testing.T) {
	eachStick(t, func(t *testing.T, f *geom.Frame, g scene.Sticks) {
		s := g.First()
		list := runs(t, f.Units, Sheets(f, g, nil))
		tol := halfStep(f.Units) + 1e-6
		check := func(what string, x float64) {
			// Marks closer than 0.3 mm share a text.
			if x > 0.4 && x < s.Length-0.4 && nearest(list, x) > tol+0.3 {
				t.Errorf("%s at %.2f is not on the running dimension (nearest %.2f off)", what, x, nearest(list, x))
			}
		}
		if nearest(list, s.Length) > tol {
			t.Errorf("length %.2f is missing", s.Length)
		}
		for _, b := range s.Bores {
			check("bore "+b.Peg, b.From.X)
		}
		for _, c := range s.Cuts {
			if lo, hi, ok := square(c.Solid); ok {
				check(c.Name+" of "+c.Joint, lo)
				check(c.Name+" of "+c.Joint, hi)
			}
		}
	})
}

// square returns the extent along x of a cut all of whose faces are square to
// the timber's axes.
func square(c solid.Convex) (lo, hi float64, ok bool) {
	for _, f := range c.Faces {
		n := f.Plane.N
		if max(math.Abs(n.X), math.Abs(n.Y), math.Abs(n.Z)) < 1-1e-9 {
			return 0, 0, false
		}
	}
	a, b := c.Bounds()
	return a.X, b.X, true
}

// No mark of the running dimension says what is not in the model: each lies
// within half the step of a corner of a cut, of a bore, a place named by a joint,
// or the end; or else, as a slanted cut meets the faces between its corners, within
// what such a cut takes of the length.
func TestRunningDimensionsNameRealPlaces(t *testing.T) {
	straight := 0
	eachStick(t, func(t *testing.T, f *geom.Frame, g scene.Sticks) {
		s := g.First()
		real := []float64{s.Length}
		var slanted []scene.Span
		for _, c := range s.Cuts {
			for _, v := range c.Solid.V {
				real = append(real, v.X)
			}
			if _, _, ok := square(c.Solid); !ok {
				lo, hi := c.Solid.Bounds()
				slanted = append(slanted, scene.Span{From: lo.X, To: hi.X})
			}
		}
		for _, b := range s.Bores {
			real = append(real, b.From.X)
		}
		for _, j := range f.JointsOf(s) {
			for _, p := range j.Places {
				if p.On == s {
					real = append(real, p.X)
				}
			}
		}
		if len(slanted) == 0 {
			straight++
		}
		for _, x := range runs(t, f.Units, Sheets(f, g, nil)) {
			tol := halfStep(f.Units) + 1e-6
			aslant := slices.ContainsFunc(slanted, func(s scene.Span) bool { return x > s.From-tol && x < s.To+tol })
			if nearest(real, x) > tol && !aslant {
				t.Errorf("%.2f is %.2f from anything", x, nearest(real, x))
			}
		}
	})
	if straight == 0 {
		t.Error("every stick has slanted cuts: the test says little")
	}
}
