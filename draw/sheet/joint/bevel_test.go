package joint

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"pegwright/draw"
	"pegwright/draw/scene"
	"pegwright/geom/vec"
	"pegwright/samples/trial"
)

// drawnAngles returns the angles that a sheet's arcs show, measured on paper
// between the tips of their arrowheads (law of cosines), by the texts that were
// set with them.
func drawnAngles(t *testing.T, s *draw.Sheet) map[string]float64 {
	t.Helper()
	out := map[string]float64{}
	for i, it := range s.Items {
		a, ok := it.(*draw.Arc)
		if !ok || a.Class != draw.Dimension {
			continue
		}
		var tips [2]vec.P
		for k := range tips {
			head, ok := s.Items[i+1+k].(*draw.Path)
			if !ok || !head.Filled || math.Abs(head.Pts[0].Sub(a.C).Len()-a.R) > 1e-6 {
				t.Fatalf("%s: an arc without two arrowheads on it", s.ID)
			}
			tips[k] = head.Pts[0]
		}
		d := tips[0].Sub(tips[1]).Len()
		out[s.Items[i+3].(*draw.Text).S] = math.Acos(1-d*d/(2*a.R*a.R)) * 180 / math.Pi
	}
	return out
}

// Every angle drawn on a sheet of the halves measures what is printed at it, to
// half of the last place, and nearly every bevel in a table is drawn.
func TestBevelsAreDrawnAsPrinted(t *testing.T) {
	told, drawn := 0, 0
	for _, name := range trial.Drawn() {
		f := trial.Sample(t, name)
		for _, g := range scene.Groups(f) {
			j := g.First()
			told += len(bevelsAt(j, j.Of)) + len(bevelsAt(j, j.Into))
			for _, s := range halves(f, g) {
				for text, deg := range drawnAngles(t, s) {
					drawn++
					want, err := strconv.ParseFloat(strings.TrimSuffix(text, "°"), 64)
					if err != nil || math.Abs(want-deg) > 0.05+1e-6 {
						t.Errorf("%s: %s is drawn as %.2f°", s.ID, text, deg)
					}
				}
			}
		}
	}
	t.Logf("%d of %d bevels drawn", drawn, told)
	if drawn == 0 || 10*drawn < 7*told {
		t.Errorf("only %d of %d bevels drawn", drawn, told)
	}
}

// A brace of equal legs leans at 45°, a rafter of 9 in 12 at 36.9° (arc tangent
// of 0.75), and two such rafters that meet in a bridle cross at twice that, 73.7°.
func TestBevelsOfTheDefaultSample(t *testing.T) {
	f := trial.Sample(t, "apiary-store")
	for id, want := range map[string]string{
		"brace-1-south-into-tie-1":         "45°",
		"rafter-1-south-on-plate-south":    "36.9°",
		"rafter-1-north-to-rafter-1-south": "73.7°",
	} {
		found := false
		for _, g := range scene.Groups(f) {
			if g.First().ID != id {
				continue
			}
			for _, s := range halves(f, g) {
				_, ok := drawnAngles(t, s)[want]
				found = found || ok
			}
		}
		if !found {
			t.Errorf("%s: no %s drawn", id, want)
		}
	}
}
