package sheet

import (
	"fmt"
	"math"
	"slices"

	"pegwright/draw"
	"pegwright/geom"
	"pegwright/geom/measure"
)

// lean sets the angle between the two timbers, or of the enterer to the face
// that it enters, where they are not square to each other and no bevel has told
// it.
func (w *flow) lean(f *geom.Frame, j *geom.Joint) {
	name, deg := leaning(j)
	if name == "" {
		return
	}
	for _, b := range append(bevelsAt(j, j.Into), bevelsAt(j, j.Of)...) {
		if math.Abs(b-deg) < 0.05 {
			return
		}
	}
	w.row(row{name, fmt.Sprintf("%.1f° (%s)", deg, slope(f.Units, deg))})
	w.skip(1.5)
}

// bevelsAt returns the angles to which a bevel gauge is set for the joint's cuts
// on one timber, reductions apart, in degrees to the arris, each once.
func bevelsAt(j *geom.Joint, t *geom.Timber) []float64 {
	var out []float64
	for i := range t.Cuts {
		c := &t.Cuts[i]
		if c.Joint != j.ID || hasRole(c.Solid, geom.RoleReduced) {
			continue
		}
		for _, deg := range bevelOf(t, c) {
			if !slices.ContainsFunc(out, func(o float64) bool { return math.Abs(o-deg) < 0.05 }) {
				out = append(out, deg)
			}
		}
	}
	return out
}

// bevelRows tells those angles, one a row.
func bevelRows(f *geom.Frame, j *geom.Joint, t *geom.Timber) []row {
	var out []row
	for _, deg := range bevelsAt(j, t) {
		out = append(out, row{"bevel to the arris", fmt.Sprintf("%.1f° (%s)", deg, slope(f.Units, deg))})
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
		return "angle of the enterer to the entered face", math.Asin(s) * 180 / math.Pi
	}
	return "", 0
}

// slope writes an angle as its rise in 12, or per 100 in metric units; an angle
// above 60° as the slope off square.
func slope(u measure.Units, deg float64) string {
	off := ""
	if deg > 60 {
		deg, off = 90-deg, " off square"
	}
	t := math.Tan(deg * math.Pi / 180)
	if u == measure.Metric {
		return draw.Number(100*t, 1) + " per 100" + off
	}
	return draw.Number(12*t, 2) + " in 12" + off
}
