package raise

import (
	"math"

	"pegwright/draw"
	"pegwright/draw/view"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// grainStep is the distance of grain lines on paper, mm.
const grainStep = 0.9

// grain returns lines along the sticks on the faces of what moves, so that it
// is dark on any printer and nothing that stands before it is. A stick of which
// no more than an end is seen is hatched there, aslant.
func (p *scenePicture) grain() []view.Part {
	var out []view.Part
	for _, m := range p.moved {
		axis := p.pose.OutDir(p.r.f.Timber(m.Owner).Place.X)
		g := view.Part{Owner: m.Owner, Class: draw.Hatch}
		for _, face := range m.Body.Boundary() {
			facing := face.Plane.N.Dot(p.cam.Toward)
			if facing < 0.05 || math.Abs(face.Plane.N.Dot(axis)) > 0.3 {
				continue
			}
			g.Edges = append(g.Edges, grainOn(shifted(face, m.Shift), axis, grainStep/p.k/max(facing, 0.5))...)
		}
		if len(g.Edges) == 0 {
			g.Edges = p.endGrain(m, axis)
		}
		out = append(out, g)
	}
	return out
}

// endGrain returns lines on the ends that face the viewer.
func (p *scenePicture) endGrain(m view.Part, axis vec.V) []solid.Edge {
	var out []solid.Edge
	slant := p.cam.Right.Add(p.cam.Up)
	for _, face := range m.Body.Boundary() {
		if face.Plane.N.Dot(p.cam.Toward) > 0.5 && math.Abs(face.Plane.N.Dot(axis)) > 0.3 {
			out = append(out, grainOn(shifted(face, m.Shift), slant, grainStep/p.k)...)
		}
	}
	return out
}

// shifted returns a face carried straight.
func shifted(face solid.Polygon, by vec.V) solid.Polygon {
	loop := func(pts []vec.V) []vec.V {
		out := make([]vec.V, len(pts))
		for i, q := range pts {
			out[i] = q.Add(by)
		}
		return out
	}
	out := face
	out.Outer, out.Holes = loop(face.Outer), make([][]vec.V, len(face.Holes))
	for i, h := range face.Holes {
		out.Holes[i] = loop(h)
	}
	return out
}

// grainOn returns lines along the axis on a face, a spacing apart.
func grainOn(face solid.Polygon, axis vec.V, spacing float64) []solid.Edge {
	n := face.Plane.N
	u := axis.Sub(n.Mul(axis.Dot(n))).Unit()
	v := n.Cross(u)
	o := face.Outer[0]
	for _, q := range face.Outer {
		if q.Sub(o).Dot(v) < 0 {
			o = q
		}
	}
	o = o.Sub(v.Mul(spacing / 2))
	flat := func(loop []vec.V) []vec.P {
		out := make([]vec.P, len(loop))
		for i, q := range loop {
			out[i] = vec.P{X: q.Sub(o).Dot(u), Y: q.Sub(o).Dot(v)}
		}
		return out
	}
	loops := [][]vec.P{flat(face.Outer)}
	for _, h := range face.Holes {
		loops = append(loops, flat(h))
	}
	var out []solid.Edge
	for _, l := range view.Hatch(loops, 0, spacing) {
		up := func(q vec.P) vec.V { return o.Add(u.Mul(q.X)).Add(v.Mul(q.Y)) }
		out = append(out, solid.Edge{A: up(l.Pts[0]), B: up(l.Pts[1])})
	}
	return out
}
