package solve

import (
	"fmt"

	"pegwright/geom/finding"
	"pegwright/geom/scheme"
)

// maxOfOne is how many joints one timber may have.
const maxOfOne = 400

// crowded refuses a frame of more sticks than there may be, and a stick of more
// joints. The fault is at the last one.
func (s *solver) crowded() {
	if n := len(s.Order); n > scheme.MaxSticks {
		s.Fault(s.Order[n-1].Timber.At, "", fmt.Sprintf("the frame has %d timbers, and may have %d at most", n, scheme.MaxSticks), "divide the frame into several descriptions")
	}
	joints := map[*scheme.Stick]int{}
	for _, p := range s.Pacts {
		for _, st := range []*scheme.Stick{p.R, p.E} {
			if joints[st]++; joints[st] == maxOfOne+1 {
				s.Fault(p.At, p.ID, fmt.Sprintf("%s has more than %d joints", st.Timber.ID, maxOfOne), "divide the timber, or leave joints out")
			}
		}
	}
}

// long faults a timber that is longer than there may be.
func (s *solver) long(at finding.Pos, id string, mm float64) {
	s.Fault(at, id, fmt.Sprintf("%s would be %s long", id, s.Frame.Units.Format(mm)),
		fmt.Sprintf("no timber may be longer than %s; divide it", s.Frame.Units.Format(scheme.MaxLength)))
}
