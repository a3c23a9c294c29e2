package solid

import (
	"math"
	"slices"
	"sync/atomic"

	"pegwright/geom/vec"
)

// Sliver is the thickness (mm) at or under which a piece of wood counts as
// nothing: a cut that would take no more leaves a cell alone, and a piece that
// a cut would leave no thicker is not kept.
const Sliver = 3e-6

// Tag says which joint and role a face of a body comes from. A face of the
// blank has an empty Joint and the role "face 1".."face 4", "start" or "end".
type Tag struct{ Joint, Role string }

// Body is a timber's net wood: a blank less its cuts, held as convex cells
// that share no volume. Bores are not part of the cells. Any number of
// readers may use a body at once; Subtract needs it alone.
type Body struct {
	blank  Convex
	planes []Plane // one for the two flats that lie on it
	cuts   []cut
	cells  []Convex
	found  *findings // about this wood, shared with those who have the same
	origin *origin   // nil for a body that was not carried to where it is
}

// findings is what was found out about the wood of a body, each once it was
// asked for.
type findings struct {
	form   atomic.Pointer[form] // the boundary
	edges  atomic.Pointer[[]Edge]
	faces  atomic.Pointer[[]Polygon]
	placed atomic.Pointer[placed] // where it was last asked for
}

// cut is a convex volume taken away, its faces on the body's planes.
type cut struct {
	shape Convex
	joint string
}

// NewBody returns a body of one cell, the blank. The blank's six faces carry
// their roles.
func NewBody(blank Convex) *Body {
	b := &Body{found: &findings{}}
	b.blank.V = blank.V
	b.blank = b.settled(blank)
	b.cells = []Convex{b.blank}
	return b
}

// Subtract removes a convex cut (timber axes). The roles of the cut's faces
// and the joint become the tags of the faces that it makes. A cut that takes
// no wood changes nothing. Cells are split only where the cut takes wood.
func (b *Body) Subtract(shape Convex, joint string) {
	shape = b.settled(shape)
	cells := make([]Convex, 0, len(b.cells)+len(shape.Faces))
	took := false
	for _, c := range b.cells {
		hit := false
		cells, hit = less(cells, c, shape)
		took = took || hit
	}
	if took {
		b.cells = cells
		b.cuts = append(b.cuts, cut{shape, joint})
		b.found, b.origin = &findings{}, nil
	}
}

// less appends c without shape to rest, as convex pieces, and reports whether
// shape takes any of it.
func less(rest []Convex, c, shape Convex) ([]Convex, bool) {
	var room [16]Face
	across, miss := crossed(c, shape, room[:0])
	if miss || shape.Empty() {
		return append(rest, c), false
	}
	// inner[i] is the part of c behind the first i faces across it.
	var parts [17]Convex
	inner := append(parts[:0], c)
	for _, f := range across {
		inner = append(inner, inner[len(inner)-1].behind(f))
	}
	if !inner[len(across)].thicker(Sliver) {
		return append(rest, c), false
	}
	for i, f := range across {
		f.Plane, f.flat = f.Plane.Flip(), f.flat^1
		if out := inner[i].behind(f); out.thicker(Sliver) {
			rest = append(rest, out)
		}
	}
	return rest, true
}

// crossed appends to across those faces of shape that c does not lie wholly
// behind, without their roles: the others take nothing from it. It reports
// whether c lies wholly in front of one of them, out of the shape's reach.
func crossed(c, shape Convex, across []Face) (faces []Face, miss bool) {
	for _, f := range shape.Faces {
		lo, hi := c.Extent(f.Plane.N)
		if lo >= f.Plane.D-Snap {
			return nil, true
		}
		if hi-f.Plane.D > Snap {
			across = append(across, Face{Plane: f.Plane, flat: f.flat})
		}
	}
	return across, false
}

// apart reports whether c lies wholly in front of some face of shape.
func apart(c, shape Convex) bool {
	for _, f := range shape.Faces {
		if lo, _ := c.Extent(f.Plane.N); lo >= f.Plane.D-Snap {
			return true
		}
	}
	return false
}

// settled returns c with every face on the body's own copy of its plane.
func (b *Body) settled(c Convex) Convex {
	r := Convex{V: c.V, Faces: slices.Clone(c.Faces)}
	for i, f := range r.Faces {
		r.Faces[i].Plane, r.Faces[i].flat = b.settle(f.Plane)
	}
	return r
}

// settle returns the plane of the body that agrees with pl within Snap at
// every corner of the blank, facing as pl does, and its flat; a new one joins
// the planes. A flat is one side of a plane: twice the number of the plane, one
// more for that which faces against it.
func (b *Body) settle(pl Plane) (own Plane, flat int) {
	if own, flat = b.known(pl); flat < 0 {
		flat = 2 * len(b.planes)
		b.planes = append(b.planes, pl)
	}
	return own, flat
}

// known finds the plane of the body that agrees with pl, and its flat: pl itself
// and -1 where there is none.
func (b *Body) known(pl Plane) (own Plane, flat int) {
	flip := pl.Flip()
	for i, q := range b.planes {
		switch q {
		case pl:
			return pl, 2 * i
		case flip:
			return pl, 2*i + 1
		}
	}
	for i, q := range b.planes {
		if b.agree(q, pl) {
			return q, 2 * i
		}
		if b.agree(q, flip) {
			return q.Flip(), 2*i + 1
		}
	}
	return pl, -1
}

func (b *Body) agree(p, q Plane) bool {
	for _, v := range b.blank.V {
		if math.Abs(p.Height(v)-q.Height(v)) >= Snap {
			return false
		}
	}
	return true
}

// Cells returns the convex cells of the body; they share no volume. The caller
// must not change them.
func (b *Body) Cells() []Convex { return slices.Clip(b.cells) }

// Volume returns the volume in mm³, bores not taken away.
func (b *Body) Volume() float64 {
	var v float64
	for _, c := range b.cells {
		v += c.Volume()
	}
	return v
}

// Centroid returns the centre of volume (mm), the zero vector for no wood.
func (b *Body) Centroid() vec.V {
	var vol float64
	var m vec.V
	for _, c := range b.cells {
		v, first := c.moments()
		vol += v
		m = m.Add(first)
	}
	if vol == 0 {
		return vec.V{}
	}
	return m.Mul(1 / vol)
}

// Bounds returns the corners of the axis-aligned box around the wood (mm).
func (b *Body) Bounds() (lo, hi vec.V) {
	for i, c := range b.cells {
		l, h := c.Bounds()
		if i == 0 {
			lo, hi = l, h
		}
		lo = vec.V{X: min(lo.X, l.X), Y: min(lo.Y, l.Y), Z: min(lo.Z, l.Z)}
		hi = vec.V{X: max(hi.X, h.X), Y: max(hi.Y, h.Y), Z: max(hi.Z, h.Z)}
	}
	return lo, hi
}

// Contains reports whether p lies in the wood, or within tol mm of a cell.
func (b *Body) Contains(p vec.V, tol float64) bool {
	return slices.ContainsFunc(b.cells, func(c Convex) bool { return c.Contains(p, tol) })
}

// CutPlanes returns the planes of the cuts made under a joint's id, facing out
// of the wood.
func (b *Body) CutPlanes(joint string) []Plane {
	var out []Plane
	for _, c := range b.cuts {
		if c.joint != joint {
			continue
		}
		for _, f := range c.shape.Faces {
			out = append(out, f.Plane.Flip())
		}
	}
	return out
}

// Clone returns a body of its own with the same wood, tags and all.
func (b *Body) Clone() *Body {
	return &Body{b.blank, slices.Clip(b.planes), slices.Clip(b.cuts), b.cells, b.found, b.origin}
}
