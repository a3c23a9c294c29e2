package tidy

import (
	"strings"
	"testing"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/geom/vec"
)

// The rules for leaders are in force: each of three faults that are put on a
// sheet is found, and a sheet without them passes.
func TestLeaderRules(t *testing.T) {
	s, _ := block.New("letter", true, "plan", "x", block.Title{Frame: "f", Sheet: "s"})
	lead := func(x0, y0, x1, y1 float64) { s.Line(draw.Dimension, vec.At(x0, y0), vec.At(x1, y1)).Owner = "post" }
	lead(100, 100, 120, 110)
	dim.Stack(s, dim.Below, 90, []dim.Request{{From: vec.At(100, 90), To: vec.At(160, 90), Text: "60"}})
	if n, got := Leaders(s); n != 1 || got != nil {
		t.Errorf("a clear sheet, %d leaders: %q", n, got)
	}
	lead(100, 110, 120, 100)
	lead(150, 100, 150, 78)
	s.Text(vec.At(60, 100), 3, "word")
	lead(55, 101, 90, 101)
	_, faults := Leaders(s)
	got := strings.Join(faults, "\n")
	for _, want := range []string{"crosses another", "crosses a dimension", "runs through word"} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is not found: %s", want, got)
		}
	}
}
