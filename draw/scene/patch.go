package scene

import (
	"pegwright/draw/view"
	"pegwright/geom"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// patch is a face that the joint made, in small pieces.
type patch struct {
	n      vec.V
	spots  []spot
	area   float64
	before []int // of the cells on the stage, those that reach before the face
}

// spot is a small piece of a face, its middle a little before it.
type spot struct {
	at   vec.V
	area float64
}

// patches divides the faces that the joint made on a part into small pieces; cells
// are all that may stand before them.
func patches(p view.Part, joint string, cells []solid.Convex) []patch {
	var out []patch
	for _, f := range p.Body.Boundary() {
		if !madeBy(f, joint) {
			continue
		}
		q := patch{n: f.Plane.N, spots: make([]spot, 0, 4*len(f.Outer))}
		lift := p.Shift.Add(q.n.Mul(0.1))
		for i := 1; i+1 < len(f.Outer); i++ {
			a, b, c := f.Outer[0], f.Outer[i], f.Outer[i+1]
			area := b.Sub(a).Cross(c.Sub(a)).Dot(q.n) / 2
			ab, bc, ca := a.Lerp(b, 0.5), b.Lerp(c, 0.5), c.Lerp(a, 0.5)
			for _, t := range [][3]vec.V{{a, ab, ca}, {ab, b, bc}, {ca, bc, c}, {ab, bc, ca}} {
				m := t[0].Add(t[1]).Add(t[2]).Mul(1.0 / 3)
				q.spots = append(q.spots, spot{m.Add(lift), area / 4})
			}
			q.area += area
		}
		level := q.n.Dot(f.Outer[0].Add(lift))
		for i, c := range cells {
			if _, high := c.Extent(q.n); high > level-1e-6 {
				q.before = append(q.before, i)
			}
		}
		out = append(out, q)
	}
	return out
}

// madeBy reports whether a face was made by the joint, reductions apart.
func madeBy(f solid.Polygon, joint string) bool {
	for _, t := range f.Tags {
		if t.Joint == joint && t.Role != geom.RoleReduced && t.Role != "" {
			return true
		}
	}
	return false
}

// aslant is how squarely a face must look at the viewer to count as seen, as the
// cosine of the angle.
const aslant = 0.05

// facing returns the area on paper of the patches that look at the camera, with
// nothing in the way; 1 for a part from which the joint takes nothing.
func facing(c view.Camera, list []patch) float64 {
	if len(list) == 0 {
		return 1
	}
	sum := 0.0
	for i := range list {
		if k := list[i].n.Dot(c.Toward); k > aslant {
			sum += list[i].area * k
		}
	}
	return max(sum, 0)
}

// facePlain is the share of its best face from which on a part is plain to see.
const facePlain = 0.4

// showing returns the area on paper of the patches that the camera sees past the
// screen, less where it looks into no face by more than a slit; 1 for a part from
// which the joint takes nothing.
func showing(c view.Camera, list []patch, s *screen) float64 {
	if len(list) == 0 {
		return 1
	}
	sum, best := 0.0, 0.0
	for i := range list {
		f := &list[i]
		k := f.n.Dot(c.Toward)
		if k <= aslant {
			continue
		}
		seen := 0.0
		for j := range f.spots {
			if q := &f.spots[j]; s.clear(q.at, f.before) {
				sum += q.area * k
				seen += q.area
			}
		}
		best = max(best, seen/f.area)
	}
	k := min(1, best/facePlain)
	return max(sum, 0) * k * k
}

// inSight returns the share of points that nothing hides, 1 of none.
func inSight(points []vec.V, s *screen) float64 {
	if len(points) == 0 {
		return 1
	}
	seen := 0
	for _, p := range points {
		if s.clear(p, s.all) {
			seen++
		}
	}
	return float64(seen) / float64(len(points))
}
