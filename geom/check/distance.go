package check

import (
	"math"
	"slices"

	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// shape is a convex shape known by its farthest point in any direction: a
// polyhedron, or a cylinder with flat ends.
type shape struct {
	v        []vec.V // corners of a polyhedron; nil for a cylinder
	from, to vec.V   // axis of a cylinder
	axis     vec.V   // unit
	r        float64
}

func polyhedron(c solid.Convex) shape { return shape{v: c.V} }

func cylinder(from, to vec.V, dia float64) shape {
	return shape{from: from, to: to, axis: to.Sub(from).Unit(), r: dia / 2}
}

// farthest returns the shape's farthest point along d.
func (s shape) farthest(d vec.V) vec.V {
	if s.v != nil {
		best, at := math.Inf(-1), s.v[0]
		for _, p := range s.v {
			if h := p.Dot(d); h > best {
				best, at = h, p
			}
		}
		return at
	}
	end := s.from
	if s.axis.Dot(d) > 0 {
		end = s.to
	}
	across := d.Sub(s.axis.Mul(s.axis.Dot(d)))
	if l := across.Len(); l > 1e-12*d.Len() {
		end = end.Add(across.Mul(s.r / l))
	}
	return end
}

// fine is how near (mm) a least distance is found.
const fine = 1e-6

// between returns the least distance of two convex shapes in millimetres, 0
// where they touch or share a volume. It walks the difference of the two
// (Minkowski) toward the origin, keeping the simplex of at most four points
// that lies nearest (the algorithm of Gilbert, Johnson and Keerthi, 1988). It
// stops when no point of the difference can be nearer by more than a millionth
// of a millimetre.
func between(a, b shape) float64 {
	diff := func(d vec.V) vec.V { return a.farthest(d).Sub(b.farthest(d.Neg())) }
	simplex := []vec.V{diff(vec.V{X: 1})}
	v := simplex[0]
	for range 500 {
		dist := v.Len()
		if dist < fine {
			return 0
		}
		w := diff(v.Neg())
		if v.Dot(v.Sub(w)) <= fine*dist || slices.Contains(simplex, w) {
			return dist
		}
		next, rest := nearest(append(simplex, w))
		if next.Len() >= dist {
			return dist
		}
		v, simplex = next, rest
		if len(simplex) == 4 {
			return 0
		}
	}
	return v.Len()
}

// nearest returns the point nearest to the origin of the simplex with the
// given corners, and the corners that hold it: of every choice of corners whose
// flat is nearest inside them, the nearest of all.
func nearest(s []vec.V) (vec.V, []vec.V) {
	best := math.Inf(1)
	var at vec.V
	var keep []vec.V
	for set := 1; set < 1<<len(s); set++ {
		var some []vec.V
		for i, p := range s {
			if set>>i&1 == 1 {
				some = append(some, p)
			}
		}
		p, ok := foot(some)
		if l := p.Len(); ok && (l < best-1e-12 || l <= best && len(some) < len(keep)) {
			best, at, keep = l, p, some
		}
	}
	return at, keep
}

// foot returns the foot of the origin on the flat through the points, and
// whether it lies between them.
func foot(s []vec.V) (vec.V, bool) {
	switch len(s) {
	case 1:
		return s[0], true
	case 2:
		u := s[1].Sub(s[0])
		t := -s[0].Dot(u) / u.Dot(u)
		return s[0].Add(u.Mul(t)), t >= 0 && t <= 1
	case 3:
		u, v := s[1].Sub(s[0]), s[2].Sub(s[0])
		uu, uv, vv, u0, v0 := u.Dot(u), u.Dot(v), v.Dot(v), -u.Dot(s[0]), -v.Dot(s[0])
		det := uu*vv - uv*uv
		x, y := (u0*vv-v0*uv)/det, (v0*uu-u0*uv)/det
		return s[0].Add(u.Mul(x)).Add(v.Mul(y)), det > 1e-12*uu*vv && x >= 0 && y >= 0 && x+y <= 1
	}
	u, v, w := s[1].Sub(s[0]), s[2].Sub(s[0]), s[3].Sub(s[0])
	det := u.Dot(v.Cross(w))
	o := s[0].Neg()
	x, y, z := o.Dot(v.Cross(w))/det, u.Dot(o.Cross(w))/det, u.Dot(v.Cross(o))/det
	return vec.V{}, math.Abs(det) > 1e-9 && x >= 0 && y >= 0 && z >= 0 && x+y+z <= 1
}
