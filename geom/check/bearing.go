package check

import (
	"fmt"
	"math"
	"slices"

	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// Bearing is the part of a shoulder, seat or butt that must touch wood of the
// other timber without a word (common practice, no source). Under a hundredth
// of it the face stands on nothing.
const Bearing = 0.5

// flush is how far apart two faces may lie that touch, mm.
const flush = 1e-3

// bearing proves that the faces on which a timber bears touch the timber that
// it is joined to: the shoulders beside its tenon, a rafter's seat or butt, a
// squared end.
func (p *proof) bearing(j *geom.Joint) {
	none := true
	for _, role := range []string{geom.RoleShoulder, geom.RoleSeat, geom.RoleButt, geom.RoleBearing} {
		faces := p.faces(j.Of, j.ID, role)
		none = none && len(faces) == 0
		p.borneOn(j, role, faces)
	}
	if none && j.OfEnd != geom.Mid {
		p.borneOn(j, string(j.OfEnd), p.faces(j.Of, "", string(j.OfEnd)))
	}
}

// borneOn holds the faces of one role against what they touch.
func (p *proof) borneOn(j *geom.Joint, role string, faces []solid.Polygon) {
	var all, touch float64
	for i, face := range faces {
		all += face.Area()
		if !slices.ContainsFunc(faces[:i], func(g solid.Polygon) bool { return g.Plane == face.Plane }) {
			touch += p.contact(faces, face.Plane, j.Of, j.Into)
		}
	}
	if all > 100 && touch < Bearing*all {
		p.unborne(j, role, faces, all, touch)
	}
}

// faces returns the boundary of a timber that a joint made for a role, in frame
// axes.
func (p *proof) faces(t *geom.Timber, joint, role string) []solid.Polygon {
	var r []solid.Polygon
	for _, g := range p.surface(t) {
		for _, tag := range g.Tags {
			if tag.Joint == joint && tag.Role == role {
				r = append(r, g)
				break
			}
		}
	}
	return r
}

// surface returns a timber's boundary in frame axes, made once.
func (p *proof) surface(t *geom.Timber) []solid.Polygon {
	s, ok := p.surfaces[t]
	if !ok {
		s = p.bodies[p.index[t]].Boundary()
		p.surfaces[t] = s
	}
	return s
}

// contact returns the area in mm² over which the wood of timber of, where any
// of the faces lies on the plane pl, touches the wood of timber on.
func (p *proof) contact(faces []solid.Polygon, pl solid.Plane, of, on *geom.Timber) float64 {
	area := 0.0
	theirs := p.facets(on, pl.Flip())
	for _, a := range p.facets(of, pl) {
		if !slices.ContainsFunc(faces, func(g solid.Polygon) bool { return g.Plane == pl && meets(a.box, g.Outer) }) {
			continue
		}
		for _, b := range theirs {
			if !apart(a.box.grown(flush), b.box.grown(flush)) {
				area += overlapArea(a.loop, b.loop, pl.N)
			}
		}
	}
	return area
}

// facet is a face of a cell on a plane.
type facet struct {
	loop []vec.V
	box  box
}

// facets returns the faces of a timber's cells that lie on a plane and look as
// it does.
func (p *proof) facets(t *geom.Timber, pl solid.Plane) []facet {
	var r []facet
	for _, c := range p.bodies[p.index[t]].Cells() {
		for _, f := range c.Faces {
			if f.Plane.N.Dot(pl.N) < 1-1e-9 || math.Abs(pl.Height(c.V[f.Loop[0]])) > flush {
				continue
			}
			loop := make([]vec.V, len(f.Loop))
			for i, v := range f.Loop {
				loop[i] = c.V[v]
			}
			r = append(r, facet{loop, cellBox(solid.Convex{V: loop})})
		}
	}
	return r
}

// meets reports whether a box comes near the bounds of a loop.
func meets(b box, loop []vec.V) bool {
	return !apart(b.grown(flush), cellBox(solid.Convex{V: loop}).grown(flush))
}

// overlapArea returns the area that two convex loops in planes square to n
// share.
func overlapArea(a, b []vec.V, n vec.V) float64 {
	for i := range b {
		side := b[(i+1)%len(b)].Sub(b[i]).Cross(n)
		if n.Dot(turn(b)) < 0 {
			side = side.Neg()
		}
		a = keepBehind(a, b[i], side)
		if len(a) < 3 {
			return 0
		}
	}
	return math.Abs(turn(a).Dot(n)) / 2
}

// turn is twice the area vector of a loop.
func turn(loop []vec.V) vec.V {
	var s vec.V
	for i := 1; i+1 < len(loop); i++ {
		s = s.Add(loop[i].Sub(loop[0]).Cross(loop[i+1].Sub(loop[0])))
	}
	return s
}

// keepBehind clips a convex loop to the points p with side·(p - at) <= 0.
func keepBehind(loop []vec.V, at, side vec.V) []vec.V {
	var r []vec.V
	for i, p := range loop {
		q := loop[(i+1)%len(loop)]
		h, k := side.Dot(p.Sub(at)), side.Dot(q.Sub(at))
		if h <= 0 {
			r = append(r, p)
		}
		if h < 0 && k > 0 || h > 0 && k < 0 {
			r = append(r, p.Lerp(q, h/(h-k)))
		}
	}
	return r
}

// unborne says that a face bears on too little, or on nothing.
func (p *proof) unborne(j *geom.Joint, role string, faces []solid.Polygon, all, touch float64) {
	f := finding.Finding{Timbers: []string{j.Of.ID, j.Into.ID}, Joints: []string{j.ID}, At: j.At,
		Mend: "move one of the two timbers, or the joint that has taken the wood away there"}
	if touch >= all/100 {
		f.Text = fmt.Sprintf("the %s of %s touches %s over %.0f %% of its area", role, j.Of.ID, j.Into.ID, 100*touch/all)
		p.add(finding.Warn, "bearing", f)
		return
	}
	gap := p.gap(j.Into, faces)
	if math.IsInf(gap, 1) {
		f.Text = fmt.Sprintf("the %s of %s stands on nothing: there is no wood of %s before it", role, j.Of.ID, j.Into.ID)
	} else {
		f.Text = fmt.Sprintf("the %s of %s would stand %s off %s", role, j.Of.ID, p.show(gap), j.Into.ID)
	}
	p.add(finding.Stop, "bearing", f)
}

// gap returns how far the wood of timber on lies before the faces, straight
// ahead of them; +Inf for none.
func (p *proof) gap(on *geom.Timber, faces []solid.Polygon) float64 {
	gap := math.Inf(1)
	for _, g := range faces {
		for _, c := range p.bodies[p.index[on]].Cells() {
			for i := range g.Outer {
				a, b := g.Outer[i], g.Outer[(i+1)%len(g.Outer)]
				c = c.Clip(solid.PlaneAt(a, b.Sub(a).Cross(g.Plane.N)), "")
			}
			if c.Thickness() > Thick {
				lo, _ := c.Extent(g.Plane.N)
				gap = min(gap, max(lo-g.Plane.D, 0))
			}
		}
	}
	return gap
}
