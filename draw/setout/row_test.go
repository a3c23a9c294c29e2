package setout_test

import (
	"math"
	"testing"

	"pegwright/draw/setout"
	"pegwright/geom/vec"
	"pegwright/samples/trial"
)

// Three beams of 100 mm, the last with its reference face to the east, stand 1000 and
// 1500 apart: by hand, their west faces are at 0, 1000 and 2600 - 100. Beams that are
// no joists are set out by their reference faces, 0, 1000 and 2600.
func TestRowsAreTakenBetweenLikeFaces(t *testing.T) {
	for role, want := range map[string][]float64{"joist": {0, 1000, 2500}, "beam": {0, 1000, 2600}} {
		f := trial.Frame(t, "row", `
frame: Row
units: mm
timbers:
  bar-1: {role: `+role+`, section: 100 x 150, from: [0, 0, 500], to: [0, 3000, 500], faces: [top, west]}
  bar-2: {role: `+role+`, section: 100 x 150, from: [1000, 0, 500], to: [1000, 3000, 500], faces: [top, west]}
  bar-3: {role: `+role+`, section: 100 x 150, from: [2600, 0, 500], to: [2600, 3000, 500], faces: [top, east]}
  along: {role: `+role+`, section: 100 x 150, from: [0, 4000, 500], to: [3000, 4000, 500], faces: [top, south]}
`)
		rows := setout.Rows(f.Timbers, vec.V{X: 1})
		if len(rows) != 1 || len(rows[0].At) != 3 || rows[0].Name != "bars" {
			t.Fatalf("%s: %+v", role, rows)
		}
		for i, x := range rows[0].At {
			if math.Abs(x-want[i]) > 1e-6 {
				t.Errorf("%s %d at %.1f, by hand %.1f", role, i+1, x, want[i])
			}
		}
		// From a line at -600 that is not at the row's own stick; not to one that is.
		sum := 0.0
		for _, d := range rows[0].Chain([]setout.Line{{Name: "1", At: -600}, {Name: "2", At: 2600}}) {
			sum += d.To - d.From
		}
		if end := want[2]; math.Abs(sum-(end+600)) > 1e-6 {
			t.Errorf("%s: the chain is %.1f long, by hand %.1f", role, sum, end+600)
		}
	}
}
