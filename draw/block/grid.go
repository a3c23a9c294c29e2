package block

import (
	"pegwright/draw"
	"pegwright/draw/dim"
	"pegwright/draw/font"
	"pegwright/geom/vec"
)

// grid is the division of the title block: the corners of its columns in the
// upper two rows, and the rows below them.
type grid struct {
	col  []float64 // x of column borders, first and last on the border
	top  float64
	base float64
	rows int
	part float64 // x of the border in the row of what is shown and the note
}

// shares returns what part of the width each column takes. On a narrow sheet
// the date and the sheet's number need a larger part.
func shares(narrow bool) [5]float64 {
	if narrow {
		return [5]float64{0.31, 0.18, 0.125, 0.175, 0.21}
	}
	return [5]float64{0.345, 0.235, 0.155, 0.13, 0.135}
}

func gridOf(s *draw.Sheet) grid {
	b := border(s)
	g := grid{rows: 3, base: b.Min.Y, col: []float64{b.Min.X}}
	if s.W < 250 {
		g.rows = 4
	}
	g.top = g.base + float64(g.rows)*row
	x, wide := b.Min.X, min(b.W(), widest)
	for _, k := range shares(s.W < 250) {
		x += k * wide
		g.col = append(g.col, x)
	}
	g.col[len(g.col)-1] = b.Min.X + wide
	g.part = g.col[1]
	return g
}

// y returns the lower edge of row n, from the top, starting at 0.
func (g grid) y(n int) float64 { return g.top - float64(n+1)*row }

func (g grid) lines(s *draw.Sheet) {
	last := len(g.col) - 1
	thin := func(a, b vec.P) { s.Line(draw.Dimension, a, b).Layer = "border" }
	s.Line(draw.FrameLine, vec.P{X: g.col[0], Y: g.top}, vec.P{X: g.col[last], Y: g.top}).Layer = "border"
	for n := range g.rows - 1 {
		thin(vec.P{X: g.col[0], Y: g.y(n)}, vec.P{X: g.col[last], Y: g.y(n)})
	}
	if b := border(s); g.col[last] < b.Max.X { // the long side of a roll: close the block
		s.Line(draw.FrameLine, vec.P{X: g.col[last], Y: g.top}, vec.P{X: g.col[last], Y: g.base}).Layer = "border"
	}
	for _, x := range g.col[1:last] {
		thin(vec.P{X: x, Y: g.top}, vec.P{X: x, Y: g.y(1)})
	}
	if g.rows == 3 {
		thin(vec.P{X: g.part, Y: g.y(1)}, vec.P{X: g.part, Y: g.base})
	}
}

// cellAir is what a cell of the title block is wider than its text at least.
const cellAir = 2.5

// makeRoom moves the border between what is shown and the note where the first
// is too long for its cell and the note leaves room.
func (g *grid) makeRoom(foot dim.Group, t Title) {
	last := g.col[len(g.col)-1]
	most := last - foot.Measure(t.Note) - cellAir - 0.1
	need := g.col[0] + foot.Measure(t.Shows) + cellAir + 0.1
	if need > g.part && need <= most {
		g.part = need
	}
}

func (g grid) texts(s *draw.Sheet, t Title, foot dim.Group) {
	last := len(g.col) - 1
	g.name(s, 0, t.Frame)
	g.name(s, 1, t.Sheet)
	fields := [2][3]string{{"scale  " + t.Scale, "unit  " + t.Units, "date  " + t.Date}, {"for  " + t.DrawnFor, "by  " + t.DrawnBy, "rev.  " + t.Revision}}
	all := dim.Together("title fields", append(fields[0][:], fields[1][:]...)...)
	for n, row := range fields {
		for c, f := range row {
			g.put(s, all, n, g.col[c+1], g.col[c+2], f)
		}
	}
	if g.rows == 3 {
		g.put(s, foot, 2, g.col[0], g.part, t.Shows)
		g.put(s, foot, 2, g.part, g.col[last], t.Note)
		return
	}
	g.put(s, foot, 2, g.col[0], g.col[last], t.Shows)
	g.put(s, foot, 3, g.col[0], g.col[last], t.Note)
}

// name writes the title of the frame or of the sheet into row n: large and
// bold, or a step smaller where it is too long for that.
func (g grid) name(s *draw.Sheet, n int, title string) {
	letters := dim.Group{Height: large}
	if font.Measure(title, large, true) > g.col[1]-g.col[0]-cellAir {
		letters = dim.Together("", title)
	}
	x := g.put(s, letters, n, g.col[0], g.col[1], title)
	x.Bold, x.S = true, Fit(title, g.col[1]-g.col[0]-cellAir, letters.Height, true)
}

// without returns a new list of the items that do not carry the mark.
func without(items []draw.Item, mark string) []draw.Item {
	kept := make([]draw.Item, 0, len(items)+2)
	for _, it := range items {
		if it.Head().Mark != mark {
			kept = append(kept, it)
		}
	}
	return kept
}

// put sets a text of a group in a cell of row n, shortened where it is too long.
func (g grid) put(s *draw.Sheet, letters dim.Group, n int, x0, x1 float64, text string) *draw.Text {
	h := letters.Height
	t := letters.Text(s, vec.P{X: x0 + 1.5, Y: g.y(n) + (row-h)/2 + 0.2}, Fit(text, x1-x0-cellAir, h, false))
	t.Layer = "title"
	if text == "" {
		s.Items = s.Items[:len(s.Items)-1] // an empty cell
	}
	return t
}

// Fit returns text shortened with three dots until it is at most width mm wide.
func Fit(text string, width, height float64, bold bool) string {
	if font.Measure(text, height, bold) <= width {
		return text
	}
	r := []rune(text)
	for len(r) > 1 {
		r = r[:len(r)-1]
		if s := string(r) + "..."; font.Measure(s, height, bold) <= width {
			return s
		}
	}
	return string(r)
}
