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
	in := 0.0
	if mark != "" {
		in = max(5, font.Measure(mark, max(small, w.least), true)+2)
	}
	h := w.height(t)
	lines := wrap(t, w.w-in, h)
	w.need(min(float64(len(lines)), 5) * h * pitch)
	lines = wrap(t, w.w-in, h) // the column that it goes to may have another width
	for i, l := range lines {
		w.need(h * pitch)
		if i == 0 && mark != "" {
			m := w.s.Text(at(w.x, w.y-h), max(small, w.least), mark)
			m.Bold = true
		}
		w.s.Text(at(w.x+in, w.y-h), h, l)
		w.y -= h * pitch
	}
	w.skip(0.8)
}

// fact sets a name and its value.
func (w *flow) fact(name, value string) { w.factAt(name, value, 0.45) }

// factAt is fact with the value from a share of the width on.
func (w *flow) factAt(name, value string, share float64) {
	w.need(w.pairHeight(name, value, share))
	w.pair(name, value, share)
}

// entry sets a line of the drawing list that leads to its sheet.
func (w *flow) entry(number, t, to string) {
	in := 17.0
	lines := wrap(t, w.w-in, small)
	w.need(float64(len(lines)) * small * pitch)
	top := w.y
	n := w.s.Text(at(w.x+in-2, w.y-small), small, number)
	n.Anchor = draw.End
	for _, l := range lines {
		w.s.Text(at(w.x+in, w.y-small), small, l)
		w.y -= small * pitch
	}
	w.s.Links = append(w.s.Links, draw.Link{To: to, Rect: draw.Box{
		Min: vec.P{X: w.x, Y: w.y}, Max: vec.P{X: w.x + w.w, Y: top}}})
}
