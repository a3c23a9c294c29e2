package solve

import (
	"pegwright/geom/scheme"
	"pegwright/geom/spec"
	"slices"
)

// selects reports whether a selector picks the joint of e into r; r is nil
// when it picks timbers.
func (s *solver) selects(q spec.Selector, e, r *scheme.Stick) bool {
	t := e.Timber
	ok := q.All || slices.Contains(q.Roles, t.Role) || slices.Contains(q.IDs, t.ID) || len(q.Roles)+len(q.IDs) == 0
	if r != nil {
		if len(q.IntoRoles)+len(q.IntoIDs) > 0 {
			ok = ok && (slices.Contains(q.IntoRoles, r.Timber.Role) || slices.Contains(q.IntoIDs, r.Timber.ID))
		}
		ok = ok && (q.Bent == 0 || t.Bent == q.Bent || r.Timber.Bent == q.Bent)
		ok = ok && (q.Bay == 0 || t.Bay == q.Bay || r.Timber.Bay == q.Bay)
		return ok && (q.Wall == "" || t.Wall == q.Wall || r.Timber.Wall == q.Wall)
	}
	return ok && (q.Bent == 0 || t.Bent == q.Bent) && (q.Bay == 0 || t.Bay == q.Bay) && (q.Wall == "" || t.Wall == q.Wall)
}

// adjustTimbers applies the adjustments that select timbers.
func (s *solver) adjustTimbers() {
	for _, a := range s.Description.Adjust {
		if !a.Timbers.Set {
			continue
		}
		hit := false
		for _, st := range s.Order {
			if !s.selects(a.Timbers, st, nil) {
				continue
			}
			hit = true
			st.Overall = st.Overall.With(a.Timber)
			if sec := a.Timber.Section; sec.Set {
				st.Timber.Section = asSection(st, sec)
			}
			s.Trim(st, st.Overall)
		}
		if !hit {
			s.unmatched(a.Timbers, "timber")
		}
	}
}

// measure notes the sizes measured on single sticks.
func (s *solver) measure() {
	for i := range s.Description.Measured {
		m := &s.Description.Measured[i]
		st, ok := s.Sticks[m.ID.S]
		if !ok {
			s.UnknownTimber(m.ID)
			continue
		}
		ends := [2]*spec.Section{&m.Start, &m.End}
		switch {
		case !m.Start.Set && !m.End.Set:
			continue
		case !m.Start.Set:
			ends[0] = &m.End
		case !m.End.Set:
			ends[1] = &m.Start
		}
		s.measured[st] = ends
	}
}

// asSection turns a section as it is written into sizes along the timber's y
// and z. It is written as the generator lays it: width off the side face and
// depth off the top face, posts first off the outside face.
func asSection(st *scheme.Stick, m spec.Section) [2]float64 {
	if st.FirstAlongY() {
		return [2]float64{m.A, m.B}
	}
	return [2]float64{m.B, m.A}
}
