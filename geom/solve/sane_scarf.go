package solve

import (
	"fmt"

	"pegwright/geom/finding"
	"pegwright/geom/spec"
)

// saneScarf faults the numbers that leave no scarf, and warns of a length
// outside 3 to 6 times the depth (common practice, no source).
func (s *solver) saneScarf(p *settled) {
	u, show := s.Asked(p.Pact).Scarf, s.Frame.Units.FormatJoint
	n := p.R.Timber.Section
	deep := n[0]
	if (p.R.DepthAxis() == 1) != p.set.Scarf.Upright {
		deep = n[1]
	}
	at := func(l spec.Length) finding.Pos {
		if l.Set {
			return l.At
		}
		return p.At
	}
	c := p.set.Scarf
	if c.Butt >= deep/2 {
		s.Fault(at(u.Butt), show(c.Butt), fmt.Sprintf("butts of half the depth of %s (%s) or more leave its scarf no slope", p.R.Timber.ID, show(deep)), "make the butts a quarter of the depth or less, or use a half-lap scarf")
	}
	if c.Key >= deep/2 {
		s.Fault(at(u.KeySize), show(c.Key), fmt.Sprintf("a key of half the depth of %s (%s) or more leaves no wood beside it", p.R.Timber.ID, show(deep)), "make the key a sixth to a quarter of the depth")
	}
	if room := min(p.R.Hi-p.R.Lo, p.E.Hi-p.E.Lo); c.Length/2 > room {
		s.Fault(at(u.Length), show(c.Length), fmt.Sprintf("a scarf this long has no room in %s and %s", p.E.Timber.ID, p.R.Timber.ID), "make it 3 to 6 times the depth")
	}
	if d := p.User.Drawbore; d.Set && d.Mode == spec.DrawLength && d.MM != 0 {
		s.Fault(d.At, show(d.MM), "a scarf is not drawn: its holes are in line", "take drawbore away, or write drawbore: none")
	}
	if p.set.Pegs > 4 {
		s.Fault(p.At, fmt.Sprint(p.set.Pegs), "no more than four pegs go in one joint", "give 0 to 4")
	}
	if c.Length > 0 && (c.Length < 3*deep-1 || c.Length > 6*deep+1) {
		s.Frame.Notes = append(s.Frame.Notes, finding.Finding{Severity: finding.Warn, Rule: "scarf", At: at(u.Length), Joints: []string{p.ID}, Timbers: []string{p.E.Timber.ID, p.R.Timber.ID},
			Text: fmt.Sprintf("the scarf of %s and %s is %.1f times as long as it is deep: 3 to 6 times is usual", p.E.Timber.ID, p.R.Timber.ID, c.Length/deep),
			Mend: fmt.Sprintf("make it %s to %s long", show(3*deep), show(6*deep))})
	}
}

// saneWedged faults a flare that would leave no tenon at the shoulder.
func (s *solver) saneWedged(p *settled) {
	d := s.Asked(p.Pact).Drop
	h := p.E.Timber.Ideal[p.E.DepthAxis()] - p.set.HoldStart - p.set.HoldEnd
	if p.Kind == "wedged through tenon" && d.Set && d.MM >= h/2 {
		s.Fault(d.At, d.Src, fmt.Sprintf("a drop of %s is half the height of the tenon of %s or more", s.Frame.Units.FormatJoint(d.MM), p.E.Timber.ID), "give a drop of a sixth to an eighth of the tenon's length")
	}
}
