package templates

import (
	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/geom"
	"pegwright/geom/vec"
)

// printCheck returns the page that proves a printer: bars in both directions,
// a square whose diagonals can be measured, and how a printer that is a little
// off is corrected.
func printCheck(f *geom.Frame) *draw.Sheet {
	t := block.TitleFor(f, "Print check", "print this page first and measure it", "1:1")
	t.Note = printNote(f)
	s, field := block.On(paperOf(f), "check", "print", t)
	s.FullScale = true
	y := field.Y1 - 11
	head := s.Text(vec.P{X: field.X0, Y: y}, 10, "PRINT CHECK")
	head.Bold = true
	big := s.Text(vec.P{X: field.X0, Y: y - 12.5}, 7, "Print at 100 %. No “fit to page”.")
	big.Bold = true
	l := layout{col: field.Box()}
	l.col.Max.Y = y - 16.5
	l.flow(checkWords(f), endless, func(q para, line string, at vec.P) { s.Text(at, q.height, line) })
	base := vec.P{X: field.X0 + 30, Y: field.Y0 + 26}
	bars(s, vec.P{X: base.X, Y: field.Y0 + 2}, "x")
	bars(s, vec.P{X: field.X0 + 4, Y: base.Y}, "y")
	checkSquare(s, base)
	return s
}

// checkWords say how to measure, and what to do where the print is off.
func checkWords(f *geom.Frame) words {
	var w words
	w.add(lettering, false,
		"Print this page with the settings and the paper that the templates get. Let the paper lie for an hour: it moves with the damp. Measure with a steel rule.",
		"Each bar must be right within 1/64 in (0.5 mm), across and along the sheet. The two diagonals of the square must be equal: 141.4 mm (5 9/16 in full). If they are not, do not use the templates.")
	along, across, ok := corrected(f)
	if !ok {
		w.add(lettering, false,
			"A printer that is a little off can be corrected: measure the 100 mm bar that runs along the paper (upright here) and the one across it, to 0.1 mm, and write both numbers into the frame's description:",
			"paper: {printed\u00a0along:\u00a099.6\u00a0mm, printed\u00a0across:\u00a0100.2\u00a0mm}",
			"Draw again, print this page again: the bars must now be right.")
		return w
	}
	w.add(lettering, false,
		"All full-size sheets are corrected for a printer that makes of 100 mm "+draw.Number(along, 2)+" mm along the paper (upright here) and "+draw.Number(across, 2)+" mm across it. The bars here must now be right.",
		"If they are not, take “printed along” and “printed across” out of the frame's description, print this page again, and measure anew.")
	return w
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
