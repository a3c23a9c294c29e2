package named

import (
	"strings"

	"pegwright/geom"
	"pegwright/geom/joint"
	"pegwright/geom/scheme"
	"pegwright/geom/spec"
)

// joint plans a described joint between two timbers that are laid.
func (s *lister) joint(j spec.Joint) {
	e, okE := s.Sticks[j.Of.S]
	r, okR := s.Sticks[j.Into.S]
	if !okE {
		s.UnknownTimber(j.Of)
	}
	if !okR {
		s.UnknownTimber(j.Into)
	}
	if _, ok := joint.Lookup(j.Kind.S); !ok {
		s.Fault(j.Kind.At, j.Kind.S, "there is no such joint kind", "use one of: "+strings.Join(joint.Names(), ", "))
		return
	}
	if !okE || !okR {
		return
	}
	if e == r {
		s.Fault(j.Into.At, j.Into.S, "a timber cannot be joined to itself", "name another timber")
		return
	}
	p := &scheme.Pact{ID: j.ID.Or(scheme.JointID(e, r)), Kind: j.Kind.S, R: r, E: e, End: geom.End(j.End.S), User: j.JointSettings, At: j.At}
	s.byKind(p)
	for _, q := range s.Pacts {
		if q.ID == p.ID {
			s.Fault(j.At, p.ID, "there is already a joint of this name", "give this one an id of its own")
			return
		}
	}
	s.Pacts = append(s.Pacts, p)
}

// byKind finds the ends that meet in a described joint, where its kind tells, and
// what its kind has of its own.
func (s *lister) byKind(p *scheme.Pact) {
	none := spec.Undrawn()
	switch p.Kind {
	case "step-lap seat", "birdsmouth seat":
		p.End, p.PegOff = geom.Mid, 1.5*s.Std.SmallBore
		p.User.Drawbore = none
	case "bridle":
		p.REnd = scheme.NearEnd(p.R, p.E, p.End)
		if !p.User.Thickness.Set {
			slot, cheek := s.Std.Fork(min(p.R.Timber.Section[0], p.R.Timber.Section[1]))
			p.Own.Thickness, p.Own.FromReference = spec.LengthOf(slot), spec.LengthOf(cheek)
		}
		if !p.User.Drawbore.Set {
			p.Own.Drawbore = none
		}
	case "cross lap":
		p.End = geom.Mid
	case "corner lap":
		s.someEnd(p)
		p.REnd = scheme.NearEnd(p.R, p.E, p.End)
	default:
		s.someEnd(p)
	}
}

// someEnd takes the end of the enterer that is nearer where none is written.
func (s *lister) someEnd(p *scheme.Pact) {
	if p.End == geom.Mid {
		p.End = scheme.NearEnd(p.E, p.R, geom.Mid)
	}
}
