package list

import (
	"sort"

	"pegwright/geom"
	"pegwright/geom/measure"
	"pegwright/geom/peg"
	"pegwright/geom/wood"
)

// pegRow is one size of peg and how many joints want it.
type pegRow struct {
	bore, length, head, lead float64
	count                    int
}

// Pegs returns the pegs to make, one row a size: by bore, then by length. The
// flats are those of the finished, dry octagon; the square to rive is for green
// stock and allows for drying and shaving.
func Pegs(f *geom.Frame) Table {
	length, flats, exact, perUnit := lengthUnit(f.Units), "in, decimal", precise, 25.4
	if f.Units == measure.Metric {
		flats, exact, perUnit = "mm", amount, 1
	}
	t := Table{Name: "pegs", Title: "Pegs", Units: f.Units, Columns: []Column{
		{Name: "bore", Unit: length, kind: fine},
		{Name: "length", Unit: length, kind: fine},
		{Name: "head", Unit: length, kind: fine},
		{Name: "lead", Unit: length, kind: fine},
		{Name: "needed", kind: count},
		{Name: "spares", kind: count},
		{Name: "make", kind: count},
		{Name: "stock"},
		{Name: "least flats", Unit: flats, kind: exact},
		{Name: "most flats", Unit: flats, kind: exact},
		{Name: "rive square", Unit: length, kind: fine},
	}}
	all := 0
	rows := pegRows(f)
	for _, r := range rows {
		spares := peg.Spares(r.count)
		o := peg.OctagonFor(r.bore)
		all += r.count + spares
		t.add(r.bore, r.length, r.head, r.lead, r.count, spares, r.count+spares,
			joined(f.Stock.Peg, f.Stock.PegDry), o.LeastFlats/perUnit, o.MostFlats/perUnit, riving(f, o.MostFlats))
	}
	t.Totals = []string{plural(all, "peg") + " with spares, " + plural(len(rows), "size")}
	return t
}

// pegRows counts the pegs of the frame by size. Sizes that differ by less than
// 0.01 mm are one.
func pegRows(f *geom.Frame) []pegRow {
	var rows []pegRow
	for _, j := range f.Joints {
		for _, p := range j.Pegs {
			rows = countPeg(rows, p)
		}
	}
	sort.SliceStable(rows, func(i, k int) bool { return rows[i].before(rows[k]) })
	return rows
}

func countPeg(rows []pegRow, p geom.Peg) []pegRow {
	for i := range rows {
		r := &rows[i]
		if near(r.bore, p.Bore) && near(r.length, p.Length) && near(r.head, p.Head) && near(r.lead, p.Lead) {
			r.count++
			return rows
		}
	}
	return append(rows, pegRow{p.Bore, p.Length, p.Head, p.Lead, 1})
}

func (r pegRow) before(s pegRow) bool {
	switch {
	case !near(r.bore, s.bore):
		return r.bore < s.bore
	case !near(r.length, s.length):
		return r.length < s.length
	case !near(r.head, s.head):
		return r.head < s.head
	}
	return r.lead < s.lead
}

func near(a, b float64) bool { return a-b < 0.01 && b-a < 0.01 }

// riving returns the side of the square billet to rive green, in mm.
func riving(f *geom.Frame, flats float64) float64 {
	shaving, step := peg.ShavingImperial, peg.RivingStepImperial
	if f.Units == measure.Metric {
		shaving, step = peg.ShavingMetric, peg.RivingStepMetric
	}
	w, ok := wood.Lookup(f.Stock.Peg)
	shrunk := 0.0
	if ok {
		green, _ := w.Moisture(wood.Green)
		shrunk = w.Shrinkage(wood.Tangential, green, f.Stock.PegMC)
	}
	return peg.Riving(flats, max(shrunk, 0), shaving, step)
}
