package joint

import (
	"testing"

	"pegwright/draw"
	"pegwright/draw/scene"
	"pegwright/geom"
	"pegwright/geom/vec"
)

// Every heavy line of the halves lies on the reference arris: a little inside
// of it there is wood, a little outside of either reference face there is none.
// The line is read back from the paper with the camera's own axes, at a grid of
// places.
func TestHeavyLinesLieOnTheArris(t *testing.T) {
	seen := 0
	eachJoint(t, func(t *testing.T, f *geom.Frame, g scene.Group) {
		for _, v := range viewsOf(g) {
			for _, it := range v.items {
				p, ok := it.(*draw.Path)
				if !ok || p.Class != draw.Register {
					continue
				}
				seen++
				o, d := v.cam.Project(v.timber.Place.O), v.cam.Project(v.timber.Place.X)
				for _, k := range []float64{0.02, 0.2, 0.4, 0.6, 0.8, 0.98} {
					q := p.Pts[0].Lerp(p.Pts[1], k).Sub(o)
					x := q.Dot(d) / d.Dot(d)
					if q.Sub(d.Mul(x)).Len() > 0.05 || !holds(v.timber, x, 0.2, 0.2) || holds(v.timber, x, -0.2, 0.2) || holds(v.timber, x, 0.2, -0.2) {
						t.Errorf("%s, %s: no arris at %.1f mm", v.timber.ID, v.title, x)
					}
				}
			}
		}
	})
	if seen < 40 {
		t.Errorf("only %d heavy lines: the test says little", seen)
	}
}

// holds reports whether there is wood of a timber at a point of its own axes.
func holds(t *geom.Timber, x, y, z float64) bool {
	for _, c := range t.Net.Cells() {
		if c.Contains(vec.V{X: x, Y: y, Z: z}, 1e-6) {
			return true
		}
	}
	return false
}
