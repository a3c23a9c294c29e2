package sheet

import (
	"math"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/view"
	"pegwright/geom"
	"pegwright/geom/vec"
)

// Apart returns the axonometric view of the frame pulled apart by
// sub-assemblies: bents apart along the building with what stands between them
// midway, plates and roof lifted, sills let down.
func Apart(f *geom.Frame) []*draw.Sheet {
	lines, bents := bentLines(f)
	if len(bents) < 2 {
		return nil
	}
	parts := frameParts(f)
	for i := range parts {
		parts[i].Shift = apartShift(f, f.Timber(parts[i].Owner), lines, bents)
	}
	pic := takePicture(view.IsometricFrom(-1, -1), parts, false)
	var out []*draw.Sheet
	names := pic.names(func(string) bool { return true })
	for n := 0; len(names) > 0; n++ {
		id, what := "frame-apart", "Frame, pulled apart"
		if n > 0 {
			id, what = "frame-apart-"+string(rune('1'+n)), "Frame, pulled apart, more names"
		}
		t := block.TitleFor(f, what, "bents, plates and roof drawn apart", "pictorial")
		t.Note = "isometric view (ISO 5456-3), parts drawn apart along straight lines; not for measuring"
		s, field := block.ForFrame(f, "frame", id, t)
		_, names = pic.onSheet(s, field, f, names)
		out = append(out, s)
	}
	return out
}

// apartShift returns how far a timber is carried: a bent by its number, what
// lies between bents by its place, all in the same measure, and up or down by
// the layer that it is in.
func apartShift(f *geom.Frame, t *geom.Timber, lines []gridLine, bents []int) vec.V {
	gap := 0.55 * (lines[len(lines)-1].at - lines[0].at) / float64(len(lines)-1)
	mid := t.Place.Out(vec.V{X: t.Length / 2, Y: t.Ideal[0] / 2, Z: t.Ideal[1] / 2})
	z, _ := datum(f)
	plate, _, ok := heights(f, "plate")
	high := math.Max(600, 0.35*(plate.lo-z))
	switch {
	case ok && mid.Z > plate.lo && t.Role == "plate":
		return vec.V{Z: high}
	case ok && mid.Z > plate.lo && t.Bent == 0:
		return vec.V{Z: 2.2 * high}
	case mid.Z < z:
		return vec.V{Z: -high}
	}
	place := float64(len(lines)-1) / 2
	for i, n := range bents {
		if t.Bent == n && math.Abs(t.Place.X.X) < 1e-6 {
			return vec.V{X: gap * (float64(i) - place)}
		}
	}
	share := (mid.X - lines[0].at) / (lines[len(lines)-1].at - lines[0].at) * float64(len(lines)-1)
	return vec.V{X: gap * (math.Floor(math.Max(0, math.Min(share, float64(len(lines)-1)-1e-6))) + 0.5 - place)}
}
