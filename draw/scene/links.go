package scene

import (
	"math"

	"pegwright/draw"
	"pegwright/geom"
	"pegwright/geom/vec"
)

// linkSide is the side of the square about a joint that leads to its sheet,
// paper mm.
const linkSide = 3.0

// LinkJoints lays a link on every joint between two of the timbers given, at its
// place on paper. Of joints that lie on each other the first has the link.
func LinkJoints(s *draw.Sheet, f *geom.Frame, shown func(id string) bool, place func(vec.V) vec.P) {
	var there []vec.P
	half := vec.At(linkSide/2, linkSide/2)
	for _, j := range f.Joints {
		if !shown(j.Of.ID) || !shown(j.Into.ID) {
			continue
		}
		q := place(heart(j))
		if taken(there, q) || q.X < half.X || q.Y < half.Y || q.X > s.W-half.X || q.Y > s.H-half.Y {
			continue
		}
		there = append(there, q)
		s.Links = append(s.Links, draw.Link{To: j.ID, Rect: draw.Box{Min: q.Sub(half), Max: q.Add(half)}})
	}
}

func taken(there []vec.P, q vec.P) bool {
	for _, p := range there {
		if math.Abs(p.X-q.X) < linkSide/2 && math.Abs(p.Y-q.Y) < linkSide/2 {
			return true
		}
	}
	return false
}

// heart returns a point in the middle of a joint, frame axes.
func heart(j *geom.Joint) vec.V {
	switch {
	case !j.Tenon.Empty():
		return j.Tenon.Centroid()
	case len(j.Pegs) > 0:
		return j.Pegs[0].Mortise
	}
	x := 0.0
	switch j.OfEnd {
	case geom.Mid:
		x = min(max(j.Of.Place.In(j.Axes.O).X, 0), j.Of.Length)
	case geom.Finish:
		x = j.Of.Length
	}
	return j.Of.Place.Out(vec.V{X: x, Y: j.Of.Ideal[0] / 2, Z: j.Of.Ideal[1] / 2})
}
