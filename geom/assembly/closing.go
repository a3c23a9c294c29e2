package assembly

import (
	"math"
	"slices"

	"pegwright/geom"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// Heed sets the moves of the joints that a frame's steps close by another straight
// way than the joint's kind would: what is drawn and said of a joint is then the
// way that was proven. A bent that is turned up keeps the moves of its feet, which
// are those of its last inches.
func Heed(f *geom.Frame) {
	for _, s := range f.Steps {
		if s.Motion != geom.Straight || len(s.Legs) != 1 {
			continue
		}
		for _, id := range s.Joints {
			j := f.Joint(id)
			d := s.Legs[0].Direction
			if !slices.Contains(s.Move, j.Of.ID) {
				d = d.Neg()
			}
			if n := len(j.Moves); n > 0 && j.Moves[n-1].Direction.Sub(d).Len() > roundOff {
				j.Moves = []geom.Move{{Direction: d, Distance: engaged(j, d)}}
			}
		}
	}
}

// engaged is how far a joint holds along another way d than its own: until it is
// as far open as its own move opens it or, square to that, until its butts have
// slid past each other.
func engaged(j *geom.Joint, d vec.V) float64 {
	last := j.Moves[len(j.Moves)-1]
	if k := last.Direction.Dot(d); k > 0.05 {
		return last.Distance / k
	}
	long := 0.0
	for _, c := range j.Into.Cuts {
		if c.Joint != j.ID {
			continue
		}
		in := j.Into.Place.Inverse().OutDir(d)
		wood := solid.Common(j.Into.Blank, c.Solid)
		for _, face := range wood.Faces {
			if face.Role != geom.RoleButt || math.Abs(face.Plane.N.Dot(in)) > roundOff {
				continue
			}
			lo, hi := math.Inf(1), math.Inf(-1)
			for _, k := range face.Loop {
				h := in.Dot(wood.V[k])
				lo, hi = min(lo, h), max(hi, h)
			}
			long = max(long, hi-lo)
		}
	}
	return long
}
