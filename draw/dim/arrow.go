// Package dim draws dimensions after ISO 129-1: dimension and extension lines,
// arrowheads, running dimensions from a common origin, leaders, and labels in
// lanes that never overlap. It knows paper and text, nothing of timber.
package dim

import (
	"math"

	"pegwright/draw"
	"pegwright/geom/vec"
)

// Sizes on paper, millimetres.
const (
	arrow   = 2.5  // length of an arrowhead
	half    = 0.42 // its half width: 19° in all, between the 15° and 30° of ISO 129-1
	start   = 1.0  // gap between a feature and its extension line
	beyond  = 1.5  // extension line past the dimension line: 6 line widths
	above   = 1.4  // dimension line to the base line of its text
	between = 1.5  // least gap between neighbouring texts on a line
)

// Arrow adds a closed, filled arrowhead with its tip at tip, pointing along
// dir.
func Arrow(s *draw.Sheet, tip, dir vec.P) *draw.Path {
	d := dir.Unit()
	base := tip.Sub(d.Mul(arrow))
	p := s.Poly(draw.Dimension, true, tip, base.Add(d.Left().Mul(half)), base.Sub(d.Left().Mul(half)))
	p.Filled = true
	return p
}

// Broad adds a broad arrow of length l from tail along dir, for "which way":
// an outline that is read at a distance.
func Broad(s *draw.Sheet, tail, dir vec.P, l float64) *draw.Path {
	d := dir.Unit()
	n := d.Left()
	at := func(x, y float64) vec.P { return tail.Add(d.Mul(x)).Add(n.Mul(y)) }
	w, head := l*0.09, l*0.36
	return s.Poly(draw.Part, true, at(0, w), at(l-head, w), at(l-head, 2.6*w), at(l, 0), at(l-head, -2.6*w), at(l-head, -w), at(0, -w))
}

// Dot adds the dot that ends a leader on a surface (ISO 128-22).
func Dot(s *draw.Sheet, at vec.P) *draw.Circle {
	c := s.Circle(draw.Dimension, at, 0.6)
	c.Filled = true
	return c
}

// upright turns a direction so that text along it is read from below or from
// the right.
func upright(dir vec.P) vec.P {
	if dir.X < -1e-9 || math.Abs(dir.X) <= 1e-9 && dir.Y < 0 {
		return dir.Mul(-1)
	}
	return dir
}
