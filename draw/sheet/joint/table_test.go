package joint

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pegwright/draw"
	"pegwright/draw/legible"
	"pegwright/draw/scene"
	"pegwright/geom"
	"pegwright/samples/trial"
)

// Every joint is listed with its own main line on its own receiver, and every
// place along either timber is told with its figures.
func TestJointSheetTellsTheLayout(t *testing.T) {
	lines, places := 0, 0
	eachJoint(t, func(t *testing.T, f *geom.Frame, g scene.Group) {
		text := strings.ReplaceAll(legible.Line(Sheets(f, g, nil)), "- ", "-")
		for _, j := range g.Joints {
			for _, l := range j.Lines {
				if l.Main && !strings.Contains(text, "J at "+f.Units.FormatJoint(l.X)) {
					t.Errorf("%s: main line at %s is not told", j.ID, f.Units.FormatJoint(l.X))
				}
				lines++
			}
			for _, p := range j.Places {
				if !strings.Contains(text, f.Units.FormatJoint(p.X)) || !strings.Contains(text, p.Label) {
					t.Errorf("%s: %s at %s is not told", j.ID, p.Label, f.Units.FormatJoint(p.X))
				}
				places++
			}
		}
	})
	if lines < 100 || places < 100 {
		t.Errorf("%d lines and %d places: the test says little", lines, places)
	}
}

// Angles known from the descriptions: the store's braces have equal legs, so
// they stand at 45°, and its roof is 9 in 12, the 3-4-5 triangle, 36.87°.
func TestJointSheetTellsTheAngle(t *testing.T) {
	f := trial.Sample(t, "apiary-store")
	for _, g := range scene.Groups(f) {
		j := g.First()
		want := ""
		switch {
		case j.Of.Role == "brace":
			want = "angle between the timbers 45.0° (12 in 12)"
		case j.Of.Role == "rafter" && j.Into.Role == "plate":
			want = "angle to the face that it enters 36.9° (9 in 12)"
		}
		text := legible.Line(Sheets(f, g, nil))
		if want == "" && j.Of.Role != "rafter" && (strings.Contains(text, "angle of") || strings.Contains(text, "angle between")) {
			t.Errorf("%s is square, but an angle is told", j.ID)
		}
		if !strings.Contains(text, want) {
			t.Errorf("%s: no %q", j.ID, want)
		}
	}
}

// In the default sample no table of a joint runs on to a further sheet: the
// exploded view gives way first. A list of the joints served may.
func TestTablesEndBesideTheView(t *testing.T) {
	f := trial.Sample(t, "apiary-store")
	for _, g := range scene.Groups(f) {
		for _, s := range Sheets(f, g, nil) {
			if words := legible.Words([]*draw.Sheet{s}); strings.Contains(s.ID, "-served-") && (strings.Contains(words, "start end to") || strings.Contains(words, "angle")) {
				t.Errorf("%s: %s", s.ID, words)
			}
		}
	}
}

// Every drawn joint of the default sample shows the draw at full size: two rings
// of the bore's own size, their middles as far apart as the offset.
func TestDrawAtFullSize(t *testing.T) {
	f := trial.Sample(t, "apiary-store")
	for _, g := range scene.Groups(f) {
		j := g.First()
		a, ok := apartOf(f, j)
		if !ok {
			continue
		}
		var rings []*draw.Circle
		words := ""
		for _, s := range halves(f, g) {
			words += legible.Words([]*draw.Sheet{s})
			for _, it := range s.Items {
				if c, ok := it.(*draw.Circle); ok && c.R == a.peg.Bore/2 {
					rings = append(rings, c)
				}
			}
		}
		if len(rings) != 2 || !strings.Contains(words, "The draw, full size") {
			t.Errorf("%s: %d rings", j.ID, len(rings))
			continue
		}
		if e := rings[0].C.Dist(rings[1].C); math.Abs(e-a.peg.Offset) > 1e-6 {
			t.Errorf("%s: %.3f mm apart, want %.3f", j.ID, e, a.peg.Offset)
		}
	}
}

// A peg that is sawn flush is nowhere said to stand out of the timber.
func TestFlushPegs(t *testing.T) {
	const flush = "drive, then saw flush on both faces before the next timber stands there"
	n := 0
	for _, name := range trial.Drawn() {
		f := trial.Sample(t, name)
		for _, j := range f.Joints {
			for i := range j.Pegs {
				j.Pegs[i].Flush = true
			}
		}
		for _, g := range scene.Groups(f) {
			if pegs := g.First().Pegs; !slices.ContainsFunc(pegs, func(p geom.Peg) bool { return p.Exit != 0 }) {
				continue
			}
			n++
			if text := legible.Line(Sheets(f, g, nil)); !strings.Contains(text, flush) || strings.Contains(text, "proud") {
				t.Errorf("%s: %s", g.First().ID, text)
			}
		}
	}
	if n < 20 {
		t.Errorf("only %d joints have a peg that goes through", n)
	}
}
