package timber

import (
	"math"
	"testing"

	"pegwright/draw/scene"
	"pegwright/geom"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
	"pegwright/samples/trial"
)

// inWood returns the corners of what a cut takes from the blank: the points where
// three planes of both meet (Cramer's rule) that lie within all the others. No
// volume is clipped for it.
func inWood(t *geom.Timber, c *geom.Cut) []vec.V {
	var planes []solid.Plane
	for _, x := range []solid.Convex{t.Blank, c.Solid} {
		for _, f := range x.Faces {
			planes = append(planes, f.Plane)
		}
	}
	var out []vec.V
	for i := range planes {
		for k := range i {
			for m := range k {
				p := solid.Meet(planes[i], planes[k], planes[m])
				if finite(p) && t.Blank.Contains(p, 1e-4) && c.Solid.Contains(p, 1e-4) {
					out = append(out, p)
				}
			}
		}
	}
	return out
}

func finite(p vec.V) bool { return !math.IsNaN(p.Len()) && p.Len() < 1e6 }

// Where a cut begins and ends, how far off the arris it lies and how deep it goes
// is told of the wood alone, whatever closes its open sides beyond the blank: by
// the corners of what it takes, found apart.
func TestCutsAreToldWithinTheBlank(t *testing.T) {
	const tol = 1e-2
	out := 0
	eachStick(t, func(t *testing.T, f *geom.Frame, g scene.Sticks) {
		s := g.First()
		left := map[string][]*geom.Cut{}
		for i := range s.Cuts {
			c := &s.Cuts[i]
			left[c.Name+c.Joint] = append(left[c.Name+c.Joint], c)
		}
		for _, x := range features(f, s) {
			if x.bore != nil {
				continue
			}
			found, beyond := false, false
			for _, c := range left[x.what+x.id()] {
				ok, open := tells(s, x, c, tol)
				found, beyond = found || ok, beyond || open
			}
			if !found {
				t.Errorf("%s of %s: no such cut from %.2f to %.2f, %.2f to %.2f off the arris, %.2f deep", x.what, x.id(), x.from, x.to, x.lo, x.hi, x.deep)
			}
			if beyond {
				out++
			}
		}
	})
	if out == 0 {
		t.Error("no cut is closed beyond the blank: the test says little")
	}
}

// tells reports whether a feature's lengths are those of a cut, and whether the
// cut's own corners lie beyond them along the stick.
func tells(s *geom.Timber, x feature, c *geom.Cut, tol float64) (ok, open bool) {
	var all, mouth []vec.V
	deep := 0.0
	for _, p := range inWood(s, c) {
		all = append(all, p)
		if x.face == 0 {
			continue
		}
		h := -s.BlankPlane(x.face).Height(p)
		deep = max(deep, h)
		if h < 1e-3 {
			mouth = append(mouth, p)
		}
	}
	if len(mouth) == 0 || x.face == 0 {
		mouth = all
	}
	lo, hi := boundsOf(mouth)
	near := func(a, b float64) bool { return math.Abs(a-b) < tol }
	a, b := c.Solid.Bounds()
	open = a.X < lo.X-tol || b.X > hi.X+tol
	if !near(x.from, lo.X) || !near(x.to, hi.X) {
		return false, open
	}
	if x.face == 0 {
		return true, open
	}
	return near(x.lo, offArris(x.face, lo)) && near(x.hi, offArris(x.face, hi)) && (x.through || near(x.deep, deep)), open
}

func boundsOf(pts []vec.V) (lo, hi vec.V) {
	return solid.Convex{V: pts}.Bounds()
}

// The fork at the peak of the default sample, by hand. At 9 in 12 the rafters
// meet at twice the angle whose tangent is 3/4, and tan 2a = 2(3/4)/(1-9/16) =
// 24/7: the fork's end, along the other rafter's top, lies aslant by 7 in 24. A
// rafter 6 in deep less 1/2 in then begins to be cut 5 1/2 x 7/24 in before its
// finished end, and no 10 mm sooner.
func TestPeakCutBeginsInTheWood(t *testing.T) {
	f := trial.Sample(t, "apiary-store")
	for _, id := range []string{"rafter-1-south", "rafter-5-south"} {
		r, n := f.Timber(id), 0
		for _, x := range features(f, r) {
			if x.face != 0 {
				continue
			}
			n++
			if want := r.Length - 25.4*5.5*7/24; math.Abs(x.from-want) > 0.01 || math.Abs(x.to-r.Length) > 1e-6 {
				t.Errorf("%s: the end is cut from %.3f to %.3f in, want %.3f to the end", id, x.from/25.4, x.to/25.4, want/25.4)
			}
		}
		if n != 1 {
			t.Errorf("%s: %d end cuts", id, n)
		}
	}
}
