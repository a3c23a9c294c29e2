package joint

import (
	"math"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/font"
	"pegwright/draw/page"
	"pegwright/draw/scene"
	"pegwright/geom"
	"pegwright/geom/vec"
)

// leastScale is the n of the smallest scale, 1 to n, at which both halves share
// a sheet. Longer joints, such as scarfs, get one for each half.
const leastScale = 5

// halves returns the sheet with both halves of the joint in orthographic views
// and the peg window, or one for each half, the window with the narrower. Receiver:
// the entered face above, the side face below it; enterer: the cheek above, the
// end as seen from the receiver below it.
func halves(f *geom.Frame, g scene.Group) []*draw.Sheet {
	enterer, receiver := orthos(g)
	both := halvesPage{f: f, g: g, id: "halves", title: ", both halves", windows: true}
	if n := both.set(enterer, receiver); n <= leastScale {
		s := both.sheet()
		if both.apart && both.set(enterer, receiver) <= leastScale {
			s = both.sheet()
		}
		return []*draw.Sheet{s}
	}
	atEnterer := columnOf(enterer, 1, f).w < columnOf(receiver, 1, f).w
	in := halvesPage{f: f, g: g, id: "receives", title: ", half that is cut into", windows: !atEnterer}
	of := halvesPage{f: f, g: g, id: "enters", title: ", half that enters", windows: atEnterer}
	if !atEnterer {
		in.set(nil, receiver)
		first := in.sheet()
		of.apart = in.apart
		of.set(enterer, nil)
		return []*draw.Sheet{first, of.sheet()}
	}
	of.set(enterer, nil)
	last := of.sheet()
	in.apart = of.apart
	in.set(nil, receiver)
	return []*draw.Sheet{in.sheet(), last}
}

// halvesPage is a sheet with views of the halves.
type halvesPage struct {
	f         *geom.Frame
	g         scene.Group
	id, title string
	windows   bool
	apart     bool // the draw at full size is still to be shown: room is kept for it
	cols      []column
	n         float64
}

// fields returns the new sheet, the room for its views, the lines that tell of
// joints of opposite hand, and where these and the peg window go.
func (h *halvesPage) fields() (s *draw.Sheet, room, full block.Field, lines []string) {
	j := h.g.First()
	t := block.TitleFor(h.f, j.Kind+h.title, served(h.g), page.Scale(h.n))
	t.Note = "third-angle views; heavy line: reference arris; names: joint sheet"
	s, full = block.ForFrame(h.f, "joint", j.ID+"-"+h.id, t)
	if mirror := h.g.MirrorWords("on the joint sheet"); mirror != "" {
		lines = font.Wrap(mirror, full.W(), dim.Small)
		full.Y0 += float64(len(lines))*dim.Small*page.Pitch + 2
	}
	room = full
	if h.windows && len(j.Pegs) > 0 {
		room.X1 -= windowWidth + 4
	}
	if h.apart {
		if a, ok := apartOf(h.f, j); ok {
			room.Y0 += a.high() + 2
		}
	}
	return s, room, full, lines
}

// set stands the views in columns at the largest scale, 1 to n, and returns n.
func (h *halvesPage) set(enterer, receiver []*ortho) float64 {
	_, room, _, _ := h.fields() // only for its field
	h.cols, h.n = columnsFor(h.f, enterer, receiver, room)
	return h.n
}

func (h *halvesPage) sheet() *draw.Sheet {
	s, room, full, lines := h.fields()
	p := page.Pen{S: s, X: full.X0, Y: full.Y0 - 2, W: full.W()}
	for _, l := range lines {
		p.Line(l, dim.Small, false)
	}
	room = h.pegs(s, room, full)
	spare := room.W()
	for _, c := range h.cols {
		spare -= c.w
	}
	spare = max(spare, 0) / float64(len(h.cols)+1)
	x := room.X0 + spare
	var bevels []func() // after all views, so that they find what is free
	for _, c := range h.cols {
		for i, o := range c.draw(s, x, room.Y1-(room.H()-c.h)/2) {
			bevels = append(bevels, func() { c.views[i].drawBevels(s, c.k, o, room.Box()) })
		}
		x += c.w + spare
	}
	for _, b := range bevels {
		b()
	}
	return s
}

// pegs sets the peg window at the right of the sheet and the draw at full size
// under it, or in a strip under the views where only these have room. It returns
// the room that is left for the views.
func (h *halvesPage) pegs(s *draw.Sheet, room, full block.Field) block.Field {
	j := h.g.First()
	a, draws := apartOf(h.f, j)
	if h.windows && len(j.Pegs) > 0 {
		column := full
		column.X0 = full.X1 - windowWidth
		p := windows(h.f, s, column, j)
		h.apart = draws && !a.under(&p, column)
	}
	if !h.apart {
		return room
	}
	tallest := 0.0
	for _, c := range h.cols {
		tallest = max(tallest, c.h)
	}
	strip := room
	strip.Y0, strip.Y1 = full.Y0, full.Y0+a.high()
	if strip.Y1+2 > room.Y1-tallest {
		return room
	}
	a.beside(s, strip)
	h.apart = false
	room.Y0 = strip.Y1 + 2
	return room
}

// columnsFor stands the views in columns so that they fit the field at the
// largest scale, 1 to n: those of the enterer over each other, or the last of
// three beside the others.
func columnsFor(f *geom.Frame, enterer, receiver []*ortho, field block.Field) (cols []column, n float64) {
	ways := [][][]*ortho{{enterer, receiver}}
	if len(enterer) > 2 {
		ways = append(ways, [][]*ortho{enterer[:2], enterer[2:], receiver})
	}
	for _, n = range []float64{1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 15} {
		for _, way := range ways {
			cols = nil
			w, h := -2.0, 0.0
			for _, views := range way {
				if len(views) == 0 {
					continue
				}
				c := columnOf(views, 1/n, f)
				cols = append(cols, c)
				w += c.w + 2
				h = max(h, c.h)
			}
			if w <= field.W() && h <= field.H() {
				return cols, n
			}
		}
	}
	return cols, n
}

// titleHeight is the room for the two lines of a view's title.
const titleHeight = 2*dim.Small*page.Pitch + 1

// room is how much a view takes about its box: left, right, below, above.
type room struct{ l, r, b, t float64 }

// room returns the room about a view at scale k.
func (v *ortho) room(k float64, f *geom.Frame) (l, r, b, t float64) {
	about, known := v.rooms[k]
	if !known {
		about = v.measure(k, f)
		v.rooms[k] = about
	}
	return about.l, about.r, about.b, about.t
}

// measure reckons the room about a view at scale k.
func (v *ortho) measure(k float64, f *geom.Frame) room {
	var l, r, b, t float64
	x, y := v.requests(k, f)
	box := draw.Box{Min: v.box.Min.Mul(k), Max: v.box.Max.Mul(k)}
	if v.across == dim.Above {
		t = dim.Depth(dim.Above, x)
	} else {
		b = dim.Depth(dim.Below, x)
	}
	if v.up == dim.LeftOf {
		l = dim.Depth(dim.LeftOf, y)
	} else {
		r = dim.Depth(dim.RightOf, y)
	}
	if len(x) > 0 {
		lo, hi := dim.Reach(v.across, x)
		l, r = max(l, box.Min.X-lo), max(r, hi-box.Max.X)
	}
	if len(y) > 0 {
		lo, hi := dim.Reach(v.up, y)
		b, t = max(b, box.Min.Y-lo), max(t, hi-box.Max.Y)
	}
	wide := 0.0
	for _, line := range v.title {
		wide = max(wide, font.Measure(line, dim.Small, false))
	}
	r = max(r, wide-box.W()-l)
	return room{l, r, b, t + titleHeight}
}

// column is a column of views that stand over each other at scale k. Views that
// are seen with the same direction across the paper line up; one that is turned
// begins where the first does.
type column struct {
	views []*ortho
	k     float64
	f     *geom.Frame
	w, h  float64
	left  []float64 // of each view: where the column's left edge lies, from the view's own origin
}

// between is the gap between the views of a column.
const between = 3.0

func columnOf(views []*ortho, k float64, f *geom.Frame) column {
	c := column{views: views, k: k, f: f, h: between * float64(len(views)-1)}
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, v := range views {
		l, r, b, t := v.room(k, f)
		c.h += b + t + v.box.H()*k
		if v.cam.Right == views[0].cam.Right {
			lo, hi = min(lo, v.box.Min.X*k-l), max(hi, v.box.Max.X*k+r)
		}
	}
	c.w = hi - lo
	for _, v := range views {
		if v.cam.Right == views[0].cam.Right {
			c.left = append(c.left, lo)
			continue
		}
		l, r, _, _ := v.room(k, f)
		c.left = append(c.left, v.box.Min.X*k-l)
		c.w = max(c.w, l+v.box.W()*k+r)
	}
	return c
}

// draw draws the views of a column with its left edge at x and its top at y, and
// returns where their origins lie.
func (c column) draw(s *draw.Sheet, x, y float64) []vec.P {
	var origins []vec.P
	for i, v := range c.views {
		l, _, b, t := v.room(c.k, c.f)
		o := vec.At(x-c.left[i], y-t-v.box.Max.Y*c.k)
		s.Add(draw.Scaled(v.items, c.k, o)...)
		box := draw.Box{Min: o.Add(v.box.Min.Mul(c.k)), Max: o.Add(v.box.Max.Mul(c.k))}
		for i, line := range v.title {
			s.Text(vec.At(box.Min.X-l, y-dim.Small-float64(i)*dim.Small*page.Pitch), dim.Small, line).Bold = i == 0
		}
		xs, ys := v.requests(c.k, c.f)
		dim.Stack(s, v.across, edge(box, v.across), dim.Moved(xs, o))
		dim.Stack(s, v.up, edge(box, v.up), dim.Moved(ys, o))
		origins = append(origins, o)
		y = box.Min.Y - b - between
	}
	return origins
}

func edge(b draw.Box, sd dim.Side) float64 {
	switch sd {
	case dim.Above:
		return b.Max.Y
	case dim.RightOf:
		return b.Max.X
	case dim.LeftOf:
		return b.Min.X
	}
	return b.Min.Y
}
