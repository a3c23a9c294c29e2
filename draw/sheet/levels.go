package sheet

import (
	"fmt"
	"math"
	"strings"

	"pegwright/draw/page"
	"pegwright/geom"
	"pegwright/geom/vec"
)

// levels returns the roof's pitch and the heights of plates and ties, where there
// are timbers of these roles. Heights are over the tops of the sills, or over
// the posts' feet where there are no sills.
func levels(f *geom.Frame) []page.Fact {
	var out []page.Fact
	say := func(name, value string) { out = append(out, page.Fact{Name: name, Value: value}) }
	if p := pitches(f); p != "" {
		say("roof pitch", p)
	}
	datum, from := 0.0, ""
	if _, top, ok := heights(f, "sill"); ok {
		datum, from = top.hi, "over the sills"
	} else if under, _, ok := heights(f, "post"); ok {
		datum, from = under.lo, "over the posts' feet"
	}
	if from == "" {
		return out
	}
	if _, top, ok := heights(f, "plate"); ok {
		say("eave, top of plate", top.over(f, datum)+" "+from)
	}
	if _, top, ok := heights(f, "ridge"); ok {
		say("ridge, top", top.over(f, datum)+" "+from)
	}
	if under, top, ok := heights(f, "tie"); ok {
		say("tie, top", top.over(f, datum)+" "+from)
		say("tie, underside", under.over(f, datum)+" "+from)
	}
	return out
}

// band is the lowest and the highest of some heights, frame z, mm.
type band struct{ lo, hi float64 }

// over writes the heights over a datum.
func (b band) over(f *geom.Frame, datum float64) string {
	lo, hi := f.Units.Format(b.lo-datum), f.Units.Format(b.hi-datum)
	if lo == hi {
		return hi
	}
	return lo + " to " + hi
}

// heights returns between which heights the undersides and the tops of a role's
// timbers lie.
func heights(f *geom.Frame, role string) (under, top band, ok bool) {
	under = band{math.Inf(1), math.Inf(-1)}
	top = under
	for _, t := range f.Timbers {
		if t.Role != role {
			continue
		}
		lo, hi := t.Blank.Extent(t.Place.InDir(vec.V{Z: 1}))
		lo, hi, ok = lo+t.Place.O.Z, hi+t.Place.O.Z, true
		under.lo, under.hi = min(under.lo, lo), max(under.hi, lo)
		top.lo, top.hi = min(top.lo, hi), max(top.hi, hi)
	}
	return under, top, ok
}

// pitches names the slopes of the rafters, each once, in frame order.
func pitches(f *geom.Frame) string {
	var out []string
	said := map[string]bool{}
	for _, t := range f.Timbers {
		if !strings.HasSuffix(t.Role, "rafter") {
			continue
		}
		deg := math.Asin(min(1, math.Abs(t.Place.X.Z))) * 180 / math.Pi
		s := fmt.Sprintf("%s (%.1f°)", slope(f.Units, deg), deg)
		if !said[s] {
			said[s] = true
			out = append(out, s)
		}
	}
	return strings.Join(out, ", ")
}
