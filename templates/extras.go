package templates

import (
	"fmt"
	"math"

	"pegwright/draw"
	"pegwright/geom/measure"
	"pegwright/geom/vec"
)

// seams marks where this tile meets its neighbours: a line through the middle
// of the overlap with two diamonds, and a small key of the tiles.
func (p *page) seams(t tile, lines [][2]vec.P) {
	w := p.win
	seam := func(a, b vec.P, name string) {
		p.s.Line(draw.Trace, a, b)
		for i, c := range p.canvas.diamonds(a, b, lines) {
			p.s.Poly(draw.Dimension, true, c.Add(vec.P{X: 3}), c.Add(vec.P{Y: 3}), c.Sub(vec.P{X: 3}), c.Sub(vec.P{Y: 3})).Mark = fmt.Sprintf("match:%s%d", name, i+1)
			s := p.seamWord(c, fmt.Sprintf("%s%d", name, i+1), lines)
			p.canvas.busy = append(p.canvas.busy, grown(inked(s, wide(s)), 1), grown(draw.NoBox().With(c), 3))
		}
	}
	h := overlap / 2
	if t.col > 0 {
		seam(vec.P{X: w.Min.X + h, Y: w.Min.Y}, vec.P{X: w.Min.X + h, Y: w.Max.Y}, joinName(t.col, t.row, "A"))
	}
	if t.col < t.cols-1 {
		seam(vec.P{X: w.Max.X - h, Y: w.Min.Y}, vec.P{X: w.Max.X - h, Y: w.Max.Y}, joinName(t.col+1, t.row, "A"))
	}
	if t.row > 0 {
		seam(vec.P{X: w.Min.X, Y: w.Min.Y + h}, vec.P{X: w.Max.X, Y: w.Min.Y + h}, joinName(t.row, t.col, "N"))
	}
	if t.row < t.rows-1 {
		seam(vec.P{X: w.Min.X, Y: w.Max.Y - h}, vec.P{X: w.Max.X, Y: w.Max.Y - h}, joinName(t.row+1, t.col, "N"))
	}
	p.tileKey(t)
}

// seamWord writes the name of a diamond beside it, toward the middle of the
// window, or above it and turned where a wide line runs there.
func (p *page) seamWord(c vec.P, name string, lines [][2]vec.P) *draw.Text {
	t := p.s.Text(c.Add(vec.P{X: 4, Y: 1}), lettering, name)
	t.Halo = true
	if c.X > p.win.Mid().X {
		t.At.X, t.Anchor = c.X-4, draw.End
	}
	on := make([][2]vec.P, len(lines))
	for i, l := range lines {
		on[i] = [2]vec.P{p.canvas.at(l[0]), p.canvas.at(l[1])}
	}
	if turned := *t; crossed(on, []*draw.Text{t}) {
		turned.At, turned.Anchor, turned.Rot = c.Add(vec.P{X: lettering / 2, Y: 4}), draw.Start, math.Pi/2
		if !crossed(on, []*draw.Text{&turned}) {
			*t = turned
		}
	}
	return t
}

// diamonds returns where the two diamonds of a seam stand: toward its ends,
// where none of the lines of the view crosses them or the words beside them, on
// either side of the seam, so that both tiles have them in one place.
func (c *canvas) diamonds(a, b vec.P, lines [][2]vec.P) [2]vec.P {
	clear := func(at vec.P) bool {
		for _, l := range lines {
			if _, _, hit := clipSegment(draw.Box{Min: at.Sub(vec.P{X: 16, Y: 5}), Max: at.Add(vec.P{X: 16, Y: 6})}, c.at(l[0]), c.at(l[1])); hit {
				return false
			}
		}
		return true
	}
	out := [2]vec.P{a.Lerp(b, 0.2), a.Lerp(b, 0.8)}
	for i, way := range []float64{1, -1} {
		for step := range 40 {
			k := 0.2 + 0.01*float64(step)
			if step > 24 {
				k = 0.2 - 0.01*float64(step-24)
			}
			at := a.Lerp(b, k)
			if way < 0 {
				at = b.Lerp(a, k)
			}
			if clear(at) {
				out[i] = at
				break
			}
		}
	}
	return out
}

// wide returns the lines of the view that are drawn wide; for a hole, the sides
// of the square about it and its two axes.
func (p plan) wide() [][2]vec.P {
	var out [][2]vec.P
	add := func(c draw.Class, a, b vec.P) {
		if c == draw.Part || c == draw.Register {
			out = append(out, [2]vec.P{a, b})
		}
	}
	for _, g := range p.guides {
		add(g.class, g.a, g.b)
	}
	for _, s := range p.strokes {
		add(s.class, s.a, s.b)
	}
	for _, h := range p.holes {
		r := h.bore / 2
		for _, k := range []float64{-r, 0, r} {
			add(draw.Part, h.c.Add(vec.P{X: k, Y: -r}), h.c.Add(vec.P{X: k, Y: r}))
			add(draw.Part, h.c.Add(vec.P{X: -r, Y: k}), h.c.Add(vec.P{X: r, Y: k}))
		}
	}
	for _, s := range p.shapes {
		for i, q := range s.pts {
			add(s.class, q, s.pts[(i+1)%len(s.pts)])
		}
	}
	return out
}

// joinName names the seam before column (or row) n in row (or column) k.
func joinName(n, k int, first string) string {
	return string(rune(first[0]+byte(n-1))) + string(rune('a'+k))
}

// keyHigh is the height of column that the key of so many rows of tiles takes,
// mm.
func keyHigh(rows int) float64 { return 7*float64(rows) + 24 }

// tileKey draws the grid of tiles with this one dark, in the words' column.
func (p *page) tileKey(t tile) {
	w, h := min(9, (p.col.W()-1)/float64(t.cols)), 7.0
	o := vec.P{X: p.col.Min.X, Y: p.y - float64(t.rows)*h - 3}
	for r := range t.rows {
		for c := range t.cols {
			a := o.Add(vec.P{X: float64(c) * w, Y: float64(r) * h})
			b := draw.Box{Min: a, Max: a.Add(vec.P{X: w, Y: h})}
			if r == t.row && c == t.col {
				p.s.Tone(0.35, b.Min, vec.P{X: b.Max.X, Y: b.Min.Y}, b.Max, vec.P{X: b.Min.X, Y: b.Max.Y})
			}
			p.s.Rect(draw.Dimension, b)
		}
	}
	p.y = o.Y - 1
	p.write(words{{"Dark: this tile. Lay diamonds on diamonds.", lettering, false}}, 0)
}

// moverHigh is the height of column that the mark mover takes, mm.
const moverHigh = 43.0

// mover draws the mark mover: a strip with two marks the offset apart, one for
// the pricked mark, one for the hole, to be cut out.
func (p *page) mover(q plan, u measure.Units) {
	if q.arrow == nil {
		return
	}
	h := q.holes[len(q.holes)-1]
	e := h.c.Dist(h.other)
	const w, high = 48.0, 29.0
	if p.y-moverHigh < p.col.Min.Y-1e-6 {
		return
	}
	box := draw.Box{Min: vec.P{X: p.col.Min.X, Y: p.y - high - 2}, Max: vec.P{X: p.col.Min.X + w, Y: p.y - 2}}
	p.s.Rect(draw.Trace, box)
	text := func(x, y float64, s string) {
		t := p.s.Text(vec.P{X: x, Y: y}, lettering, s)
		t.Anchor = draw.Middle
	}
	o := box.Min.Add(vec.P{X: 15, Y: 11})
	to := o.Add(vec.P{X: e})
	p.s.Line(draw.Dimension, o.Sub(vec.P{X: 10}), to.Add(vec.P{X: 6}))
	p.s.Line(draw.Dimension, o.Sub(vec.P{Y: 4.5}), o.Add(vec.P{Y: 2.5})).Mark = mark("mover:mortise", q.joint, h.peg)
	p.s.Line(draw.Dimension, to.Sub(vec.P{Y: 2.5}), to.Add(vec.P{Y: 4.5})).Mark = mark("mover:tenon", q.joint, h.peg)
	text(o.X-3, box.Min.Y+1.6, "PRICK")
	text(to.X+3, o.Y+6, "BORE")
	tip := vec.P{X: box.Max.X - 3, Y: o.Y}
	p.s.Line(draw.Part, to.Add(vec.P{X: 8}), tip.Sub(vec.P{X: 5}))
	c := &canvas{s: p.s, win: box}
	c.head(tip, vec.P{X: 1}, 6, 4.5)
	text(box.Mid().X, box.Max.Y-4.8, "mark mover "+u.FormatJoint(e))
	p.y = box.Min.Y - 1
	var say words
	say.add(lettering, false, "cut out; arrow "+h.peg.Words)
	p.write(say, 0)
}
