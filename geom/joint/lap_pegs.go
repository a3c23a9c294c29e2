package joint

import (
	"fmt"
	"math"
	"strings"

	"pegwright/geom"
	"pegwright/geom/peg"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// pegs bores one peg in the middle of the four corners, or two on the line
// from the first to the third, so that they do not share a line of the grain.
func (q lapShape) pegs(s Site, res *Result, c [4]vec.V) {
	mid := c[0].Add(c[1]).Add(c[2]).Add(c[3]).Mul(0.25)
	at := []vec.V{mid}
	if s.Set.Pegs == 2 {
		at = []vec.V{mid.Lerp(c[0], 0.5), mid.Lerp(c[2], 0.5)}
	}
	for i := range min(s.Set.Pegs, 2) {
		q.through(s, res, i, at[i], q.rules(s))
	}
}

// through bores one peg square through both timbers at c and adds it.
func (q lapShape) through(s Site, res *Result, i int, c vec.V, rules []peg.Rule) {
	a, set := q.a, s.Set
	from := res.Joint.Lines[0].X
	fromName := edgeName(res.Joint.Lines[0].Name)
	entry := q.n
	if !geom.IsReference(entry) {
		entry = geom.Opposite(entry)
	}
	if set.FromFace == q.n || set.FromFace == geom.Opposite(q.n) {
		entry = set.FromFace
	}
	dir := ideal(s.R, entry).N.Neg()
	ef, et := s.E.FaceToward(dir.Neg()), s.E.FaceToward(dir)
	r0, r1 := onPlane(s.R, entry, c, dir), onPlane(s.R, geom.Opposite(entry), c, dir)
	e0, e1 := onPlane(s.E, ef, c, dir), onPlane(s.E, et, c, dir)
	_, _, w := a.Of(c)
	c = c.Add(a.W.Mul(q.meet - w))
	u, _, _ := a.Of(c)
	p := geom.Peg{ID: pegID(s.ID, i), Bore: set.Bore, Head: set.Head, Lead: set.Lead, Flush: set.Flush,
		From: r0, To: r1, Mortise: c, Tenon: c, Entry: entry, Exit: geom.Opposite(entry),
		Words: geom.NotOffset, PFrom: fromName, P: math.Abs(u - from), Rules: rules,
		AlongBrace: s.End != geom.Mid && !q.square()}
	if dir.Dot(e0) < dir.Dot(r0) {
		p.From = e0
	}
	if dir.Dot(e1) > dir.Dot(r1) {
		p.To = e1
	}
	p.A = -res.Joint.Bearing.Height(c)
	p.B = p.A
	if s.End != geom.Mid {
		d := s.away().Neg()
		p.Relish = -q.far.Height(c) / q.far.N.Dot(d)
	}
	bore := func(t *geom.Timber, from, to vec.V, n, m int) Hole {
		return Hole{t, geom.Bore{Joint: s.ID, Peg: p.ID, Diameter: set.Bore, Entry: n, Exit: m,
			From: t.Place.In(from.Sub(dir.Mul(past))), To: t.Place.In(to.Add(dir.Mul(past)))}}
	}
	res.Bores = append(res.Bores, bore(s.R, r0, r1, p.Entry, p.Exit), bore(s.E, e0, e1, ef, et))
	res.Joint.Pegs = append(res.Joint.Pegs, p)
}

// edgeName is the name of a line without the timber it belongs to.
func edgeName(line string) string {
	name, _, _ := strings.Cut(line, " of ")
	return name
}

// rules are the sides and ends round a hole, in the plane of the lap.
func (q lapShape) rules(s Site) []peg.Rule {
	flat := func(n vec.V) vec.P { return vec.P{X: n.Dot(q.a.U), Y: n.Dot(q.a.V)} }
	mk := func(t *geom.Timber, h peg.Hole, name string, k peg.Kind, pl solid.Plane, grain vec.V) peg.Rule {
		r := peg.NewRule(k, h, flat(pl.N), -pl.Height(q.a.O), s.Set.Bore, t.Wood)
		r.Name, r.Timber = name, t.ID
		if k == peg.End {
			r.Grain = flat(grain)
		}
		return r
	}
	out := []peg.Rule{
		mk(s.R, peg.MortiseHole, "near side", peg.Edge, q.near, vec.V{}),
		mk(s.R, peg.MortiseHole, "far side", peg.Edge, q.far, vec.V{}),
		mk(s.E, peg.TenonHole, "side", peg.Edge, q.in, vec.V{}),
		mk(s.E, peg.TenonHole, "side", peg.Edge, q.out, vec.V{}),
	}
	if s.End != geom.Mid {
		out = append(out, mk(s.E, peg.TenonHole, "end", peg.End, q.far, s.away()))
	}
	if s.REnd != geom.Mid {
		return append(out, mk(s.R, peg.MortiseHole, "end", peg.End, q.out, s.R.Place.X))
	}
	return append(out, rule(s.R, s.Set, "start end", peg.End, vec.P{X: -1}, 0),
		rule(s.R, s.Set, "finish end", peg.End, vec.P{X: 1}, s.R.Length))
}

// holeDims asks for the place of every hole on both timbers.
func (q lapShape) holeDims(j *geom.Joint, d *dimmer) {
	for i, p := range j.Pegs {
		hole := "hole"
		if len(j.Pegs) > 1 {
			hole = fmt.Sprintf("hole %d", i+1)
		}
		u, v, w := q.a.Of(p.Mortise)
		d.on(j.Into, geom.Borer)
		d.add(p.PFrom+" to "+hole, q.a.U, q.a.Point(j.Lines[0].X, v, w), p.Mortise)
		d.add("reference side to "+hole, q.a.V, q.a.Point(u, 0, w), p.Mortise)
		d.on(j.Of, geom.Borer)
		ref := q.in
		if !geom.IsReference(q.inN) {
			ref = q.out
		}
		d.add("reference side to "+hole, ref.N, p.Tenon, p.Tenon.Sub(ref.N.Mul(ref.Height(p.Tenon))))
		x := j.Of.Place.X
		d.add("shoulder to "+hole+" along the stick", x, p.Tenon, p.Tenon.Sub(x.Mul(q.near.Height(p.Tenon)/q.near.N.Dot(x))))
	}
}
