package setout

import (
	"fmt"
	"math"
	"strings"

	"pegwright/draw"
	"pegwright/geom"
	"pegwright/geom/measure"
	"pegwright/geom/vec"
)

// Band is the lowest and the highest of some heights, frame z, mm.
type Band struct{ Lo, Hi float64 }

// Heights returns between which heights the undersides and the tops of a role's
// timbers lie.
func Heights(f *geom.Frame, role string) (under, top Band, ok bool) {
	under = Band{math.Inf(1), math.Inf(-1)}
	top = under
	for _, t := range f.Timbers {
		if t.Role != role {
			continue
		}
		lo, hi := t.Blank.Extent(t.Place.InDir(vec.V{Z: 1}))
		lo, hi, ok = lo+t.Place.O.Z, hi+t.Place.O.Z, true
		under.Lo, under.Hi = min(under.Lo, lo), max(under.Hi, lo)
		top.Lo, top.Hi = min(top.Lo, hi), max(top.Hi, hi)
	}
	return under, top, ok
}

// Pitches names the slopes of the rafters, each once, in frame order.
func Pitches(f *geom.Frame) string {
	var out []string
	said := map[string]bool{}
	for _, t := range f.Timbers {
		if !strings.HasSuffix(t.Role, "rafter") {
			continue
		}
		deg := math.Asin(min(1, math.Abs(t.Place.X.Z))) * 180 / math.Pi
		s := fmt.Sprintf("%s (%.1f°)", Slope(f.Units, deg), deg)
		if !said[s] {
			said[s] = true
			out = append(out, s)
		}
	}
	return strings.Join(out, ", ")
}

// Slope writes an angle as its rise in 12, or per 100 in metric units; an angle
// above 60° as the slope off square.
func Slope(u measure.Units, deg float64) string {
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
