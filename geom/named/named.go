package named

import "pegwright/geom/scheme"

// lister adds what the description names one by one.
type lister struct{ *scheme.Scheme }

// Lay adds the timbers and joints that the description names one by one. What
// cannot be laid is among the scheme's faults; so is a description that holds no
// timber at all.
func Lay(s *scheme.Scheme) { (&lister{s}).lay() }

// lay adds the timbers, then the braces between them, then the joints.
func (s *lister) lay() {
	for _, t := range s.Description.Timbers {
		if len(t.Between) == 0 {
			s.timber(t)
		}
	}
	for _, t := range s.Description.Timbers {
		if len(t.Between) == 2 {
			s.brace(t)
		}
	}
	if len(s.Order) == 0 && len(s.Faults) == 0 {
		s.Fault(s.Description.Title.At, "", "the description holds no timber", "add a building or a list of timbers")
	}
	first := len(s.Pacts)
	for _, j := range s.Description.Joints {
		s.joint(j)
	}
	s.hold(s.Pacts[first:])
}

// hold marks the described joints that must hold tension: those of a tie,
// collar or king post that is joined at both its ends and so keeps two timbers
// from parting.
func (s *lister) hold(described []*scheme.Pact) {
	for _, p := range described {
		role := p.E.Timber.Role
		if role != "tie" && role != "collar" && role != "king post" {
			continue
		}
		for _, q := range s.Pacts {
			p.Tension = p.Tension || q != p && q.E == p.E && q.End != p.End
		}
	}
}
