package assembly

import (
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

const (
	// thick is the thickness in millimetres above which shared volume counts.
	thick = 1e-3
	// level is the sine of the angle under which a face counts as parallel to
	// a move.
	level = 1e-7
)

// box is an axis-aligned box.
type box struct{ lo, hi vec.V }

func boxOf(c solid.Convex) box { lo, hi := c.Bounds(); return box{lo, hi} }

func (b box) join(c box) box {
	return box{vec.V{X: min(b.lo.X, c.lo.X), Y: min(b.lo.Y, c.lo.Y), Z: min(b.lo.Z, c.lo.Z)},
		vec.V{X: max(b.hi.X, c.hi.X), Y: max(b.hi.Y, c.hi.Y), Z: max(b.hi.Z, c.hi.Z)}}
}

func (b box) shift(v vec.V) box { return box{b.lo.Add(v), b.hi.Add(v)} }

// apart reports whether the boxes share less than thick along some axis.
func (b box) apart(c box) bool {
	return b.lo.X > c.hi.X-thick || c.lo.X > b.hi.X-thick ||
		b.lo.Y > c.hi.Y-thick || c.lo.Y > b.hi.Y-thick ||
		b.lo.Z > c.hi.Z-thick || c.lo.Z > b.hi.Z-thick
}

// sweep is all that a convex cell passes through on a straight way. It is
// convex: the cell's faces, those that look forward carried to the end of the
// way, and one plane along the way through each edge between a face that looks
// forward and one that looks back.
type sweep struct {
	cell   solid.Convex
	way    vec.V
	planes []solid.Plane
	box    box
}

func swept(c solid.Convex, way vec.V) sweep {
	s := sweep{cell: c, way: way, box: boxOf(c)}
	s.box = s.box.join(s.box.shift(way))
	long := way.Len()
	if long == 0 {
		for _, f := range c.Faces {
			s.planes = append(s.planes, f.Plane)
		}
		return s
	}
	d := way.Mul(1 / long)
	for _, f := range c.Faces {
		pl := f.Plane
		if along := pl.N.Dot(d); along > 0 {
			pl.D += along * long
		}
		s.planes = append(s.planes, pl)
	}
	s.contour(d)
	return s
}

// contour adds the planes along d through the edges where the cell turns from
// facing forward to facing back.
func (s *sweep) contour(d vec.V) {
	c := s.cell
	face := map[[2]int]int{}
	for i, f := range c.Faces {
		for k, a := range f.Loop {
			face[[2]int{a, f.Loop[(k+1)%len(f.Loop)]}] = i
		}
	}
	for _, f := range c.Faces {
		if f.Plane.N.Dot(d) <= level {
			continue
		}
		for k, a := range f.Loop {
			b := f.Loop[(k+1)%len(f.Loop)]
			mate, ok := face[[2]int{b, a}]
			if ok && c.Faces[mate].Plane.N.Dot(d) >= -level {
				continue
			}
			e := c.V[b].Sub(c.V[a])
			if ok {
				e = ridge(f.Plane.N, c.Faces[mate].Plane.N, e)
			}
			s.side(solid.PlaneAt(c.V[a].Lerp(c.V[b], 0.5), e.Cross(d)), e.Cross(d).Len())
		}
	}
}

// side adds the plane, turned outward, when the whole cell lies behind it.
func (s *sweep) side(pl solid.Plane, size float64) {
	if size < 1e-6 {
		return
	}
	lo, hi := s.cell.Extent(pl.N)
	if hi-pl.D > pl.D-lo {
		pl = pl.Flip()
		hi = -lo
	}
	if hi-pl.D < thick/2 {
		s.planes = append(s.planes, pl)
	}
}

// ridge returns the direction common to two planes, or e where they are too
// nearly parallel to tell.
func ridge(m, n, e vec.V) vec.V {
	if r := m.Cross(n); r.Len() > 1e-4 {
		return r
	}
	return e
}

// hits reports whether the swept cell shares wood thicker than thick with c.
func (s *sweep) hits(c solid.Convex, b box) bool {
	if s.box.apart(b) {
		return false
	}
	for _, pl := range s.planes {
		if lo, _ := c.Extent(pl.N); lo-pl.D >= -thick {
			return false
		}
	}
	for _, f := range c.Faces {
		lo, _ := s.cell.Extent(f.Plane.N)
		if lo+min(0, f.Plane.N.Dot(s.way))-f.Plane.D >= -thick {
			return false
		}
	}
	for _, pl := range s.planes {
		if c = c.Clip(pl, ""); c.Empty() {
			return false
		}
	}
	return c.Thickness() > thick
}
