package sheet

import (
	"fmt"
	"math"

	"pegwright/draw"
	"pegwright/geom"
	"pegwright/geom/measure"
)

// lean sets the angle between the two timbers, or of the enterer to the face
// that it enters, where they are not square to each other.
func (w *flow) lean(f *geom.Frame, j *geom.Joint) {
	name, deg := leaning(j)
	if name == "" {
		return
	}
	w.row(row{name, fmt.Sprintf("%.1f° (%s)", deg, slope(f.Units, deg))})
	w.skip(1.5)
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
