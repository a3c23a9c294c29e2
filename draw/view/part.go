package view

import (
	"pegwright/draw"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// Break is the class of the line at which a timber is broken off: continuous
// narrow with zigzags (ISO 128-2).
const Break draw.Class = "break"

// Part is one thing in a view. Its shape is Body, or Cells with Edges where
// Body is nil.
type Part struct {
	// Owner is the id of the timber, peg or piece shown.
	Owner string
	// Body is the net wood, in the axes of the view.
	Body *solid.Body
	// Cells and Edges are the shape of a part without a Body: convex cells
	// that share no volume, and the edges that are drawn.
	Cells []solid.Convex
	Edges []solid.Edge
	// Bores are drilled through the Body; they are not in its cells.
	Bores []Bore
	// Class of visible edges; "" is draw.Part.
	Class draw.Class
	// Pen replaces the pen of visible edges.
	Pen *draw.Pen
	// Shift moves the part, as in an exploded view, millimetres.
	Shift vec.V
	// Ghost draws the part in phantom lines and lets others be seen through
	// it.
	Ghost bool
}

// Bore is a cylinder removed from a part, millimetres. The ends may lie
// outside the wood.
type Bore = solid.Bore

// axisOf returns the unit direction of a bore from From to To and its length.
func axisOf(b Bore) (dir vec.V, length float64) {
	d := b.To.Sub(b.From)
	return d.Unit(), d.Len()
}

// Placed returns the cells of the part where it is drawn. They may be the body's own
// and must not be changed.
func (p *Part) Placed() []solid.Convex {
	cells := p.Cells
	if p.Body != nil {
		cells = p.Body.Cells()
	}
	if p.Shift == (vec.V{}) {
		return cells
	}
	out := make([]solid.Convex, len(cells))
	for i, c := range cells {
		out[i] = c.Moved(p.place())
	}
	return out
}

// place carries the part to where it is drawn.
func (p *Part) place() vec.Placement {
	pl := vec.Identity
	pl.O = p.Shift
	return pl
}

// edges returns the edges of the part where it is drawn.
func (p *Part) edges() []solid.Edge {
	edges := p.Edges
	if p.Body != nil {
		edges = p.Body.Edges()
	}
	if p.Shift == (vec.V{}) {
		return edges
	}
	out := append([]solid.Edge(nil), edges...)
	for i := range out {
		e := &out[i]
		e.A, e.B = e.A.Add(p.Shift), e.B.Add(p.Shift)
		e.Planes[0], e.Planes[1] = e.Planes[0].Moved(p.place()), e.Planes[1].Moved(p.place())
	}
	return out
}

// bores returns the bores of the part where it is drawn.
func (p *Part) bores() []Bore {
	out := make([]Bore, len(p.Bores))
	for i, b := range p.Bores {
		out[i] = Bore{From: b.From.Add(p.Shift), To: b.To.Add(p.Shift), Diameter: b.Diameter}
	}
	return out
}

// class returns the class of the part's visible edges.
func (p *Part) class() draw.Class {
	switch {
	case p.Ghost:
		return draw.Phantom
	case p.Class == "":
		return draw.Part
	}
	return p.Class
}

// CellsPart returns a part made of convex cells that do not touch each other:
// every edge of every cell is drawn.
func CellsPart(owner string, cells ...solid.Convex) Part {
	p := Part{Owner: owner, Cells: cells}
	for _, c := range cells {
		p.Edges = append(p.Edges, cellEdges(c)...)
	}
	return p
}

// cellEdges returns the edges of a convex cell, each once.
func cellEdges(c solid.Convex) []solid.Edge {
	face := map[[2]int]int{}
	for i, f := range c.Faces {
		for k, a := range f.Loop {
			face[[2]int{a, f.Loop[(k+1)%len(f.Loop)]}] = i
		}
	}
	var out []solid.Edge
	for _, f := range c.Faces {
		for k, a := range f.Loop {
			b := f.Loop[(k+1)%len(f.Loop)]
			if j, ok := face[[2]int{b, a}]; ok && a < b {
				g := c.Faces[j]
				out = append(out, solid.Edge{A: c.V[a], B: c.V[b],
					Planes: [2]solid.Plane{f.Plane, g.Plane},
					Tags:   [2]solid.Tag{{Role: f.Role}, {Role: g.Role}}})
			}
		}
	}
	return out
}
