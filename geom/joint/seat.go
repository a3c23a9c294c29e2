package joint

import (
	"math"

	"pegwright/geom"
	"pegwright/geom/peg"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// Rafter seats: a sloping rafter crosses the top of a plate and runs on past
// its outer face. How deep the seat is follows from where the two lie. In a
// birdsmouth the rafter alone gives way, to a level seat and a plumb heel. In a
// step lap the plate is also notched along the rafter, and the rafter bears on a
// butt square to itself.

// SeatDepth is how far the rafter's ideal underside lies below the plate's outer
// top arris, square to the rafter, in mm. The site must be that of a seat.
func (s Site) SeatDepth() float64 {
	q := shapeSeat(s)
	return q.cross * q.sin
}

func fitsSeat(s Site) string {
	a, up := seatAxes(s)
	switch {
	case math.Abs(s.E.Place.X.Dot(a.U)) > 1e-6:
		return "the rafter does not cross the plate square"
	case up.Dot(a.W) < 0.05 || up.Dot(a.W) > 0.995:
		return "the rafter is too flat or too steep for a seat"
	}
	return ""
}

// seatAxes returns the plate's top-face axes and the rafter's direction up the
// slope. V is turned to point inward (the way the rafter rises).
func seatAxes(s Site) (geom.Axes, vec.V) {
	up := s.E.Place.X
	if up.Z < 0 {
		up = up.Neg()
	}
	n := s.R.FaceToward(vec.V{Z: 1})
	return frameOf(s.R, n), up
}

// seatShape is a seat in the plane square to the plate: y runs inward from the
// plate's outer face, z up from its top.
type seatShape struct {
	a        geom.Axes
	n        int
	up       vec.V
	in       vec.V // horizontal, inward
	outer    vec.V // point on the outer top arris of the plate's ideal section
	under    solid.Plane
	uFace    int // rafter's underside
	sin, cos float64
	cross    float64 // y where the ideal underside crosses the plate's top
	u0, u1   float64 // ideal rafter along the plate
	n0, n1   float64 // real rafter along the plate: the notch takes it whole
}

func shapeSeat(s Site) seatShape {
	a, up := seatAxes(s)
	q := seatShape{a: a, n: s.R.FaceToward(vec.V{Z: 1}), up: up, sin: up.Dot(a.W)}
	q.cos = math.Sqrt(1 - q.sin*q.sin)
	q.in = a.V
	if up.Dot(a.V) < 0 {
		q.in = a.V.Neg()
	}
	outFace := s.R.FaceToward(q.in.Neg())
	pl := ideal(s.R, outFace)
	q.outer = a.O.Add(pl.N.Mul(-pl.Height(a.O)))
	q.uFace = s.E.FaceToward(up.Cross(a.U).Mul(sign(up.Cross(a.U).Dot(a.W)) * -1))
	q.under = ideal(s.E, q.uFace)
	// y on the top plane where the underside passes.
	q.cross = -q.under.Height(q.outer) / q.under.N.Dot(q.in)
	q.u0, q.u1 = span(s.E, 0, a.O, a.U)
	q.n0, q.n1 = s.E.Blank.Moved(s.E.Place).Extent(a.U)
	q.n0, q.n1 = q.n0-a.U.Dot(a.O), q.n1-a.U.Dot(a.O)
	return q
}

// sign is the sign of x, 1 for zero.
func sign(x float64) float64 {
	if x < 0 {
		return -1
	}
	return 1
}

// plumb is the side of a cut at a plumb plane, y inward of the plate's outer
// face: with s = 1 the cut lies on the outer side of it, with s = -1 on the inner.
func (q seatShape) plumb(s, y float64, role string) solid.Side {
	n := q.in.Mul(s)
	return solid.Side{Plane: solid.Plane{N: n, D: n.Dot(q.outer) + s*y}, Role: role}
}

// start is what both kinds of seat have: lines, places, and the underside
// brought to the ideal section.
func (q seatShape) start(s Site, title string) (Result, *carver, *carver) {
	res := base(s, q.a, q.n, title)
	res.Joint.Moves = []geom.Move{{Direction: q.a.W.Neg(), Distance: q.cross * q.sin / q.cos}}
	u, _, _ := q.a.Of(s.E.Place.O)
	near := q.u0
	if math.Abs(u-q.u1) < math.Abs(u-q.u0) {
		near = q.u1
	}
	res.Joint.Lines = []geom.Line{{Name: "reference side of " + s.E.ID, X: near, Main: true}, {Name: "other side of " + s.E.ID, X: q.u0 + q.u1 - near}}
	under := func(y float64) float64 {
		at := q.outer.Add(q.in.Mul(y))
		return s.E.Place.In(at.Sub(q.a.W.Mul(q.under.Height(at) / q.under.N.Dot(q.a.W)))).X
	}
	arris := s.E.Place.In(q.outer).X
	res.Joint.Places = []geom.Place{{On: s.E, Label: "plumb heel on the underside", X: under(0)},
		{On: s.E, Label: "heel's corner", X: arris},
		{On: s.E, Label: "seat's end on the underside", X: under(q.cross)}}
	ec := &carver{t: s.E, id: s.ID}
	// Bring the underside to the ideal section over the seat.
	ec.take("reduction", solid.Side{Plane: q.under.Flip(), Role: geom.RoleReduced},
		q.plumb(1, q.cross+entry/q.sin+q.extra(s)/q.sin, geom.RoleReduced), q.plumb(-1, 0, geom.RoleReduced))
	return res, &carver{t: s.R, id: s.ID}, ec
}

// letHeel lets the rafter into a receiver whose real face stands out beyond
// the ideal one that the heel lies against, as at the ridge and on the high
// plate of a shed roof: down along the rafter's real underside.
func (q seatShape) letHeel(s Site, rc *carver, j *geom.Joint) {
	out := s.R.FaceToward(q.in.Neg())
	heel := ideal(s.R, out)
	_, far := s.R.Blank.Moved(s.R.Place).Extent(heel.N)
	if far-heel.D < 1e-3 {
		return
	}
	below := q.under
	below.D += q.extra(s)
	rc.take("housing", q.plumb(1, 0, geom.RoleWall), solid.Side{Plane: below, Role: geom.RoleFloor},
		half(q.a, q.a.U, -1, q.n0, geom.RoleEnd), half(q.a, q.a.U, 1, q.n1, geom.RoleEnd))
	d := dimmer{j: j, a: q.a}
	d.on(s.R, geom.Cutter)
	p := q.outer.Add(q.a.U.Mul(q.u0))
	d.add("heel let in behind the face", q.in, p.Sub(q.in.Mul(far-heel.D)), p)
	d.add("let in below the top at the heel", q.a.W, p, p.Sub(q.a.W.Mul(below.Height(p)/below.N.Dot(q.a.W))))
}

// extra is how far the rafter's real underside lies below the ideal one.
func (q seatShape) extra(s Site) float64 {
	_, hi := s.E.Blank.Moved(s.E.Place).Extent(q.under.N)
	return max(hi-q.under.D, 0)
}

func cutBirdsmouth(s Site) Result {
	q := shapeSeat(s)
	res, rc, ec := q.start(s, "Birdsmouth rafter seat")
	q.letHeel(s, rc, &res.Joint)
	level := half(q.a, q.a.W, 1, 0, geom.RoleSeat)
	ec.take("birdsmouth", level, q.plumb(-1, 0, geom.RoleBearing))
	res.R, res.E = rc.cuts, ec.cuts
	q.finish(s, &res, q.cross/2, 0)
	q.heelDims(s, &res, "seat length", q.cross, q.cross)
	q.holeDims(s, &res)
	return res
}

// Steps of a step lap start at the underside's crossing with the plate's top;
// the wood left between the last butt and the plate's outer face is two fifths
// of the crossing, at least 1 in (common practice, no source).
func (q seatShape) stepEnd() float64 { return min(max(0.4*q.cross, inch), 0.7*q.cross) }

func cutStepLap(s Site) Result {
	q := shapeSeat(s)
	res, rc, ec := q.start(s, "Step-lap rafter seat")
	q.letHeel(s, rc, &res.Joint)
	steps := max(s.Set.Steps, 1)
	last := q.stepEnd()
	run := (q.cross - last) / float64(steps)
	level := half(q.a, q.a.W, 1, 0, geom.RoleSeat)
	for i := range steps {
		from := q.cross - float64(i)*run
		to := from - run
		table := q.under.Offset(-float64(i) * run * q.sin)
		butt := q.butt(to)
		rc.take("notch", solid.Side{Plane: table, Role: geom.RoleTable}, solid.Side{Plane: butt, Role: geom.RoleButt},
			half(q.a, q.a.U, -1, q.n0, geom.RoleEnd), half(q.a, q.a.U, 1, q.n1, geom.RoleEnd))
		if i+1 < steps {
			continue
		}
		ec.take("step seat", level, solid.Side{Plane: butt.Flip(), Role: geom.RoleButt}, q.plumb(-1, 0, geom.RoleBearing))
	}
	// Between steps the rafter loses the wood outside each butt down to the next table.
	for i := range steps - 1 {
		to := q.cross - float64(i+1)*run
		next := q.under.Offset(-float64(i+1) * run * q.sin)
		ec.take("step", solid.Side{Plane: q.butt(to).Flip(), Role: geom.RoleButt}, solid.Side{Plane: next.Flip(), Role: geom.RoleTable}, q.plumb(-1, 0, ""))
	}
	res.R, res.E = rc.cuts, ec.cuts
	q.finish(s, &res, q.cross-run/2, run/2*q.sin*q.cos)
	q.stepDims(s, &res, steps, run)
	q.heelDims(s, &res, "seat, heel to butt", last, last)
	q.holeDims(s, &res)
	return res
}

// butt is the plane square to the rafter through the plate's top at y, facing
// up the slope reversed: it keeps what lies up the slope.
func (q seatShape) butt(y float64) solid.Plane {
	return solid.PlaneAt(q.outer.Add(q.in.Mul(y)), q.up.Neg())
}

// finish adds contact planes and the seat's peg, square to the rafter's top,
// through the rafter at y and blind in the plate. below is how far the table
// lies under the plate's top at y.
func (q seatShape) finish(s Site, res *Result, y, below float64) {
	j := &res.Joint
	j.Bearing = solid.Plane{N: q.a.W, D: q.a.W.Dot(q.a.O)}
	mid := q.outer.Add(q.a.U.Mul((q.u0 + q.u1) / 2)).Add(q.in.Mul(y))
	if s.Set.PegOff > 0 {
		u, _, _ := q.a.Of(s.E.Place.O)
		side := q.u0 + s.Set.PegOff
		if math.Abs(u-q.u1) < math.Abs(u-q.u0) {
			side = q.u1 - s.Set.PegOff
		}
		mid = q.outer.Add(q.a.U.Mul(side)).Add(q.in.Mul(y))
	}
	mid = mid.Sub(q.a.W.Mul(below))
	if below > 0 { // on the table, where the rafter ends and the plate begins
		mid = mid.Sub(q.under.N.Mul(q.under.Height(mid)))
	}
	down := q.under.N
	for i := range min(s.Set.Pegs, 1) {
		top := geom.Opposite(q.uFace)
		p := geom.Peg{ID: pegID(s.ID, i), Bore: s.Set.Bore, Head: s.Set.Head, Entry: q.n, Words: geom.NotOffset, PFrom: "outer face", P: y,
			Mortise: mid, Tenon: mid}
		p.From = onPlane(s.E, top, mid, down)
		p.To = bottom(s, mid, down)
		res.Bores = append(res.Bores,
			Hole{s.E, geom.Bore{Joint: s.ID, Peg: p.ID, Diameter: s.Set.Bore, Entry: top, Exit: q.uFace,
				From: s.E.Place.In(p.From.Sub(down.Mul(past))), To: s.E.Place.In(onPlane(s.E, q.uFace, mid, down).Add(down.Mul(past)))}},
			Hole{s.R, geom.Bore{Joint: s.ID, Peg: p.ID, Diameter: s.Set.Bore, Entry: q.n,
				From: s.R.Place.In(mid.Sub(down.Mul(past + below/q.cos))), To: s.R.Place.In(p.To)}})
		p.Rules = q.rules(s)
		j.Pegs = append(j.Pegs, p)
	}
}

// rules of a seat peg: the rafter's two sides, in the plane of its top face.
func (q seatShape) rules(s Site) []peg.Rule {
	return []peg.Rule{
		rule(s.E, s.Set, "rafter side", peg.Edge, vec.P{X: -1}, -q.u0),
		rule(s.E, s.Set, "rafter side", peg.Edge, vec.P{X: 1}, q.u1),
	}
}
