package view

import (
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// Ids under which Clipped and Behind take wood away; they are in the tags of
// the edges so made.
const (
	breakJoint = "break"
	planeJoint = "section"
)

// Clipped returns the part of b behind every plane of keep, as a timber broken
// off there: the edges on these planes are drawn as break lines. b itself is
// not changed.
func Clipped(b *solid.Body, keep ...solid.Plane) *solid.Body {
	return cutBy(b, breakJoint, keep)
}

// Behind returns the part of b behind the plane, as sawn through there: the
// edges on the plane are drawn like any other. b itself is not changed.
func Behind(b *solid.Body, pl solid.Plane) *solid.Body {
	return cutBy(b, planeJoint, []solid.Plane{pl})
}

func cutBy(b *solid.Body, id string, keep []solid.Plane) *solid.Body {
	out := b.Moved(vec.Identity)
	for _, pl := range keep {
		lo, hi := out.Bounds()
		margin := vec.V{X: 10, Y: 10, Z: 10}
		cut := solid.Box(lo.Sub(margin), hi.Add(margin)).Clip(pl.Flip(), id)
		if !cut.Empty() {
			out.Subtract(cut, id)
		}
	}
	return out
}

// CutAt returns the parts with their wood before the plane taken away, for the
// view behind a section. Parts made of cells are cut too. A part that lies
// wholly before the plane stays in the list and shows nothing.
func CutAt(parts []Part, pl solid.Plane) []Part {
	out := append([]Part(nil), parts...)
	for i := range out {
		p := &out[i]
		local := pl.Moved(vec.Placement{X: vec.V{X: 1}, Y: vec.V{Y: 1}, Z: vec.V{Z: 1}, O: p.Shift.Neg()})
		if p.Body != nil {
			p.Body = Behind(p.Body, local)
			continue
		}
		p.Cells, p.Edges = cellsBehind(p.Cells, p.Edges, local)
	}
	return out
}

// cellsBehind cuts cells and their edges by a plane and adds the edges of the
// cut figure.
func cellsBehind(cells []solid.Convex, edges []solid.Edge, pl solid.Plane) ([]solid.Convex, []solid.Edge) {
	var cs []solid.Convex
	var es []solid.Edge
	for _, loop := range cellLoops(cells, pl) {
		for k, a := range loop {
			es = append(es, solid.Edge{A: a, B: loop[(k+1)%len(loop)], Planes: [2]solid.Plane{pl, pl}})
		}
	}
	for _, c := range cells {
		if c = c.Clip(pl, planeJoint); !c.Empty() {
			cs = append(cs, c)
		}
	}
	for _, e := range edges {
		ha, hb := pl.Height(e.A), pl.Height(e.B)
		switch {
		case ha > -solid.Snap && hb > -solid.Snap:
			continue
		case ha > 0:
			e.A = e.A.Lerp(e.B, ha/(ha-hb))
		case hb > 0:
			e.B = e.A.Lerp(e.B, ha/(ha-hb))
		}
		es = append(es, e)
	}
	return cs, es
}

// isBreak reports whether the edge lies on a plane at which the timber is
// broken off.
func isBreak(e solid.Edge) bool {
	return e.Tags[0].Joint == breakJoint || e.Tags[1].Joint == breakJoint
}
