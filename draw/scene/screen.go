package scene

import (
	"math"

	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// wall is a convex cell by its planes.
type wall []solid.Plane

func wallsOf(cells []solid.Convex) []wall {
	out := make([]wall, len(cells))
	for i, c := range cells {
		for _, f := range c.Faces {
			out[i] = append(out[i], f.Plane)
		}
	}
	return out
}

// screen is what may stand before a viewer in one direction; nil is nothing.
type screen struct {
	walls []wall
	steep [][]float64 // of each plane, how it faces the viewer: 1 squarely
	last  int         // the wall that hid a point last, and may hide the next
}

// facing returns the walls as they stand before a viewer in direction d.
func facing(walls []wall, d vec.V) *screen {
	s := &screen{walls: walls, steep: make([][]float64, len(walls))}
	for i, w := range walls {
		s.steep[i] = make([]float64, len(w))
		for k, pl := range w {
			s.steep[i][k] = pl.N.Dot(d)
		}
	}
	return s
}

// clear reports whether nothing stands between p and the viewer.
func (s *screen) clear(p vec.V) bool {
	if s == nil || len(s.walls) == 0 {
		return true
	}
	if s.walls[s.last].between(p, s.steep[s.last]) {
		return false
	}
	for i, w := range s.walls {
		if w.between(p, s.steep[i]) {
			s.last = i
			return false
		}
	}
	return true
}

// between reports whether the way from p to the viewer leads through the wall.
func (w wall) between(p vec.V, steep []float64) bool {
	lo, hi := 1e-3, math.Inf(1)
	for i, pl := range w {
		h, k := pl.Height(p), steep[i]
		switch {
		case math.Abs(k) < 1e-12:
			if h > -1e-6 {
				return false
			}
		case k > 0:
			hi = min(hi, -h/k)
		default:
			lo = max(lo, -h/k)
		}
		if hi-lo <= 1e-6 {
			return false
		}
	}
	return true
}
