package named

import (
	"math"

	"pegwright/geom/scheme"
	"pegwright/geom/spec"
	"pegwright/geom/vec"
)

// brace lays a brace between a plumb and a level timber, with its two joints.
func (s *lister) brace(t spec.Timber) {
	a, okA := s.Sticks[t.Between[0].S]
	b, okB := s.Sticks[t.Between[1].S]
	if !okA {
		s.UnknownTimber(t.Between[0])
	}
	if !okB {
		s.UnknownTimber(t.Between[1])
	}
	if !okA || !okB {
		return
	}
	if !plumb(a) {
		a, b = b, a
	}
	if !plumb(a) || math.Abs(b.Timber.Place.X.Z) > 1e-6 {
		s.Fault(t.Between[0].At, t.ID.S, "a brace stands between one plumb and one level timber", "for other places give it from and to, and write its joints")
		return
	}
	h := b.Timber.Place.X
	if t.Toward.Set {
		h = toward(t.Toward.S)
	} else {
		mid := b.Timber.Place.Out(vec.V{X: (b.Lo + b.Hi) / 2})
		if mid.Sub(a.Timber.Place.O).Dot(h) < 0 {
			h = h.Neg()
		}
	}
	if math.Abs(a.Timber.IdealPlane(a.Timber.FaceToward(h)).Moved(a.Timber.Place).N.Dot(h)) < 1-1e-8 {
		s.Fault(t.Between[0].At, t.ID.S, "a brace runs square to a face of its post, and "+b.Timber.ID+" does not", "for other places give it from and to, and write its joints")
		return
	}
	var off *float64
	if t.OffReference.Set {
		off = &t.OffReference.MM
	}
	legs := t.Legs
	if !legs.Set {
		s.Fault(t.At, t.ID.S, "the brace has no legs", "add legs: 24\" x 24\"")
		return
	}
	if st := s.Brace(t.ID.S, a, b, h, legs, off, t.TimberSettings); st != nil {
		st.Timber.At = t.At
	}
}

// plumb reports whether a stick stands upright, to 1 mm in ten metres. A brace
// is laid out against faces that are plumb and level.
func plumb(s *scheme.Stick) bool {
	x := s.Timber.Place.X
	return math.Hypot(x.X, x.Y) < 1e-4
}
