package setout

import (
	"pegwright/draw"
	"pegwright/draw/dim"
	"pegwright/geom/vec"
)

// The rings that hold the names of grid lines outside a plan or an elevation,
// paper mm: their radius, and what a row of them takes beside the view.
const (
	RingRadius = 3.4
	RingRoom   = 2*RingRadius + 4
)

// Ring draws the ring round a grid line's name with its middle at c, and returns
// the name.
func Ring(s *draw.Sheet, c vec.P, name string) *draw.Text {
	s.Circle(draw.Dimension, c, RingRadius)
	t := s.Text(vec.At(c.X, c.Y-dim.Small/2), dim.Small, name)
	t.Anchor, t.Bold = draw.Middle, true
	return t
}
