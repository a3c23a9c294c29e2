package block

import (
	"fmt"

	"pegwright/draw"
	"pegwright/draw/dim"
	"pegwright/draw/font"
	"pegwright/geom/vec"
)

const (
	lead = 1.6 // line pitch over text height
	pad  = 2.0 // between a box and its text
)

// Boxed draws a box with the lines at the foot of the field, over its whole
// width, wrapped, beside a heading such as CAUTION, and returns what is left of
// the field above it. No lines draw nothing.
func Boxed(s *draw.Sheet, f Field, heading string, lines []string) Field {
	if len(lines) == 0 {
		return f
	}
	letters := dim.Together("box "+heading, lines...)
	left := f.X0 + pad + font.Measure(heading, letters.Height, true) + 3
	var set []string
	for _, l := range lines {
		set = append(set, font.Wrap(l, f.X1-pad-left, letters.Height)...)
	}
	step := letters.Height * lead
	h := float64(len(set))*step + 2*pad - letters.Height*(lead-1)
	box := draw.Box{Min: vec.P{X: f.X0, Y: f.Y0}, Max: vec.P{X: f.X1, Y: f.Y0 + h}}
	s.Rect(draw.FrameLine, box)
	y := box.Max.Y - pad - letters.Height
	letters.Text(s, vec.P{X: f.X0 + pad, Y: y}, heading).Bold = true
	for _, l := range set {
		letters.Text(s, vec.P{X: left, Y: y}, l)
		y -= step
	}
	f.Y0 += h + 3
	return f
}

// DoNotCut writes over the sheet that the wood must not be cut from it, with
// the number of the finding that says why (as listed on the cover): large and
// light under the drawing, and in full black across the upper border.
func DoNotCut(s *draw.Sheet, finding int) {
	text := fmt.Sprintf("DO NOT CUT – see finding %d", finding)
	b := border(s)
	h := 14.0
	for h > 5 && font.Measure(text, h, true) > b.W()*0.9 {
		h -= 0.5
	}
	under := &draw.Text{
		Meta: draw.Meta{Class: draw.TextClass, Layer: draw.LayerUnder, Pen: &draw.Pen{Grey: 0.82}},
		At:   vec.P{X: b.Mid().X, Y: b.Mid().Y}, Height: h, S: text, Bold: true, Anchor: draw.Middle,
	}
	s.Items = append([]draw.Item{under}, s.Items...)
	t := s.Text(vec.P{X: b.Mid().X, Y: b.Max.Y - 1.2}, 5, text)
	t.Bold, t.Halo, t.Anchor, t.Layer = true, true, draw.Middle, "title"
}
