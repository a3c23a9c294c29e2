package list

import (
	"fmt"
	"strings"

	"pegwright/geom"
	"pegwright/geom/measure"
	"pegwright/geom/peg"
	"pegwright/geom/wood"
)

// Pegs returns the pegs to make, one row a size. The flats are those of the
// finished, dry octagon; the square to rive is for green stock and allows for
// drying and shaving; the taper is PegSize.Taper. Pegs of stopped joints have
// rows of their own: of these none are to be made.
func Pegs(f *geom.Frame, stopped map[string]int) Table {
	perUnit := 25.4
	if f.Units == measure.Metric {
		perUnit = 1
	}
	t := Table{Name: "pegs", Title: "Pegs", Units: f.Units, Columns: pegColumns(f.Units)}
	all, held, billets, unfit := 0, 0, 0, 0
	sizes := PegSizes(f, stopped)
	for _, s := range sizes {
		made := s.Make()
		if s.Finding > 0 {
			held += s.Count
		}
		all += made
		o := peg.OctagonFor(s.Bore)
		taper, tip := taperCells(s)
		side := riving(f, o.MostFlats)
		per := peg.PerBillet(f.Offer.Billet[0], f.Offer.Billet[1], side, s.Length, f.Offer.Kerf)
		need := 0
		if per > 0 {
			need = (made + per - 1) / per
		} else if made > 0 {
			unfit++
		}
		billets += need
		t.add(s.Bore, s.Length, s.Head, s.Lead, taper, tip, s.Count, s.Spares(), made,
			joined(f.Stock.Peg, f.Stock.PegDry), o.LeastFlats/perUnit, o.MostFlats/perUnit, side, per, need, pegNote(s))
	}
	t.Columns[len(t.Columns)-1].Aside = held == 0 // a prohibition stands in its row
	t.Totals = append(pegTotals(all, held, made(sizes)), billetTotal(f, billets, unfit))
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

// taperCells are the length of the taper and the diameter of its tip, mm, or
// "none" twice where no tip could enter the two holes.
func taperCells(s PegSize) (length, tip any) {
	lead, ok := s.Taper()
	if !ok {
		return "none", "none"
	}
	return lead.Length, lead.Tip
}

// pegNote says what is particular about the pegs of a size.
func pegNote(s PegSize) string {
	var notes []string
	switch {
	case s.Finding > 0:
		return stopNote(s.Finding)
	case s.Blind:
		notes = append(notes, "blind hole, short taper")
	}
	switch {
	case s.Flush > 0 && s.Flush == s.Count:
		notes = append(notes, "saw flush both faces")
	case s.Flush > 0:
		notes = append(notes, fmt.Sprintf("saw %d flush both faces", s.Flush))
	}
	return strings.Join(notes, "; ")
}

// made counts the sizes to be made.
func made(sizes []PegSize) int {
	n := 0
	for _, s := range sizes {
		if s.Finding == 0 {
			n++
		}
	}
	return n
}

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
