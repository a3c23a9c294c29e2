package solve

import (
	"pegwright/geom"
	"pegwright/geom/assembly"
	"pegwright/geom/building"
	"pegwright/geom/finding"
	"pegwright/geom/joint"
	"pegwright/geom/named"
	"pegwright/geom/scheme"
	"pegwright/geom/spec"
	"pegwright/geom/vec"
)

const inch = 25.4 // mm, exactly

// solver turns a scheme into a frame.
type solver struct {
	*scheme.Scheme
	measured map[*scheme.Stick][2]*spec.Section // start and end of single sticks
	joints   []*settled
	written  []written
}

// settled is a pact with its numbers.
type settled struct {
	*scheme.Pact
	set    joint.Settings
	drawAt finding.Pos // where the offset was written; nowhere where it was not
	why    string      // this offset and no other
	made   *geom.Joint // once it is cut
	meet   vec.V       // where the lines of a joint end to end are said to meet
}

// Solve solves a description. It returns either a frame or the faults that
// keep it from being solved, each with its place in the file.
func Solve(d *spec.Description) (*geom.Frame, finding.Faults) {
	s := &solver{Scheme: scheme.New(d), measured: map[*scheme.Stick][2]*spec.Section{}}
	s.info()
	s.offer()
	if len(s.Faults) > 0 {
		return nil, s.Faults
	}
	steps := []func(){func() { building.Lay(s.Scheme) }, func() { named.Lay(s.Scheme) }, s.crowded, s.adjustTimbers, s.measure, s.settle, s.reach, s.lay, s.heaped, s.cut, s.unheeded}
	for _, step := range steps {
		step()
		if len(s.Faults) > 0 {
			s.Faults.Sort()
			return nil, s.Faults.Gathered()
		}
	}
	s.name()
	plan, finds := assembly.Plan(s.Frame)
	s.Frame.Steps, s.Frame.Notes = plan, append(s.Frame.Notes, finds...)
	assembly.Heed(s.Frame)
	return s.Frame, nil
}
