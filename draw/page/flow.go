package page

import (
	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/font"
	"pegwright/geom/vec"
)

// Flow sets text in columns, one after another, over as many sheets as it
// takes.
type Flow struct {
	Pen
	Next   func(n int) (*draw.Sheet, block.Field) // makes the n-th sheet, from 1
	Cols   int                                    // columns of a sheet
	Gap    float64                                // between columns, mm
	Sheets []*draw.Sheet                          // made so far
	Field  block.Field                            // of the last sheet
	// Drop is how far below the field's upper edge each column of the first sheet
	// begins, mm; columns beyond its end begin at the edge.
	Drop []float64

	col int
}

// NewFlow begins a flow in a number of columns. next makes its n-th sheet, from
// 1, and returns the field to fill.
func NewFlow(cols int, next func(n int) (*draw.Sheet, block.Field)) *Flow {
	return NewFlowUnder(nil, cols, next)
}

// NewFlowUnder is NewFlow with columns that begin lower on the first sheet, under
// a picture for one: Drop of the flow.
func NewFlowUnder(drop []float64, cols int, next func(n int) (*draw.Sheet, block.Field)) *Flow {
	w := &Flow{Next: next, Cols: cols, Gap: 6, Drop: drop}
	w.Turn()
	return w
}

// Column returns the column n, from 0, of the last sheet's field.
func (w *Flow) Column(n int) block.Field {
	f := w.Field
	wide := (f.W() - float64(w.Cols-1)*w.Gap) / float64(w.Cols)
	f.X0 += float64(n) * (wide + w.Gap)
	f.X1 = f.X0 + wide
	return f
}

// Turn begins the next sheet.
func (w *Flow) Turn() {
	w.S, w.Field = w.Next(len(w.Sheets) + 1)
	w.Sheets = append(w.Sheets, w.S)
	w.col = -1
	w.column()
}

// column moves to the next column, or to a new sheet after the last.
func (w *Flow) column() {
	w.col++
	if w.col == w.Cols {
		w.Turn()
		return
	}
	f := w.Column(w.col)
	w.X, w.Y, w.W = f.X0, w.top(), f.W()
}

// top is the upper edge of the column.
func (w *Flow) top() float64 {
	if len(w.Sheets) == 1 && w.col < len(w.Drop) {
		return w.Field.Y1 - w.Drop[w.col]
	}
	return w.Field.Y1
}

// From moves to the column n, from 0, unless the text is there or beyond.
func (w *Flow) From(n int) {
	for len(w.Sheets) == 1 && w.col < n {
		w.column()
	}
}

// Need moves on where less than h is left in the column.
func (w *Flow) Need(h float64) {
	if w.Y-h < w.Field.Y0 && w.Y < w.top() {
		w.column()
	}
}

// Heading sets a heading with room for some lines after it.
func (w *Flow) Heading(t string) {
	if w.Y < w.top() {
		w.Skip(2.5)
	}
	w.Need(dim.Text*Pitch + 8*dim.Small*Pitch)
	w.Head(t)
	w.S.Line(draw.Dimension, vec.At(w.X, w.Y+1.3), vec.At(w.X+w.W, w.Y+1.3))
	w.Skip(1)
}

// Item sets a paragraph after a mark such as a number, kept whole in a column
// where it can be.
func (w *Flow) Item(mark, t string) {
	g := w.Group(t)
	in := 0.0
	if mark != "" {
		in = max(5, font.Measure(mark, g.Height, true)+2)
	}
	step := g.Height * Pitch
	lines := Wrap(t, w.W-in, g.Height)
	w.Need(float64(min(len(lines), 5)) * step)
	lines = Wrap(t, w.W-in, g.Height) // the column that it goes to may have another width
	for i, l := range lines {
		w.Need(step)
		if i == 0 && mark != "" {
			g.Text(w.S, vec.At(w.X, w.Y-g.Height), mark).Bold = true
		}
		g.Text(w.S, vec.At(w.X+in, w.Y-g.Height), l)
		w.Y -= step
	}
	w.Skip(0.8)
}

// Fact is a fact to be set: its name and its value, which stands from a
// share of the width on, 0 for the usual one.
type Fact struct {
	Name, Value string
	Share       float64
}

// share is where the value stands.
func (k Fact) share() float64 {
	if k.Share == 0 {
		return 0.45
	}
	return k.Share
}

// Texts returns all texts of some facts.
func Texts(facts []Fact) []string {
	var out []string
	for _, k := range facts {
		out = append(out, k.Name, k.Value)
	}
	return out
}

// Facts sets names with their values.
func (w *Flow) Facts(list []Fact) {
	for _, k := range list {
		w.Need(w.pairHeight(k.Name, k.Value, k.share()))
		w.Pair(k.Name, k.Value, k.share())
	}
}

// Block sets facts under a heading, all in one column.
func (w *Flow) Block(heading string, list []Fact) {
	high := 2.5 + dim.Text*Pitch + 1
	for _, k := range list {
		high += w.pairHeight(k.Name, k.Value, k.share())
	}
	w.Need(high)
	w.Heading(heading)
	w.Facts(list)
}

// Fact sets a name and its value.
func (w *Flow) Fact(name, value string) { w.Facts([]Fact{{Name: name, Value: value}}) }

// Entry sets a line of the drawing list that leads to its sheet.
func (w *Flow) Entry(number, t, to string) {
	g := w.Group(number, t)
	in := 5.8 * g.Height
	lines := Wrap(t, w.W-in, g.Height)
	w.Need(float64(len(lines)) * g.Height * Pitch)
	top := w.Y
	g.Text(w.S, vec.At(w.X+in-2, w.Y-g.Height), number).Anchor = draw.End
	for _, l := range lines {
		g.Text(w.S, vec.At(w.X+in, w.Y-g.Height), l)
		w.Y -= g.Height * Pitch
	}
	w.S.Links = append(w.S.Links, draw.Link{To: to, Rect: draw.Box{
		Min: vec.P{X: w.X, Y: w.Y}, Max: vec.P{X: w.X + w.W, Y: top}}})
}
