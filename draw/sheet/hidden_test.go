package sheet

import (
	"math"
	"testing"

	"pegwright/draw"
	"pegwright/draw/sheet/tidy"
	"pegwright/samples/trial"
)

// drawnOf adds up, for each sheet, the millimetres of lines of a class.
func drawnOf(sheets []*draw.Sheet, class draw.Class) map[string]float64 {
	out := map[string]float64{}
	for _, s := range sheets {
		for _, it := range s.Items {
			if p, ok := it.(*draw.Path); ok && p.Class == class {
				for i := 1; i < len(p.Pts); i++ {
					out[s.ID] += p.Pts[i-1].Dist(p.Pts[i])
				}
			}
		}
	}
	return out
}

// Hidden lines come when they are asked for, on views of the frame, elevations,
// plans and exploded joints. What is visible stays as it is, to the millimetre,
// and the sheets keep their layout.
func TestHiddenLinesOnRequest(t *testing.T) {
	without := All(trial.Frame(t, "gate", trial.Gate), nil)
	with := All(trial.Frame(t, "gate", trial.Gate+"paper: {hidden lines: yes}\n"), nil)
	seen, seenToo := drawnOf(without, draw.Part), drawnOf(with, draw.Part)
	before, after := drawnOf(without, draw.Hidden), drawnOf(with, draw.Hidden)
	more := map[string]bool{}
	for _, s := range with {
		if math.Abs(seen[s.ID]-seenToo[s.ID]) > 1e-6 {
			t.Errorf("%s: %.3f mm of visible lines, %.3f with hidden ones", s.ID, seen[s.ID], seenToo[s.ID])
		}
		more[s.Kind] = more[s.Kind] || after[s.ID] > before[s.ID]+1
		if after[s.ID] < before[s.ID]-1e-6 {
			t.Errorf("%s: fewer hidden lines when asked for", s.ID)
		}
		tidy.Check(t, s)
	}
	for _, kind := range []string{"frame", "elevation", "plan", "joint"} {
		if !more[kind] {
			t.Errorf("no hidden lines on any sheet %s", kind)
		}
	}
}
