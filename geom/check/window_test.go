package check_test

import (
	"fmt"
	"math"
	"testing"

	"pegwright/geom"
	"pegwright/geom/peg"
	"pegwright/geom/vec"
	"pegwright/samples/trial"
)

// Windows by brute force, apart from the rules that joints hand over: hole
// centres are set on a grid, and from each a ruler is laid through the wood of
// the joint's two timbers, along the grain and square to it, until it comes
// out. The ruler asks the planes of blanks and cuts, not the kernel.

// alone is a timber with the cuts of one joint and no others.
func alone(tm *geom.Timber, joint string) *geom.Timber {
	c := *tm
	c.Cuts = nil
	for _, k := range tm.Cuts {
		if k.Joint == joint {
			c.Cuts = append(c.Cuts, k)
		}
	}
	return &c
}

// ruler returns how far the wood of a timber runs from the frame point p along
// the frame direction d, no farther than most.
func ruler(tm *geom.Timber, p, d vec.V, most float64) float64 {
	out := func(s float64) bool { return !clear(tm, tm.Place.In(p.Add(d.Mul(s))), 0) }
	const step = 2.0
	for s := 0.0; s < most; s += step {
		if out(s) {
			lo, hi := s-step, s
			if s == 0 {
				return 0
			}
			for range 20 {
				if m := (lo + hi) / 2; out(m) {
					hi = m
				} else {
					lo = m
				}
			}
			return lo
		}
	}
	return most
}

// spare is the least distance beyond the workable one that the rulers find
// for a mortise hole at m and a tenon hole at n, with a bore d.
func spare(r, e *geom.Timber, j *geom.Joint, m, n vec.V, d float64) float64 {
	least := math.Inf(1)
	hold := func(tm *geom.Timber, p, dir vec.V, want float64) {
		least = min(least, ruler(tm, p, dir, 3*want)-want)
	}
	// The tenon: along its grain to its end, square to its grain to its edges.
	grain := e.Place.X
	if j.OfEnd == geom.Start {
		grain = grain.Neg()
	}
	side := grain.Cross(j.Axes.V).Unit()
	hold(e, n, grain, peg.WorkableEnd*d)
	hold(e, n, side, peg.WorkableEdge*d)
	hold(e, n, side.Neg(), peg.WorkableEdge*d)
	// Both cheeks of the mortise: square to the receiver's grain to its faces,
	// along it to its ends.
	lo, hi := j.Mortise.Extent(j.Axes.V)
	for _, at := range []float64{lo - 3, hi + 3} {
		p := m.Add(j.Axes.V.Mul(at - j.Axes.V.Dot(m)))
		hold(r, p, j.Axes.W, peg.WorkableEdge*d)
		hold(r, p, j.Axes.W.Neg(), peg.WorkableEdge*d)
		hold(r, p, j.Axes.U, peg.WorkableEnd*d)
		hold(r, p, j.Axes.U.Neg(), peg.WorkableEnd*d)
	}
	return least
}

// grid holds a joint's window against the rulers on a grid of hole centres,
// step mm apart, and returns how many lay inside and the first that is wrong.
// Where the timbers are their own ideals the two must agree both ways; else the
// window may be the smaller.
func grid(j *geom.Joint, w peg.Window, step float64, exact bool) (inside int, wrong string) {
	r, e := alone(j.Into, j.ID), alone(j.Of, j.ID)
	g := j.Pegs[0]
	at := j.Flat(g.Mortise)
	for du := -72.0; du <= 72; du += step {
		for dw := -72.0; dw <= 72; dw += step {
			shift := j.Axes.U.Mul(du).Add(j.Axes.W.Mul(dw))
			q := vec.P{X: at.X + du, Y: at.Y + dw}
			in, edge := within(w.Workable, q)
			if edge < 0.05 {
				continue
			}
			s := spare(r, e, j, g.Mortise.Add(shift), g.Tenon.Add(shift), g.Bore)
			if in {
				inside++
			}
			if in && s < -0.02 || exact && !in && s > 0.02 {
				return inside, fmt.Sprintf("%s: hole moved by %g, %g: in the window %v, by rulers %.2f mm to spare", j.ID, du, dw, in, s)
			}
		}
	}
	return inside, ""
}

// within reports whether q lies in a convex polygon, and how far from its rim.
func within(poly []vec.P, q vec.P) (in bool, rim float64) {
	in, rim = len(poly) > 2, math.Inf(1)
	for i, a := range poly {
		side := poly[(i+1)%len(poly)].Sub(a)
		h := side.Cross(q.Sub(a)) / side.Len()
		in, rim = in && h > 0, min(rim, math.Abs(h))
	}
	return
}

func TestWindowsAgainstRulers(t *testing.T) {
	planed := "wood: {timbers: {planed: yes}}\n"
	for name, src := range map[string]string{
		"gate":   gate + planed + joints(into("rail", "start", "pegs: 1")),
		"housed": gate + planed + joints(into("rail", "start", "pegs: 1, housing: 1/2, tenon length: 4.5, hold back start: 1")),
		"knee":   fmt.Sprintf(knee, "") + planed,
		"steep":  fmt.Sprintf(knee, "") + planed + "adjust:\n  - {timbers: braces, section: 3 x 6}\n",
	} {
		inside := 0
		for _, j := range trial.Frame(t, name, src).Joints {
			n, wrong := grid(j, j.Pegs[0].Window, 4, true)
			inside += n
			if wrong != "" {
				t.Errorf("%s: %s", name, wrong)
			}
			unruled(t, j)
		}
		if inside < 20 {
			t.Errorf("%s: only %d hole centres lay in the windows", name, inside)
		}
	}
	trial.EachSample(t, func(t *testing.T, f *geom.Frame) {
		inside, n, most := 0, 0, 3
		if long() {
			most = 16
		}
		for _, j := range f.Joints {
			if len(j.Pegs) == 0 || j.Broad || j.Tenon.Empty() || j.Pegs[0].Exit == 0 || j.Kind == "Bridle" || n == most {
				continue
			}
			n++
			some, wrong := grid(j, j.Pegs[0].Window, 8, false)
			inside += some
			if wrong != "" {
				t.Error(wrong)
			}
		}
		if inside == 0 {
			t.Error("no hole centre lay in a window")
		}
	})
}

// unruled leaves out each rule that shapes a joint's window in turn: the rulers
// must find the window too large.
func unruled(t *testing.T, j *geom.Joint) {
	g := j.Pegs[0]
	seen := 0
	for i := range g.Rules {
		rules := append(append([]peg.Rule{}, g.Rules[:i]...), g.Rules[i+1:]...)
		a, b := j.Flat(g.Mortise), j.Flat(g.Tenon)
		w := peg.Place{Mortise: a, Shift: b.Sub(a), Bore: g.Bore, Rules: rules}.Window()
		if _, wrong := grid(j, w, 8, true); wrong != "" {
			seen++
		}
	}
	if seen < 3 {
		t.Errorf("%s: only %d of %d rules left out were missed", j.ID, seen, len(g.Rules))
	}
}

// The largest circle in a window: no centre on a grid of 1 mm has more room to
// the nearest of the window's sides.
func TestCirclesAgainstGrid(t *testing.T) {
	trial.EachSample(t, func(t *testing.T, f *geom.Frame) {
		n := 0
		for _, j := range f.Joints {
			for _, g := range j.Pegs {
				w := g.Window
				if len(w.Workable) == 0 || n > 20 || n > 5 && !long() {
					continue
				}
				n++
				lo, hi := w.Workable[0], w.Workable[0]
				for _, p := range w.Workable {
					lo, hi = vec.P{X: min(lo.X, p.X), Y: min(lo.Y, p.Y)}, vec.P{X: max(hi.X, p.X), Y: max(hi.Y, p.Y)}
				}
				best := 0.0
				// A seat's window runs on along its rafter; a stretch of it will do.
				hi = vec.P{X: min(hi.X, lo.X+400), Y: min(hi.Y, lo.Y+400)}
				for x := lo.X; x <= hi.X; x++ {
					for y := lo.Y; y <= hi.Y; y++ {
						if in, rim := within(w.Workable, vec.P{X: x, Y: y}); in {
							best = max(best, rim)
						}
					}
				}
				if best > w.Radius+1e-6 || best < w.Radius-2 && w.Radius < 200 {
					t.Errorf("%s: radius %.3f, by grid %.3f", g.ID, w.Radius, best)
				}
			}
		}
		if n == 0 {
			t.Error("no window")
		}
	})
}
