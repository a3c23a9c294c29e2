package templates

import (
	"pegwright/draw"
	"pegwright/geom/measure"
	"pegwright/geom/vec"
)

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
