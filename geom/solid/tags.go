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
	n     vec.V   // out of the cut, into the wood
	walls []Plane // see sides
}

// sides returns the planes through each side of the loop, square to the face,
// made when they are first asked for.
func (m *maker) sides() []Plane {
	if m.walls == nil {
		m.walls = sidesOf(make([]Plane, 0, len(m.loop)), m.loop, m.n)
	}
	return m.walls
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
	makers [][]maker // per flat, in the order cut; none for flats without boundary
}

func (b *Body) provenance() *provenance {
	p := &provenance{body: b, makers: make([][]maker, 2*len(b.planes))}
	counts := make([]int, 2*len(b.planes)) // of makers, from 1; 0 for a flat without boundary
	for _, r := range b.shape().rims {
		counts[r.flat] = 1
	}
	all, corners := 0, 0
	for _, c := range b.cuts {
		for _, f := range c.shape.Faces {
			if counts[f.flat^1] > 0 {
				counts[f.flat^1]++
				all, corners = all+1, corners+len(f.Loop)
			}
		}
	}
	makers, points := make([]maker, all), make([]vec.V, 0, corners)
	for flat, n := range counts {
		if n > 1 {
			p.makers[flat], makers = makers[:0:n-1], makers[n-1:]
		}
	}
	for _, c := range b.cuts {
		for _, f := range c.shape.Faces {
			if counts[f.flat^1] == 0 {
				continue
			}
			from := len(points)
			for _, v := range f.Loop {
				points = append(points, c.shape.V[v])
			}
			on := &p.makers[f.flat^1]
			*on = append(*on, maker{tag: Tag{c.joint, f.Role}, loop: slices.Clip(points[from:]), n: f.Plane.N})
		}
	}
	return p
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
	for i := range p.makers[flat] {
		m := &p.makers[flat][i]
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
	for i := range p.makers[flat] {
		m := &p.makers[flat][i]
		made := 0 - share(poly.Outer, m.sides(), m.n)
		for _, h := range poly.Holes {
			made -= share(h, m.sides(), m.n)
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
	if _, ok := p.blank(flat); ok || len(p.makers[flat]) < 2 {
		return ts
	}
	l := a.Dist(b)
	for i := range p.makers[flat] {
		m := &p.makers[flat][i]
		for _, side := range m.sides() {
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
