package templates

import (
	"math"

	"pegwright/draw"
	project "pegwright/draw/view"
	"pegwright/geom/vec"
)

// tornWide is the strip outside a break line that its zigzags take, mm.
const tornWide = 2.5

// breakOff draws a break line along each side of the window past which a convex
// area of the view goes on, those apart beyond which another tile lies. All lines
// that are drawn afterwards end at it.
func (c *canvas) breakOff(area []vec.P, t tile) {
	last := [4]bool{t.col == 0, t.row == 0, t.col == t.cols-1, t.row == t.rows-1}
	on := make([]vec.P, len(area))
	for i, p := range area {
		on[i] = c.at(p)
	}
	whole := clipArea(c.win, on)
	for side := range c.strip {
		if _, _, past := onSide(c.win, side, whole); past && last[side] {
			c.strip[side] = tornWide
		}
	}
	shown := clipArea(c.ink(), on)
	for side := range c.strip {
		if a, b, ok := onSide(c.ink(), side, shown); ok && c.strip[side] > 0 {
			c.s.Poly(draw.Dimension, false, project.Zigzag(a, b)...).Mark = "torn:" + c.owner
			c.led(a, b)
		}
	}
}

// onSide returns the stretch of an area's outline that runs along a side of the
// box in which the area lies: left, low, right or high.
func onSide(box draw.Box, side int, area []vec.P) (a, b vec.P, ok bool) {
	off := func(p vec.P) float64 {
		return math.Abs([4]float64{p.X - box.Min.X, p.Y - box.Min.Y, p.X - box.Max.X, p.Y - box.Max.Y}[side])
	}
	for i, p := range area {
		if q := area[(i+1)%len(area)]; off(p) < 1e-6 && off(q) < 1e-6 && p.Dist(q) > 1e-3 {
			return p, q, true
		}
	}
	return a, b, false
}
