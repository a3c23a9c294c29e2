package templates

import (
	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/geom"
	"pegwright/geom/vec"
)

// printCheck returns the page that proves a printer: bars in both directions
// and a square whose diagonals can be measured.
func printCheck(f *geom.Frame) *draw.Sheet {
	t := block.TitleFor(f, "Print check", "print this page first and measure it", "1:1")
	t.Note = "print at 100 %, no fit to page"
	s, field := block.New(paperOf(f), false, "check", "print", t)
	s.FullScale = true
	y := field.Y1 - 11
	head := s.Text(vec.P{X: field.X0, Y: y}, 10, "PRINT CHECK")
	head.Bold = true
	big := s.Text(vec.P{X: field.X0, Y: y - 11}, 7, "Print at 100 %. No “fit to page”.")
	big.Bold = true
	y -= 21
	for _, l := range []string{
		"Print this page with the settings and the paper that the templates get.",
		"Let the paper lie for an hour: it moves with the damp. Measure with a steel rule.",
		"Each bar must be right within 1/64 in (0.5 mm), across and along the sheet.",
		"The two diagonals of the square must be equal: 141.4 mm (5 9/16 in full).",
		"If one is off, do not use the templates: change the print settings, or the printer.",
	} {
		s.Text(vec.P{X: field.X0, Y: y}, lettering, l)
		y -= 6
	}
	base := vec.P{X: field.X0 + 30, Y: field.Y0 + 26}
	bars(s, vec.P{X: base.X, Y: field.Y0 + 2}, "x")
	bars(s, vec.P{X: field.X0 + 4, Y: base.Y}, "y")
	checkSquare(s, base)
	return s
}

// checkSquare draws a 100 mm square with its diagonals.
func checkSquare(s *draw.Sheet, o vec.P) {
	c := [4]vec.P{o, o.Add(vec.P{X: 100}), o.Add(vec.P{X: 100, Y: 100}), o.Add(vec.P{Y: 100})}
	s.Poly(draw.Part, true, c[:]...).Mark = "bar:square"
	s.Line(draw.Dimension, c[0], c[2]).Mark = "bar:diagonal:up"
	s.Line(draw.Dimension, c[1], c[3]).Mark = "bar:diagonal:down"
	for i, at := range []vec.P{{X: 50, Y: 92}, {X: 50, Y: 4}} {
		t := s.Text(o.Add(at), lettering, [2]string{"100 mm square", "diagonals 141.4 mm"}[i])
		t.Anchor = draw.Middle
	}
}
