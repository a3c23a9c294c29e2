package joint

import (
	"fmt"
	"math"

	"pegwright/geom"
	"pegwright/geom/peg"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// A drop-in pocket: the enterer's end drops into a pocket in the receiver's
// side that is open at the top, as a joist's into a beam or a purlin's into a
// principal rafter (whose open side is its upper face). The underside of the
// enterer is cut up to the pocket's floor.

// pocketShape is a pocket; heights are along up from the open face.
type pocketShape struct {
	a           geom.Axes
	n, m        int         // face entered, open face
	up          vec.V       // out of the open face
	open        solid.Plane // the open face
	u0, u1      float64     // enterer along the receiver
	top, bottom float64     // enterer's upper and lower face
	floor       float64     // of the pocket
	depth, deep float64     // receiver along W, and along up
}

func fitsPocket(s Site) string {
	if bad := fitsSquare(s); bad != "" {
		return bad
	}
	q := shapePocket(s)
	e := ideal(s.E, s.E.FaceToward(q.up)).N
	high := q.top - q.bottom
	switch {
	case e.Dot(q.up) < 1-1e-9:
		return "the enterer's upper face does not lie level with the receiver's open face"
	case s.Set.PocketDepth > high+tol:
		return "the pocket is deeper than the enterer; make the pocket depth less"
	case q.floor > -10:
		return "the enterer does not reach down into the receiver; lower it"
	case q.floor < 10-q.deep:
		return "the pocket leaves no wood under itself; make the pocket depth less, or the receiver deeper"
	case s.Set.Bearing > q.depth-10:
		return "the pocket goes through the receiver; make its bearing less"
	}
	return ""
}

func shapePocket(s Site) pocketShape {
	n := s.entered()
	q := pocketShape{a: frameOf(s.R, n), n: n}
	low, high := sideFaces(n)
	q.m = low
	if ideal(s.R, high).N.Z > ideal(s.R, low).N.Z {
		q.m = high
	}
	if s.Set.IntoFace == low || s.Set.IntoFace == high {
		q.m = s.Set.IntoFace
	}
	q.open = ideal(s.R, q.m)
	q.up = q.open.N
	q.deep, q.depth = sizes(s.R, n)
	o := q.up.Mul(q.open.D)
	q.u0, q.u1 = span(s.E, 0, q.a.O, q.a.U)
	q.bottom, q.top = span(s.E, 0, o, q.up)
	// Three quarters of the enterer: see stretched.
	d := s.Set.PocketDepth
	if d == 0 {
		d = 0.75 * (q.top - q.bottom)
	}
	q.floor = q.top - d
	return q
}

func reachPocket(s Site) Tips {
	q := shapePocket(s)
	_, _, w := q.a.Of(s.E.Place.O)
	return Tips{R: math.NaN(), E: s.tip(s.E.Place.O.Add(q.a.W.Mul(-s.Set.Bearing - w)))}
}

// above keeps what lies over the height h.
func (q pocketShape) above(h float64, role string) solid.Side {
	return outside(q.open.Offset(h), role)
}

func cutPocket(s Site) Result {
	q := shapePocket(s)
	a := q.a
	res := base(s, a, q.n, "Drop-in pocket")
	j := &res.Joint
	lo, hi := q.acrossOf(q.bottom), q.acrossOf(q.top)
	j.LetIn = letIn(s, a, q.n, q.u0, q.u1, min(lo, hi), max(lo, hi))
	walls := []solid.Side{half(a, a.U, -1, q.u0, geom.RoleWall), half(a, a.U, 1, q.u1, geom.RoleWall)}
	rc, ec := &carver{t: s.R, id: s.ID}, &carver{t: s.E, id: s.ID}
	if j.LetIn > 1e-3 {
		rc.take("housing", append(walls[:2:2], half(a, a.W, -1, 0, geom.RoleBearing), q.above(q.bottom, geom.RoleEnd))...)
	}
	pocket := append(walls[:2:2], half(a, a.W, -1, -s.Set.Bearing, geom.RoleEnd), q.above(q.floor, geom.RoleSeat))
	rc.take("notch", pocket...)
	bring(ec, a, max(j.LetIn, 0)+entry)
	ec.take("underside", half(a, a.W, 1, 0, geom.RoleShoulder), inside(q.open.Offset(q.floor), geom.RoleSeat))
	mid := a.Point((q.u0+q.u1)/2, hi, 0)
	j.Mortise = frameBlock(mid, append(pocket, half(a, a.W, 1, 0, ""), inside(q.open.Offset(max(q.top, 0)), ""))...)
	j.Tenon = j.Mortise.Inside(inside(q.open.Offset(q.top), geom.RoleCheek))
	j.Moves = []geom.Move{{Direction: q.up.Neg(), Distance: -q.floor}}
	j.Lines = []geom.Line{{Name: "near edge of " + s.E.ID, X: q.u0, Main: true}, {Name: "far edge of " + s.E.ID, X: q.u1}}
	j.Places = []geom.Place{{On: s.E, Label: "shoulder on the reference arris", X: arrisAt(s.E, j.Bearing)}}
	res.R, res.E = rc.cuts, ec.cuts
	res.Warns = q.warns(s)
	q.peg(s, &res)
	q.dims(s, j)
	return res
}

// acrossOf turns a height into v.
func (q pocketShape) acrossOf(h float64) float64 {
	return q.a.V.Dot(q.up.Mul(q.open.D + h).Sub(q.a.O))
}

// warns are the rules of bearings and notches that this pocket does not keep.
func (q pocketShape) warns(s Site) []Warn {
	var out []Warn
	if w, bad := stretched(s, q.floor-q.bottom, q.top-q.bottom); bad {
		out = append(out, w)
	}
	if s.Set.Bearing < 1.5*inch-0.5 {
		out = append(out, Warn{fmt.Sprintf("%s bears less than 1-1/2 in (38 mm) in its pocket in %s", s.E.ID, s.R.ID), "make the bearing 1-1/2 to 2 in (40 to 50 mm)"})
	}
	return out
}

// stretched reports an enterer whose underside is cut up at its end by more
// than a quarter of its depth: a notch on its tension side (NDS 4.4.3, from
// memory).
func stretched(s Site, cut, depth float64) (Warn, bool) {
	if cut <= depth/4+0.05 {
		return Warn{}, false
	}
	return Warn{fmt.Sprintf("the underside of %s is cut up by %.2f of its depth at its end, where a quarter is the most for a notch on the tension side", s.E.ID, cut/depth),
		"cut less from below, or leave the notch to an engineer"}, true
}

// peg bores one blind peg down through the middle of the tail.
func (q pocketShape) peg(s Site, res *Result) {
	a := q.a
	for i := range min(s.Set.Pegs, 1) {
		u, w := (q.u0+q.u1)/2, -s.Set.Bearing/2
		at := func(h float64) vec.V { return a.Point(u, q.acrossOf(h), w) }
		top := s.E.FaceToward(q.up)
		p := geom.Peg{ID: pegID(s.ID, i), Bore: s.Set.Bore, Head: s.Set.Head, Entry: q.m, Words: geom.NotOffset, PFrom: "near edge", P: u - q.u0, A: -w, B: -w,
			From: onPlane(s.E, top, at(q.top), q.up), To: bottom(s, at(q.floor), q.up.Neg()), Mortise: at(q.floor), Tenon: at(q.floor)}
		p.Relish = s.Set.Bearing / 2
		past := q.up.Mul(past)
		res.Bores = append(res.Bores,
			Hole{s.E, geom.Bore{Joint: s.ID, Peg: p.ID, Diameter: s.Set.Bore, Entry: top, Exit: geom.Opposite(top),
				From: s.E.Place.In(p.From.Add(past)), To: s.E.Place.In(onPlane(s.E, geom.Opposite(top), at(q.bottom), q.up).Sub(past))}},
			Hole{s.R, geom.Bore{Joint: s.ID, Peg: p.ID, Diameter: s.Set.Bore, Entry: q.m,
				From: s.R.Place.In(onPlane(s.R, q.m, at(0), q.up).Add(past)), To: s.R.Place.In(p.To)}})
		p.Rules = append(receiverRules(s, q.depth),
			rule(s.E, s.Set, "tail end", peg.End, vec.P{Y: -1}, s.Set.Bearing),
			rule(s.E, s.Set, "tail side", peg.Edge, vec.P{X: -1}, -q.u0),
			rule(s.E, s.Set, "tail side", peg.Edge, vec.P{X: 1}, q.u1))
		res.Joint.Pegs = append(res.Joint.Pegs, p)
	}
}

func (q pocketShape) dims(s Site, j *geom.Joint) {
	a := q.a
	at := func(u, h, w float64) vec.V { return a.Point(u, q.acrossOf(h), w) }
	d := dimmer{j: j, a: a}
	b := s.Set.Bearing
	d.on(s.R, geom.Cutter)
	d.add("pocket width", a.U, at(q.u0, q.floor, 0), at(q.u1, q.floor, 0))
	d.add("pocket floor below the open face"+ofIdeal(s.R, q.up, ", ideal"), q.up, at(q.u0, q.floor, 0), at(q.u0, 0, 0))
	d.add("pocket into the side", a.W, at(q.u0, q.floor, -b), at(q.u0, q.floor, 0))
	if j.LetIn > 1e-3 {
		d.add("housing depth below face", a.W, at(q.u0, q.bottom, 0), at(q.u0, q.bottom, j.LetIn))
		d.add("housing below the open face"+ofIdeal(s.R, q.up, ", ideal"), q.up, at(q.u0, q.bottom, 0), at(q.u0, 0, 0))
	}
	d.on(s.E, geom.Cutter)
	d.add("tail length, shoulder to end", a.W, at(q.u0, q.floor, -b), at(q.u0, q.floor, 0))
	d.add("tail depth from the upper face"+ofIdeal(s.E, q.up, ", ideal"), q.up, at(q.u0, q.floor, -b), at(q.u0, q.top, -b))
	d.add("underside cut up by"+ofIdeal(s.E, q.up.Neg(), ", from its ideal face"), q.up, at(q.u0, q.bottom, 0), at(q.u0, q.floor, 0))
	if s.rough() {
		d.reduced(at(q.u0, q.floor, 0), a.W, max(j.LetIn, 0)+entry)
	}
	for _, p := range j.Pegs {
		u, v, w := a.Of(p.Mortise)
		d.on(s.R, geom.Borer)
		d.add("near edge to hole", a.U, a.Point(q.u0, v, w), a.Point(u, v, w))
		d.add("bearing to hole", a.W, a.Point(u, v, 0), a.Point(u, v, w))
		d.add("hole below the pocket's floor", q.up, p.To, p.Mortise)
		d.on(s.E, geom.Borer)
		d.add("shoulder to hole", a.W, a.Point(u, v, 0), a.Point(u, v, w))
		d.add("side to hole", a.U, a.Point(q.u0, v, w), a.Point(u, v, w))
	}
}
