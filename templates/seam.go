package templates

import (
	"fmt"
	"math"

	"pegwright/draw"
	"pegwright/geom/vec"
)

// seams marks where this tile meets its neighbours: a line through the middle
// of the overlap with two diamonds, and a small key of the tiles. The wide lines
// of the view are kept clear of, where that can be.
func (p *page) seams(t tile, wide [][2]vec.P) {
	w := p.win
	h := overlap / 2
	if t.col > 0 {
		p.canvas.seam(vec.P{X: w.Min.X + h, Y: w.Min.Y}, vec.P{X: w.Min.X + h, Y: w.Max.Y}, joinName(t.col, t.row, "A"), wide)
	}
	if t.col < t.cols-1 {
		p.canvas.seam(vec.P{X: w.Max.X - h, Y: w.Min.Y}, vec.P{X: w.Max.X - h, Y: w.Max.Y}, joinName(t.col+1, t.row, "A"), wide)
	}
	if t.row > 0 {
		p.canvas.seam(vec.P{X: w.Min.X, Y: w.Min.Y + h}, vec.P{X: w.Max.X, Y: w.Min.Y + h}, joinName(t.row, t.col, "N"), wide)
	}
	if t.row < t.rows-1 {
		p.canvas.seam(vec.P{X: w.Min.X, Y: w.Max.Y - h}, vec.P{X: w.Max.X, Y: w.Max.Y - h}, joinName(t.row+1, t.col, "N"), wide)
	}
	p.tileKey(t)
}

// diamond is from the middle of a match mark to its corners, mm.
const diamond = 3.0

// seam draws the seam from a to b on paper with its two match marks, and writes
// the name of each beside it.
func (c *canvas) seam(a, b vec.P, name string, wide [][2]vec.P) {
	c.s.Line(draw.Trace, a, b)
	x, y := vec.P{X: diamond}, vec.P{Y: diamond}
	for i, at := range c.diamonds(a, b, wide) {
		n := fmt.Sprintf("%s%d", name, i+1)
		c.s.Poly(draw.Dimension, true, at.Add(x), at.Add(y), at.Sub(x), at.Sub(y)).Mark = "match:" + n
		c.busy = append(c.busy, upright(grown(draw.NoBox().With(at), diamond)))
		c.seamName(at, n)
	}
}

// seamName writes the name of the match mark at a place on paper: beside it, or
// where it fits near it, with a leader. The neighbour may have it elsewhere.
func (c *canvas) seamName(at vec.P, name string) {
	p := at.Sub(c.o)
	low, high := lettering/2, diamond+1+0.35*lettering
	right := spot{p.Add(vec.P{X: diamond + 1, Y: -low}), draw.Start, 0}
	left := spot{p.Sub(vec.P{X: diamond + 1, Y: low}), draw.End, 0}
	spots := []spot{right, left}
	if at.X > c.win.Mid().X { // toward the middle of the window
		spots = []spot{left, right}
	}
	spots = append(spots, spot{p.Add(vec.P{Y: high}), draw.Middle, 0}, spot{p.Sub(vec.P{Y: high + lettering}), draw.Middle, 0})
	if c.search([]pass{{0, ofAll}, {0, ofHeavy}}, name, lettering, false, spots) {
		return
	}
	if c.search([]pass{{20, ofHeavy}, {20, ofFirm}, {60, ofFirm}, {60, ofNothing}}, name, lettering, false, spots) {
		c.leader(p)
	}
}

// clearMark is the distance of a match mark from a wide line, mm, beyond which
// more is no better: its name fits beside it.
const clearMark = 15.0

// diamonds returns where the two match marks of a seam stand on paper: toward
// its ends, as far from the wide lines of the view as may be. Places and lines
// are those of the view, so that both tiles of the seam have them alike.
func (c *canvas) diamonds(a, b vec.P, wide [][2]vec.P) [2]vec.P {
	clear := func(at vec.P) float64 {
		d := clearMark
		for _, l := range wide {
			d = min(d, offSegment(c.at(l[0]), c.at(l[1]), at))
		}
		return d
	}
	var out [2]vec.P
	for i, ends := range [2][2]vec.P{{a, b}, {b, a}} {
		best := -1.0
		for step := range 40 {
			k := 0.2 + 0.01*float64(step) // inward first, then toward the end
			if step > 24 {
				k = 0.2 - 0.01*float64(step-24)
			}
			at := ends[0].Lerp(ends[1], k)
			// What the two tiles reckon differs in the last figures.
			if d := clear(at); d > best+0.01 {
				best, out[i] = d, at
			}
		}
	}
	return out
}

// offSegment returns how far p lies from the way from a to b.
func offSegment(a, b, p vec.P) float64 {
	d := b.Sub(a)
	if l := d.Dot(d); l > 0 {
		return p.Dist(a.Lerp(b, math.Min(math.Max(p.Sub(a).Dot(d)/l, 0), 1)))
	}
	return p.Dist(a)
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
