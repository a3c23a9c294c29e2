package sheet

import (
	"slices"

	"pegwright/draw/page"
	"pegwright/draw/setout"
	"pegwright/geom"
)

// levels returns the roof's pitch and the heights of plates and ties, where there
// are timbers of these roles. Heights are over the tops of the sills, or over
// the posts' feet where there are no sills.
func levels(f *geom.Frame) []page.Fact {
	var out []page.Fact
	say := func(name, value string) { out = append(out, page.Fact{Name: name, Value: value}) }
	if p := setout.Pitches(f); p != "" {
		say("roof pitch", p)
	}
	datum, from := setout.Datum(f)
	if from == "" {
		return out
	}
	first := len(out)
	if _, top, ok := setout.Heights(f, "plate"); ok {
		say("eave, plate top", over(f, top, datum))
	}
	if _, top, ok := setout.Heights(f, "ridge"); ok {
		say("ridge, top", over(f, top, datum))
	}
	if under, top, ok := setout.Heights(f, "tie"); ok {
		say("tie, top", over(f, top, datum))
		say("tie, underside", over(f, under, datum))
	}
	if len(out) > first {
		out = slices.Insert(out, first, page.Fact{Name: "heights", Value: from})
	}
	return out
}

// over writes heights over a datum.
func over(f *geom.Frame, b setout.Band, datum float64) string {
	lo, hi := f.Units.Format(b.Lo-datum), f.Units.Format(b.Hi-datum)
	if lo == hi {
		return hi
	}
	return lo + " to " + hi
}
