package solid

import (
	"slices"

	"pegwright/geom/vec"
)

// Polygon is one flat piece of a body's boundary: outer loop counter-clockwise
// seen from outside, holes clockwise.
type Polygon struct {
	Plane Plane // outward
	Outer []vec.V
	Holes [][]vec.V
	Tags  []Tag // joints and roles that made this piece, at least one, in the order cut
}

// Area returns the area of the polygon in mm².
func (p Polygon) Area() float64 {
	a := area(p.Outer, p.Plane.N)
	for _, h := range p.Holes {
		a += area(h, p.Plane.N)
	}
	return a
}

// Boundary returns the flat pieces of the body's surface, seams gone: one
// polygon for each connected piece of each plane. Loops have no point inside a
// straight run. The order is that in which the planes came to the body. The
// caller must not change them.
func (b *Body) Boundary() []Polygon {
	if p := b.faces.Load(); p != nil {
		return slices.Clip(*p)
	}
	from := b.provenance()
	pieces := b.pieces()
	out := make([]Polygon, len(pieces))
	for i, p := range pieces {
		out[i] = p.Polygon
		out[i].Tags = from.polygon(p.flat, p.Polygon)
	}
	b.faces.Store(&out)
	return slices.Clip(out)
}

// piece is a polygon of the boundary and the flat it lies on.
type piece struct {
	Polygon
	flat int
}

// pieces returns the polygons of the boundary without their tags.
func (b *Body) pieces() []piece {
	f := b.shape()
	t := newTracer(f.v, len(f.rims))
	var out []piece
	var side [2][]rim
	for lo := 0; lo < len(f.rims); {
		side[0], side[1] = side[0][:0], side[1][:0]
		hi := lo
		for ; hi < len(f.rims) && f.rims[hi].flat/2 == f.rims[lo].flat/2; hi++ {
			r := f.rims[hi]
			side[r.flat&1] = append(side[r.flat&1], r)
		}
		for _, rims := range side {
			if len(rims) == 0 {
				continue
			}
			pl := b.facing(rims[0].flat)
			for _, p := range polygons(t.trace(rims, pl.N), pl) {
				out = append(out, piece{p, rims[0].flat})
			}
		}
		lo = hi
	}
	return out
}

// polygons gives each hole among the loops of one flat to the smallest outer
// loop around it.
func polygons(loops [][]vec.V, pl Plane) []Polygon {
	var out []Polygon
	var holes [][]vec.V
	for _, l := range loops {
		if area(l, pl.N) > 0 {
			out = append(out, Polygon{Plane: pl, Outer: l})
		} else {
			holes = append(holes, l)
		}
	}
	for _, h := range holes {
		best := -1
		for i, p := range out {
			if !encloses(p.Outer, h[0].Lerp(h[1], 0.5), pl.N) {
				continue
			}
			if best < 0 || area(p.Outer, pl.N) < area(out[best].Outer, pl.N) {
				best = i
			}
		}
		if best >= 0 {
			out[best].Holes = append(out[best].Holes, h)
		}
	}
	return out
}
