package setout

import (
	"math"

	"pegwright/draw/page"
	"pegwright/geom"
	"pegwright/geom/measure"
	"pegwright/geom/vec"
)

// Footprint returns what the frame stands with on the ground, and its outer
// sizes there, mm.
func Footprint(f *geom.Frame) (name string, x, y float64) {
	for _, role := range []string{"sill", "post"} {
		if x, y, _ := Overall(f, role); x > 0 {
			return role + "s", x, y
		}
	}
	x, y, _ = Overall(f, "")
	return "all timbers", x, y
}

// Overall returns the size of the box round all timbers of a role ("" for all),
// in frame axes, and zeros where there are none.
func Overall(f *geom.Frame, role string) (x, y, z float64) {
	lo, hi := vec.V{X: math.Inf(1), Y: math.Inf(1), Z: math.Inf(1)}, vec.V{X: math.Inf(-1), Y: math.Inf(-1), Z: math.Inf(-1)}
	for _, t := range f.Timbers {
		if role != "" && t.Role != role || t.Net == nil {
			continue
		}
		a, b := t.NetInFrame().Bounds()
		lo = vec.V{X: min(lo.X, a.X), Y: min(lo.Y, a.Y), Z: min(lo.Z, a.Z)}
		hi = vec.V{X: max(hi.X, b.X), Y: max(hi.Y, b.Y), Z: max(hi.Z, b.Z)}
	}
	if lo.X > hi.X {
		return 0, 0, 0
	}
	return hi.X - lo.X, hi.Y - lo.Y, hi.Z - lo.Z
}

// Criteria are the design criteria that the description states.
func Criteria(f *geom.Frame) []page.Fact {
	var out []page.Fact
	for _, c := range f.Criteria {
		out = append(out, page.Fact{Name: c.Name, Value: c.Text})
	}
	return out
}

// Scales are the n of the scales 1:n at which buildings are customarily drawn, the
// largest first.
func Scales(u measure.Units) []float64 {
	if u == measure.Metric {
		return []float64{5, 10, 15, 20, 25, 30, 40, 50, 75, 100, 200, 500, 1000}
	}
	return []float64{8, 12, 16, 24, 32, 48, 64, 96, 128, 192, 384, 768}
}
