package solve

import (
	"pegwright/geom"
	"pegwright/geom/scheme"
)

// settle gives every joint its numbers: the trade's defaults, then the
// layout's, then what whoever laid it needs, then the layout's for the entering
// role, then the joint's own, then the adjustments that select it.
func (s *solver) settle() {
	hit := make([][]*settled, len(s.Description.Adjust))
	for _, q := range s.Pacts {
		p := &settled{Pact: q}
		s.joints = append(s.joints, p)
		s.written = append(s.written, written{p.User, []*settled{p}})
		for i, a := range s.Description.Adjust {
			if a.Joints.Set && s.selects(a.Joints, p.E, p.R) {
				hit[i] = append(hit[i], p)
				p.User = p.User.With(a.Joint)
			}
		}
		s.endToEnd(q)
		p.set, p.drawAt = s.Settings(q), s.Asked(q).Drawbore.At
	}
	s.shareOpposed()
	for _, p := range s.joints {
		s.sane(p)
		s.draw(p)
	}
	for i, a := range s.Description.Adjust {
		switch {
		case a.Joints.Set && len(hit[i]) == 0:
			s.unmatched(a.Joints, "joint")
		case a.Joints.Set:
			s.written = append(s.written, written{a.Joint, hit[i]})
		}
	}
}

// endToEnd settles which end of the receiver a scarf stands at.
func (s *solver) endToEnd(p *scheme.Pact) {
	if scheme.IsScarf(p.Kind) && p.REnd == geom.Mid {
		p.REnd = scheme.NearEnd(p.R, p.E, p.End)
	}
}
