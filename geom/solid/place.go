package solid

import (
	"slices"

	"pegwright/geom/vec"
)

// placed is a body that was carried to a place.
type placed struct {
	at   vec.Placement
	body *Body
}

// origin is what a body was carried from, and to where. A boundary is found
// there, once for all places that the body is carried to.
type origin struct {
	body *Body
	to   vec.Placement
}

// At is Moved for those who only read: asked again for the same placement it
// returns the same body, with what is known about that. It must not be changed.
func (b *Body) At(to vec.Placement) *Body {
	if p := b.found.placed.Load(); p != nil && p.at == to {
		return p.body
	}
	p := &placed{to, b.Moved(to)}
	b.found.placed.Store(p)
	return p.body
}

// Moved returns the same body, tags and all, carried by a rigid placement.
func (b *Body) Moved(to vec.Placement) *Body {
	r := &Body{planes: make([]Plane, len(b.planes)), cuts: make([]cut, len(b.cuts)), cells: make([]Convex, len(b.cells)),
		found: &findings{}, origin: &origin{b.Clone(), to}}
	for i, pl := range b.planes {
		r.planes[i] = pl.Moved(to)
	}
	corners, faces := len(b.blank.V), len(b.blank.Faces)
	for _, c := range b.cuts {
		corners, faces = corners+len(c.shape.V), faces+len(c.shape.Faces)
	}
	for _, c := range b.cells {
		corners, faces = corners+len(c.V), faces+len(c.Faces)
	}
	m := mover{to, r, make([]vec.V, 0, corners), make([]Face, 0, faces)}
	r.blank = m.moved(b.blank)
	for i, c := range b.cuts {
		r.cuts[i] = cut{m.moved(c.shape), c.joint}
	}
	for i, c := range b.cells {
		r.cells[i] = m.moved(c)
	}
	return r
}

// mover carries the convex volumes of a body to a place, where its planes are
// already.
type mover struct {
	to      vec.Placement
	body    *Body
	corners []vec.V // room
	faces   []Face
}

func (m *mover) moved(c Convex) Convex {
	v, f := len(m.corners), len(m.faces)
	for _, p := range c.V {
		m.corners = append(m.corners, m.to.Out(p))
	}
	for _, face := range c.Faces {
		face.Plane = m.body.facing(face.flat)
		m.faces = append(m.faces, face)
	}
	return Convex{slices.Clip(m.corners[v:]), slices.Clip(m.faces[f:])}
}

// form carries the boundary.
func (o *origin) form() *form {
	from := o.body.shape()
	f := &form{v: o.points(from.v), edges: from.edges, rims: from.rims}
	if from.doubled != nil {
		at := o.to.Out(*from.doubled)
		f.doubled = &at
	}
	return f
}

func (o *origin) points(pts []vec.V) []vec.V {
	out := make([]vec.V, len(pts))
	for i, p := range pts {
		out[i] = o.to.Out(p)
	}
	return out
}

// edges carries the true edges. Those on the same two planes may come to run the
// other way, and then stand the other way round.
func (o *origin) edges() []Edge {
	out := slices.Clone(o.body.Edges())
	for first := 0; first < len(out); {
		was := out[first].Planes
		planes := [2]Plane{was[0].Moved(o.to), was[1].Moved(o.to)}
		turned := o.to.OutDir(lineDir(was)).Dot(lineDir(planes)) < 0
		next, inner := first, out[first].Inner
		for ; next < len(out) && out[next].Planes == was && out[next].Inner == inner; next++ {
			e := &out[next]
			e.A, e.B, e.Planes = o.to.Out(e.A), o.to.Out(e.B), planes
			if turned {
				e.A, e.B = e.B, e.A
			}
		}
		if turned {
			slices.Reverse(out[first:next])
		}
		first = next
	}
	return out
}

// polygons carries the flat pieces of the surface.
func (o *origin) polygons() []Polygon {
	out := slices.Clone(o.body.Boundary())
	for i := range out {
		p := &out[i]
		p.Plane, p.Outer, p.Holes = p.Plane.Moved(o.to), o.points(p.Outer), slices.Clone(p.Holes)
		for k, h := range p.Holes {
			p.Holes[k] = o.points(h)
		}
	}
	return out
}
