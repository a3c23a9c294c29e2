package hide

import (
	"math"

	"pegwright/geom/vec"
)

// Oval answers for all chords of the ellipse c + u·cos t + v·sin t of the given
// owner at once. It is sure where no cell can hide any of it and where one cell
// alone hides all; otherwise VisibleOf has to be asked chord by chord.
func (s *Scene) Oval(owner int, c, u, v vec.V) (hidden, sure bool) {
	if s.grid == nil {
		s.settle()
	}
	o := oval{c, u, v}
	far := c.Dot(s.w) + o.half(s.w)
	box := s.around(o)
	sure = true
	s.grid.over(&box, func(i int) bool {
		sh := &s.shadows[i]
		if sh.near >= far || sh.ghost && sh.owner != owner || sh.across.misses(&box) || sh.leaves(o) {
			return true
		}
		sure = sh.holds(o)
		hidden = sure
		return !hidden
	})
	return hidden, sure
}

// oval is an ellipse in space by its middle and two conjugate half diameters.
type oval struct{ c, u, v vec.V }

// half returns how far the oval reaches to either side of its middle along a
// unit vector.
func (o oval) half(n vec.V) float64 { return math.Hypot(n.Dot(o.u), n.Dot(o.v)) }

// around returns the extents of an oval.
func (s *Scene) around(o oval) extents {
	c, u, v := ways(o.c.Dot(s.u), o.c.Dot(s.v)), ways(o.u.Dot(s.u), o.u.Dot(s.v)), ways(o.v.Dot(s.u), o.v.Dot(s.v))
	var e extents
	for i := range e {
		h := math.Hypot(u[i], v[i])
		e[i] = interval{c[i] - h, c[i] + h}
	}
	return e
}

// leaves reports whether the shadow leaves all of an oval alone: it lies in
// front of a wall, or on a face of the cell (see cover).
func (s *shadow) leaves(o oval) bool {
	for i := range s.walls {
		wl := &s.walls[i]
		least := wl.pl.Height(o.c) - o.half(wl.pl.N)
		if least > flat || wl.kind == front && least >= -flat {
			return true
		}
	}
	return false
}

// holds reports whether the whole oval lies in the shadow, away from its walls.
func (s *shadow) holds(o oval) bool {
	for i := range s.walls {
		if pl := s.walls[i].pl; pl.Height(o.c)+o.half(pl.N) >= -flat {
			return false
		}
	}
	return true
}
