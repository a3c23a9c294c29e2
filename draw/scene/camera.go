package scene

import (
	"math"

	"pegwright/draw"
	"pegwright/draw/view"
	"pegwright/geom"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// spot is a small piece of a face that the joint made.
type spot struct {
	at, n vec.V
	area  float64
	face  int // which of the part's faces it is of
}

// Camera returns the axonometric camera from which most is seen of what the
// joint takes from the receiver and, at the same time, of what it leaves of the
// enterer and of the corners of its tenon's end, with the way between them not
// foreshortened and the picture filling a field of the given size.
func Camera(j *geom.Joint, parts []view.Part, w, h float64) view.Camera {
	receiver, enterer := spots(parts[0], j.ID), spots(parts[1], j.ID)
	var cells []solid.Convex
	var corners []vec.V
	for i, p := range parts[:len(parts)-1] {
		for _, c := range p.Placed() {
			if i < 2 {
				cells = append(cells, c)
			}
			corners = append(corners, c.V...)
		}
	}
	way := parts[1].Shift.Unit()
	var end []vec.V // corners of the tenon's end, a little before it
	for _, c := range tips(j) {
		end = append(end, c.Add(parts[1].Shift).Add(j.Moves[0].Direction.Mul(0.1)))
	}
	best, score := view.Isometric(), -1.0
	for az := 11.5; az < 360; az += 11.25 {
		for _, el := range []float64{24, 38, -24, -38} {
			c := view.Axonometric(az, el)
			s := open(c, way) * open(c, j.Axes.U) * open(c, j.Of.Place.X) * math.Sqrt(fill(c, corners, w, h))
			for _, p := range j.Pegs {
				s *= open(c, direction(p))
			}
			for _, d := range []vec.V{j.Axes.U, j.Axes.V, j.Axes.W} {
				s *= math.Sqrt(0.05 + min(math.Abs(c.Toward.Dot(d)), 0.4)) // no face edge-on
			}
			if el > 0 {
				s *= 1.15 // things are mostly seen from above
			}
			// Without cells nothing is hidden: an upper bound that spares rays.
			if s*math.Sqrt(showing(c, receiver, nil)*showing(c, enterer, nil)) <= score {
				continue
			}
			s *= 0.4 + 0.6*inSight(c, end, cells)
			if s *= math.Sqrt(showing(c, receiver, cells) * showing(c, enterer, cells)); s > score*(1+1e-9) {
				best, score = c, s
			}
		}
	}
	return best
}

// inSight returns the share of points that the camera sees, 1 of none.
func inSight(c view.Camera, points []vec.V, cells []solid.Convex) float64 {
	if len(points) == 0 {
		return 1
	}
	seen := 0
	for _, p := range points {
		if clear(p, c.Toward, cells) {
			seen++
		}
	}
	return float64(seen) / float64(len(points))
}

// fill returns the scale at which the corners fill a field of w by h.
func fill(c view.Camera, corners []vec.V, w, h float64) float64 {
	b := draw.NoBox()
	for _, v := range corners {
		b = b.With(c.Project(v))
	}
	return min(w/b.W(), h/b.H())
}

// open is how much of a direction is left in the picture: 1 down to 30°, less
// below.
func open(c view.Camera, d vec.V) float64 {
	return 0.1 + min(math.Hypot(c.Right.Dot(d), c.Up.Dot(d)), 0.85)
}

// spots divides the faces that the joint made on a part into small pieces.
func spots(p view.Part, joint string) []spot {
	var out []spot
	for face, f := range p.Body.Boundary() {
		if !madeBy(f, joint) {
			continue
		}
		for i := 1; i+1 < len(f.Outer); i++ {
			a, b, c := f.Outer[0], f.Outer[i], f.Outer[i+1]
			area := b.Sub(a).Cross(c.Sub(a)).Dot(f.Plane.N) / 2
			ab, bc, ca := a.Lerp(b, 0.5), b.Lerp(c, 0.5), c.Lerp(a, 0.5)
			for _, t := range [][3]vec.V{{a, ab, ca}, {ab, b, bc}, {ca, bc, c}, {ab, bc, ca}} {
				m := t[0].Add(t[1]).Add(t[2]).Mul(1.0 / 3).Add(p.Shift).Add(f.Plane.N.Mul(0.1))
				out = append(out, spot{m, f.Plane.N, area / 4, face})
			}
		}
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

// facePlain is the share of its best face from which on a part is plain to see.
const facePlain = 0.4

// showing returns the area on paper of the spots that the camera sees, less
// where it looks into no face by more than a slit; 1 for a part from which the
// joint takes nothing.
func showing(c view.Camera, list []spot, cells []solid.Convex) float64 {
	if len(list) == 0 {
		return 1
	}
	sum, best := 0.0, 0.0
	seen, all := 0.0, 0.0 // of one face
	for i, s := range list {
		if i > 0 && s.face != list[i-1].face {
			seen, all = 0, 0
		}
		all += s.area
		if k := s.n.Dot(c.Toward); k > 0.05 && clear(s.at, c.Toward, cells) {
			sum += s.area * k
			seen += s.area
		}
		if i+1 == len(list) || list[i+1].face != s.face {
			best = max(best, seen/all)
		}
	}
	k := min(1, best/facePlain)
	return max(sum, 0) * k * k
}

// clear reports whether nothing stands between p and a viewer in direction d.
func clear(p, d vec.V, cells []solid.Convex) bool {
	for _, c := range cells {
		lo, hi := 1e-3, math.Inf(1)
		for _, f := range c.Faces {
			h, k := f.Plane.Height(p), f.Plane.N.Dot(d)
			switch {
			case math.Abs(k) < 1e-12:
				if h > -1e-6 {
					hi = lo
				}
			case k > 0:
				hi = min(hi, -h/k)
			default:
				lo = max(lo, -h/k)
			}
		}
		if hi-lo > 1e-6 {
			return false
		}
	}
	return true
}
