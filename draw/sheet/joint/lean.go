package joint

import (
	"fmt"
	"math"
	"slices"

	"pegwright/draw/scene"
	"pegwright/draw/setout"
	"pegwright/geom"
)

// leanOf returns the angle between the two timbers, or of the enterer to the face
// that it enters, as a row of the table; none where they are square to each other.
func leanOf(f *geom.Frame, j *geom.Joint) []row {
	name, deg := leaning(j)
	if name == "" {
		return nil
	}
	return []row{{name, fmt.Sprintf("%.1f° (%s)", deg, setout.Slope(f.Units, deg))}}
}

// bevelsAt returns the angles to which a bevel gauge is set for the joint's cuts
// on one timber, reductions apart, in degrees to the arris, each once. Of two
// that make a right angle the lesser is told: a square at its rise and run
// strikes both.
func bevelsAt(j *geom.Joint, t *geom.Timber) []float64 {
	var out []float64
	for i := range t.Cuts {
		c := &t.Cuts[i]
		if c.Joint != j.ID || c.Solid.HasRole(geom.RoleReduced) {
			continue
		}
		for _, deg := range scene.BevelOf(t, c) {
			if !holdsAngle(out, deg) {
				out = append(out, deg)
			}
		}
	}
	all := slices.Clone(out)
	return slices.DeleteFunc(out, func(deg float64) bool { return deg > 45.05 && holdsAngle(all, 90-deg) })
}

func holdsAngle(list []float64, deg float64) bool {
	return slices.ContainsFunc(list, func(o float64) bool { return math.Abs(o-deg) < 0.05 })
}

// bevelRows tells those angles, one a row, but for that between the timbers,
// which lean tells.
func bevelRows(f *geom.Frame, j *geom.Joint, t *geom.Timber) []row {
	var out []row
	_, lean := leaning(j)
	for _, deg := range bevelsAt(j, t) {
		if told := []float64{lean, 90 - lean}; lean > 0 && holdsAngle(told, deg) {
			continue
		}
		out = append(out, row{"bevel to the arris", fmt.Sprintf("%.1f° (%s)", deg, setout.Slope(f.Units, deg))})
	}
	return out
}

// leaning returns the acute angle between the sticks, in degrees, where they
// are neither square nor in line; else that of the enterer to the entered face,
// where it leans there. The name is empty where all is square.
func leaning(j *geom.Joint) (name string, deg float64) {
	x := j.Of.Place.X
	if c := math.Abs(x.Dot(j.Into.Place.X)); c > 1e-6 {
		if c > 1-1e-9 {
			return "", 0
		}
		return "angle between the timbers", math.Acos(c) * 180 / math.Pi
	}
	if s := math.Abs(x.Dot(j.Axes.W)); s < 1-1e-9 && s > 1e-9 {
		return "angle to the face that it enters", math.Asin(s) * 180 / math.Pi
	}
	return "", 0
}
