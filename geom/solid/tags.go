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
	tag  Tag
	loop []vec.V
	n    vec.V // out of the cut, into the wood
}

// provenance knows, per flat, what may have made boundary there.
type provenance struct {
	body   *Body
	blank  map[int]Tag
	makers [][]maker // per flat
}

func (b *Body) provenance() *provenance {
	p := &provenance{b, map[int]Tag{}, make([][]maker, 2*len(b.planes))}
	for _, f := range b.blank.Faces {
		p.blank[f.flat] = Tag{Role: f.Role}
	}
	size, sides := make([]int, 2*len(b.planes)), 0
	for _, c := range b.cuts {
		for _, f := range c.shape.Faces {
			size[f.flat^1]++
			sides += len(f.Loop)
		}
	}
	p.room(size)
	loops := make([]vec.V, 0, sides)
	for _, c := range b.cuts {
		for _, f := range c.shape.Faces {
			from := len(loops)
			for _, v := range f.Loop {
				loops = append(loops, c.shape.V[v])
			}
			loop := loops[from:len(loops):len(loops)]
			flat := f.flat ^ 1
			p.makers[flat] = append(p.makers[flat], maker{Tag{c.joint, f.Role}, loop, f.Plane.N})
		}
	}
	return p
}

// room makes room for so many makers on each flat, in one piece.
func (p *provenance) room(size []int) {
	all := 0
	for _, n := range size {
		all += n
	}
	block := make([]maker, all)
	for flat, n := range size {
		p.makers[flat], block = block[:0:n], block[n:]
	}
}

// at returns the tag of the boundary of a flat near the point at: the blank's
// where the blank has a face; else the first cut with a role whose face covers
// the point; else the first cut whose face does.
func (p *provenance) at(flat int, at vec.V) Tag {
	if t, ok := p.blank[flat]; ok {
		return t
	}
	var first Tag
	for _, m := range p.makers[flat] {
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
	if t, ok := p.blank[flat]; ok {
		return []Tag{t}
	}
	var tags []Tag
	for _, m := range p.makers[flat] {
		share := 0 - area(trimmed(poly.Outer, m.loop, m.n), m.n)
		for _, h := range poly.Holes {
			share -= area(trimmed(h, m.loop, m.n), m.n)
		}
		if share > leastOverlap && !slices.Contains(tags, m.tag) {
			tags = append(tags, m.tag)
		}
	}
	if len(tags) == 0 {
		tags = append(tags, p.at(flat, poly.Outer[0].Lerp(poly.Outer[1], 0.5)))
	}
	return tags
}

// trimmed returns the part of a loop inside a convex loop of the same plane
// (counter-clockwise against n). Parts that fall away leave joining edges
// that run to and fro, so the signed area is right for any loop.
func trimmed(loop, convex []vec.V, n vec.V) []vec.V {
	for i, a := range convex {
		side := PlaneAt(a, convex[(i+1)%len(convex)].Sub(a).Cross(n))
		var kept []vec.V
		for j, p := range loop {
			q := loop[(j+1)%len(loop)]
			hp, hq := side.Height(p), side.Height(q)
			if hp <= 0 {
				kept = append(kept, p)
			}
			if (hp < 0 && hq > 0) || (hp > 0 && hq < 0) {
				kept = append(kept, p.Lerp(q, hp/(hp-hq)))
			}
		}
		loop = kept
	}
	return loop
}

// breaks appends the parameters strictly inside 0..1 at which the maker of a
// flat may change along a-b.
func (p *provenance) breaks(ts []float64, flat int, a, b vec.V) []float64 {
	if _, ok := p.blank[flat]; ok || len(p.makers[flat]) < 2 {
		return ts
	}
	l := a.Dist(b)
	for _, m := range p.makers[flat] {
		for i, c := range m.loop {
			side := PlaneAt(c, m.loop[(i+1)%len(m.loop)].Sub(c).Cross(m.n))
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
