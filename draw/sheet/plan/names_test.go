package plan

import (
	"testing"

	"pegwright/draw/sheet/tidy"
	"pegwright/geom"
	"pegwright/geom/vec"
)

// gone reports whether a point lies in what the planes take away.
func (v *survey) gone(q vec.V) bool {
	for _, pl := range v.cuts {
		if pl.Height(q) > 0 {
			return true
		}
	}
	return false
}

// The places at which a name may point to a timber show that timber's wood: by
// walking along the line of sight.
func TestNamesPointAtTheirWood(t *testing.T) {
	eachSurvey(t, func(t *testing.T, f *geom.Frame, s *survey) {
		p := &surveyPage{survey: s, f: f}
		if !p.measure() {
			t.Fatal("nothing to see")
		}
		var drawn []*geom.Timber
		for _, part := range s.whole {
			drawn = append(drawn, f.Timber(part.Owner))
		}
		w := tidy.NewWalker(drawn)
		for _, n := range p.names() {
			if id := w.First(s.cam, n.Spots[0].At.Mul(1/p.k), s.gone); id != n.Owner {
				t.Errorf("%s points at %q", n.Text, id)
			}
		}
	})
}
