package solve

import (
	"fmt"

	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/scheme"
	"pegwright/geom/spec"
)

// sane faults numbers that leave no joint at all.
func (s *solver) sane(p *settled) {
	r, e := p.R.Timber, p.E.Timber
	most := min(r.Ideal[0], r.Ideal[1])
	if scheme.Lapped(p.Kind) {
		s.saneLap(p)
		return
	}
	s.saneWedged(p)
	if scheme.IsScarf(p.Kind) {
		s.saneScarf(p)
		return
	}
	if p.Kind == "plain bearing" || p.End == geom.Mid {
		return
	}
	if p.set.Thickness >= most {
		at := s.saidAt(p, func(j spec.JointSettings) spec.Length { return j.Thickness })
		s.Fault(at, s.Frame.Units.FormatJoint(p.set.Thickness), fmt.Sprintf("the tenon of %s is as thick as %s itself (%s)", e.ID, r.ID, s.Frame.Units.FormatJoint(most)),
			"make the tenon a quarter to a third of the timber's thickness")
	}
	if p.set.Bore > most/2 {
		at := s.saidAt(p, func(j spec.JointSettings) spec.Length { return j.Bore })
		s.Fault(at, "", fmt.Sprintf("a bore of %s is more than half of what %s is thick (%s)", s.Frame.Units.FormatJoint(p.set.Bore), r.ID, s.Frame.Units.FormatJoint(most)), "bore 3/4 to 1-1/4 in (20 to 30 mm)")
	}
	if p.set.Pegs > 4 {
		s.Fault(p.At, fmt.Sprint(p.set.Pegs), "no more than four pegs go in one joint", "give 0 to 4")
	}
}

// saidAt is where a length of a joint's settings stands in the description: at
// the joint, in an adjustment or in the layout, else where the joint comes from.
func (s *solver) saidAt(p *settled, of func(spec.JointSettings) spec.Length) finding.Pos {
	for _, l := range []spec.Length{of(p.User), of(s.Description.Layout.For(p.E.Timber.Role)), of(p.Own)} {
		if l.Set && l.At.Line > 0 { // what the generator sets has no place
			return l.At
		}
	}
	return p.At
}

// saneLap faults what a lap cannot be.
func (s *solver) saneLap(p *settled) {
	if d := p.User.Drawbore; d.Set && d.Mode == spec.DrawLength && d.MM != 0 {
		s.Fault(d.At, s.Frame.Units.FormatJoint(d.MM), "a "+p.Kind+" is not drawn: its holes are in line", "take drawbore away, or write drawbore: none")
	}
	pegs, words := 2, "two pegs"
	if p.Kind == "half-dovetail lap" || p.Kind == "drop-in pocket" {
		pegs, words = 1, "one peg"
	}
	if p.set.Pegs > pegs {
		s.Fault(s.Asked(p.Pact).Pegs.At, fmt.Sprint(p.set.Pegs), "a "+p.Kind+" takes "+words+" at the most", fmt.Sprintf("give 0 to %d", pegs))
	}
	most := min(p.R.Timber.Ideal[0], p.R.Timber.Ideal[1], p.E.Timber.Ideal[0], p.E.Timber.Ideal[1])
	if p.set.Pegs > 0 && p.set.Bore > most/2 {
		s.Fault(p.At, s.Frame.Units.FormatJoint(p.set.Bore), fmt.Sprintf("a bore of this size does not fit the joint of %s and %s", p.E.Timber.ID, p.R.Timber.ID), "bore a third of the thinner timber or less")
	}
}
