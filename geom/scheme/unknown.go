package scheme

import (
	"fmt"
	"strings"

	"pegwright/geom/finding"
	"pegwright/geom/spec"
)

// UnknownTimber faults an id that no timber has.
func (s *Scheme) UnknownTimber(id spec.Text) {
	s.Fault(id.At, id.S, "there is no timber called "+id.S, s.NearestTimber(id.S))
}

// NearestTimber is the mend for an id that no timber has.
func (s *Scheme) NearestTimber(id string) string {
	var ids []string
	for _, st := range s.Order {
		ids = append(ids, st.Timber.ID)
	}
	if best := finding.Nearest(id, ids); best != "" {
		return "did you mean " + best + "?"
	}
	if len(ids) > 24 {
		return fmt.Sprintf("write one of: %s and %d more", strings.Join(ids[:24], ", "), len(ids)-24)
	}
	return "write one of: " + strings.Join(ids, ", ")
}
