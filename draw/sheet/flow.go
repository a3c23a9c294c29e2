package sheet

import (
	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/font"
	"pegwright/geom/vec"
)

// flow sets text in columns, one after another, over as many sheets as it
// takes.
type flow struct {
	pen
	next   func(n int) (*draw.Sheet, block.Field)
	cols   int
	gap    float64
	sheets []*draw.Sheet
	f      block.Field
	col    int
}

func newFlow(cols int, next func(n int) (*draw.Sheet, block.Field)) *flow {
	w := &flow{next: next, cols: cols, gap: 6}
	w.page()
	return w
}

// page begins the next sheet.
func (w *flow) page() {
	w.s, w.f = w.next(len(w.sheets) + 1)
	w.sheets = append(w.sheets, w.s)
	w.col = -1
	w.column()
}

// column moves to the next column, or to a new sheet after the last.
func (w *flow) column() {
	w.col++
	if w.col == w.cols {
		w.page()
		return
	}
	w.w = (w.f.W() - float64(w.cols-1)*w.gap) / float64(w.cols)
	w.x = w.f.X0 + float64(w.col)*(w.w+w.gap)
	w.y = w.f.Y1
}

// from moves to the column n, from 0, unless the text is there or beyond.
func (w *flow) from(n int) {
	for len(w.sheets) == 1 && w.col < n {
		w.column()
	}
}

// need moves on where less than h is left in the column.
func (w *flow) need(h float64) {
	if w.y-h < w.f.Y0 && w.y < w.f.Y1 {
		w.column()
	}
}

// heading sets a heading with room for some lines after it.
func (w *flow) heading(t string) {
	if w.y < w.f.Y1 {
		w.skip(2.5)
	}
	w.need(text*pitch + 8*small*pitch)
	w.head(t)
	w.s.Line(draw.Dimension, at(w.x, w.y+1.3), at(w.x+w.w, w.y+1.3))
	w.skip(1)
}

// item sets a paragraph after a mark such as a number, kept whole in a column
// where it can be.
func (w *flow) item(mark, t string) {
	g := w.group(t)
	in := 0.0
	if mark != "" {
		in = max(5, font.Measure(mark, g.Height, true)+2)
	}
	step := g.Height * pitch
	lines := wrap(t, w.w-in, g.Height)
	w.need(float64(min(len(lines), 5)) * step)
	lines = wrap(t, w.w-in, g.Height) // the column that it goes to may have another width
	for i, l := range lines {
		w.need(step)
		if i == 0 && mark != "" {
			g.Text(w.s, at(w.x, w.y-g.Height), mark).Bold = true
		}
		g.Text(w.s, at(w.x+in, w.y-g.Height), l)
		w.y -= step
	}
	w.skip(0.8)
}

// known is a fact about the frame: its name and its value, which stands from a
// share of the width on, 0 for the usual one.
type known struct {
	name, value string
	share       float64
}

// textsOf returns all texts of some facts.
func textsOf(facts []known) []string {
	var out []string
	for _, k := range facts {
		out = append(out, k.name, k.value)
	}
	return out
}

// facts sets names with their values.
func (w *flow) facts(list []known) {
	for _, k := range list {
		if k.share == 0 {
			k.share = 0.45
		}
		w.need(w.pairHeight(k.name, k.value, k.share))
		w.pair(k.name, k.value, k.share)
	}
}

// fact sets a name and its value.
func (w *flow) fact(name, value string) { w.facts([]known{{name: name, value: value}}) }

// entry sets a line of the drawing list that leads to its sheet.
func (w *flow) entry(number, t, to string) {
	g := w.group(number, t)
	in := 5.8 * g.Height
	lines := wrap(t, w.w-in, g.Height)
	w.need(float64(len(lines)) * g.Height * pitch)
	top := w.y
	g.Text(w.s, at(w.x+in-2, w.y-g.Height), number).Anchor = draw.End
	for _, l := range lines {
		g.Text(w.s, at(w.x+in, w.y-g.Height), l)
		w.y -= g.Height * pitch
	}
	w.s.Links = append(w.s.Links, draw.Link{To: to, Rect: draw.Box{
		Min: vec.P{X: w.x, Y: w.y}, Max: vec.P{X: w.x + w.w, Y: top}}})
}
