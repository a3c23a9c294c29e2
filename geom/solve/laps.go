package solve

import (
	"fmt"
	"math"

	"pegwright/geom"
	"pegwright/geom/joint"
	"pegwright/geom/spec"
	"pegwright/geom/vec"
	"pegwright/geom/wood"
)

// lapped reports whether a joint of this kind is let into a face, without a
// tenon: its holes are in line.
func lapped(kind string) bool {
	switch kind {
	case "cross lap", "half lap", "corner lap", "half-dovetail lap", "drop-in pocket":
		return true
	}
	return false
}

// lapSettings gives a lap or a pocket its numbers. A pocket has no peg unless
// it is asked for.
func (s *solver) lapSettings(p *pact, u spec.JointSettings, set *joint.Settings) {
	set.LapDepth, set.IntoFace = u.LapDepth.Or(0), int(u.IntoFace.Or(0))
	set.Flare, set.Wedge = s.std.flare, u.Wedge.Or(false)
	if u.Flare.Set {
		set.Flare = u.Flare.Run
	}
	set.Bearing, set.PocketDepth = u.Bearing.Or(s.std.bearing), u.PocketDepth.Or(0)
	set.Bore = u.Bore.Or(s.std.smallBore)
	if p.kind == "drop-in pocket" && !u.Pegs.Set {
		set.Pegs = 0
	}
	set.Auto, set.Offset, set.Housing = false, 0, 0
}

// saneLap faults what a lap cannot be.
func (s *solver) saneLap(p *pact) {
	if d := p.user.Drawbore; d.Set && d.Mode == spec.DrawLength && d.MM != 0 {
		s.fault(d.At, s.f.Units.FormatJoint(d.MM), "a "+p.kind+" is not drawn: its holes are in line", "take drawbore away, or write drawbore: none")
	}
	most := min(p.r.t.Ideal[0], p.r.t.Ideal[1], p.e.t.Ideal[0], p.e.t.Ideal[1])
	if p.set.Pegs > 0 && p.set.Bore > most/2 {
		s.fault(p.at, s.f.Units.FormatJoint(p.set.Bore), fmt.Sprintf("a bore of this size does not fit the joint of %s and %s", p.e.t.ID, p.r.t.ID), "bore a third of the thinner timber or less")
	}
}

// crosses faults joints along the length of both timbers that do not reach
// each other there.
func (s *solver) crosses(p *pact) {
	r, e := p.r.t, p.e.t
	// Nearest points of the two middle lines.
	mid := func(t *geom.Timber) vec.V { return t.Place.Out(vec.V{Y: t.Ideal[0] / 2, Z: t.Ideal[1] / 2}) }
	a, b, d := r.Place.X, e.Place.X, mid(e).Sub(mid(r))
	c := a.Dot(b)
	if math.Abs(c) > 1-1e-9 {
		return
	}
	x := (d.Dot(a) - c*d.Dot(b)) / (1 - c*c)
	y := x*c - d.Dot(b)
	if x < 0 || x > r.Length || y < 0 || y > e.Length {
		s.fault(p.at, e.ID+" into "+r.ID, fmt.Sprintf("%s and %s do not cross", e.ID, r.ID),
			"move one of them or make it longer, so that each runs past the other")
	}
}

// slip reckons how far a tapered tail slides before it bites in service, and
// puts it in words.
func (s *solver) slip(p *pact, j *geom.Joint, tail joint.Tail) {
	if tail.Width == 0 {
		return
	}
	e := p.e.t
	shrunk := e.Wood.Shrinkage(wood.Tangential, e.Moisture, s.f.Stock.Service)
	j.Slip = joint.Slip(tail.Width, shrunk, tail.Run)
	if j.Slip < 0.5 {
		return
	}
	f := s.f.Units.FormatJoint
	j.Words = append(j.Words, fmt.Sprintf("The tail of %s narrows by up to %s as it dries to %g %% and then slips %s along itself before it bites: use dry stock, or let the peg carry it.",
		e.ID, f(tail.Width*shrunk), s.f.Stock.Service, f(j.Slip)))
	if len(j.Pieces) > 0 {
		j.Words = append(j.Words, "Drive the wedge again after the first winter.")
	}
}
