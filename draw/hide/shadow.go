package hide

import (
	"math"
	"slices"

	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

const (
	// flat is the distance in millimetres under which a point lies on a
	// plane: the kernel's own snap.
	flat = solid.Snap
	// level is the sine of the angle under which a face counts as seen
	// edge-on.
	level = 1e-9
	// shortest is the length in millimetres under which an edge seen along
	// the view is a point.
	shortest = 1e-5
)

// kind says how a plane bounds a shadow.
type kind uint8

const (
	front kind = iota // a face turned to the viewer
	side              // a face seen edge-on, or the plane through a contour edge along the view
)

// wall is one plane of a shadow.
type wall struct {
	pl   solid.Plane
	kind kind
}

// shadow is everything that one convex cell hides: the cell swept away from
// the viewer. It is convex, so a straight edge lies in it over one interval.
type shadow struct {
	near    float64 // least depth of the cell along the view
	across  extents
	owner   int
	ghost   bool
	walls   []wall
	corners []vec.V // of the cell
}

// swallows reports whether the cell of o, which comes no nearer to the viewer,
// lies in the shadow: then o hides nothing that s does not. Ghosts, which hide
// from some and not from others, neither swallow nor are swallowed.
func (s *shadow) swallows(o *shadow) bool {
	if s.ghost || o.ghost {
		return false
	}
	for i := range s.across {
		if o.across[i].lo < s.across[i].lo-flat || o.across[i].hi > s.across[i].hi+flat {
			return false
		}
	}
	for i := range s.walls {
		for _, p := range o.corners {
			if s.walls[i].pl.Height(p) > flat {
				return false
			}
		}
	}
	return true
}

// caster makes shadows for one direction of view. What it needs for one cell is
// room for the next, and the walls of many shadows stand in one block.
type caster struct {
	w      vec.V
	facing []float64 // of each face of a cell: how far it looks along the view
	across []uint16  // of each pair of corners: the face, counted from 1, that holds the edge
	walls  []wall
	block  []wall // room that the walls of the next shadows are cut from
}

// blockOf is how many walls are made room for at a time, and wallsOf how many a
// shadow has, more or less: the box seen aslant has three sides in front and six
// at its contour.
const blockOf, wallsOf = 512, 9

// cast returns the shadow of c.
func (k *caster) cast(c solid.Convex) shadow {
	s := shadow{near: math.Inf(1), corners: c.V}
	for _, p := range c.V {
		s.near = min(s.near, p.Dot(k.w))
	}
	k.facing, k.walls = k.facing[:0], k.walls[:0]
	for _, f := range c.Faces {
		n := f.Plane.N.Dot(k.w)
		k.facing = append(k.facing, n)
		switch {
		case n < -level:
			k.walls = append(k.walls, wall{f.Plane, front})
		case n <= level:
			k.walls = append(k.walls, wall{f.Plane, side})
		}
	}
	k.contour(c)
	if len(k.walls) > cap(k.block)-len(k.block) {
		k.block = make([]wall, 0, max(blockOf, len(k.walls)))
	}
	from := len(k.block)
	k.block = append(k.block, k.walls...)
	s.walls = slices.Clip(k.block[from:])
	return s
}

// contour adds one wall for each edge between a face turned to the viewer and
// one turned away.
func (k *caster) contour(c solid.Convex) {
	n := len(c.V)
	k.across = slices.Grow(k.across[:0], n*n)[:n*n]
	clear(k.across)
	for i, f := range c.Faces {
		for m, a := range f.Loop {
			k.across[a*n+f.Loop[(m+1)%len(f.Loop)]] = uint16(i + 1)
		}
	}
	mid := middle(c)
	for i, f := range c.Faces {
		if k.facing[i] >= -level {
			continue
		}
		for m, a := range f.Loop {
			b := f.Loop[(m+1)%len(f.Loop)]
			j := int(k.across[b*n+a]) - 1
			if j >= 0 && k.facing[j] <= level {
				continue // turned to the viewer too, or a side plane that is there already
			}
			e := c.V[b].Sub(c.V[a])
			if e.Cross(k.w).Len() < shortest {
				continue
			}
			if j >= 0 {
				e = ridge(f.Plane.N, c.Faces[j].Plane.N, e)
			}
			pl := solid.PlaneAt(c.V[a].Lerp(c.V[b], 0.5), e.Cross(k.w))
			if pl.Height(mid) > 0 {
				pl = pl.Flip()
			}
			k.walls = append(k.walls, wall{pl, side})
		}
	}
}

// ridge returns the direction of the line common to two planes with unit
// normals m and n, or e where the planes are too nearly parallel to tell.
// Planes are the truth; the ends of a very short edge say little about its
// direction.
func ridge(m, n, e vec.V) vec.V {
	if r := m.Cross(n); r.Len() > 1e-4 {
		return r
	}
	return e
}

// middle returns the mean of the corners of c, a point inside.
func middle(c solid.Convex) vec.V {
	var m vec.V
	for _, p := range c.V {
		m = m.Add(p)
	}
	return m.Mul(1 / float64(len(c.V)))
}

// interval is a hidden part of an edge, as fractions of its length.
type interval struct{ lo, hi float64 }

// cover returns the part of the edge from a to b that lies in the shadow, and
// whether that hides the edge's left side (toward left, which is e × w) and
// its right side.
//
// Plane values at the ends within flat of zero are zero. An edge that lies in
// a front plane is on the cell, not behind it: nothing is hidden. An edge that
// lies in a side plane runs along the border of the shadow: only the side
// that is turned inward is hidden. So a back edge behind a seam between two
// touching cells is hidden by one cell on each side, and a back edge behind an
// outer contour keeps a free side and is drawn.
func (s *shadow) cover(a, b, left vec.V) (iv interval, onLeft, onRight bool) {
	iv, onLeft, onRight = interval{0, 1}, true, true
	for _, wl := range s.walls {
		fa, fb := zero(wl.pl.Height(a)), zero(wl.pl.Height(b))
		switch {
		case fa == 0 && fb == 0:
			if wl.kind == front {
				return iv, false, false
			}
			if wl.pl.N.Dot(left) < 0 {
				onRight = false
			} else {
				onLeft = false
			}
		case fa >= 0 && fb >= 0:
			return iv, false, false
		case fb > 0:
			iv.hi = min(iv.hi, fa/(fa-fb))
		case fa > 0:
			iv.lo = max(iv.lo, fa/(fa-fb))
		}
		if iv.lo >= iv.hi {
			return iv, false, false
		}
	}
	return iv, onLeft, onRight
}

// zero rounds a plane value within flat of zero to zero.
func zero(f float64) float64 {
	if math.Abs(f) <= flat {
		return 0
	}
	return f
}
