package templates

import (
	"fmt"
	"math"

	"pegwright/draw"
	"pegwright/geom"
	"pegwright/geom/measure"
	"pegwright/geom/vec"
)

// pegSheets draws one size of peg: where it is longer than the paper, less a
// stretch of its plain body, else on several tiles.
func pegSheets(f *geom.Frame, p pegSize, n int) []*draw.Sheet {
	const air = 6.0
	l := pegLayout(f)
	cut := p.shorten(l.win.W()-2*air, f.Units)
	xs := starts(-air, cut.at(p.length)+air, l.win.W(), nil, nil)
	var out []*draw.Sheet
	for i, x := range xs {
		id, title := fmt.Sprintf("peg-%d", n), "Peg pattern"
		if len(xs) > 1 {
			id, title = fmt.Sprintf("%s-tile-%d", id, i+1), fmt.Sprintf("%s, tile %d of %d", title, i+1, len(xs))
		}
		pg := newPage(f, l, "pattern", id, title, fmt.Sprintf("peg for a bore of %s, %d to make", f.Units.FormatJoint(p.bore), p.count+p.spares))
		pg.canvas = &canvas{s: pg.s, win: l.win, o: vec.P{X: l.win.Min.X - x, Y: l.win.Mid().Y + 2}, owner: id}
		pg.write(append(p.words(f), cut.words(f.Units)...), 0)
		if t := (tile{col: i, cols: len(xs), rows: 1}); !t.one() {
			pg.seams(t, nil)
		}
		p.draw(pg.canvas, cut, f.Units)
		p.ends(pg, f.Units)
		out = append(out, pg.s)
	}
	return out
}

// taper returns where the taper of a peg begins, and half the width of its tip.
func (p pegSize) taper() (body, tip float64) {
	if p.enters {
		return p.length - p.lead.Length, p.lead.Tip / 2
	}
	return p.length, p.flats() / 2
}

// shortened is a stretch that is left out of a peg's plain body: it begins at
// from, takes by mm, and shows as a gap of shown mm. A zero by leaves out
// nothing.
type shortened struct{ from, by, shown float64 }

// at returns where a place along the peg is drawn.
func (s shortened) at(x float64) float64 {
	if s.by > 0 && x > s.from {
		return x - s.by + s.shown
	}
	return x
}

// shorten chooses the stretch to leave out so that the peg is drawn room mm
// long at most: whole inches, or tens of millimetres, from the middle of the
// body. It leaves out nothing where the peg has room, or its body is too short.
func (p pegSize) shorten(room float64, u measure.Units) shortened {
	const gap, plain = 6.0, 10.0
	step := 25.4
	if u == measure.Metric {
		step = 10
	}
	by := math.Ceil((p.length-room+gap)/step) * step
	body, _ := p.taper()
	lo, hi := p.head+plain, min(body, p.length-p.beyond)-plain
	if p.length <= room || hi-lo < by {
		return shortened{}
	}
	return shortened{from: (lo + hi - by) / 2, by: by, shown: gap}
}

// words warn of a peg that is not drawn in its full length.
func (s shortened) words(u measure.Units) (w words) {
	if s.by > 0 {
		w.add(lettering, true, "Not drawn in full length: "+unbroken(u.PlainJoint(s.by))+" of the body left out. Measure the length.")
	}
	return w
}

// draw draws the peg from the side, its head to the left.
func (p pegSize) draw(c *canvas, cut shortened, u measure.Units) {
	r := p.flats() / 2
	body, tip := p.taper()
	p.outline(c, cut, body, tip)
	edge := math.Tan(math.Pi / 8)
	thin := func(m string, class draw.Class, a, b vec.P) {
		c.line(draw.Meta{Class: class, Mark: "peg:" + m}, vec.P{X: cut.at(a.X), Y: a.Y}, vec.P{X: cut.at(b.X), Y: b.Y})
	}
	for _, s := range []float64{-r * edge, r * edge} {
		end := body
		if cut.by > 0 {
			end = cut.from
			thin("corner", draw.Dimension, vec.P{X: end + cut.by, Y: s}, vec.P{X: body, Y: s})
		}
		thin("corner", draw.Dimension, vec.P{Y: s}, vec.P{X: end, Y: s})
		thin("corner", draw.Dimension, vec.P{X: body, Y: s}, vec.P{X: p.length, Y: math.Copysign(tip*edge, s)})
	}
	thin("body", draw.Dimension, vec.P{X: body, Y: -r}, vec.P{X: body, Y: r})
	thin("head", draw.Hidden, vec.P{X: p.head, Y: -r - 6}, vec.P{X: p.head, Y: r + 6})
	if !p.blind {
		thin("beyond", draw.Hidden, vec.P{X: p.length - p.beyond, Y: -r - 6}, vec.P{X: p.length - p.beyond, Y: r + 6})
	}
	p.sideDims(c, cut, body, u)
}

// outline draws the outline of the peg, in two halves where a stretch is left
// out.
func (p pegSize) outline(c *canvas, cut shortened, body, tip float64) {
	r := p.flats() / 2
	if cut.by == 0 {
		c.loop(draw.Meta{Class: draw.Part, Mark: "peg:outline"}, []vec.P{{Y: -r}, {X: body, Y: -r}, {X: p.length, Y: -tip}, {X: p.length, Y: tip}, {X: body, Y: r}, {Y: r}})
		return
	}
	chain := func(pts ...vec.P) {
		for i := 1; i < len(pts); i++ {
			c.line(draw.Meta{Class: draw.Part, Mark: "peg:outline"}, pts[i-1], pts[i])
		}
	}
	a, b := cut.from, cut.from+cut.shown
	chain(vec.P{X: a, Y: -r}, vec.P{Y: -r}, vec.P{Y: r}, vec.P{X: a, Y: r})
	chain(vec.P{X: b, Y: -r}, vec.P{X: cut.at(body), Y: -r}, vec.P{X: cut.at(p.length), Y: -tip}, vec.P{X: cut.at(p.length), Y: tip}, vec.P{X: cut.at(body), Y: r}, vec.P{X: b, Y: r})
	for _, x := range []float64{a, b} {
		c.line(draw.Meta{Class: draw.Dimension, Mark: "peg:break"}, vec.P{X: x, Y: -r - 2}, vec.P{X: x, Y: r + 2})
	}
}

// sideDims draws the dimensions of the side view; their figures are true also
// where a stretch is left out.
func (p pegSize) sideDims(c *canvas, cut shortened, body float64, u measure.Units) {
	r := p.flats() / 2
	type dim struct {
		from, to, y, off float64
		word             string
	}
	dims := []dim{
		{0, p.length, r, 13, "length "},
		{0, p.head, -r, -9, "head "},
	}
	if !p.blind {
		dims = append(dims, dim{p.length - p.beyond, p.length, -r, -18, "beyond the far face "})
	}
	if body < p.length {
		dims = append(dims, dim{body, p.length, -r, -9, "taper "})
	}
	on := func(d dim) dimension {
		return dimension{a: vec.P{X: cut.at(d.from), Y: d.y}, b: vec.P{X: cut.at(d.to), Y: d.y}, off: d.off}
	}
	for _, d := range dims {
		c.dim(on(d))
	}
	for _, d := range dims {
		c.dimText(on(d), d.word+u.PlainJoint(d.to-d.from))
	}
	if cut.by > 0 {
		c.label(u.PlainJoint(cut.by)+" left out", lettering, true, spot{vec.P{X: cut.from + cut.shown/2, Y: -r - 8}, draw.Middle, 0})
	}
}
