package joint

import (
	"math"

	"pegwright/geom"
	"pegwright/geom/peg"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// A scarf joins two timbers end to end in one line. Each keeps one side of a
// table that runs from butt to butt; the receiver keeps the lower side, and the
// enterer lies on it. Where the timbers stand plumb the receiver keeps the side
// away from its first reference face.

// Scarf are the numbers of a scarf, in millimetres; zeros ask for the usual.
type Scarf struct {
	Length  float64 // of the table, tip to tip; 0: four times the depth
	Squint  float64 // undercut of a butt over its height: 0.2 is 1 in 5; 0: square butts
	Butt    float64 // height of the butts of a splayed scarf; 0: a quarter of the depth within 1-1/2 to 2 in
	Key     float64 // size of the key through the table; 0: none
	Wedges  bool    // the key is a pair of folding wedges
	Upright bool    // the table stands on edge instead of lying level
}

// scarfLength is the usual length of a scarf over the depth of its timbers:
// within the 3 to 6 of common practice (no source).
const scarfLength = 4

// scarfShape is a scarf in its own plane: s runs along the receiver toward its
// tip from the middle of the scarf, y from the enterer's outer side to the
// receiver's.
type scarfShape struct {
	a       geom.Axes
	n       int     // side face that the enterer comes in through
	e       float64 // +1 where the tip is the receiver's finish end, or -1
	mid     float64 // u of the middle
	keep    float64 // +1 where y runs along V, or -1
	d, wide float64 // nominal sizes along V and W
	half    float64 // half the length
}

// scarfOf lays out a scarf along the line of its two sticks.
func scarfOf(s Site) scarfShape {
	pl := s.R.Place
	level := math.Abs(pl.Z.Z) > math.Abs(pl.Y.Z)+tol // z is the plumber of the two
	q := scarfShape{n: 2, e: 1, d: s.R.Section[0], wide: s.R.Section[1], keep: 1}
	if level != s.Set.Scarf.Upright {
		q.n, q.d, q.wide = 1, q.wide, q.d
	}
	q.a = frameOf(s.R, q.n)
	if s.REnd == geom.Start {
		q.e = -1
	}
	if q.a.V.Z > tol {
		q.keep = -1
	}
	q.mid, _, _ = q.a.Of(s.Meet)
	l := s.Set.Scarf.Length
	if l == 0 {
		l = scarfLength * q.d
	}
	q.half = l / 2
	return q
}

func fitsScarf(s Site) string {
	if s.End == geom.Mid || s.REnd == geom.Mid {
		return "a scarf joins an end to an end"
	}
	tip := s.R.Place.X
	if s.REnd == geom.Start {
		tip = tip.Neg()
	}
	if tip.Dot(s.away()) < 1-1e-9 {
		return "the two timbers do not run on in one line"
	}
	q := scarfOf(s)
	lo := [2]float64{0, -q.wide}
	for i, dir := range []vec.V{q.a.V, q.a.W} {
		size := [2]float64{q.d, q.wide}[i]
		a, b := math.Inf(1), math.Inf(-1)
		for k := range 4 {
			p := s.E.Place.Out(vec.V{Y: s.E.Section[0] * float64(k&1), Z: s.E.Section[1] * float64(k>>1)})
			h := dir.Dot(p.Sub(q.a.O))
			a, b = min(a, h), max(b, h)
		}
		if math.Abs(a-lo[i]) > 0.5 || math.Abs(b-lo[i]-size) > 0.5 {
			return "the two timbers are not of one section with their faces flush"
		}
	}
	return ""
}

func reachScarf(s Site) Tips {
	q := scarfOf(s)
	return Tips{R: s.R.Place.In(q.at(q.half, 0)).X, E: s.tip(q.at(-q.half, 0))}
}

// at is the frame point at s, y in the entered side face.
func (q scarfShape) at(s, y float64) vec.V {
	v := y
	if q.keep < 0 {
		v = q.d - y
	}
	return q.a.Point(q.mid+q.e*s, v, 0)
}

// side is the half-space behind the plane through s, y with the outward normal
// ns, ny.
func (q scarfShape) side(ns, ny, s, y float64, role string) solid.Side {
	n := q.a.U.Mul(q.e * ns).Add(q.a.V.Mul(q.keep * ny))
	return solid.Side{Plane: solid.PlaneAt(q.at(s, y), n), Role: role}
}

// flip keeps the other side of the same plane.
func flip(s solid.Side) solid.Side { return solid.Side{Plane: s.Plane.Flip(), Role: s.Role} }

// onto is the direction square to the table in which the enterer lands on the
// receiver, and home the one along it in which its tip goes up to the butt.
func (q scarfShape) onto() vec.V { return q.a.V.Mul(q.keep) }
func (q scarfShape) home() vec.V { return q.a.U.Mul(-q.e) }

// cut takes both halves. table faces the receiver's wood; butt faces the
// receiver's body at its shoulder, and tip is the like plane at its tip.
func (q scarfShape) cut(s Site, title string, table, butt, tip solid.Side) Result {
	res := base(s, q.a, q.n, title)
	res.Joint.Housing, res.Joint.LetIn = 0, 0
	res.Joint.Bearing = solid.Plane{N: q.a.W, D: q.a.W.Dot(q.a.O)}
	rc, ec := &carver{t: s.R, id: s.ID}, &carver{t: s.E, id: s.ID}
	rc.take("scarf", table, butt)
	rc.take("scarf end", tip)
	ec.take("scarf", flip(table), flip(tip))
	ec.take("scarf end", flip(butt))
	res.R, res.E = rc.cuts, ec.cuts
	return res
}

// tell adds the lines and places of layout: butt and tip are the s of the two
// outer lines.
func (q scarfShape) tell(s Site, j *geom.Joint, butt, tip float64) {
	ru := func(x float64) float64 { return q.mid + q.e*x }
	j.Lines = []geom.Line{{Name: "butt line for " + s.E.ID, X: ru(butt), Main: true}, {Name: "end of the scarf", X: ru(q.half)}}
	j.Places = []geom.Place{{On: s.R, Label: "scarf butt on the enterer's side", X: ru(butt)},
		{On: s.E, Label: "scarf butt on the receiver's side", X: s.tip(q.at(tip, q.d))}}
}

// pegs bores n holes across the table, spread along it and staggered across
// the timber so that no two stand in one line of grain. off is how far the
// butts reach into the table: ends are measured from there. clear keeps the
// middle free.
func (q scarfShape) pegs(s Site, res *Result, off float64, clear bool) {
	n := s.Set.Pegs
	slots := n
	if clear && n%2 == 1 {
		slots = n + 1
	}
	for i := range n {
		k := i
		if slots > n && i > n/2 {
			k = i + 1
		}
		x := 2 * q.half * ((float64(k)+0.5)/float64(slots) - 0.5)
		w := -q.wide / 3
		if i%2 == 1 {
			w = -2 * q.wide / 3
		}
		p := geom.Peg{A: -w, B: -w, PFrom: "butt line", P: x + q.half - off, Words: geom.NotOffset}
		hole{s: s, a: q.a, n: q.n, u: q.mid + q.e*x, v: q.d / 2, w: w}.bore(&p, i, res)
		p.Relish = x + q.half - off
		p.Rules = q.rules(s, off)
		res.Joint.Pegs = append(res.Joint.Pegs, p)
	}
}

// rules are the two side faces and the two tips round a hole.
func (q scarfShape) rules(s Site, off float64) []peg.Rule {
	mk := func(t *geom.Timber, h peg.Hole, k peg.Kind, name string, n vec.P, d float64) peg.Rule {
		r := peg.NewRule(k, h, n, d, s.Set.Bore, t.Wood)
		r.Name, r.Timber = name, t.ID
		return r
	}
	var out []peg.Rule
	for _, t := range []struct {
		t   *geom.Timber
		h   peg.Hole
		tip float64
	}{{s.R, peg.MortiseHole, q.e}, {s.E, peg.TenonHole, -q.e}} {
		out = append(out, mk(t.t, t.h, peg.Edge, "near side", vec.P{Y: 1}, 0), mk(t.t, t.h, peg.Edge, "far side", vec.P{Y: -1}, q.wide),
			mk(t.t, t.h, peg.End, "scarf end", vec.P{X: t.tip}, t.tip*q.mid+q.half-off))
	}
	return out
}
