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
	if p := b.found.faces.Load(); p != nil {
		return slices.Clip(*p)
	}
	var p []Polygon
	if b.origin != nil {
		p = b.origin.polygons()
	} else {
		p = b.polygons()
	}
	b.found.faces.Store(&p)
	return slices.Clip(p)
}

// polygons finds the polygons of the boundary and who made them.
func (b *Body) polygons() []Polygon {
	out, flats := b.pieces()
	from := b.provenance()
	for i, flat := range flats {
		out[i].Tags = from.polygon(flat, out[i])
	}
	return out
}

// pieces returns the polygons of the boundary without their tags, and the flats
// they lie on.
func (b *Body) pieces() (out []Polygon, flats []int) {
	f := b.shape()
	t := newTracer(f.v, len(f.rims))
	out, flats = make([]Polygon, 0, len(f.rims)/4), make([]int, 0, len(f.rims)/4)
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
			out = addPolygons(out, t.trace(rims, pl.N), pl)
			for len(flats) < len(out) {
				flats = append(flats, rims[0].flat)
			}
		}
		lo = hi
	}
	return out, flats
}

// addPolygons appends the polygons of one flat to out: each hole among the loops
// goes to the smallest outer loop around it.
func addPolygons(out []Polygon, loops [][]vec.V, pl Plane) []Polygon {
	first := len(out)
	var holes [][]vec.V
	for _, l := range loops {
		if area(l, pl.N) > 0 {
			out = append(out, Polygon{Plane: pl, Outer: l})
		} else {
			holes = append(holes, l)
		}
	}
	for _, h := range holes {
		var best *Polygon
		for i := range out[first:] {
			p := &out[first+i]
			if encloses(p.Outer, h[0].Lerp(h[1], 0.5), pl.N) && (best == nil || area(p.Outer, pl.N) < area(best.Outer, pl.N)) {
				best = p
			}
		}
		if best != nil {
			best.Holes = append(best.Holes, h)
		}
	}
	return out
}
