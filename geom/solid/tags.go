package solid

import (
	"slices"

	"pegwright/geom/vec"
)

// inward is how far (mm) from an edge a face is asked where it comes from, and
// leastOverlap the area (mm²) under which a cut has no share in a polygon.
const inward, leastOverlap = 1e-3, 1e-2

// maker is a face of a cut that may have made boundary on a flat.
type maker struct {
	tag   Tag
	loop  []vec.V
	sides []Plane // through each side of the loop, square to the face
	n     vec.V   // out of the cut, into the wood
}

// sidesOf appends to sides the planes through the sides of a convex loop
// (counter-clockwise against n), square to it and facing out.
func sidesOf(sides []Plane, loop []vec.V, n vec.V) []Plane {
	for i, a := range loop {
		sides = append(sides, PlaneAt(a, loop[(i+1)%len(loop)].Sub(a).Cross(n)))
	}
	return sides
}

// provenance knows what may have made boundary on the flats of a body.
type provenance struct {
	body   *Body
	makers [][]maker // per flat, found when asked for
	room   []maker   // for those of all flats
	points []vec.V   // for their loops
	sides  []Plane   // and for the sides of these
}

func (b *Body) provenance() *provenance {
	return &provenance{body: b, makers: make([][]maker, 2*len(b.planes))}
}

// of returns what may have made boundary on a flat, in the order cut.
func (p *provenance) of(flat int) []maker {
	if p.makers[flat] != nil {
		return p.makers[flat]
	}
	first := len(p.room)
	for _, c := range p.body.cuts {
		for _, f := range c.shape.Faces {
			if f.flat != flat^1 {
				continue
			}
			from := len(p.points)
			for _, v := range f.Loop {
				p.points = append(p.points, c.shape.V[v])
			}
			loop := slices.Clip(p.points[from:])
			p.sides = sidesOf(p.sides, loop, f.Plane.N)
			p.room = append(p.room, maker{Tag{c.joint, f.Role}, loop, slices.Clip(p.sides[from:]), f.Plane.N})
		}
	}
	p.makers[flat] = slices.Clip(p.room[first:])
	return p.makers[flat]
}

// blank returns the tag of a face of the blank, if that lies on the flat.
func (p *provenance) blank(flat int) (Tag, bool) {
	if flat >= 2*len(p.body.blank.Faces) { // its planes came first
		return Tag{}, false
	}
	for _, f := range p.body.blank.Faces {
		if f.flat == flat {
			return Tag{Role: f.Role}, true
		}
	}
	return Tag{}, false
}

// at returns the tag of the boundary of a flat near the point at: the blank's
// where the blank has a face; else the first cut with a role whose face covers
// the point; else the first cut whose face does.
func (p *provenance) at(flat int, at vec.V) Tag {
	if t, ok := p.blank(flat); ok {
		return t
	}
	var first Tag
	for _, m := range p.of(flat) {
		if !within(at, m.loop, m.n, near) {
			continue
		}
		if m.tag.Role != "" {
			return m.tag
		}
		if first == (Tag{}) {
			first = m.tag
		}
	}
	return first
}

// polygon returns the tags of all that share in a polygon of a flat.
func (p *provenance) polygon(flat int, poly Polygon) []Tag {
	if t, ok := p.blank(flat); ok {
		return []Tag{t}
	}
	var tags []Tag
	for _, m := range p.of(flat) {
		made := 0 - share(poly.Outer, m.sides, m.n)
		for _, h := range poly.Holes {
			made -= share(h, m.sides, m.n)
		}
		if made > leastOverlap && !slices.Contains(tags, m.tag) {
			tags = append(tags, m.tag)
		}
	}
	if len(tags) == 0 {
		tags = append(tags, p.at(flat, poly.Outer[0].Lerp(poly.Outer[1], 0.5)))
	}
	return tags
}

// share returns the signed area of the part of a loop inside the sides of a
// convex loop of the same plane, positive when it runs counter-clockwise against
// n. Parts that fall away leave joining edges that run to and fro, so it is right
// for any loop.
func share(loop []vec.V, sides []Plane, n vec.V) float64 {
	var here, there [32]vec.V
	kept, next := here[:0], there[:0]
	for _, side := range sides {
		next = next[:0]
		for j, p := range loop {
			q := loop[(j+1)%len(loop)]
			hp, hq := side.Height(p), side.Height(q)
			if hp <= 0 {
				next = append(next, p)
			}
			if (hp < 0 && hq > 0) || (hp > 0 && hq < 0) {
				next = append(next, p.Lerp(q, hp/(hp-hq)))
			}
		}
		kept, next = next, kept
		loop = kept
	}
	return area(loop, n)
}

// breaks appends the parameters strictly inside 0..1 at which the maker of a
// flat may change along a-b.
func (p *provenance) breaks(ts []float64, flat int, a, b vec.V) []float64 {
	if _, ok := p.blank(flat); ok || len(p.of(flat)) < 2 {
		return ts
	}
	l := a.Dist(b)
	for _, m := range p.of(flat) {
		for _, side := range m.sides {
			ha, hb := side.Height(a), side.Height(b)
			if !opposite(ha, hb) {
				continue
			}
			t := ha / (ha - hb)
			if t*l > near && (1-t)*l > near && within(a.Lerp(b, t), m.loop, m.n, near) {
				ts = append(ts, t)
			}
		}
	}
	return ts
}
