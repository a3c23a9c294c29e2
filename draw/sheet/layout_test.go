package sheet

import (
	"strings"
	"testing"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/legible"
	"pegwright/geom/vec"
)

// wide lines may not run through these sheets' words; joint and drawbore sheets
// are held apart by tests of their own.
func linesCount(s *draw.Sheet) bool {
	return s.Kind == "timber" || s.Kind == "plan" || s.Kind == "elevation" || s.Kind == "view" || s.Kind == "raise"
}

// layoutRules are what a drawing sheet must keep. Lettering after ISO 3098:
// 2.5 mm at least, fraction figures too.
func layoutRules(s *draw.Sheet) legible.Rules {
	at := func(x0, y0, x1, y1 float64) draw.Box {
		return draw.Box{Min: vec.P{X: x0, Y: y0}, Max: vec.P{X: x1, Y: y1}}
	}
	return legible.Rules{
		Items: at(block.Left-0.3, block.Other-0.3, s.W-block.Other+0.3, s.H-block.Other+5),
		Words: at(block.Left, block.Other-0.01, s.W-block.Other, s.H-block.Other+5),
		Least: dim.Small, Figures: dim.Small, Lines: linesCount(s), Together: true,
		Loose: map[string]bool{"title": true}, Apart: map[string]bool{"border": true, "key view": true},
	}
}

// layoutFaults tells what spoils the layout of a sheet.
func layoutFaults(s *draw.Sheet) []string { return layoutRules(s).Faults(s) }

// emptyFaults tells that a sheet with a drawing is left nearly empty, the key
// view apart. The rest of a list that goes on from the sheet before is as long
// as it is.
func emptyFaults(s *draw.Sheet) []string {
	switch s.Kind {
	case "timber", "plan", "elevation", "joint", "drawbore", "frame":
	default:
		return nil
	}
	if strings.Contains(s.ID, "-served-") {
		return nil
	}
	field := draw.Box{Min: vec.P{X: block.Left, Y: block.Other}, Max: vec.P{X: s.W - block.Other, Y: s.H - block.Other}}
	return legible.Sparse(s, field, map[string]bool{"border": true, "title": true, "key view": true, draw.LayerUnder: true})
}

func checkLayout(t *testing.T, s *draw.Sheet) {
	t.Helper()
	for _, f := range layoutFaults(s) {
		t.Error(f)
	}
}

// The rules are in force on a drawing sheet: an empty one passes, and one with
// a fault of each kind does not.
func TestLayoutRules(t *testing.T) {
	blank := func() *draw.Sheet {
		s, _ := block.New("letter", true, "timber", "x", block.Title{Frame: "f", Sheet: "s"})
		return s
	}
	if got := layoutFaults(blank()); got != nil {
		t.Errorf("an empty sheet: %q", got)
	}
	s := blank()
	s.Text(vec.P{X: 50, Y: 100}, 2, "one")
	s.Text(vec.P{X: 51, Y: 101}, 2.5, `6 1/2"`)
	s.Line(draw.Part, vec.P{X: 2, Y: 101}, vec.P{X: 90, Y: 102})
	dim.Group{Name: "lane", Height: 3.5}.Text(s, vec.P{X: 50, Y: 140}, "three")
	dim.Group{Name: "lane", Height: 2.5}.Text(s, vec.P{X: 150, Y: 160}, "four")
	got := strings.Join(layoutFaults(s), "\n")
	for _, want := range []string{"2.00 mm high", "overlap", "figures of", "item leaves", "runs through", "lane is lettered"} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is not found: %s", want, got)
		}
	}
	s.Items = s.Items[:0]
	s.Line(draw.Part, vec.P{X: 60, Y: 100}, vec.P{X: 90, Y: 120})
	if emptyFaults(s) == nil {
		t.Error("a nearly empty sheet passes")
	}
}
