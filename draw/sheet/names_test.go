package sheet

import (
	"testing"

	"pegwright/draw"
	"pegwright/draw/dim"
	"pegwright/draw/view"
	"pegwright/geom"
	"pegwright/geom/vec"
	"pegwright/samples/trial"
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
			if !outside(t.Place.In(q), w.lo[i], w.hi[i]) && woodAt(t, q) {
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
			if id := w.first(s.cam, n.spots[0].at.Mul(1/p.k), gone); id != n.owner {
				t.Errorf("%s points at %q", n.text, id)
			}
		}
	})
}

// No leader of a name runs through a word or crosses another leader.
func TestLeadersRunClear(t *testing.T) {
	f := trial.Sample(t, "cart-barn")
	n := 0
	for _, s := range append(append(Views(f), Apart(f)...), Surveys(f)...) {
		var leads [][]vec.P
		for _, it := range s.Items {
			l, ok := it.(*draw.Path)
			if !ok || l.Class != draw.Dimension || l.Owner == "" || l.Closed || len(l.Pts) != 2 {
				continue
			}
			n++
			for _, o := range leads {
				if dim.Cross(l.Pts[0], l.Pts[1], o[0], o[1]) {
					t.Errorf("%s: the leader of %s crosses another", s.ID, l.Owner)
				}
			}
			leads = append(leads, l.Pts)
			for _, it := range s.Items {
				if x, ok := it.(*draw.Text); ok && crosses(l.Pts[0], l.Pts[1], dim.BoxOf(x)) {
					t.Errorf("%s: the leader of %s runs through %q", s.ID, l.Owner, x.S)
				}
			}
		}
	}
	if n < 20 {
		t.Errorf("only %d leaders found", n)
	}
}
