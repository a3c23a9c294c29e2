package templates

import (
	"math"

	"pegwright/draw"
	"pegwright/geom/vec"
)

// Sizes of a dimension, mm (ISO 129-1: the extension line passes the dimension
// line by about 8 line widths; the proportions of the head are ours).
const (
	headLong  = 3.5
	headWide  = 1.4
	pastDim   = 2.0
	shortDim  = 2*headLong + 4 // under this the arrows stand outside
	dimOfLine = 1.2            // from the dimension line to its text
)

// dim draws the lines of a dimension.
func (c *canvas) dim(d dimension) {
	a, b, off := d.a, d.b, d.off
	u := b.Sub(a).Unit()
	n := u.Left()
	thin := draw.Meta{Class: draw.Dimension}
	da, db := a.Add(n.Mul(off)), b.Add(n.Mul(off))
	past := n.Mul(math.Copysign(pastDim, off))
	if off != 0 {
		c.line(thin, a, da.Add(past))
		c.line(thin, b, db.Add(past))
	}
	defer func(n int) { c.heavy = append(c.heavy, c.lines[n:]...) }(len(c.lines))
	long := b.Dist(a)
	if long < shortDim {
		c.line(thin, da.Sub(u.Mul(headLong+4)), db.Add(u.Mul(headLong+4)))
		c.head(da, u, headLong, headWide)
		c.head(db, u.Mul(-1), headLong, headWide)
	} else {
		c.line(thin, da, db)
		c.head(da, u.Mul(-1), headLong, headWide)
		c.head(db, u, headLong, headWide)
	}
}

// leader draws a line from the last lettering to a point of the view.
func (c *canvas) leader(p vec.P) {
	to := c.at(p)
	foot := c.busy[len(c.busy)-1].nearest(to)
	if foot.Dist(to) > 1 {
		c.s.Line(draw.Dimension, foot, to).Mark = "leader:" + c.owner
		c.led(foot, to)
	}
}

// inView returns the dimensions, those whose line would not show in the box set
// off to the other side, or by less where it shows on neither; a line that is
// moved keeps off the holes.
func inView(seen draw.Box, dims []dimension, holes []hole) []dimension {
	out := append([]dimension(nil), dims...)
	for i, d := range out {
		for _, k := range []float64{1, -1, 0.75, -0.75, 0.6, -0.6, 0.5, -0.5, 0.4, -0.4, 0.3, -0.3} {
			n := d.b.Sub(d.a).Unit().Left().Mul(d.off * k)
			a, b := d.a.Add(n), d.b.Add(n)
			if _, _, ok := clipSegment(seen, a, b); ok && (math.Abs(k) == 1 || clearOf(holes, a, b)) {
				out[i].off = d.off * k
				break
			}
		}
	}
	return out
}

// clearOf reports whether the line from a to b passes the holes by some mm.
func clearOf(holes []hole, a, b vec.P) bool {
	for _, h := range holes {
		r := h.bore/2 + 4
		if _, _, hit := clipSegment(draw.Box{Min: h.c.Sub(vec.P{X: r, Y: r}), Max: h.c.Add(vec.P{X: r, Y: r})}, a, b); hit {
			return false
		}
	}
	return true
}

// dimText writes a dimension's text above its line, read from the bottom or
// the right; beside it where the dimension is short.
func (c *canvas) dimText(d dimension, text string) {
	u, long := d.b.Sub(d.a).Unit(), d.b.Dist(d.a)
	n := u.Left().Mul(d.off)
	da, db := d.a.Add(n), d.b.Add(n)
	rot := math.Atan2(u.Y, u.X)
	if rot > math.Pi/2+1e-6 || rot <= -math.Pi/2+1e-6 {
		rot -= math.Copysign(math.Pi, rot)
	}
	up := vec.P{X: -math.Sin(rot), Y: math.Cos(rot)}
	high, low := up.Mul(dimOfLine+0.35*lettering), up.Mul(-dimOfLine-1.2*lettering)
	in, out, ok := clipSegment(c.seen(), da, db)
	if !ok {
		return // no part of the line shows
	}
	mid := in.Lerp(out, 0.5)
	spots := []spot{{mid.Add(high), draw.Middle, rot}, {mid.Add(low), draw.Middle, rot}}
	if long < shortDim {
		before, beyond := da.Sub(u.Mul(headLong+5)), db.Add(u.Mul(headLong+5))
		flat := func(p vec.P, d vec.P) spot {
			a := draw.Start
			if d.X < 0 || d.X == 0 && d.Y < 0 {
				a = draw.End
			}
			return spot{p.Sub(up.Mul(lettering / 2)), a, rot}
		}
		spots = []spot{flat(beyond, u), flat(before, u.Mul(-1))}
	} else {
		for _, k := range []float64{0.3, 0.7, 0.2, 0.8} {
			spots = append(spots, spot{da.Lerp(db, k).Add(high), draw.Middle, rot})
		}
	}
	at := []pass{{0, ofAll}, {2, ofAll}, {0, ofHeavy}, {3, ofHeavy}}
	if c.search(at, text, lettering, false, spots) || !c.label(text, lettering, false, spots...) {
		return
	}
	c.leader(mid) // it found no place at its line
}
