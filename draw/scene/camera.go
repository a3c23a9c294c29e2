package scene

import (
	"cmp"
	"math"
	"slices"

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

// newStage returns the stage of a joint whose parts were pulled apart by Exploded.
func newStage(j *geom.Joint, parts []view.Part) *stage {
	s := &stage{joint: j, way: parts[1].Shift.Unit()}
	s.receiver, s.enterer = spots(parts[0], j.ID), spots(parts[1], j.ID)
	for i, p := range parts[:len(parts)-1] {
		for _, c := range p.Placed() {
			if i < 2 {
				s.cells = append(s.cells, c)
			}
			s.corners = append(s.corners, c.V...)
		}
	}
	s.corners = distinct(s.corners)
	for _, c := range tips(j) {
		s.end = append(s.end, c.Add(parts[1].Shift).Add(j.Moves[0].Direction.Mul(0.1)))
	}
	return s
}

// camera returns the axonometric camera from which most is seen of what the
// joint takes from the receiver and, at the same time, of what it leaves of the
// enterer and of the corners of its tenon's end, with the way between them not
// foreshortened and the picture filling a field of the given size.
func (s *stage) camera(w, h float64) view.Camera {
	shots := make([]shot, 0, 128)
	for az := 11.5; az < 360; az += 11.25 {
		for _, el := range []float64{24, 38, -24, -38} {
			c := view.Axonometric(az, el)
			q := shot{cam: c, worth: s.worth(c) * math.Sqrt(fill(c, s.corners, w, h)), score: -1}
			if el > 0 {
				q.worth *= 1.15 // things are mostly seen from above
			}
			// With nothing in the way: no more than that is seen.
			q.free = showing(c, s.enterer, nil)
			q.most = q.worth * math.Sqrt(showing(c, s.receiver, nil)*q.free)
			shots = append(shots, q)
		}
	}
	return s.best(shots)
}

// stage is what a camera is chosen for, whatever the field.
type stage struct {
	joint             *geom.Joint
	way               vec.V // of the enterer
	receiver, enterer []spot
	cells             []solid.Convex // of both
	corners           []vec.V        // of all that is drawn
	end               []vec.V        // corners of the tenon's end, a little before it
}

// shot is a camera that may be chosen: what it is worth but for what it sees, what
// the enterer shows with nothing in the way, the most that it can score, and what
// it does score, -1 where that is not known because others score more.
type shot struct {
	cam                      view.Camera
	worth, free, most, score float64
}

// worth tells how well the directions of the joint lie in the picture.
func (s *stage) worth(c view.Camera) float64 {
	j := s.joint
	k := open(c, s.way) * open(c, j.Axes.U) * open(c, j.Of.Place.X)
	for _, p := range j.Pegs {
		k *= open(c, direction(p))
	}
	for _, d := range []vec.V{j.Axes.U, j.Axes.V, j.Axes.W} {
		k *= math.Sqrt(0.05 + min(math.Abs(c.Toward.Dot(d)), 0.4)) // no face edge-on
	}
	return k
}

// best returns the camera with the highest score, the first of equal ones. What
// is seen is looked up only for those that can have it.
func (s *stage) best(shots []shot) view.Camera {
	order := make([]int, len(shots))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(shots[b].most, shots[a].most) })
	top, screen := -1.0, screenOf(s.cells)
	for _, i := range order {
		q := &shots[i]
		least := top * (1 - 1e-6)
		if q.most < least {
			break
		}
		screen.face(q.cam)
		end := 0.4 + 0.6*inSight(s.end, screen)
		if q.most*end < least {
			continue
		}
		k, receiver := q.worth*end, showing(q.cam, s.receiver, screen)
		if k*math.Sqrt(receiver*q.free) < least {
			continue
		}
		q.score = k * math.Sqrt(receiver*showing(q.cam, s.enterer, screen))
		top = max(top, q.score)
	}
	best, score := view.Isometric(), -1.0
	for _, q := range shots {
		if q.score > score*(1+1e-9) {
			best, score = q.cam, q.score
		}
	}
	return best
}

// distinct returns the points, each once.
func distinct(points []vec.V) []vec.V {
	slices.SortFunc(points, func(a, b vec.V) int {
		return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y), cmp.Compare(a.Z, b.Z))
	})
	return slices.Compact(points)
}

// inSight returns the share of points that nothing hides, 1 of none.
func inSight(points []vec.V, s *screen) float64 {
	if len(points) == 0 {
		return 1
	}
	seen := 0
	for _, p := range points {
		if s.clear(p) {
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
func showing(c view.Camera, list []spot, s *screen) float64 {
	if len(list) == 0 {
		return 1
	}
	sum, best := 0.0, 0.0
	seen, all := 0.0, 0.0 // of one face
	for i, q := range list {
		if i > 0 && q.face != list[i-1].face {
			seen, all = 0, 0
		}
		all += q.area
		if k := q.n.Dot(c.Toward); k > 0.05 && s.clear(q.at) {
			sum += q.area * k
			seen += q.area
		}
		if i+1 == len(list) || list[i+1].face != q.face {
			best = max(best, seen/all)
		}
	}
	k := min(1, best/facePlain)
	return max(sum, 0) * k * k
}
