package list

import (
	"fmt"
	"math"
	"sort"

	"pegwright/geom"
	"pegwright/geom/measure"
	"pegwright/geom/peg"
	"pegwright/geom/wood"
)

// pegRow is one size of peg and how many joints want it.
type pegRow struct {
	bore, length, head, lead float64
	offset                   float64 // the largest of the pegs in the row
	flush                    bool
	finding                  int // that stops the joints, 0: none
	count                    int
}

// Pegs returns the pegs to make, one row a size: by bore, then by length. The
// flats are those of the finished, dry octagon; the square to rive is for green
// stock and allows for drying and shaving; the taper is peg.LeadFor of a peg as
// thick as the bore and the largest offset of the row. Pegs to be sawn flush
// have rows of their own, and so have those of stopped joints: of these none
// are to be made.
func Pegs(f *geom.Frame, stopped map[string]int) Table {
	perUnit := 25.4
	if f.Units == measure.Metric {
		perUnit = 1
	}
	t := Table{Name: "pegs", Title: "Pegs", Units: f.Units, Columns: pegColumns(f.Units)}
	all, held, billets, unfit := 0, 0, 0, 0
	rows := pegRows(f, stopped)
	for _, r := range rows {
		spares, made := peg.Spares(r.count), 0
		if r.finding > 0 {
			spares, held = 0, held+r.count
		} else {
			made = r.count + spares
		}
		all += made
		o := peg.OctagonFor(r.bore)
		taper, tip := r.taper()
		side := riving(f, o.MostFlats)
		per := peg.PerBillet(f.Offer.Billet[0], f.Offer.Billet[1], side, r.length, f.Offer.Kerf)
		need := 0
		if per > 0 {
			need = (made + per - 1) / per
		} else if made > 0 {
			unfit++
		}
		billets += need
		t.add(r.bore, r.length, r.head, r.lead, taper, tip, r.count, spares, made,
			joined(f.Stock.Peg, f.Stock.PegDry), o.LeastFlats/perUnit, o.MostFlats/perUnit, side, per, need, r.note())
	}
	t.Columns[len(t.Columns)-1].Aside = held == 0 // a prohibition stands in its row
	t.Totals = append(pegTotals(all, held, sizes(rows)), billetTotal(f, billets, unfit))
	return t
}

func pegColumns(u measure.Units) []Column {
	length, flats, exact := lengthUnit(u), "in, decimal", precise
	if u == measure.Metric {
		flats, exact = "mm", amount
	}
	return []Column{
		{Name: "bore", Unit: length, kind: fine},
		{Name: "length", Unit: length, kind: fine},
		{Name: "head", Unit: length, kind: fine},
		{Name: "beyond far face", Unit: length, kind: fine},
		{Name: "taper length", Unit: length, kind: fine},
		{Name: "tip Ø", Unit: length, kind: fine},
		{Name: "needed", kind: count},
		{Name: "spares", kind: count},
		{Name: "make", kind: count},
		{Name: "stock"},
		{Name: "least flats", Unit: flats, kind: exact},
		{Name: "most flats", Unit: flats, kind: exact},
		{Name: "rive square", Unit: length, kind: fine},
		{Name: "per billet", kind: count},
		{Name: "billets", kind: count},
		{Name: "note"},
	}
}

func pegTotals(all, held, sizes int) []string {
	out := []string{plural(all, "peg") + " with spares, " + plural(sizes, "size")}
	if held > 0 {
		out = append(out, plural(held, "peg")+" of joints under a stop finding NOT counted: make none until the finding named is mended")
	}
	return out
}

// billetTotal says how much straight stock the pegs take.
func billetTotal(f *geom.Frame, billets, unfit int) string {
	b := f.Offer.Billet
	text := fmt.Sprintf("%s of straight, clear wood, square %s x %s, split by halves, each size from its own", plural(billets, "billet"),
		f.Units.PlainJoint(b[0]), f.Units.PlainJoint(b[1]))
	if unfit > 0 {
		text += "; " + plural(unfit, "row") + " of pegs too long or too stout for such a billet"
	}
	return text
}

// taper returns the length of the lead's taper and the diameter of its tip, mm,
// or "none" twice where no tip could enter the two holes.
func (r pegRow) taper() (length, tip any) {
	lead, ok := peg.LeadFor(r.bore, r.bore, r.offset)
	if !ok {
		return "none", "none"
	}
	return lead.Length, lead.Tip
}

func (r pegRow) note() string {
	switch {
	case r.finding > 0:
		return stopNote(r.finding)
	case r.flush:
		return "saw flush both faces"
	}
	return ""
}

// sizes counts the sizes to be made. Rows of one size are neighbours.
func sizes(rows []pegRow) int {
	n := 0
	var last *pegRow
	for i := range rows {
		if rows[i].finding > 0 {
			continue
		}
		if last == nil || !last.sameSize(rows[i]) {
			n++
		}
		last = &rows[i]
	}
	return n
}

// pegRows counts the pegs of the frame by size. Sizes that differ by less than
// 0.01 mm are one.
func pegRows(f *geom.Frame, stopped map[string]int) []pegRow {
	var rows []pegRow
	for _, j := range f.Joints {
		for _, p := range j.Pegs {
			rows = countPeg(rows, pegRow{p.Bore, p.Length, p.Head, p.Lead, math.Abs(p.Offset), p.Flush, stopped[j.ID], 1})
		}
	}
	sort.SliceStable(rows, func(i, k int) bool { return rows[i].before(rows[k]) })
	return rows
}

// countPeg adds a peg to those like it.
func countPeg(rows []pegRow, p pegRow) []pegRow {
	for i := range rows {
		r := &rows[i]
		if r.sameSize(p) && r.flush == p.flush && r.finding == p.finding {
			r.count++
			r.offset = max(r.offset, p.offset)
			return rows
		}
	}
	return append(rows, p)
}

func (r pegRow) sameSize(s pegRow) bool {
	return near(r.bore, s.bore) && near(r.length, s.length) && near(r.head, s.head) && near(r.lead, s.lead)
}

func (r pegRow) before(s pegRow) bool {
	switch {
	case !near(r.bore, s.bore):
		return r.bore < s.bore
	case !near(r.length, s.length):
		return r.length < s.length
	case !near(r.head, s.head):
		return r.head < s.head
	case !near(r.lead, s.lead):
		return r.lead < s.lead
	case r.finding != s.finding:
		return r.finding < s.finding
	}
	return !r.flush && s.flush
}

func near(a, b float64) bool { return a-b < 0.01 && b-a < 0.01 }

// riving returns the side of the square billet to rive green, in mm.
func riving(f *geom.Frame, flats float64) float64 {
	shaving, step := peg.ShavingImperial, peg.RivingStepImperial
	if f.Units == measure.Metric {
		shaving, step = peg.ShavingMetric, peg.RivingStepMetric
	}
	w, shrunk := f.Stock.PegWood, 0.0
	if w.Saturation > 0 {
		green, _ := w.Moisture(wood.Green)
		shrunk = w.Shrinkage(wood.Tangential, green, f.Stock.PegMC)
	}
	return peg.Riving(flats, max(shrunk, 0), shaving, step)
}
