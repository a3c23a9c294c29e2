package tidy

import (
	"strings"
	"testing"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/geom/vec"
)

// The rules are in force on a drawing sheet: an empty one passes, and one with
// a fault of each kind does not.
func TestLayoutRules(t *testing.T) {
	blank := func() *draw.Sheet {
		s, _ := block.New("letter", true, "timber", "x", block.Title{Frame: "f", Sheet: "s"})
		return s
	}
	if got := Faults(blank()); got != nil {
		t.Errorf("an empty sheet: %q", got)
	}
	s := blank()
	s.Text(vec.P{X: 50, Y: 100}, 2, "one")
	s.Text(vec.P{X: 51, Y: 101}, 2.5, `6 1/2"`)
	s.Line(draw.Part, vec.P{X: 2, Y: 101}, vec.P{X: 90, Y: 102})
	dim.Group{Name: "lane", Height: 3.5}.Text(s, vec.P{X: 50, Y: 140}, "three")
	dim.Group{Name: "lane", Height: 2.5}.Text(s, vec.P{X: 150, Y: 160}, "four")
	got := strings.Join(Faults(s), "\n")
	for _, want := range []string{"2.00 mm high", "overlap", "figures of", "item leaves", "runs through", "lane is lettered"} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is not found: %s", want, got)
		}
	}
	s.Items = s.Items[:0]
	s.Line(draw.Part, vec.P{X: 60, Y: 100}, vec.P{X: 90, Y: 120})
	if Empty(s) == nil {
		t.Error("a nearly empty sheet passes")
	}
}
