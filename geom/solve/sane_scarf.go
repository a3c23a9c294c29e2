package solve

import (
	"fmt"

	"pegwright/geom/finding"
	"pegwright/geom/spec"
)

// saneScarf faults the numbers that leave no scarf, and warns of a length
// outside 3 to 6 times the depth (common practice, no source).
func (s *solver) saneScarf(p *pact) {
	u, show := s.laid(p).Scarf, s.f.Units.FormatJoint
	n := p.r.t.Section
	deep := n[0]
	if (p.r.depthAxis() == 1) != p.set.Scarf.Upright {
		deep = n[1]
	}
	at := func(l spec.Length) finding.Pos {
		if l.Set {
			return l.At
		}
		return p.at
	}
	c := p.set.Scarf
	if c.Butt >= deep/2 {
		s.fault(at(u.Butt), show(c.Butt), fmt.Sprintf("butts of half the depth of %s (%s) or more leave its scarf no slope", p.r.t.ID, show(deep)), "make the butts a quarter of the depth or less, or use a half-lap scarf")
	}
	if c.Key >= deep/2 {
		s.fault(at(u.KeySize), show(c.Key), fmt.Sprintf("a key of half the depth of %s (%s) or more leaves no wood beside it", p.r.t.ID, show(deep)), "make the key a sixth to a quarter of the depth")
	}
	if room := min(p.r.hi-p.r.lo, p.e.hi-p.e.lo); c.Length/2 > room {
		s.fault(at(u.Length), show(c.Length), fmt.Sprintf("a scarf this long has no room in %s and %s", p.e.t.ID, p.r.t.ID), "make it 3 to 6 times the depth")
	}
	if d := p.user.Drawbore; d.Set && d.Mode == spec.DrawLength && d.MM != 0 {
		s.fault(d.At, show(d.MM), "a scarf is not drawn: its holes are in line", "take drawbore away, or write drawbore: none")
	}
	if p.set.Pegs > 4 {
		s.fault(p.at, fmt.Sprint(p.set.Pegs), "no more than four pegs go in one joint", "give 0 to 4")
	}
	if c.Length > 0 && (c.Length < 3*deep-1 || c.Length > 6*deep+1) {
		s.f.Notes = append(s.f.Notes, finding.Finding{Severity: finding.Warn, Rule: "scarf", At: at(u.Length), Joints: []string{p.id}, Timbers: []string{p.e.t.ID, p.r.t.ID},
			Text: fmt.Sprintf("the scarf of %s and %s is %.1f times as long as it is deep: 3 to 6 times is usual", p.e.t.ID, p.r.t.ID, c.Length/deep),
			Mend: fmt.Sprintf("make it %s to %s long", show(3*deep), show(6*deep))})
	}
}

// saneWedged faults a flare that would leave no tenon at the shoulder.
func (s *solver) saneWedged(p *pact) {
	d := s.laid(p).Drop
	h := p.e.t.Ideal[p.e.depthAxis()] - p.set.HoldStart - p.set.HoldEnd
	if p.kind == "wedged through tenon" && d.Set && d.MM >= h/2 {
		s.fault(d.At, d.Src, fmt.Sprintf("a drop of %s is half the height of the tenon of %s or more", s.f.Units.FormatJoint(d.MM), p.e.t.ID), "give a drop of a sixth to an eighth of the tenon's length")
	}
}
