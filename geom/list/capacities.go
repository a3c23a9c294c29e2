package list

import (
	"fmt"

	"pegwright/geom"
	"pegwright/geom/measure"
	"pegwright/geom/strength"
)

// Capacities returns the reference value of every pegged tenon in tension, in
// frame order, or why there is none. Values are for an engineer: see
// strength.Words.
func Capacities(f *geom.Frame) Table {
	unit, newtons := "lb", 0.45359237*9.80665
	if f.Units == measure.Metric {
		unit, newtons = "kN", 1000
	}
	force := precise
	if unit == "lb" {
		force = amount
	}
	t := Table{Name: "capacities", Title: "Reference values in tension", Units: f.Units, Columns: []Column{
		{Name: "joint"}, {Name: "mark"}, {Name: "pegs", kind: count},
		{Name: "one peg", Unit: unit, kind: force},
		{Name: "mode"}, {Name: "what yields"},
		{Name: "wet factor", kind: amount},
		{Name: "all pegs", Unit: unit, kind: force},
		{Name: "end"}, {Name: "edge"}, {Name: "spacing"},
		{Name: "note"},
	}}
	with, without := 0, 0
	for _, j := range f.Joints {
		if len(j.Pegs) == 0 || j.Tenon.Empty() {
			continue
		}
		c := strength.Of(f, j)
		end, edge, spacing := distanceWords(c, "end"), distanceWords(c, "edge"), distanceWords(c, "spacing")
		if c.Reason != "" {
			without++
			t.add(j.ID, j.Mark, len(j.Pegs), nil, "", "", nil, nil, end, edge, spacing, c.Reason)
			continue
		}
		with++
		t.add(j.ID, j.Mark, len(j.Pegs), c.Governing.Z/newtons, c.Governing.Mode.String(), c.Governing.Mode.Words(), c.Wet,
			c.Tension/newtons, end, edge, spacing, strength.Words)
	}
	t.Totals = []string{
		"each figure is a " + strength.Words,
		fmt.Sprintf("%s with a value, %s without one: distances short of what tests ask for, or outside the equations", plural(with, "joint"), plural(without, "joint")),
		"tension along the timber that enters, dry or green as cut; load duration factor 1.0; drawbore adds nothing; distances in peg diameters D, as they are of what full strength asks for",
	}
	return t
}

// distanceWords writes a distance of a joint, "" where it has none.
func distanceWords(c strength.Capacity, kind string) string {
	for _, d := range c.Distances {
		if d.Kind == kind {
			return d.Of()
		}
	}
	return ""
}
