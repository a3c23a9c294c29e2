package joint

import (
	"math"

	"pegwright/geom"
	"pegwright/geom/peg"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// A square mortise and tenon: the enterer meets the receiver's face square.
// The receiver loses a housing down to the bearing plane and a mortise; the
// enterer loses its cheeks and, where held back, the wood above and below the
// tenon.

func fitsSquare(s Site) string {
	if s.End == geom.Mid {
		return "the enterer needs an end at the joint"
	}
	if math.Abs(s.away().Dot(s.R.Place.X)) > 1e-6 {
		return "the two timbers do not meet square"
	}
	n := s.entered()
	if s.R.Place.OutDir(s.R.IdealPlane(n).N).Dot(s.away()) < 1-1e-9 {
		return "the enterer does not meet a face of the receiver square"
	}
	return ""
}

// squareShape is the footprint of a square joint in joint coordinates.
type squareShape struct {
	a              geom.Axes
	n              int // face entered
	u0, u1, v0, v1 float64
	t0, t1         float64 // tenon along u
	r0, r1         float64 // tenon across, along v
	tip            float64 // w of the tenon end
	across, depth  float64 // receiver's ideal sizes
}

func shapeSquare(s Site) squareShape {
	n := s.entered()
	q := squareShape{a: frameOf(s.R, n), n: n}
	q.across, q.depth = sizes(s.R, n)
	q.u0, q.u1 = span(s.E, 0, q.a.O, q.a.U)
	q.v0, q.v1 = span(s.E, 0, q.a.O, q.a.V)
	q.t0, q.t1 = q.u0+s.Set.HoldStart, q.u1-s.Set.HoldEnd
	q.r0, q.r1 = s.Set.FromRef, s.Set.FromRef+s.Set.Thickness
	q.tip = s.tenonEnd(q.depth)
	return q
}

func reachSquare(s Site) Tips {
	q := shapeSquare(s)
	// A point at the right w on the enterer's line: project its arris.
	o := s.E.Place.O
	_, _, w := q.a.Of(o)
	p := o.Add(q.a.W.Mul(q.tip - w))
	return Tips{R: math.NaN(), E: s.tip(p)}
}

func cutSquare(s Site) Result {
	q := shapeSquare(s)
	a, h := q.a, s.Set.Housing
	res := base(s, a, q.n, "Mortise and tenon")
	j := &res.Joint
	j.LetIn, j.Proud = letIn(s, a, q.n, q.u0, q.u1, q.v0, q.v1), s.proud()
	rc := &carver{t: s.R, id: s.ID}
	if j.LetIn > 1e-3 {
		rc.take("housing", q.housing(s)...)
	}
	floor := q.tip - s.Set.Deeper
	if s.Set.Through {
		floor = -q.depth - 2*open - 200
	}
	c := s.Set.Clearance
	mortise := []solid.Side{
		half(a, a.U, -1, q.t0, geom.RoleEnd), half(a, a.U, 1, q.t1, geom.RoleEnd),
		half(a, a.V, -1, q.r0, geom.RoleWall), half(a, a.V, 1, q.r1+c, geom.RoleWall),
		half(a, a.W, -1, floor, geom.RoleFloor),
	}
	rc.take("mortise", mortise...)
	ec := &carver{t: s.E, id: s.ID}
	if j.LetIn > 1e-3 {
		bring(ec, a, j.LetIn-h+entry)
	}
	below := half(a, a.W, 1, -h, geom.RoleShoulder)
	ec.take("cheek", below, half(a, a.V, 1, q.r0, geom.RoleCheek))
	ec.take("cheek", below, half(a, a.V, -1, q.r1, geom.RoleCheek))
	q.edges(s, rc, ec, below)
	mid := a.Point((q.t0+q.t1)/2, (q.r0+q.r1)/2, 0)
	j.Tenon = frameBlock(mid, append(mortise[:2:2], half(a, a.V, -1, q.r0, geom.RoleCheek),
		half(a, a.V, 1, q.r1, geom.RoleCheek), below, half(a, a.W, -1, q.tip, geom.RoleEnd))...)
	j.Mortise = frameBlock(mid, append(mortise[:4:4], half(a, a.W, -1, floor, geom.RoleFloor),
		half(a, a.W, 1, j.LetIn-h+open, ""))...)
	j.Moves = []geom.Move{{Direction: a.W.Neg(), Distance: -q.tip - h + j.LetIn}}
	j.Lines = q.lines(s)
	j.Places = []geom.Place{{On: s.E, Label: "shoulder on the reference arris", X: arrisAt(s.E, j.Bearing)},
		{On: s.R, Label: "mortise, near end", X: q.t0}, {On: s.R, Label: "mortise, far end", X: q.t1}}
	res.R, res.E = rc.cuts, ec.cuts
	q.pegs(s, &res)
	q.dims(s, j)
	return res
}

// housing is the volume over the enterer's section down to the bearing plane;
// it runs out at the sides where the enterer is as wide as the receiver.
func (q squareShape) housing(s Site) []solid.Side {
	a := q.a
	sides := []solid.Side{half(a, a.W, -1, -s.Set.Housing, geom.RoleBearing)}
	if q.u0 > tol {
		sides = append(sides, half(a, a.U, -1, q.u0, geom.RoleEnd))
	}
	if q.u1 < s.R.Length-tol {
		sides = append(sides, half(a, a.U, 1, q.u1, geom.RoleEnd))
	}
	if q.v0 > tol {
		sides = append(sides, half(a, a.V, -1, q.v0, geom.RoleEnd))
	}
	if q.v1 < q.across-tol {
		sides = append(sides, half(a, a.V, 1, q.v1, geom.RoleEnd))
	}
	return sides
}

// bearingEdge returns the u of the edge that the hole's place is measured
// from, its name and the sign of u away from it. On a plumb receiver it is the
// enterer's lower edge.
func (q squareShape) bearingEdge() (u float64, name string, sign float64) {
	if q.a.U.Z < -0.5 {
		return q.u1, "lower edge", -1
	}
	if q.a.U.Z > 0.5 {
		return q.u0, "lower edge", 1
	}
	return q.t0, "tenon edge", 1
}

// lines are the edges of the enterer, scribed round the receiver.
func (q squareShape) lines(s Site) []geom.Line {
	edge, name, _ := q.bearingEdge()
	other := q.u0 + q.u1 - edge
	if name == "lower edge" {
		return []geom.Line{{Name: "lower edge of " + s.E.ID, X: edge, Main: true}, {Name: "upper edge of " + s.E.ID, X: other}}
	}
	return []geom.Line{{Name: "near edge of " + s.E.ID, X: q.u0, Main: true}, {Name: "far edge of " + s.E.ID, X: q.u1}}
}

// pegs bores the joint: square to the cheeks, from the reference side unless a
// face is named; the tenon hole is nearer the shoulder by the offset.
func (q squareShape) pegs(s Site, res *Result) {
	set, a := s.Set, q.a
	edge, from, sign := q.bearingEdge()
	for i := range set.Pegs {
		u := edge + sign*(set.Along+float64(i)*3*set.Bore)
		if set.Centred {
			u = (q.t0+q.t1)/2 + (float64(i)-float64(set.Pegs-1)/2)*3*set.Bore
		}
		p := geom.Peg{
			A: set.OffShoulder, B: set.OffShoulder - set.Offset, PFrom: from, P: math.Abs(u - edge),
			Words: "toward the shoulder", Draw: a.W.Neg(),
		}
		w := -set.Housing - set.OffShoulder
		hole{s: s, a: a, n: q.n, u: u, w: w, v: (q.r0 + q.r1) / 2, shift: a.W.Mul(set.Offset)}.bore(&p, i, res)
		p.Relish = -(q.tip + set.Housing) - p.B
		p.Rules = append(receiverRules(s, q.depth),
			rule(s.E, set, "tenon end", peg.End, vec.P{Y: -1}, -q.tip),
			rule(s.E, set, "tenon edge", peg.Edge, vec.P{X: -1}, -q.t0),
			rule(s.E, set, "tenon edge", peg.Edge, vec.P{X: 1}, q.t1))
		res.Joint.Pegs = append(res.Joint.Pegs, p)
	}
}

// dims asks for the numbers that lay out mortise, housing, tenon and holes.
func (q squareShape) dims(s Site, j *geom.Joint) {
	a, h := q.a, s.Set.Housing
	d := dimmer{j: j, a: a}
	d.on(s.R, geom.Cutter)
	d.add("mortise from reference face", a.V, a.Point(q.t0, 0, -h), a.Point(q.t0, q.r0, -h))
	d.add("mortise width", a.V, a.Point(q.t0, q.r0, -h), a.Point(q.t0, q.r1+s.Set.Clearance, -h))
	d.add("held back before the mortise", a.U, a.Point(q.u0, q.r0, -h), a.Point(q.t0, q.r0, -h))
	d.add("held back after the mortise", a.U, a.Point(q.t1, q.r1, -h), a.Point(q.u1, q.r1, -h))
	d.add("mortise length", a.U, a.Point(q.t0, q.r0, -h), a.Point(q.t1, q.r0, -h))
	if !s.Set.Through {
		d.add("mortise depth below bearing", a.W, a.Point(q.t0, q.r0, -h), a.Point(q.t0, q.r0, q.tip-s.Set.Deeper))
	}
	if j.LetIn > 1e-3 {
		d.add("housing depth below face", a.W, a.Point(q.u0, q.r0, -h), a.Point(q.u0, q.r0, j.LetIn-h))
		d.housed(a.Point(q.u0, 0, -h), q.v0, q.v1, q.across)
	}
	d.on(s.E, geom.Cutter)
	d.add("tenon length", a.W, a.Point(q.t0, q.r0, q.tip), a.Point(q.t0, q.r0, -h))
	d.add("tenon thickness", a.V, a.Point(q.t0, q.r0, q.tip), a.Point(q.t0, q.r1, q.tip))
	d.add("held back before the tenon", a.U, a.Point(q.u0, q.r0, q.tip), a.Point(q.t0, q.r0, q.tip))
	d.add("held back after the tenon", a.U, a.Point(q.t1, q.r0, q.tip), a.Point(q.u1, q.r0, q.tip))
	d.add("tenon width", a.U, a.Point(q.t0, q.r0, q.tip), a.Point(q.t1, q.r0, q.tip))
	d.add("tenon from reference face", a.V, a.Point(q.t0, q.v0, -h), a.Point(q.t0, q.r0, -h))
	if j.LetIn > 1e-3 && s.rough() {
		d.reduced(a.Point(q.u0, q.r0, -h), a.W, j.LetIn+entry)
	}
	q.haunchDims(s, j, &d)
	q.holeDims(s, j, &d)
}

// holeDims asks for the places of the holes.
func (q squareShape) holeDims(s Site, j *geom.Joint, d *dimmer) {
	a, h := q.a, s.Set.Housing
	edge, _, _ := q.bearingEdge()
	for _, p := range j.Pegs {
		u, v, w := a.Of(p.Mortise)
		d.on(s.R, geom.Borer)
		d.add("bearing to hole", a.W, a.Point(u, v, -h), a.Point(u, v, w))
		d.add(p.PFrom+" to hole", a.U, a.Point(edge, v, w), a.Point(u, v, w))
		u, v, w = a.Of(p.Tenon)
		d.on(s.E, geom.Borer)
		d.add("shoulder to hole", a.W, a.Point(u, v, -h), a.Point(u, v, w))
		d.add("tenon edge to hole", a.U, a.Point(q.t0, v, w), a.Point(u, v, w))
	}
}
