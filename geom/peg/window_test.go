package peg

import (
	"math"
	"math/rand"
	"testing"

	"pegwright/geom/vec"
)

// tie returns the place of a peg in a tie entering a post, both 6 x 6 with ideal
// 5-1/2 in: x runs along the tie from the shoulder into the post, y up the post
// from the tie's lower edge. All lengths in inches.
func tie(t *testing.T, name string, bore, tenon, offset float64) Place {
	w := woodOf(t, name)
	rule := func(name string, k Kind, h Hole, x, y, d float64) Rule {
		r := NewRule(k, h, vec.P{X: x, Y: y}, d*inch, bore*inch, w)
		r.Name = name
		return r
	}
	return Place{
		Mortise: vec.P{X: 1.5 * inch, Y: 2 * inch},
		Shift:   vec.P{X: -offset * inch},
		Bore:    bore * inch,
		Rules: []Rule{
			rule("face of the post", Edge, MortiseHole, -1, 0, 0),
			rule("back of the post", Edge, MortiseHole, 1, 0, 5.5),
			rule("end of the tenon", End, TenonHole, 1, 0, tenon),
			rule("lower edge of the tenon", Edge, TenonHole, 0, -1, 0),
			rule("upper edge of the tenon", Edge, TenonHole, 0, 1, 5.5),
		},
	}
}

// By hand for white pine, bore 3/4 in, tenon 4 in, offset 1/8 in: x from
// 1.5 x 0.75 = 1.125 to 4 - 2 x 0.75 + 0.125 = 2.625, y from 1.125 to 4.375.
// Full strength asks 3 in (4D) from either edge of 5-1/2 in: there is no place.
func TestWindowOfATie(t *testing.T) {
	w := tie(t, "eastern white pine", 0.75, 4, 1.0/8).Window()
	low, high := corners(w.Workable)
	approx(t, "x from", low.X/inch, 1.125, 1e-9)
	approx(t, "x to", high.X/inch, 2.625, 1e-9)
	approx(t, "y from", low.Y/inch, 1.125, 1e-9)
	approx(t, "y to", high.Y/inch, 4.375, 1e-9)
	approx(t, "radius", w.Radius/inch, 0.75, 1e-6)
	approx(t, "centre x", w.Centre.X/inch, 1.875, 1e-6)
	approx(t, "centre y", w.Centre.Y/inch, 2.75, 1e-6) // the circle slides; the middle is taken
	if w.Full != nil || w.Grade != Workable {
		t.Errorf("full %v, grade %v", w.Full, w.Grade)
	}
	m, ok := w.Tightest()
	if !ok || m.Rule.Name != "face of the post" {
		t.Errorf("tightest is %q", m.Rule.Name)
	}
	approx(t, "slack", m.Slack()/inch, 0.375, 1e-9)
	for i := 1; i < len(w.Margins); i++ {
		if w.Margins[i].Slack() < w.Margins[i-1].Slack() {
			t.Error("margins are not sorted")
		}
	}
	// The tenon hole is 1.5 - 0.125 in from the shoulder, 4 - 1.375 from the end.
	for _, m := range w.Margins {
		if m.Rule.Kind == End {
			approx(t, "relish", m.Distance/inch, 2.625, 1e-9)
			approx(t, "relish wanted", m.Least/inch, 1.5, 1e-9)
		}
	}
	// Yellow-poplar asks 2.5D everywhere, 1-7/8 in: x to 4 - 1.875 + 0.125.
	w = tie(t, "yellow-poplar", 0.75, 4, 1.0/8).Window()
	low, high = corners(w.Full)
	approx(t, "full x from", low.X/inch, 1.875, 1e-9)
	approx(t, "full x to", high.X/inch, 2.25, 1e-9)
}

func corners(poly []vec.P) (low, high vec.P) {
	low, high = vec.P{X: math.Inf(1), Y: math.Inf(1)}, vec.P{X: math.Inf(-1), Y: math.Inf(-1)}
	for _, p := range poly {
		low = vec.P{X: min(low.X, p.X), Y: min(low.Y, p.Y)}
		high = vec.P{X: max(high.X, p.X), Y: max(high.Y, p.Y)}
	}
	return low, high
}

// Grades on one edge, bore 20: full 4D, workable 1.5D, closest 1.0D, and a hole
// that breaks out. A hundredth of a millimetre is forgiven.
func TestGrades(t *testing.T) {
	pine := woodOf(t, "eastern white pine")
	for distance, want := range map[float64]Grade{
		90: Strong, 80: Strong, 79.995: Strong, 79.9: Workable, 30: Workable, 29.995: Workable,
		29.9: Short, 20: Short, 19.9: Breaks, 10: Breaks, 0: Breaks, -40: Breaks,
	} {
		r := NewRule(Edge, MortiseHole, vec.P{X: 2}, 2*distance, 20, pine)
		if got := (Place{Bore: 20, Rules: []Rule{r}}).Window().Grade; got != want {
			t.Errorf("%g mm: %v, want %v", distance, got, want)
		}
	}
	bad := Rule{N: vec.P{X: 1}, D: math.NaN(), Workable: 30}
	if got := (Place{Bore: 20, Rules: []Rule{bad}}).Window().Grade; got != Breaks {
		t.Errorf("not a number: %v", got)
	}
	// A tenon end nearly along the grain: plenty along the grain, but the hole
	// itself runs through the slope.
	slope := NewRule(End, TenonHole, vec.P{X: 0.1, Y: math.Sqrt(0.99)}, 9, 20, pine)
	slope.Grain = vec.P{X: 1}
	if got := (Place{Bore: 20, Rules: []Rule{slope}}).Window().Grade; got != Breaks {
		t.Errorf("broken out sideways: %v", got)
	}
}

// walk measures from p to the boundary of r by halving a long step, along the
// grain or square to the boundary, without r.Distance.
func walk(r Rule, p vec.P) float64 {
	way := r.N
	if r.Grain != (vec.P{}) {
		way = r.Grain
		if way.Dot(r.N) < 0 {
			way = way.Mul(-1)
		}
	}
	low, high := 0.0, 1e5
	if r.N.Dot(p) > r.D {
		return -1
	}
	for range 80 {
		mid := (low + high) / 2
		if r.N.Dot(p.Add(way.Mul(mid))) > r.D {
			high = mid
		} else {
			low = mid
		}
	}
	return low
}

// A point is in the window exactly when every distance, walked with a ruler
// from the hole that the rule is about, is long enough.
func TestWindowAgainstWalking(t *testing.T) {
	rng := rand.New(rand.NewSource(3))
	pine, oak := woodOf(t, "eastern white pine"), woodOf(t, "white oak")
	inside := 0
	for range 150 {
		bore := 15 + 10*rng.Float64()
		place := Place{Bore: bore, Shift: vec.P{X: 6*rng.Float64() - 3, Y: 6*rng.Float64() - 3}}
		for i := range 6 {
			sin, cos := math.Sincos(float64(i) + rng.Float64())
			r := NewRule(Kind(rng.Intn(3)), Hole(rng.Intn(2)), vec.P{X: cos, Y: sin}, 55+60*rng.Float64(), bore, oak)
			if rng.Intn(3) == 0 {
				r.Workable, r.Full = Least(r.Kind, bore, pine)
			}
			if r.Kind == End {
				s, c := math.Sincos(float64(i) + rng.Float64())
				r.Grain = vec.P{X: c, Y: s}
			}
			place.Rules = append(place.Rules, r)
		}
		w := place.Window()
		for range 200 {
			m := vec.P{X: 200*rng.Float64() - 100, Y: 200*rng.Float64() - 100}
			spare := math.Inf(1)
			for _, r := range place.Rules {
				at := m
				if r.Hole == TenonHole {
					at = m.Add(place.Shift)
				}
				spare = min(spare, walk(r, at)-r.Workable)
			}
			if math.Abs(spare) < 1e-5 {
				continue
			}
			if spare > 0 {
				inside++
			}
			if got := holds(w.Workable, m); got != (spare > 0) {
				t.Fatalf("%v: inside %v, spare %g", m, got, spare)
			}
			if holds(w.Full, m) && spare < 0 {
				t.Fatalf("%v is strong but not workable", m)
			}
		}
	}
	if inside < 500 {
		t.Errorf("only %d points were inside: the test says little", inside)
	}
}

// holds reports whether p lies inside a counter-clockwise convex polygon.
func holds(poly []vec.P, p vec.P) bool {
	for i, a := range poly {
		if poly[(i+1)%len(poly)].Sub(a).Cross(p.Sub(a)) < 0 {
			return false
		}
	}
	return len(poly) > 2
}

// The 3-4-5 triangle has the incircle of radius 1 at (1, 1); other regions are
// searched by steps that halve (the depth inside is concave, so that climbs to
// the top, though slowly along ridges: only the radius is compared).
func TestInscribed(t *testing.T) {
	triangle := []vec.P{{}, {X: 3}, {Y: 4}}
	c, r := inscribed(sides(triangle))
	approx(t, "radius", r, 1, 1e-9)
	approx(t, "x", c.X, 1, 1e-9)
	approx(t, "y", c.Y, 1, 1e-9)
	rng := rand.New(rand.NewSource(5))
	for range 100 {
		var halves []half
		for i := range 5 {
			sin, cos := math.Sincos(1.2*float64(i) + rng.Float64())
			halves = append(halves, half{vec.P{X: cos, Y: sin}, 10 + 50*rng.Float64()})
		}
		halves = append(halves, sides(boxRound(vec.P{}, 70))...)
		c, r := inscribed(halves)
		approx(t, "depth at the centre", depth(halves, c), r, 1e-5)
		if top := climb(halves, rng); top > r+1e-6 {
			t.Errorf("a larger circle: %g over %g", top, r)
		} else if top < r-0.5 {
			t.Errorf("search found only %g of %g", top, r)
		}
	}
}

func depth(halves []half, p vec.P) float64 {
	least := math.Inf(1)
	for _, h := range halves {
		least = min(least, h.d-(h.n.X*p.X+h.n.Y*p.Y))
	}
	return least
}

// climb looks for the deepest point by random steps of shrinking size.
func climb(halves []half, rng *rand.Rand) float64 {
	at, best := vec.P{}, depth(halves, vec.P{})
	for step := 40.0; step > 1e-4; step *= 0.95 {
		for range 20 {
			p := at.Add(vec.P{X: step * (2*rng.Float64() - 1), Y: step * (2*rng.Float64() - 1)})
			if d := depth(halves, p); d > best {
				at, best = p, d
			}
		}
	}
	return best
}

// Distances at which tests found the peg to fail first, in bores. Douglas-fir is
// read (Schmidt & Scholl 2000, sec. 4.2); the others are recalled.
func TestFullStrengthRows(t *testing.T) {
	for name, want := range map[string][3]float64{
		"Douglas-fir": {2, 2.5, 2.5}, "eastern white pine": {4, 4, 3}, "white oak": {3, 2, 2.5},
		"northern red oak": {3, 2, 2.5}, "longleaf pine": {2, 2, 3}, "yellow-poplar": {2.5, 2.5, 3},
	} {
		d := FullStrength(woodOf(t, name))
		if got := [3]float64{d.End, d.Edge, d.Apart}; got != want || !d.Tested {
			t.Errorf("%s: %v, tested %v", name, got, d.Tested)
		}
	}
	for _, name := range []string{"eastern hemlock", "European oak"} {
		if d := FullStrength(woodOf(t, name)); d.Tested || d.Source == "" {
			t.Errorf("%s passes for tested", name)
		}
	}
}
