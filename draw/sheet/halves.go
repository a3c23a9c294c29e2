package sheet

import (
	"math"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/font"
	"pegwright/geom"
	"pegwright/geom/vec"
)

// halves returns the sheet with both halves of the joint in orthographic views
// and the peg window. Receiver: the entered face above, the side face below it;
// enterer: the cheek above, the end as seen from the receiver below it.
func halves(f *geom.Frame, g Group) []*draw.Sheet {
	j := g.First()
	views := orthos(g)
	t := block.TitleFor(f, j.Kind+", both halves", served(g), "")
	_, full := fresh(f, "joint", j.ID, t) // only for its field
	mirror := g.mirrorWords()
	lines := font.Wrap(mirror, full.W(), small)
	if mirror != "" {
		full.Y0 += float64(len(lines))*small*pitch + 2
	}
	room := full
	if len(j.Pegs) > 0 {
		room.X1 -= windowWidth + 4
	}
	k, name := scaleFor(views, room, f)
	t.Scale = name
	t.Note = "third-angle views; heavy line: reference arris, where it is seen; names of dimensions: joint sheet"
	s, field := fresh(f, "joint", j.ID+"-halves", t)
	if mirror != "" {
		p := pen{s: s, x: field.X0, y: full.Y0 - 2, w: field.W()}
		for _, l := range lines {
			p.line(l, small, false)
		}
	}
	field.X1, field.Y0 = room.X1, room.Y0
	enterer, receiver := size(views[0:2], k, f), size(views[2:4], k, f)
	spare := max(field.W()-enterer.w-receiver.w, 0) / 3
	x := field.X0 + spare
	for i, c := range []columnSize{enterer, receiver} {
		mid := field.Y1 - (field.H()-c.h)/2
		c.draw(s, views[2*i:2*i+2], x, mid, k, f)
		x += c.w + spare
	}
	if len(j.Pegs) > 0 {
		windows(f, s, block.Field{X0: full.X1 - windowWidth, Y0: full.Y0, X1: full.X1, Y1: full.Y1}, j)
	}
	return []*draw.Sheet{s}
}

// titleHeight is the room for the two lines of a view's title.
const titleHeight = 2*small*pitch + 1

// room is how much a view takes about its box at scale k: left, right, below,
// above.
func (v *ortho) room(k float64, f *geom.Frame) (l, r, b, t float64) {
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
		wide = max(wide, font.Measure(line, small, false))
	}
	r = max(r, wide-box.W()-l)
	return l, r, b, t + titleHeight
}

// columnSize is a column of two views that stand over each other.
type columnSize struct{ w, h, left float64 }

// between is the gap between the two views of a column.
const between = 3.0

func size(views []*ortho, k float64, f *geom.Frame) columnSize {
	var c columnSize
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, v := range views {
		l, r, b, t := v.room(k, f)
		lo, hi = min(lo, v.box.Min.X*k-l), max(hi, v.box.Max.X*k+r)
		c.h += b + t + v.box.H()*k
	}
	c.h += between
	c.w, c.left = hi-lo, lo
	return c
}

// draw draws the two views of a column with its left edge at x and its top at
// y.
func (c columnSize) draw(s *draw.Sheet, views []*ortho, x, y, k float64, f *geom.Frame) {
	for _, v := range views {
		l, _, b, t := v.room(k, f)
		o := at(x-c.left, y-t-v.box.Max.Y*k)
		s.Add(scaled(v.items, k, o)...)
		box := draw.Box{Min: o.Add(v.box.Min.Mul(k)), Max: o.Add(v.box.Max.Mul(k))}
		for i, line := range v.title {
			s.Text(at(box.Min.X-l, y-small-float64(i)*small*pitch), small, line).Bold = i == 0
		}
		xs, ys := v.requests(k, f)
		dim.Stack(s, v.across, edge(box, v.across), moved(xs, o))
		dim.Stack(s, v.up, edge(box, v.up), moved(ys, o))
		y = box.Min.Y - b - between
	}
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

func moved(reqs []dim.Request, o vec.P) []dim.Request {
	out := append([]dim.Request(nil), reqs...)
	for i := range out {
		out[i].From, out[i].To = out[i].From.Add(o), out[i].To.Add(o)
	}
	return out
}

// scaleFor returns the largest scale at which the four views fit the field.
func scaleFor(views []*ortho, f block.Field, fr *geom.Frame) (k float64, name string) {
	for _, n := range []int{1, 2, 3, 4, 5, 6, 8, 10, 12, 15} {
		k = 1 / float64(n)
		a, b := size(views[0:2], k, fr), size(views[2:4], k, fr)
		if a.w+b.w+4 <= f.W() && a.h <= f.H() && b.h <= f.H() {
			return k, scaleName(float64(n))
		}
	}
	return k, scaleName(15)
}

func scaleName(n float64) string { return "1:" + draw.Number(n, 1) }
