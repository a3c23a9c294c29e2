package joint

import (
	"math"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/page"
	"pegwright/geom"
	"pegwright/geom/peg"
	"pegwright/geom/vec"
)

// windowWidth is the width of the column with the peg windows.
const windowWidth = 55.0

// windows draws, for the first peg of the joint, where the centre of its hole
// may lie, the holes of all pegs, and tells the tightest margin of every hole. The
// picture is in the joint's plane: along the receiver across the paper, out of
// the entered face up (across it where the pegs enter that face). It returns the
// pen below.
func windows(f *geom.Frame, s *draw.Sheet, field block.Field, j *geom.Joint) page.Pen {
	p := page.Pen{S: s, X: field.X0, Y: field.Y1, W: field.W(), Letters: figures()}
	w, told := &window{s: s, j: j}, marginsOf(j.Pegs)
	high := field.H() - tall(p, w.intro) - underWindow - dim.Text*page.Pitch
	brief := high-tall(p, func(q *page.Pen) { told.tell(q, f, false, true) }) < leastWindow
	high -= tall(p, func(q *page.Pen) { told.tell(q, f, brief, true) })
	drawn := high >= leastWindow/2
	if drawn {
		w.intro(&p)
		p.Y = w.draw(block.Field{X0: field.X0, Y0: p.Y - min(high, 84), X1: field.X1, Y1: p.Y}) - underWindow + 2
		p.Para("scale " + page.Scale(1/w.k))
	} else {
		p.Head("Peg holes")
	}
	p.Skip(2)
	told.tell(&p, f, brief, drawn)
	p.Skip(2)
	return p
}

// underWindow is the air above and below the scale under a peg window, and
// leastWindow how high the window must be able to be for all margins to be told in
// full; it is left out where it cannot have half of that. All are paper mm.
const underWindow, leastWindow = 7.0, 30.0

// tall is how much of a column of the pen's width is written on, paper mm.
func tall(like page.Pen, write func(*page.Pen)) float64 {
	q := page.Pen{S: draw.NewSheet("", "", "", 1, 1), W: like.W, Letters: like.Letters}
	write(&q)
	return -q.Y
}

// intro tells what the picture shows.
func (w *window) intro(p *page.Pen) {
	p.Head("Peg window")
	p.Para("Light tone: where the centre of the mortise hole may lie, the tenon hole keeping its offset.")
	p.Para(w.words())
	p.Skip(2)
}

// window draws peg holes and their windows in the joint's plane.
type window struct {
	s *draw.Sheet
	j *geom.Joint
	k float64
	o vec.P // paper place of u = w = 0
}

// flat returns the place of a frame point in the joint's plane.
func (w *window) flat(p vec.V) vec.P { return w.j.Flat(p) }

func (w *window) paper(p vec.P) vec.P { return w.o.Add(p.Mul(w.k)) }

// frame is what the picture shows: the tenon and every hole with some room.
func (w *window) frame() draw.Box {
	b := draw.NoBox()
	for _, v := range w.j.Tenon.V {
		b = b.With(w.flat(v))
	}
	for _, p := range w.j.Pegs {
		r := 1.6 * p.Bore
		m := w.flat(p.Mortise)
		b = b.With(m.Sub(vec.At(r, r)), m.Add(vec.At(r, r)))
	}
	u, v := 0.06*b.W()+6, 0.06*b.H()+6
	return draw.Box{Min: b.Min.Sub(vec.At(u, v)), Max: b.Max.Add(vec.At(u, v))}
}

// draw draws the picture at the top of the field and returns its lower edge.
func (w *window) draw(f block.Field) float64 {
	b := w.frame()
	w.k = min(f.W()/b.W(), f.H()/b.H())
	for _, n := range []float64{1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 15, 20} {
		if 1/n <= w.k {
			w.k = 1 / n
			break
		}
	}
	w.o = vec.At(f.Mid().X, f.Y1-b.H()*w.k/2).Sub(b.Mid().Mul(w.k))
	first := w.j.Pegs[0]
	if poly := page.Within(first.Window.Workable, b); len(poly) > 2 {
		w.s.Tone(0.9, w.loop(poly)...)
		w.s.Poly(draw.Dimension, true, w.loop(poly)...)
	}
	if poly := page.Within(first.Window.Full, b); len(poly) > 2 {
		w.s.Tone(0.78, w.loop(poly)...)
		w.s.Poly(draw.Dimension, true, w.loop(poly)...)
	}
	w.outline(b)
	for i, p := range w.j.Pegs {
		w.hole(p, i == 0)
	}
	return f.Y1 - b.H()*w.k
}

func (w *window) loop(poly []vec.P) []vec.P {
	out := make([]vec.P, len(poly))
	for i, p := range poly {
		out[i] = w.paper(p)
	}
	return out
}

// outline draws the tenon as it is seen square to its cheek and the line of the
// bearing plane, which is the shoulder when the joint is closed.
func (w *window) outline(b draw.Box) {
	if hull := hullOf(w.j, w.flat); len(hull) > 2 {
		w.s.Poly(draw.Part, true, w.loop(hull)...)
	}
	a := w.j.Axes
	up := a.W
	if w.j.Broad {
		up = a.V
	}
	n := w.j.Bearing.N.Dot(up)
	h := -w.j.Bearing.Height(a.O) * n
	if math.Abs(n) > 1-1e-6 && h > b.Min.Y && h < b.Max.Y {
		w.s.Line(draw.Part, w.paper(vec.At(b.Min.X, h)), w.paper(vec.At(b.Max.X, h)))
	}
}

// hole draws both holes of a peg, the mortise's with its centre, and for the
// first peg the line of its tightest margin.
func (w *window) hole(p geom.Peg, first bool) {
	m, t := w.flat(p.Mortise), w.flat(p.Tenon)
	r := p.Bore / 2 * w.k
	c := w.paper(m)
	w.s.Circle(draw.Part, c, r)
	if m.Dist(t) > 1e-6 {
		w.s.Circle(draw.Hidden, w.paper(t), r)
	}
	w.s.Line(draw.Centre, c.Sub(vec.At(r+2, 0)), c.Add(vec.At(r+2, 0)))
	w.s.Line(draw.Centre, c.Sub(vec.At(0, r+2)), c.Add(vec.At(0, r+2)))
	tight, ok := p.Window.Tightest()
	if !ok || !first {
		return
	}
	from := m
	if tight.Rule.Hole == peg.TenonHole {
		from = t
	}
	d := tight.Rule.N
	if g := tight.Rule.Grain; g != (vec.P{}) {
		d = g.Unit()
		if d.Dot(tight.Rule.N) < 0 {
			d = d.Mul(-1)
		}
	}
	if math.IsInf(tight.Distance, 0) {
		return
	}
	a, b := w.paper(from), w.paper(from.Add(d.Mul(tight.Distance)))
	w.s.Line(draw.Dimension, a, b)
	dim.Arrow(w.s, b, b.Sub(a))
}

// words says what else the picture shows.
func (w *window) words() string {
	p := w.j.Pegs[0]
	out := ""
	switch {
	case p.Window.Workable == nil:
		out = "There is no workable place for this hole."
	case p.Window.Full == nil:
		out = "No place here reaches full strength in this wood."
	default:
		out = "Darker tone: full strength."
	}
	if p.Offset > 0 {
		out += " Full circle: mortise hole. Dashed: tenon hole."
	}
	return out
}

// hullOf returns the outline of the tenon in the joint's plane: the convex hull
// of its corners, counter-clockwise (monotone chain).
func hullOf(j *geom.Joint, flat func(vec.V) vec.P) []vec.P {
	var pts []vec.P
	for _, v := range j.Tenon.V {
		pts = append(pts, flat(v))
	}
	for i := range pts {
		for k := i; k > 0 && (pts[k].X < pts[k-1].X-1e-9 || math.Abs(pts[k].X-pts[k-1].X) <= 1e-9 && pts[k].Y < pts[k-1].Y); k-- {
			pts[k], pts[k-1] = pts[k-1], pts[k]
		}
	}
	chain := func(from []vec.P) []vec.P {
		var c []vec.P
		for _, p := range from {
			for len(c) > 1 && c[len(c)-1].Sub(c[len(c)-2]).Cross(p.Sub(c[len(c)-1])) <= 1e-6 {
				c = c[:len(c)-1]
			}
			c = append(c, p)
		}
		return c
	}
	if len(pts) < 3 {
		return nil
	}
	low := chain(pts)
	back := make([]vec.P, len(pts))
	for i, p := range pts {
		back[len(pts)-1-i] = p
	}
	high := chain(back)
	return append(low[:len(low)-1], high[:len(high)-1]...)
}
