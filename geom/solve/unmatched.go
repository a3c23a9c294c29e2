package solve

import (
	"fmt"
	"slices"
	"strings"

	"pegwright/geom/spec"
)

// unmatched says why a selector picks nothing: the first of its words that the
// frame does not know, or else that no joint or timber has all of them.
func (s *solver) unmatched(q spec.Selector, what string) {
	for _, id := range slices.Concat(q.IDs, q.IntoIDs) {
		if s.Sticks[id] == nil {
			s.Fault(q.At, q.Src, "there is no timber called "+id, s.NearestTimber(id))
			return
		}
	}
	roles, bents, bays := s.standing()
	for _, role := range slices.Concat(q.Roles, q.IntoRoles) {
		if !slices.Contains(roles, role) {
			s.Fault(q.At, q.Src, "no timber of this frame is a "+role, "its roles are "+strings.Join(roles, ", "))
			return
		}
	}
	for _, n := range []struct {
		word       string
		asked, has int
	}{{"bent", q.Bent, bents}, {"bay", q.Bay, bays}} {
		if n.asked > n.has {
			s.Fault(q.At, q.Src, fmt.Sprintf("there is no %s %d: the last is %s %d", n.word, n.asked, n.word, n.has), fmt.Sprintf("write a number from 1 to %d", n.has))
			return
		}
	}
	s.Fault(q.At, q.Src, "no "+what+" fits all of these words", "leave some of them away; the entering timber comes first, as in braces into posts")
}

// standing returns the roles that the frame has, in order, and the numbers of
// its last bent and bay.
func (s *solver) standing() (roles []string, bents, bays int) {
	for _, st := range s.Order {
		if !slices.Contains(roles, st.Timber.Role) {
			roles = append(roles, st.Timber.Role)
		}
		bents, bays = max(bents, st.Timber.Bent), max(bays, st.Timber.Bay)
	}
	return roles, bents, bays
}
