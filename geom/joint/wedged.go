package joint

import (
	"math"

	"pegwright/geom"
	"pegwright/geom/solid"
)

// A wedged half-dovetail through tenon: the tenon's lower edge is flared, so
// that it is deeper at its end than at its shoulder. The mortise is flared with
// it on the lower side and is higher than the tenon by the drop. The enterer
// goes in along its axis, comes down by the drop, and a wedge driven from the
// far face fills the room above. On a level receiver "lower" is toward its
// start end.

// Usual flare and taper (common practice, no source).
const (
	flare = 1.0 / 6
	taper = 1.0 / 12
)

// WedgedLoss returns the height that a wedged tenon loses in millimetres when
// its wood shrinks by the fraction tenon and its wedge by the fraction wedge;
// height is the tenon's at its end. The receiver's mortise lies along its grain
// and keeps its height.
func (s Site) WedgedLoss(tenon, wedge float64) (loss, drop, length float64) {
	q := shapeWedged(s)
	return q.h*tenon + q.drop*wedge, q.drop, q.run
}

// wedgedShape adds heights to a square joint: x is the height above the lower
// edge of the tenon's end.
type wedgedShape struct {
	squareShape
	up   float64 // sign of U upward
	low  float64 // u of the lower edge
	h    float64 // tenon height at its end
	drop float64
	run  float64 // bearing plane to tenon end
	rise float64 // of the wedge over its length, as a slope
	bear float64 // w of the bearing plane
}

func shapeWedged(s Site) wedgedShape {
	s.Set.Through = true
	q := wedgedShape{squareShape: shapeSquare(s), up: 1, bear: -s.Set.Housing, rise: taper}
	q.low = q.t0
	if q.a.U.Z < -0.5 {
		q.up, q.low = -1, q.t1
	}
	q.h, q.run = q.t1-q.t0, q.bear-q.tip
	q.drop = s.Set.Drop
	if q.drop == 0 {
		q.drop = flare * q.run
	}
	q.drop = math.Min(q.drop, q.h/2)
	if s.Set.Taper > 0 {
		q.rise = s.Set.Taper
	}
	return q
}

func reachWedged(s Site) Tips {
	s.Set.Through = true
	return reachSquare(s)
}

// side is the half-space behind the plane through height x at depth w with the
// outward normal nx (upward), nw (out of the receiver).
func (q wedgedShape) side(nx, nw, x, w float64, role string) solid.Side {
	n := q.a.U.Mul(q.up * nx).Add(q.a.W.Mul(nw))
	return solid.Side{Plane: solid.PlaneAt(q.a.Point(q.low+q.up*x, 0, w), n), Role: role}
}

func cutWedged(s Site) Result {
	s.Set.Through = true
	q := shapeWedged(s)
	a := q.a
	res := base(s, a, q.n, "Wedged half-dovetail through tenon")
	j := &res.Joint
	j.LetIn = letIn(s, a, q.n, q.u0, q.u1, q.v0, q.v1)
	j.Proud = s.proud()
	sole := q.side(-q.run, q.drop, q.drop, q.bear, geom.RoleEnd)
	roof := q.side(1, q.rise, q.h+q.drop, q.bear, geom.RoleEnd)
	walls := []solid.Side{half(a, a.V, -1, q.r0, geom.RoleWall), half(a, a.V, 1, q.r1+s.Set.Clearance, geom.RoleWall)}
	rc, ec := &carver{t: s.R, id: s.ID}, &carver{t: s.E, id: s.ID}
	if j.LetIn > 1e-3 {
		rc.take("housing", q.raised().housing(s)...)
		bring(ec, a, j.LetIn+q.bear+entry)
	}
	mortise := append([]solid.Side{sole, roof}, walls...)
	rc.take("mortise", mortise...)
	below := half(a, a.W, 1, q.bear, geom.RoleShoulder)
	ec.take("cheek", below, half(a, a.V, 1, q.r0, geom.RoleCheek))
	ec.take("cheek", below, half(a, a.V, -1, q.r1, geom.RoleCheek))
	ec.take("tenon edge", below, half(a, a.U, 1, q.t0, geom.RoleEnd))
	ec.take("tenon edge", below, half(a, a.U, -1, q.t1, geom.RoleEnd))
	ec.take("flare", below, flip(sole))
	mid := a.Point((q.t0+q.t1)/2, (q.r0+q.r1)/2, q.tip/2)
	cheeks := []solid.Side{half(a, a.V, -1, q.r0, geom.RoleCheek), half(a, a.V, 1, q.r1, geom.RoleCheek)}
	j.Tenon = frameBlock(mid, append(cheeks[:2:2], sole, q.side(1, 0, q.h, 0, geom.RoleEnd), below, half(a, a.W, -1, q.tip, geom.RoleEnd))...)
	j.Mortise = frameBlock(mid, append(mortise, half(a, a.W, -1, -q.depth-2*open-200, ""), half(a, a.W, 1, j.LetIn+q.bear+open, ""))...)
	j.Moves = []geom.Move{{Direction: a.W.Neg(), Distance: q.run + j.LetIn}, {Direction: a.U.Mul(-q.up), Distance: q.drop}}
	far := solid.Side{Plane: s.R.BlankPlane(geom.Opposite(q.n)).Moved(s.R.Place), Role: geom.RoleEnd}
	wedge := append(cheeks[:2:2], q.side(-1, 0, q.h, 0, geom.RoleTable), roof, half(a, a.W, 1, q.bear, geom.RoleEnd), far)
	j.Pieces = []geom.Piece{{ID: s.ID + "-wedge", Kind: "wedge", Solid: frameBlock(mid, wedge...),
		Moves: []geom.Move{{Direction: a.W, Distance: q.run}}}}
	res.R, res.E = rc.cuts, ec.cuts
	q.tell(s, &res)
	return res
}

// raised is the footprint of the housing: the enterer goes in by the drop
// higher than it comes to lie.
func (q wedgedShape) raised() squareShape {
	r := q.squareShape
	if q.up > 0 {
		r.u1 += q.drop
	} else {
		r.u0 -= q.drop
	}
	return r
}

// tell adds pegs, lines and dimensions. The holes lie between the shoulder's
// lower edge, which the flare has raised by the drop, and the upper edge.
func (q wedgedShape) tell(s Site, res *Result) {
	j := &res.Joint
	j.Lines = q.lines(s)
	j.Places = []geom.Place{{On: s.E, Label: "shoulder on the reference arris", X: arrisAt(s.E, j.Bearing)}}
	narrow := q.squareShape
	if q.up > 0 {
		narrow.t0 += q.drop
	} else {
		narrow.t1 -= q.drop
	}
	s.Set.Offset = 0
	narrow.pegs(s, res)
	for i := range j.Pegs {
		j.Pegs[i].Words = geom.NotOffset
	}
	a, d := q.a, dimmer{j: j, a: q.a}
	at := func(x, w float64) (u, v, ww float64) { return q.low + q.up*x, q.r0, w }
	gap := func(label string, x0, x1, w float64) { d.add(label, a.U, a.Point(at(x0, w)), a.Point(at(x1, w))) }
	d.on(s.R, geom.Cutter)
	d.add("mortise from reference face", a.V, a.Point(q.low, 0, q.bear), a.Point(q.low, q.r0, q.bear))
	d.add("mortise width", a.V, a.Point(q.low, q.r0, q.bear), a.Point(q.low, q.r1+s.Set.Clearance, q.bear))
	gap("lower edge line to mortise, entered side", 0, q.drop, q.bear)
	gap("mortise height, entered side", q.drop, q.h+q.drop, q.bear)
	if j.LetIn > 1e-3 {
		d.add("housing depth below face", a.W, a.Point(q.low, q.r0, q.bear), a.Point(q.low, q.r0, j.LetIn+q.bear))
		d.housed(a.Point(q.low, 0, q.bear), q.v0, q.v1, q.across)
		gap("upper edge line to end of housing", q.u1-q.u0, q.u1-q.u0+q.drop, j.LetIn+q.bear)
	}
	gap("mortise height, far side", 0, q.h+q.drop+q.rise*q.run, q.tip)
	d.on(s.E, geom.Cutter)
	d.add("tenon length", a.W, a.Point(at(0, q.tip)), a.Point(at(0, q.bear)))
	d.add("tenon thickness", a.V, a.Point(q.low, q.r0, q.tip), a.Point(q.low, q.r1, q.tip))
	d.add("tenon from reference face", a.V, a.Point(q.low, q.v0, q.bear), a.Point(q.low, q.r0, q.bear))
	gap("lower edge raised at the shoulder", 0, q.drop, q.bear)
	gap("tenon height at the shoulder", q.drop, q.h, q.bear)
	gap("tenon height at the end", 0, q.h, q.tip)
	if j.LetIn > 1e-3 && s.rough() {
		d.reduced(a.Point(q.low, q.r0, q.bear), a.W, j.LetIn+entry)
	}
	q.holeDims(s, j, &d)
}
