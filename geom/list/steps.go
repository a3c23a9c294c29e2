package list

import (
	"fmt"
	"strings"

	"pegwright/geom"
)

// Steps returns the order of assembly, first step first: where the work is
// done, what moves, how many pegs are driven, how far a bent's feet come down,
// and the step in plain words.
func Steps(f *geom.Frame) Table {
	t := Table{Name: "steps", Title: "Order of assembly", Units: f.Units, Columns: []Column{
		{Name: "step", kind: count},
		{Name: "where"},
		{Name: "pegs", kind: count},
		{Name: "feet come down", Unit: lengthUnit(f.Units), kind: fine},
		{Name: "what to do"},
		{Name: "timbers", Spare: true},
		{Name: "joints", Spare: true},
	}}
	pegs := 0
	for i, s := range f.Steps {
		where := "frame"
		if s.Group != "" {
			where = "ground"
		}
		var drop any
		if s.Drop > 0 {
			drop = s.Drop
		}
		t.add(i+1, where, len(s.Pegs), drop, s.Text, strings.Join(s.Move, " "), strings.Join(s.Joints, " "))
		pegs += len(s.Pegs)
	}
	t.Totals = []string{
		fmt.Sprintf("%s, %s driven; joints are called by their marks", plural(len(f.Steps), "step"), plural(pegs, "peg")),
		"found from the shape of the sticks alone: it says that nothing is in the way, and not that a half-built frame stands by itself; whoever leads the raising plans props, braces, lifting and who stands where, and stops when wind or footing is wrong",
	}
	if len(f.Steps) == 0 {
		t.Totals[0] = "no order was found: see the findings"
	}
	return t
}
