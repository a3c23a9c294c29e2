package plan

import (
	"testing"

	"pegwright/draw/view"
	"pegwright/geom"
	"pegwright/geom/vec"
)

// walker walks along lines of sight through the wood of timbers.
type walker struct {
	timbers []*geom.Timber
	lo, hi  []vec.V // of each timber's wood, timber axes
}

func newWalker(timbers []*geom.Timber) *walker {
	w := &walker{timbers: timbers}
	for _, t := range timbers {
		lo, hi := t.Net.Bounds()
		w.lo, w.hi = append(w.lo, lo), append(w.hi, hi)
	}
	return w
}

// first walks back from the front of a picture in steps of 4 mm and returns the
// id of the first timber whose wood it meets, by the cells of the timbers alone.
func (w *walker) first(cam view.Camera, p vec.P, gone func(vec.V) bool) string {
	near, far := 0.0, 0.0
	for i, t := range w.timbers {
		d := cam.Depth(t.Place.Out(w.lo[i].Lerp(w.hi[i], 0.5)))
		r := w.hi[i].Sub(w.lo[i]).Len()
		near, far = max(near, d+r), min(far, d-r)
	}
	for d := near; d > far; d -= 4 {
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

// The places at which a name may point to a timber show that timber's wood: by
// walking along the line of sight.
func TestNamesPointAtTheirWood(t *testing.T) {
	eachSurvey(t, func(t *testing.T, f *geom.Frame, s *survey) {
		p := &surveyPage{survey: s, f: f}
		if !p.measure() {
			t.Fatal("nothing to see")
		}
		gone := func(q vec.V) bool {
			for _, pl := range s.cuts {
				if pl.Height(q) > 0 {
					return true
				}
			}
			return false
		}
		var drawn []*geom.Timber
		for _, part := range s.whole {
			drawn = append(drawn, f.Timber(part.Owner))
		}
		w := newWalker(drawn)
		for _, n := range p.names() {
			if id := w.first(s.cam, n.Spots[0].At.Mul(1/p.k), gone); id != n.Owner {
				t.Errorf("%s points at %q", n.Text, id)
			}
		}
	})
}
