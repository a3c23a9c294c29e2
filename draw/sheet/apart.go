package sheet

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/naming"
	"pegwright/draw/scene"
	"pegwright/draw/setout"
	"pegwright/draw/view"
	"pegwright/geom"
	"pegwright/geom/vec"
)

// Apart returns the axonometric view of the frame pulled apart by
// sub-assemblies: bents apart along the building with what stands between them
// midway, plates and roof lifted, sills let down. Where one sheet cannot hold the
// names, it stands there without them, and parts of some bays follow.
func Apart(f *geom.Frame) []*draw.Sheet {
	lines, bents := setout.BentLines(f)
	if len(bents) < 2 {
		return nil
	}
	whole := apartPicture(f, scene.FrameParts(f), lines, bents)
	if out := apartSheets(f, whole, "", "", whole.all()); len(out) == 1 || len(lines) < 3 {
		return out
	}
	over := apartSheets(f, whole, "", ", overview", nil)
	for n := max(2, min(len(f.Timbers)/mostNamed, len(lines)-1)); ; n++ {
		out, last := over[:1:1], n >= len(lines)-1
		for _, x := range setout.InBays(lines, cutBeyond, n) {
			i, j := slices.Index(lines, x.First), slices.Index(lines, x.Last)+1
			pic := apartPicture(f, partsIn(f, x), lines[i:j], bents[i:j])
			id, title := fmt.Sprintf("-part-%d", x.N), fmt.Sprintf(", part %d of %d", x.N, x.Of)
			for _, s := range apartSheets(f, pic, id, title, pic.all()) {
				s.Title += ", " + x.Between("bents")
				out = append(out, s)
			}
			if len(out) > 1+x.N && !last {
				break
			}
		}
		if len(out) == 1+n || last {
			return out
		}
	}
}

// apartPicture takes the picture of parts of the frame, which stand at some of its
// bents, pulled apart.
func apartPicture(f *geom.Frame, parts []view.Part, lines []setout.Line, bents []int) picture {
	for i := range parts {
		parts[i].Shift = apartShift(f, f.Timber(parts[i].Owner), lines, bents)
	}
	return takePicture(view.IsometricFrom(-1, -1), parts, false)
}

// apartSheets draws a picture of the frame pulled apart with names, on a further
// sheet where more than one or two find no room. These are told in the title block.
func apartSheets(f *geom.Frame, pic picture, id, title string, names []string) []*draw.Sheet {
	t := block.TitleFor(f, "Frame, pulled apart"+title, "bents, plates and roof drawn apart", "pictorial")
	t.Note = "isometric view (ISO 5456-3), parts drawn apart along straight lines; not for measuring"
	if id != "" {
		t.Note = "isometric view (ISO 5456-3), drawn apart, timbers that run on cut off; not for measuring"
	}
	var out []*draw.Sheet
	for n := 1; n == 1 || len(names) > 0; n++ {
		key := "frame-apart" + id
		if n > 1 {
			key = fmt.Sprintf("%s-%d", key, n)
		}
		s, field := block.ForFrame(f, "frame", key, t)
		blank := len(s.Items)
		_, left := pic.onSheet(s, field, f, names)
		if len(left) > 0 && len(left) <= mostTold {
			told := t
			told.Note = "isometric view (ISO 5456-3), not for measuring; no room to name " + strings.Join(left, ", ")
			drawn := s.Items[blank:] // which the title block does not touch
			s, _ = block.ForFrame(f, "frame", key, told)
			s.Add(drawn...)
			left = nil
		}
		out, names = append(out, s), left
		t.Sheet = "Frame, pulled apart" + title + naming.More
	}
	return out
}

// mostTold is how many timbers the title block of a picture may tell.
const mostTold = 2

// apartShift returns how far a timber is carried: a bent by its number, what
// lies between bents by its place, all in the same measure, and up or down by
// the layer that it is in.
func apartShift(f *geom.Frame, t *geom.Timber, lines []setout.Line, bents []int) vec.V {
	gap := 0.55 * (lines[len(lines)-1].At - lines[0].At) / float64(len(lines)-1)
	mid := t.Place.Out(vec.V{X: t.Length / 2, Y: t.Ideal[0] / 2, Z: t.Ideal[1] / 2})
	z, _ := setout.Datum(f)
	plate, _, ok := setout.Heights(f, "plate")
	high := math.Max(600, 0.35*(plate.Lo-z))
	switch {
	case ok && mid.Z > plate.Lo && t.Role == "plate":
		return vec.V{Z: high}
	case ok && mid.Z > plate.Lo && t.Bent == 0:
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
	share := (mid.X - lines[0].At) / (lines[len(lines)-1].At - lines[0].At) * float64(len(lines)-1)
	return vec.V{X: gap * (math.Floor(math.Max(0, math.Min(share, float64(len(lines)-1)-1e-6))) + 0.5 - place)}
}
