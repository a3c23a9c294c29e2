package joint

import (
	"math"

	"pegwright/geom"
	"pegwright/geom/peg"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// A bridle joins two timbers end to end at an angle, as rafters at their peak:
// the receiver is slotted into a fork, the enterer left as a tongue. Outer
// faces meet flush; each end is cut on the other's outer face.

func fitsBridle(s Site) string {
	if s.End == geom.Mid || s.REnd == geom.Mid {
		return "a bridle joins an end to an end"
	}
	if c := math.Abs(s.R.Place.X.Dot(s.E.Place.X)); c > 0.985 {
		return "the two timbers lie in one line; use a scarf"
	}
	a := bridleOf(s)
	if math.Abs(s.E.Place.X.Dot(a.side)) > 1e-6 {
		return "the two timbers do not lie in one plane"
	}
	return ""
}

// bridleShape names the planes of a bridle, all in frame axes and outward.
type bridleShape struct {
	side           vec.V // across both timbers, out of the joint's plane
	rOuter, rInner solid.Plane
	eOuter, eInner solid.Plane
	rFace, eFace   int // inner faces
	v0             float64
}

// bridleOf lays out a bridle in the plane of its two timbers.
func bridleOf(s Site) bridleShape {
	ra := s.R.Place.X
	if s.REnd == geom.Finish {
		ra = ra.Neg()
	}
	ea := s.away()
	// Directions from the joint into each timber; their sum points inward.
	in := ra.Add(ea).Unit()
	b := bridleShape{side: ra.Cross(ea).Unit()}
	ro, eo := s.R.FaceToward(in.Neg()), s.E.FaceToward(in.Neg())
	b.rFace, b.eFace = geom.Opposite(ro), geom.Opposite(eo)
	b.rOuter, b.rInner = ideal(s.R, ro), ideal(s.R, b.rFace)
	b.eOuter, b.eInner = ideal(s.E, eo), ideal(s.E, b.eFace)
	// Across: v from the receiver's reference side face, into the wood.
	ref := 1
	if ro == 1 || ro == 3 {
		ref = 2
	}
	pl := ideal(s.R, ref)
	b.side = pl.N.Neg()
	b.v0 = -pl.D
	return b
}

// corners returns the four corners of the rhombus that both timbers share, in
// the plane v = 0: outer-outer, rOuter-eInner, inner-inner, rInner-eOuter.
func (b bridleShape) corners() [4]vec.V {
	m := func(p, q solid.Plane) vec.V { return solid.Meet(p, q, solid.Plane{N: b.side, D: b.v0}) }
	return [4]vec.V{m(b.rOuter, b.eOuter), m(b.rOuter, b.eInner), m(b.rInner, b.eInner), m(b.rInner, b.eOuter)}
}

func reachBridle(s Site) Tips {
	c := bridleOf(s).corners()
	return Tips{R: tipHolding(s.R, s.REnd, c), E: tipHolding(s.E, s.End, c)}
}

// at is the plane v across the receiver's side face, facing with sign.
func (b bridleShape) at(v, sign float64, role string) solid.Side {
	return solid.Side{Plane: solid.Plane{N: b.side.Mul(sign), D: sign * (b.v0 + v)}, Role: role}
}

// behind and beyond are the two sides of a plane.
func behind(p solid.Plane, role string) solid.Side { return solid.Side{Plane: p, Role: role} }
func beyond(p solid.Plane, role string) solid.Side { return solid.Side{Plane: p.Flip(), Role: role} }

func cutBridle(s Site) Result {
	b := bridleOf(s)
	a := frameOf(s.R, b.rFace)
	res := base(s, a, b.rFace, "Bridle")
	j := &res.Joint
	res.R, res.E = b.cuts(s)
	c := b.corners()
	r0, r1 := s.Set.FromRef, s.Set.FromRef+s.Set.Thickness
	mid := c[0].Add(c[2]).Mul(0.5).Add(b.side.Mul((r0 + r1) / 2))
	j.Tenon = frameBlock(mid, b.at(r0, -1, geom.RoleCheek), b.at(r1, 1, geom.RoleCheek),
		behind(b.rOuter, geom.RoleEnd), behind(b.rInner, geom.RoleShoulder), behind(b.eOuter, ""), behind(b.eInner, ""))
	j.Mortise = frameBlock(mid, append(b.slot(s),
		behind(b.rOuter.Offset(open), ""), behind(b.rInner.Offset(open), ""), behind(b.eOuter.Offset(open), ""))...)
	j.Bearing = b.rInner
	j.Moves = []geom.Move{{Direction: s.away().Neg(), Distance: c[1].Dist(c[3])}}
	u, _, _ := a.Of(c[2])
	u3, _, _ := a.Of(c[3])
	j.Lines = []geom.Line{{Name: "throat, where the undersides meet", X: u, Main: true}, {Name: "where the underside meets the top of " + s.E.ID, X: u3}}
	j.Places = []geom.Place{{On: s.R, Label: "peak on the top", X: s.R.Place.In(c[0]).X}, {On: s.E, Label: "peak on the top", X: s.E.Place.In(c[0]).X},
		{On: s.E, Label: "throat on the underside", X: s.E.Place.In(c[2]).X}}
	b.peg(s, &res, mid)
	b.dims(s, j, r0, r1)
	return res
}

// slot bounds the slot of the fork: two walls and its floor.
func (b bridleShape) slot(s Site) []solid.Side {
	r0, r1 := s.Set.FromRef, s.Set.FromRef+s.Set.Thickness
	return []solid.Side{b.at(r0, -1, geom.RoleWall), b.at(r1+s.Set.Clearance, 1, geom.RoleWall), behind(b.eInner, geom.RoleFloor)}
}

// cuts takes the slot from the receiver and all but the tongue from the enterer.
func (b bridleShape) cuts(s Site) (receiver, enterer []geom.Cut) {
	r0, r1 := s.Set.FromRef, s.Set.FromRef+s.Set.Thickness
	rc := &carver{t: s.R, id: s.ID}
	rc.take("end", beyond(b.eOuter, geom.RoleEnd))
	rc.take("slot", b.slot(s)...)
	rc.take("reduction", beyond(b.rInner, geom.RoleReduced), behind(outermost(s.E, b.eFace).Offset(entry), geom.RoleReduced))
	ec := &carver{t: s.E, id: s.ID}
	ec.take("end", beyond(b.rOuter, geom.RoleEnd))
	ec.take("cheek", b.at(r0, 1, geom.RoleCheek), behind(b.rInner, geom.RoleShoulder))
	ec.take("cheek", b.at(r1, -1, geom.RoleCheek), behind(b.rInner, geom.RoleShoulder))
	ec.take("reduction", beyond(b.eInner, geom.RoleReduced), behind(outermost(s.R, b.rFace).Offset(entry), geom.RoleReduced))
	return rc.cuts, ec.cuts
}

// peg bores the middle of the shared rhombus. The usual bridle is not drawn.
func (b bridleShape) peg(s Site, res *Result, mid vec.V) {
	a := res.Joint.Axes
	for i := range min(s.Set.Pegs, 1) {
		u, v, w := a.Of(mid)
		shift := s.away().Mul(s.Set.Offset)
		p := geom.Peg{Words: "toward the shoulder", Draw: s.away().Neg(), PFrom: "throat", P: math.Abs(u - res.Joint.Lines[0].X), A: -w, AlongBrace: true}
		if s.Set.Offset == 0 {
			p.Words = geom.NotOffset
		}
		p.B = -b.rInner.Height(p.Mortise)
		hole{s: s, a: a, n: b.rFace, u: u, w: w, v: v, shift: shift}.bore(&p, i, res)
		p.B = -b.rInner.Height(p.Tenon)
		d := s.away().Neg()
		p.Relish = -b.rOuter.Height(p.Tenon) / b.rOuter.N.Dot(d)
		p.Rules = b.rules(s, a)
		res.Joint.Pegs = append(res.Joint.Pegs, p)
	}
}

// rules are the four faces round the hole, along the grain at the ends.
func (b bridleShape) rules(s Site, a geom.Axes) []peg.Rule {
	flat := func(n vec.V) vec.P { return vec.P{X: n.Dot(a.U), Y: n.Dot(a.W)} }
	mk := func(t *geom.Timber, h peg.Hole, name string, k peg.Kind, pl solid.Plane, grain vec.V) peg.Rule {
		r := peg.NewRule(k, h, flat(pl.N), -pl.Height(a.O), s.Set.Bore, t.Wood)
		r.Name, r.Timber = name, t.ID
		if k == peg.End {
			r.Grain = flat(grain)
		}
		return r
	}
	e := s.away().Neg()
	r := s.R.Place.X
	if s.REnd == geom.Start {
		r = r.Neg()
	}
	return []peg.Rule{
		mk(s.E, peg.TenonHole, "tongue end", peg.End, b.rOuter, e),
		mk(s.E, peg.TenonHole, "tongue outer edge", peg.Edge, b.eOuter, vec.V{}),
		mk(s.E, peg.TenonHole, "tongue inner edge", peg.Edge, b.eInner, vec.V{}),
		mk(s.R, peg.MortiseHole, "fork end", peg.End, b.eOuter, r),
		mk(s.R, peg.MortiseHole, "fork outer edge", peg.Edge, b.rOuter, vec.V{}),
		mk(s.R, peg.MortiseHole, "fork inner edge", peg.Edge, b.rInner, vec.V{}),
	}
}

// dims asks for the dimensions that a bridle is scribed with.
func (b bridleShape) dims(s Site, j *geom.Joint, r0, r1 float64) {
	c := b.corners()
	d := dimmer{j: j, a: j.Axes}
	v := func(p vec.V, x float64) vec.V { return p.Add(b.side.Mul(x)) }
	d.on(s.R, geom.Cutter)
	d.add("slot from reference face", b.side, c[2], v(c[2], r0))
	d.add("slot width", b.side, v(c[2], r0), v(c[2], r1+s.Set.Clearance))
	d.on(s.E, geom.Cutter)
	d.add("tongue thickness", b.side, v(c[2], r0), v(c[2], r1))
	b.tongueDims(s, &d)
	for _, p := range j.Pegs {
		d.on(s.R, geom.Borer)
		d.add("underside to hole", j.Axes.W, c[2], p.Mortise)
		d.add("throat to hole along the stick", s.R.Place.X, c[2], p.Mortise)
		d.on(s.E, geom.Borer)
		d.add("throat to hole along the stick", s.E.Place.X, c[2], p.Tenon)
		d.add("underside to hole", b.eInner.N, c[2], p.Tenon)
	}
}

// tongueDims asks for the lengths of slot and tongue along the two sticks, for
// the tongue's place across its own, and for how far both are brought to their
// ideal sections.
func (b bridleShape) tongueDims(s Site, d *dimmer) {
	c := b.corners()
	r0, r1 := b.v0+s.Set.FromRef, b.v0+s.Set.FromRef+s.Set.Thickness
	past := func(t *geom.Timber, other solid.Plane, x *geom.Timber, n int) {
		if outermost(t, 3).D-ideal(t, 3).D < 1e-3 && outermost(t, 4).D-ideal(t, 4).D < 1e-3 {
			return
		}
		by := outermost(x, n).D - other.D + entry
		dir := t.Place.X.Mul(sign(t.Place.X.Dot(other.N)))
		d.add("underside reduced past the throat", dir, c[2], c[2].Add(dir.Mul(by/dir.Dot(other.N))))
	}
	d.on(s.R, geom.Cutter)
	d.add("slot depth along the stick", s.R.Place.X, c[2], c[3])
	past(s.R, b.eInner, s.E, b.eFace)
	d.on(s.E, geom.Cutter)
	ref := b.side.Neg()
	from := r0
	if !geom.IsReference(s.E.FaceToward(ref)) {
		ref, from = b.side, -r1
	}
	face := ideal(s.E, s.E.FaceToward(ref))
	at := c[2].Add(ref.Mul(face.D - ref.Dot(c[2])))
	d.add("tongue from reference face", ref, at, at.Sub(ref.Mul(face.D+from)))
	d.add("tongue length along the stick", s.E.Place.X, c[1], c[2])
	past(s.E, b.rInner, s.R, b.rFace)
}
