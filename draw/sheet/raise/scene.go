package raise

import (
	"math"
	"slices"
	"strings"

	"pegwright/draw/view"
	"pegwright/geom"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// leaned is how far a bent that is being turned up is drawn out of plumb.
const leaned = 24 * math.Pi / 180

// pose returns how what moves is carried from its place to where it is drawn:
// back along the legs of its move, or leaning over its feet.
func (r *raising) pose(s geom.Step) vec.Placement {
	out := vec.Identity
	if len(s.Legs) == 0 {
		return out
	}
	lo, hi := boxOf(r.f, s.Move)
	if s.Motion == geom.Rear {
		return leanedBack(lo, hi, s.Direction().Neg())
	}
	size := hi.Sub(lo).Len()
	for i := len(s.Legs) - 1; i >= 0; i-- {
		back := s.Legs[i].Distance
		if i == 0 {
			back = min(max(0.16*size, 300), 700)
		}
		out.O = out.O.Sub(s.Legs[i].Direction.Mul(back))
	}
	return out
}

// leanedBack turns a box about its foot on the side that it leans to, and lifts it
// off what it stands on.
func leanedBack(lo, hi, lean vec.V) vec.Placement {
	turn := func(v vec.V) vec.V {
		a, b := v.Dot(lean), v.Z
		sin, cos := math.Sincos(leaned)
		rest := v.Sub(lean.Mul(a)).Sub(vec.V{Z: b})
		return rest.Add(lean.Mul(a*cos + b*sin)).Add(vec.V{Z: b*cos - a*sin})
	}
	pivot := lo.Lerp(hi, 0.5)
	pivot.Z = lo.Z
	p := vec.Placement{X: turn(vec.V{X: 1}), Y: turn(vec.V{Y: 1}), Z: turn(vec.V{Z: 1})}
	p.O = pivot.Sub(p.OutDir(pivot)).Add(vec.V{Z: 150}).Add(lean.Mul(100))
	return p
}

// lies returns the direction that is up while a group lies on the ground: away
// from the side to which it will be leaned, square to its plane. flat is false
// where its timbers lie in no one plane.
func (r *raising) lies(group string) (up vec.V, flat bool) {
	var axes []vec.V
	for _, s := range r.f.Steps {
		if s.Group == group {
			for _, id := range s.Move {
				axes = append(axes, r.f.Timber(id).Place.X)
			}
		}
		if s.Group == "" && s.Name == group && s.Motion == geom.Rear {
			up = s.Direction()
		}
	}
	for _, n := range []vec.V{{X: -1}, {Y: -1}, {Z: 1}} {
		in, square := 0, math.Abs(n.Z) < 0.5 || up == vec.V{}
		for _, a := range axes {
			if math.Abs(a.Dot(n)) < 1e-3 {
				in++
			}
		}
		// A brace or two may hang square to a bent that lies flat.
		if square && 5*in >= 4*len(axes) {
			if up.Dot(n) < 0 {
				n = n.Neg()
			}
			return n, true
		}
	}
	return vec.V{}, false
}

// camera is where a step is seen from: what lies on the ground from above,
// what stands from a corner, on the side that the stick comes from.
func (r *raising) camera(s geom.Step) view.Camera {
	if s.Group != "" {
		if up, flat := r.lies(s.Group); flat {
			if math.Abs(s.Direction().Dot(up)) > 0.8 { // goes toward the viewer: seen aslant
				return view.Look(up.Neg().Add(vec.V{X: 0.35 * up.Y, Y: -0.35 * up.X, Z: -0.5}), vec.V{Z: 1})
			}
			return view.Look(up.Neg(), vec.V{Z: 1})
		}
		return view.IsometricFrom(-1, -1)
	}
	x, y := -1, -1
	d := s.Direction()
	if d.X < -0.3 {
		x = 1
	}
	lo, hi := r.box()
	c := middleOf(r.f, s.Move)
	if d.Y < -0.3 || math.Abs(d.Y) < 0.3 && c.Y > (lo.Y+hi.Y)/2+200 {
		y = 1
	}
	return view.IsometricFrom(x, y)
}

// seenFrom says where a picture is seen from.
func (r *raising) seenFrom(s geom.Step, c view.Camera) string {
	if s.Group == "" {
		return "Seen from the " + geom.Compass(c.Toward) + "."
	}
	up, flat := r.lies(s.Group)
	if !flat || math.Abs(up.Z) > 0.5 {
		return "On the ground."
	}
	if math.Abs(c.Toward.Dot(up)) < 0.99 {
		return "As it lies, aslant: " + geom.Compass(up) + " face up."
	}
	return "As it lies, from above: " + geom.Compass(up) + " face up."
}

// standing returns what is there before a step and near to it, broken off
// about what moves.
func (r *raising) standing(a *act) []view.Part {
	s := a.step
	lo, hi := r.near(a)
	up := r.before(a)
	var out []view.Part
	for _, b := range r.f.Steps[:a.n-1] {
		if b.Group != s.Group {
			continue
		}
		for _, id := range b.Move {
			q, ok := r.part(id)
			if !ok {
				continue
			}
			body := q.body
			if s.Group == "" {
				body = brokenIn(q, lo, hi)
			}
			if body != q.body && !r.held(q.t, up, lo, hi) && !slices.Contains(s.Onto, id) {
				continue // a stub that would float in the air, and that nothing is joined to
			}
			if body != nil {
				out = append(out, view.Part{Owner: id, Body: body})
			}
		}
	}
	return out
}

// held reports whether a timber is joined inside a box to another of those
// that stand.
func (r *raising) held(t *geom.Timber, up map[string]bool, lo, hi vec.V) bool {
	for _, j := range r.f.JointsOf(t) {
		if !up[j.Of.ID] || !up[j.Into.ID] {
			continue
		}
		p := jointAt(j)
		if p.X > lo.X && p.X < hi.X && p.Y > lo.Y && p.Y < hi.Y && p.Z > lo.Z && p.Z < hi.Z {
			return true
		}
	}
	return false
}

// near is the box outside of which what stands is not drawn with a step.
func (r *raising) near(a *act) (lo, hi vec.V) {
	s := a.step
	lo, hi = boxOf(r.f, s.Move)
	foot := lo.Z
	for _, id := range s.Joints {
		p := jointAt(r.f.Joint(id))
		lo = vec.V{X: min(lo.X, p.X), Y: min(lo.Y, p.Y), Z: min(lo.Z, p.Z)}
		hi = vec.V{X: max(hi.X, p.X), Y: max(hi.Y, p.Y), Z: max(hi.Z, p.Z)}
	}
	m := vec.V{X: 800, Y: 800, Z: 500}
	if len(s.Move) > 2 {
		m.X = r.toNextBent(a, lo.X, hi.X)
	}
	if t := r.f.Timber(s.Move[0]); strings.Contains(t.Role, "sill") && hi.Z-lo.Z < 600 {
		m = vec.V{X: 1e5, Y: 1e5, Z: 500}
	}
	lo, hi = lo.Sub(m), hi.Add(m)
	switch {
	case foot-r.ground() > headHeight:
		lo.Z -= 700
	default:
		lo.Z -= 3000
	}
	return lo, hi
}

// toNextBent is how far a picture reaches from a bent to show the bent beside
// it that stands already.
func (r *raising) toNextBent(a *act, lo, hi float64) float64 {
	const none, far, past = 1500.0, 5000.0, 400.0
	best := far
	up := r.before(a)
	for _, t := range r.f.Timbers {
		if t.Role != "post" || t.Bent == 0 || !up[t.ID] {
			continue
		}
		if x := t.Place.O.X; x < lo || x > hi {
			best = min(best, max(lo-x, x-hi))
		}
	}
	if best == far {
		return none
	}
	return best + past
}

// brokenIn returns the wood of a part inside a box, nil where there is none.
func brokenIn(q raisePart, lo, hi vec.V) *solid.Body {
	var planes []solid.Plane
	for _, side := range []struct {
		n    vec.V
		d    float64
		a, b float64 // of the part along n
	}{
		{vec.V{X: 1}, hi.X, q.lo.X, q.hi.X}, {vec.V{X: -1}, -lo.X, -q.hi.X, -q.lo.X},
		{vec.V{Y: 1}, hi.Y, q.lo.Y, q.hi.Y}, {vec.V{Y: -1}, -lo.Y, -q.hi.Y, -q.lo.Y},
		{vec.V{Z: 1}, hi.Z, q.lo.Z, q.hi.Z}, {vec.V{Z: -1}, -lo.Z, -q.hi.Z, -q.lo.Z},
	} {
		const least = 200 // no slivers
		if side.a > side.d-least {
			return nil
		}
		if side.b > side.d+1 {
			planes = append(planes, solid.Plane{N: side.n, D: side.d})
		}
	}
	if len(planes) == 0 {
		return q.body
	}
	if b := view.Clipped(q.body, planes...); len(b.Cells()) > 0 {
		return b
	}
	return nil
}
