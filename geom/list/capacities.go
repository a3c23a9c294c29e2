package list

import (
	"fmt"
	"strings"

	"pegwright/geom"
	"pegwright/geom/measure"
	"pegwright/geom/strength"
)

// Capacities returns the reference values of the pegged tenons in tension, or
// why they have none: joints of the same figures share a row, in the order of
// the first of them. Values are for an engineer: see strength.Words.
func Capacities(f *geom.Frame) Table {
	unit, newtons, force := "lb", pound*9.80665, nearest
	if f.Units == measure.Metric {
		unit, newtons, force = "kN", 1000, precise
	}
	t := Table{Name: "capacities", Title: "Reference values in tension", Units: f.Units, Columns: capacityColumns(unit, force)}
	var order []string
	rows, with, without := map[string]*capacityRow{}, 0, 0
	for _, j := range f.Joints {
		if !strength.Applies(j) {
			continue
		}
		c := strength.Of(f, j)
		if c.Reason == "" {
			with++
		} else {
			without++
		}
		cells := capacityCells(j, c, newtons)
		key := fmt.Sprint(t.shown(2, cells))
		if rows[key] == nil {
			rows[key], order = &capacityRow{cells: cells}, append(order, key)
		}
		r := rows[key]
		r.ids, r.marks = append(r.ids, j.ID), append(r.marks, j.Mark)
	}
	for _, key := range order {
		r := rows[key]
		t.add(append(append([]any{len(r.ids), strings.Join(r.marks, ", ")}, r.cells...), strings.Join(r.ids, ", "))...)
	}
	t.Totals = []string{
		"each figure is a " + strength.Words,
		fmt.Sprintf("%s with a value, %s without one: distances short of what tests ask for, or outside the equations", plural(with, "joint"), plural(without, "joint")),
		"tension along the timber that enters; load duration factor 1.0; drawbore adds nothing; distances in peg diameters D, as they are of what full strength asks for",
	}
	return t
}

func capacityColumns(unit string, force kind) []Column {
	return []Column{
		{Name: "joints", kind: count}, {Name: "marks"},
		{Name: "pegs", kind: count},
		{Name: "one peg", Unit: unit, kind: force},
		{Name: "mode"}, {Name: "what yields"},
		{Name: "wet factor", kind: amount},
		{Name: "all pegs", Unit: unit, kind: force},
		{Name: "end"}, {Name: "edge"}, {Name: "spacing"},
		{Name: "note"}, {Name: "ids", Spare: true},
	}
}

// capacityRow is the joints that share one row.
type capacityRow struct {
	ids, marks []string
	cells      []any
}

// capacityCells are the cells of a joint from its pegs on.
func capacityCells(j *geom.Joint, c strength.Capacity, newtons float64) []any {
	end, edge, spacing := distanceWords(c, "end"), distanceWords(c, "edge"), distanceWords(c, "spacing")
	if c.Reason != "" {
		return []any{len(j.Pegs), nil, "", "", nil, nil, end, edge, spacing, c.Reason}
	}
	return []any{len(j.Pegs), c.Governing.Z / newtons, c.Governing.Mode.String(), c.Governing.Mode.Words(), c.Wet,
		c.Tension / newtons, end, edge, spacing, strength.Words}
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
