package joint

import (
	"math"

	"pegwright/geom"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// Laps: two timbers lie flat in one another, each giving way over the other's
// width. A cross lap crosses both timbers along their length, a half lap lays
// the end of one on the other, a corner lap joins end to end. They close
// square to the plane of both timbers and their holes are in line.

func fitsCrossLap(s Site) string { return fitsLap(s, s.End == geom.Mid, "a cross lap has no end") }

func fitsHalfLap(s Site) string {
	return fitsLap(s, s.End != geom.Mid, "the enterer needs an end at the joint")
}

func fitsCornerLap(s Site) string {
	return fitsLap(s, s.End != geom.Mid && s.REnd != geom.Mid, "a corner lap joins an end to an end")
}

func fitsLap(s Site, ends bool, otherwise string) string {
	if !ends {
		return otherwise
	}
	if _, _, ok := flatFaces(s); !ok {
		return "they do not lie flat on each other at 15° or more; a face of each must be square to the plane of both"
	}
	return shapeLap(s).fits(s)
}

func reachLap(s Site) Tips {
	q := shapeLap(s)
	t := Tips{R: math.NaN(), E: math.NaN()}
	if s.End != geom.Mid {
		t.E = tipHolding(s.E, s.End, q.corners())
	}
	if s.REnd != geom.Mid {
		t.R = tipHolding(s.R, s.REnd, q.corners())
	}
	return t
}

func cutLap(s Site) Result {
	q := shapeLap(s)
	sides := []solid.Side{inside(q.in, geom.RoleEnd)}
	if s.REnd == geom.Mid {
		sides = append(sides, inside(q.out, geom.RoleEnd))
	}
	res := q.start(s, "Lap", sides)
	res.Joint.Lines, res.Joint.Places = q.lines(s), q.places(s)
	ec := &carver{t: s.E, id: s.ID, cuts: res.E}
	q.bring(ec, s, entry)
	res.E = ec.cuts
	q.pegs(s, &res, q.corners())
	q.dims(s, &res.Joint)
	return res
}

// start takes the wood that both timbers lose in any lap. The receiver's notch
// is bounded by the given sides; more cuts of the enterer follow.
func (q lapShape) start(s Site, title string, notch []solid.Side) Result {
	a := q.a
	res := base(s, a, q.n, title)
	j := &res.Joint
	j.Housing, j.Broad, j.Bearing = 0, true, q.near
	rc, ec := &carver{t: s.R, id: s.ID}, &carver{t: s.E, id: s.ID}
	if s.REnd != geom.Mid {
		rc.take("end", outside(q.out, geom.RoleEnd))
	}
	rc.take("notch", append([]solid.Side{half(a, a.W, -1, q.meet, geom.RoleTable)}, notch...)...)
	width := []solid.Side{inside(q.in, geom.RoleEnd)}
	if s.REnd == geom.Mid {
		width = append(width, inside(q.out, geom.RoleEnd))
	}
	q.house(rc, s, width...)
	over := []solid.Side{half(a, a.W, 1, q.meet, geom.RoleTable), inside(q.near, geom.RoleShoulder)}
	if s.End == geom.Mid {
		over = append(over, inside(q.far, geom.RoleButt))
	} else {
		ec.take("end", outside(q.far, geom.RoleEnd))
	}
	ec.take("cheek", over...)
	c := q.corners()
	mid := c[0].Add(c[2]).Mul(0.5)
	body := []solid.Side{half(a, a.W, -1, q.meet, geom.RoleTable), half(a, a.W, 1, min(q.top, 0), ""),
		inside(q.near, geom.RoleShoulder), inside(q.far, geom.RoleEnd)}
	if s.REnd != geom.Mid {
		body = append(body, inside(q.out, ""))
	}
	j.Mortise = frameBlock(mid, append(body, notch...)...)
	j.Tenon = j.Mortise.Inside(inside(q.in, geom.RoleCheek), inside(q.out, geom.RoleCheek))
	j.Moves = []geom.Move{{Direction: a.W.Neg(), Distance: max(-q.meet, q.meet-q.bottom)}}
	if s.E.Role == "joist" && s.End != geom.Mid && a.W.Z > 0.9 {
		if w, bad := stretched(s, q.meet-q.bottom, q.top-q.bottom); bad {
			res.Warns = append(res.Warns, w)
		}
	}
	res.R, res.E = rc.cuts, ec.cuts
	return res
}

// lines are where the enterer's sides cross the receiver's reference side.
func (q lapShape) lines(s Site) []geom.Line {
	u := q.crossings(true)
	if s.REnd != geom.Mid {
		i, _, _ := q.a.Of(solid.Meet(q.in, q.refSide(), q.face()))
		return []geom.Line{{Name: "inner edge of " + s.E.ID, X: i, Main: true}}
	}
	return []geom.Line{{Name: "near edge of " + s.E.ID, X: u[0], Main: true}, {Name: "far edge of " + s.E.ID, X: u[1]}}
}

func (q lapShape) face() solid.Plane { return solid.Plane{N: q.a.W, D: q.a.W.Dot(q.a.O)} }

// refSide is the receiver's side that is a reference face.
func (q lapShape) refSide() solid.Plane {
	if geom.IsReference(q.nearN) {
		return q.near
	}
	return q.far
}

// crossings returns the u of the enterer's two sides on the receiver's
// reference side, or on the other, the lesser first.
func (q lapShape) crossings(ref bool) [2]float64 {
	pl := q.near
	if geom.IsReference(q.nearN) != ref {
		pl = q.far
	}
	u0, _, _ := q.a.Of(solid.Meet(q.in, pl, q.face()))
	u1, _, _ := q.a.Of(solid.Meet(q.out, pl, q.face()))
	return [2]float64{min(u0, u1), max(u0, u1)}
}

// places are the points of a lap that are struck on the enterer.
func (q lapShape) places(s Site) []geom.Place {
	p := []geom.Place{{On: s.E, Label: "shoulder on the reference arris", X: arrisAt(s.E, q.near)}}
	if s.End == geom.Mid {
		p = append(p, geom.Place{On: s.E, Label: "other shoulder on the reference arris", X: arrisAt(s.E, q.far)})
	}
	if q.square() {
		return p
	}
	u := q.crossings(false)
	return append(p, geom.Place{On: s.R, Label: "near edge on the other side", X: u[0]}, geom.Place{On: s.R, Label: "far edge on the other side", X: u[1]})
}

// dims asks for the dimensions that a lap is scribed with.
func (q lapShape) dims(s Site, j *geom.Joint) {
	a := q.a
	c := q.corners()
	d := dimmer{j: j, a: a}
	down := func(p vec.V, w float64) vec.V { return p.Add(a.W.Mul(w)) }
	d.on(s.R, geom.Cutter)
	d.add("notch depth below "+faceName(s.R, a.W), a.W, down(c[0], q.meet), c[0])
	if s.REnd == geom.Mid {
		d.add("notch along the stick", a.U, c[0], c[1])
	} else {
		d.add("notch from the inner edge to the end", a.U, c[0], c[1])
	}
	if !q.square() {
		d.add("sides of the notch run on across the stick by", a.U, c[0], c[3])
	}
	q.letIn(s, &d)
	q.sideDims(s, &d)
	q.entererDims(s, &d, entry)
	q.holeDims(j, &d)
}

// letIn asks for the notch's depth where the receiver's real face stands above
// its ideal one.
func (q lapShape) letIn(s Site, d *dimmer) {
	lo, hi := q.crossings(true), q.crossings(false)
	across, _ := sizes(s.R, q.n)
	real := letIn(s, q.a, q.n, min(lo[0], hi[0]), max(lo[1], hi[1]), 0, across)
	if real > 1e-3 {
		c := q.corners()[0]
		d.add("notch depth below the real face", q.a.W, c.Add(q.a.W.Mul(q.meet)), c.Add(q.a.W.Mul(real)))
	}
}

// sideDims asks for the depth to which the receiver's sides are trued where
// they stand out from its ideal ones.
func (q lapShape) sideDims(s Site, d *dimmer) {
	low := d.a.W.Dot(d.a.O)
	bottom, _ := s.E.Blank.Moved(s.E.Place).Extent(d.a.W)
	c := q.corners()[0]
	near := outermost(s.R, q.nearN).D - q.near.D
	far := 0.0
	if s.End == geom.Mid {
		far = outermost(s.R, q.farN).D - q.far.D
	}
	if max(near, far) > 1e-3 && bottom-low > -q.depth+tol {
		d.add("sides of the notch trued down from the "+faceName(s.R, d.a.W), d.a.W, c.Add(d.a.W.Mul(bottom-low)), c)
	}
}

// entererDims asks for the enterer's cuts; its sides are brought to the ideal
// section to the given length beyond the receiver's real side.
func (q lapShape) entererDims(s Site, d *dimmer, more float64) {
	a := q.a
	c := q.corners()
	down := func(p vec.V, w float64) vec.V { return p.Add(a.W.Mul(w)) }
	d.on(s.E, geom.Cutter)
	d.add("wood left in the lap"+ofIdeal(s.E, a.W, " from the ideal face"), a.W, down(c[0], q.meet), down(c[0], q.top))
	d.add("wood cut away"+ofIdeal(s.E, a.W.Neg(), " from the ideal face"), a.W, down(c[0], q.bottom), down(c[0], q.meet))
	label := "shoulder to end"
	if s.End == geom.Mid {
		label = "shoulder to shoulder"
	}
	d.add(label+" along the stick", s.E.Place.X, c[0], c[3])
	if !q.square() {
		d.add("shoulder leans along the stick by", s.E.Place.X, c[0], c[1])
	}
	if outermost(s.E, q.inN).D-q.in.D < 1e-3 && outermost(s.E, q.outN).D-q.out.D < 1e-3 {
		return
	}
	n, past := q.near.N, outermost(s.R, q.nearN).D-q.near.D+more
	d.reduced(c[0], n, past)
	if far := outermost(s.R, q.farN).D - q.far.D + more; s.End == geom.Mid && math.Abs(far-past) > 1e-3 {
		d.add("reduced past the other shoulder", q.far.N, c[3], c[3].Add(q.far.N.Mul(far)))
	}
}
