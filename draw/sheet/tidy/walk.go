package tidy

import (
	"pegwright/draw/view"
	"pegwright/geom"
	"pegwright/geom/vec"
)

// Walker walks along lines of sight through the wood of timbers.
type Walker struct {
	// Step is how far apart it looks along a line, mm.
	Step float64

	timbers []*geom.Timber
	lo, hi  []vec.V // of each timber's wood, timber axes
}

// NewWalker returns a walker through the wood of timbers, in steps of 4 mm.
func NewWalker(timbers []*geom.Timber) *Walker {
	w := &Walker{Step: 4, timbers: timbers}
	for _, t := range timbers {
		lo, hi := t.Net.Bounds()
		w.lo, w.hi = append(w.lo, lo), append(w.hi, hi)
	}
	return w
}

// First walks back from the front of a picture, at a point of it at full size, and
// returns the id of the first timber whose wood it meets, "" for none, by the cells
// of the timbers alone. Points for which gone is true are passed by.
func (w *Walker) First(cam view.Camera, p vec.P, gone func(vec.V) bool) string {
	near, far := 0.0, 0.0
	for i, t := range w.timbers {
		d := cam.Depth(t.Place.Out(w.lo[i].Lerp(w.hi[i], 0.5)))
		r := w.hi[i].Sub(w.lo[i]).Len()
		near, far = max(near, d+r), min(far, d-r)
	}
	for d := near; d > far; d -= w.Step {
		q := cam.Flat(p).Add(cam.Toward.Mul(d))
		if gone(q) {
			continue
		}
		for i, t := range w.timbers {
			if !outside(t.Place.In(q), w.lo[i], w.hi[i]) && t.WoodAt(q) {
				return t.ID
			}
		}
	}
	return ""
}

func outside(q, lo, hi vec.V) bool {
	return q.X < lo.X || q.Y < lo.Y || q.Z < lo.Z || q.X > hi.X || q.Y > hi.Y || q.Z > hi.Z
}
