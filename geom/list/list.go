// Package list gathers what is ordered, made and bored from a solved frame:
// the timbers, the pegs and the bores, as tables that can be shown, printed or
// opened in a spreadsheet.
package list

import (
	"strings"

	"pegwright/geom"
	"pegwright/geom/measure"
)

// Table is one list. Rows and Values have the same shape: Rows holds what is
// shown, in the units of the frame; Values holds what the cell stands for
// (string, int, float64, [2]float64, or nil for none), lengths in millimetres.
type Table struct {
	Name    string // one word, as Names lists them
	Title   string
	Units   measure.Units
	Columns []Column
	Rows    [][]string
	Values  [][]any
	Totals  []string // whole sentences for the foot of the list
}

// Column heads one column. Unit is the unit of the cells as shown: "" for
// words and counts.
type Column struct {
	Name, Unit string
	kind       kind
	Spare      bool // left off paper, where another column stands for it
	Own        bool // a name: paper tells rows together that differ in names alone
	Aside      bool // remarks that paper may put under the list, at a mark
}

// spare leaves the named column off paper.
func (t *Table) spare(name string) {
	for i := range t.Columns {
		if t.Columns[i].Name == name {
			t.Columns[i].Spare = true
		}
	}
}

// Numeric reports whether the cells of the column are set to the right.
func (c Column) Numeric() bool { return c.kind != words }

// Heading returns the name with its unit, such as "finished length (ft-in)".
func (c Column) Heading() string { return withUnit(c.Name, c.Unit) }

func withUnit(name, unit string) string {
	if unit == "" {
		return name
	}
	return name + " (" + unit + ")"
}

// kind is what a column measures.
type kind int

const (
	words   kind = iota
	count        // a whole number
	long         // a length along a timber, to the nearest 1/16 in or 1 mm
	fine         // a length at a joint, to the nearest 1/32 in or 0.5 mm
	section      // two sizes across, [2]float64
	nearest      // a plain number, to the nearest whole, in the column's unit
	amount       // a plain number, to one decimal, in the column's unit
	precise      // a plain number, to three decimals, in the column's unit
	money        // a price, to two decimals
)

// Names returns the names of the lists, in the order of Of.
func Names() []string {
	return []string{"timbers", "pegs", "bores", "order", "lifting", "tools", "capacities", "steps", "wedges"}
}

// Of returns every list of the frame. The lists are in a stable order that
// does not depend on the order of the description where a reader sorts. The
// bores and pegs of the joints that stopped names, as Stopped returns them, are
// marked with the number of their finding and counted apart.
func Of(f *geom.Frame, stopped map[string]int) []Table {
	return []Table{Timbers(f), Pegs(f, stopped), Bores(f, stopped), Order(f), Lifting(f), Tools(f), Capacities(f), Steps(f), Wedges(f)}
}

// Find returns the list of that name.
func Find(tables []Table, name string) (Table, bool) {
	for _, t := range tables {
		if t.Name == name {
			return t, true
		}
	}
	return Table{}, false
}

// add appends one row; the cells are shown by the kinds of their columns.
func (t *Table) add(values ...any) {
	t.Rows = append(t.Rows, t.shown(0, values))
	t.Values = append(t.Values, values)
}

// shown returns values as a reader sees them in the columns from the given one
// on.
func (t *Table) shown(from int, values []any) []string {
	out := make([]string, len(values))
	for i, v := range values {
		out[i] = t.show(t.Columns[from+i].kind, v)
	}
	return out
}

// lengthUnit is the unit in which lengths are shown.
func lengthUnit(u measure.Units) string {
	if u == measure.Metric {
		return "mm"
	}
	return "ft-in"
}

// smallUnit is the unit in which sizes across a timber are shown.
func smallUnit(u measure.Units) string {
	if u == measure.Metric {
		return "mm"
	}
	return "in"
}

// plural returns "1 peg", "2 pegs".
func plural(n int, one string) string {
	if n == 1 {
		return "1 " + one
	}
	return grouped(n) + " " + one + "s"
}

// joined returns the words without those that are empty.
func joined(parts ...string) string {
	var kept []string
	for _, p := range parts {
		if p != "" {
			kept = append(kept, p)
		}
	}
	return strings.Join(kept, ", ")
}
