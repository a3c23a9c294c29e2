package templates

import (
	"math"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/geom"
	"pegwright/geom/vec"
)

// layout divides a page: a window for the wood, a column for the words, and
// places for the two pairs of bars.
type layout struct {
	paper  draw.Paper
	beside bool // the words stand to the right of the window
	win    draw.Box
	col    draw.Box // for words
	barX   vec.P
	barY   vec.P
	narrow bool
	// Above the height above, lines of words may be wide mm wide: the upright
	// bars end there.
	above, wide float64
	known       *wraps // shared by all ways to divide a page; nil for none
}

// long is what a pair of bars takes along its length, mm.
const long = 104.0

// layouts returns the ways to divide a page of the frame's paper, best first. A
// roll is cut off as short as will do.
func layouts(f *geom.Frame) []layout {
	out := waysOn(f)
	known := &wraps{lines: map[wrapping][]string{}}
	for i := range out {
		out[i].known = known
	}
	return out
}

func waysOn(f *geom.Frame) []layout {
	var out []layout
	if roll, ok := draw.RollNamed(f.Paper.Templates); ok {
		for _, cut := range rollCuts {
			out = append(out, beside(draw.Paper{Name: roll.Name, W: roll.W, H: cut}, long))
		}
		return out
	}
	p := paperOf(f)
	land, port := p.Landscape(), p.Portrait()
	return []layout{beside(land, long), beside(land, 74), beside(port, 66), below(port), beside(land, 62)}
}

func fieldOf(p draw.Paper) block.Field {
	_, f := block.On(p, "", "", block.Title{})
	return f
}

// beside puts the words to the right of the window. Where they take less than
// a bar is long, the lying bar goes under the window.
func beside(p draw.Paper, width float64) layout {
	f := fieldOf(p)
	l := layout{paper: p, beside: true, win: f.Box(), col: f.Box(), narrow: width < long}
	l.col.Min.X = f.X1 - width
	l.win.Max.X = l.col.Min.X - 3
	l.barY = vec.P{X: f.X1 - barRoom, Y: f.Y0 + 1}
	l.col.Max.X = l.barY.X - 3
	if l.narrow {
		l.barX = vec.P{X: f.X0 + 1, Y: f.Y0 + 1}
		l.win.Min.Y += barRoom + 4
	} else {
		l.barX = vec.P{X: l.col.Min.X, Y: f.Y0 + 1}
		l.barY.Y += barRoom + 4
		l.col.Min.Y += barRoom + 4
	}
	l.above, l.wide = l.barY.Y+long, f.X1-l.col.Min.X
	return l
}

// below puts the words under the window.
func below(p draw.Paper) layout {
	f := fieldOf(p)
	l := layout{paper: p, win: f.Box(), col: f.Box()}
	l.win.Min.Y = f.Y0 + long + 6
	l.barX = vec.P{X: f.X0 + 1, Y: f.Y0 + 1}
	l.barY = vec.P{X: f.X1 - barRoom, Y: f.Y0 + 1}
	l.col = draw.Box{Min: vec.P{X: f.X0, Y: f.Y0 + barRoom + 4}, Max: vec.P{X: l.barY.X - 3, Y: l.win.Min.Y - 3}}
	l.above = f.Y1
	return l
}

// page is one sheet under construction.
type page struct {
	s *draw.Sheet
	layout
	canvas *canvas
	y      float64 // base of the next line in the column
}

// newPage starts a 1:1 sheet with its bars.
func newPage(f *geom.Frame, l layout, kind, id, title, shows string) *page {
	t := block.TitleFor(f, title, shows, "1:1")
	t.Note = printNote(f)
	s, _ := block.On(l.paper, kind, id, t)
	s.FullScale = true
	bars(s, l.barX, "x")
	bars(s, l.barY, "y")
	p := &page{s: s, layout: l, y: l.col.Max.Y}
	edge := l.win
	if l.beside {
		s.Line(draw.Hatch, vec.P{X: edge.Max.X + 1.5, Y: edge.Min.Y}, vec.P{X: edge.Max.X + 1.5, Y: edge.Max.Y})
	} else {
		s.Line(draw.Hatch, vec.P{X: edge.Min.X, Y: edge.Min.Y - 1.5}, vec.P{X: edge.Max.X, Y: edge.Min.Y - 1.5})
	}
	return p
}

// words are the texts of a column, in order.
type words []para

// para is one paragraph: its height, and the air above it.
type para struct {
	text   string
	height float64
	bold   bool
}

func (w *words) add(height float64, bold bool, texts ...string) {
	for _, t := range texts {
		if t != "" {
			*w = append(*w, para{t, height, bold})
		}
	}
}

// lead is the line pitch, and paraAir the air below a paragraph, over the height
// of text.
const lead, paraAir = 1.55, 0.45

// height returns how high the words stand in a column of one width, mm; known
// keeps how they break, unless it is nil.
func (w words) height(width float64, known *wraps) float64 {
	l := layout{col: draw.Box{Max: vec.P{X: width}}, known: known}
	_, y := l.flow(w, endless, nil)
	return -y
}

// room reports whether the words stand in the layout's column with spare mm
// left at its foot.
func (l layout) room(w words, spare float64) bool {
	n, y := l.flow(w, spare, nil)
	return n == len(w) && y >= l.foot(spare)
}

// endless is the spare with which a column has no foot.
const endless = -math.MaxFloat64

// foot is the height down to which words may come, with spare mm left.
func (l layout) foot(spare float64) float64 { return l.col.Min.Y + spare - 1e-6 }

// ascent is how far the base line of a line lies below its top, over the height
// of text.
const ascent = 1.2

// below returns how high the next line begins after one that begins at y.
func (q para) below(y float64) float64 {
	y -= q.height * ascent
	return y - q.height*(lead-ascent)
}

// flow goes down the column with the words as far as they stand in it with spare
// mm left at its foot, and gives set, unless it is nil, each of their lines and
// the start of its base line. It returns how many paragraphs found room, and the
// height that they come down to.
func (l layout) flow(w words, spare float64, set func(q para, line string, at vec.P)) (n int, y float64) {
	y = l.col.Max.Y
	for i, q := range w {
		lines := l.known.wrap(q, max(l.wide, l.col.W()))
		if y-float64(len(lines))*q.height*lead < l.above {
			lines = l.known.wrap(q, l.col.W())
		}
		top := y
		for range lines {
			y = q.below(y)
		}
		if y -= q.height * paraAir; y < l.foot(spare) {
			return i, top
		}
		for k := 0; set != nil && k < len(lines); k++ {
			set(q, lines[k], vec.P{X: l.col.Min.X, Y: top - q.height*ascent})
			top = q.below(top)
		}
	}
	return len(w), y
}

// under writes words in the strip below the window.
func (p *page) under(w words) {
	q := page{s: p.s, layout: layout{col: p.win}, y: p.win.Min.Y - 2}
	q.col.Min.Y = 0
	q.write(w, 0)
}

// write sets the words in the column, but for spare mm at its foot, and returns
// the paragraphs that found no room.
func (p *page) write(w words, spare float64) words {
	l := p.layout
	l.col.Max.Y = p.y
	n, y := l.flow(w, spare, p.line)
	p.y = y
	return w[n:]
}

// line writes one line of a paragraph.
func (p *page) line(q para, line string, at vec.P) {
	p.s.Text(at, q.height, line).Bold = q.bold
}
