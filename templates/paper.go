package templates

import (
	"pegwright/draw"
	"pegwright/geom"
	"pegwright/geom/measure"
	"pegwright/geom/vec"
)

// rollCuts are the lengths at which a roll is cut off for a template, mm: those
// of Letter, Tabloid and the sheets of 24 and 36 in.
var rollCuts = [...]float64{11 * 25.4, 17 * 25.4, 24 * 25.4, 36 * 25.4}

// paperOf returns the paper of the templates: as asked for, else Letter or A4
// by the frame's units. A roll is the sheet that is cut off it first.
func paperOf(f *geom.Frame) draw.Paper {
	if p, ok := draw.PaperNamed(f.Paper.Templates); ok {
		return p
	}
	if p, ok := draw.RollNamed(f.Paper.Templates); ok {
		p.H = rollCuts[0]
		return p
	}
	name := "Letter"
	if f.Units == measure.Metric {
		name = "A4"
	}
	p, _ := draw.PaperNamed(name)
	return p
}

// corrected reports whether the sheets are drawn for a printer that is off, and
// what it makes of 100 mm along the long and the short side of the paper.
func corrected(f *geom.Frame) (along, across float64, ok bool) {
	or := func(mm float64) float64 {
		if mm > 0 {
			return mm
		}
		return 100
	}
	along, across = or(f.Paper.Along), or(f.Paper.Across)
	return along, across, along != 100 || across != 100
}

// printNote is the note in the title block of a full-scale sheet.
func printNote(f *geom.Frame) string {
	along, across, ok := corrected(f)
	if !ok {
		return "print at 100 %, no fit to page; measure both bars before use"
	}
	return "print at 100 %; corrected: 100 mm prints " + draw.Number(along, 2) + " along, " + draw.Number(across, 2) + " across"
}

// correct scales every sheet by 100 over what the printer makes of 100 mm, in
// both directions, so that it comes out true. Paper that comes in sheets is
// scaled about its middle; a roll along its length from the start, and is cut
// off longer or shorter by as much.
func correct(f *geom.Frame, sheets []*draw.Sheet) {
	along, across, ok := corrected(f)
	if !ok {
		return
	}
	roll, rolled := draw.RollNamed(f.Paper.Templates)
	for _, s := range sheets {
		x, y := 100/across, 100/along
		about := vec.P{X: s.W / 2, Y: s.H / 2}
		switch {
		case rolled && s.W == roll.W:
			about.Y = 0
			s.H *= y
		case rolled:
			x, y = y, x
			about.X = 0
			s.W *= x
		case s.W > s.H:
			x, y = y, x
		}
		s.Stretch(about, x, y)
	}
}
