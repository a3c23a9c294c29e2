package sheet

import (
	"math"
	"strings"
	"testing"

	"pegwright/draw"
	"pegwright/geom"
	"pegwright/geom/measure"
	"pegwright/samples/trial"
)

// flat returns all texts of the joint's sheets in one line, so that wrapped
// texts are whole.
func flat(f *geom.Frame, g Group) string {
	return strings.Join(strings.Fields(said(Joint(f, g, nil))), " ")
}

// Every joint is listed with its own main line on its own receiver, and every
// place along either timber is told with its figures.
func TestJointSheetTellsTheLayout(t *testing.T) {
	lines, places := 0, 0
	eachJoint(t, func(t *testing.T, f *geom.Frame, g Group) {
		text := strings.ReplaceAll(flat(f, g), "- ", "-")
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
	for _, g := range Groups(f) {
		j := g.First()
		want := ""
		switch {
		case j.Of.Role == "brace":
			want = "angle between the timbers 45.0° (12 in 12)"
		case j.Of.Role == "rafter" && j.Into.Role == "plate":
			want = "angle of the enterer to the entered face 36.9° (9 in 12)"
		}
		text := flat(f, g)
		if want == "" && j.Of.Role != "rafter" && (strings.Contains(text, "angle of") || strings.Contains(text, "angle between")) {
			t.Errorf("%s is square, but an angle is told", j.ID)
		}
		if !strings.Contains(text, want) {
			t.Errorf("%s: no %q", j.ID, want)
		}
	}
}

// Slopes by the tangent: tan 30° = 1/√3; tan 15° = 2 - √3; 3-4-5.
func TestSlope(t *testing.T) {
	for _, c := range []struct {
		u    measure.Units
		deg  float64
		want string
	}{
		{measure.Imperial, 45, "12 in 12"},
		{measure.Imperial, math.Atan2(3, 4) * 180 / math.Pi, "9 in 12"},
		{measure.Imperial, 30, "6.93 in 12"},
		{measure.Imperial, 75, "3.22 in 12 off square"},
		{measure.Metric, 30, "57.7 per 100"},
		{measure.Metric, 45, "100 per 100"},
		{measure.Metric, 75, "26.8 per 100 off square"},
	} {
		if got := slope(c.u, c.deg); got != c.want {
			t.Errorf("%v°: %q, want %q", c.deg, got, c.want)
		}
	}
}

// The cover tells the pitch and the eave that the store's description asks for,
// and a tie's height counted from the corner points of the blanks.
func TestCoverTellsTheLevels(t *testing.T) {
	f := trial.Sample(t, "apiary-store")
	text := strings.Join(strings.Fields(said(Cover(f, nil, []Entry{{N: 2, To: 2, Title: "x", ID: "x"}}))), " ")
	z := func(role string) (lo, hi float64) {
		lo, hi = math.Inf(1), math.Inf(-1)
		for _, b := range f.Timbers {
			for _, v := range b.Blank.V {
				if b.Role == role {
					lo, hi = min(lo, b.Place.Out(v).Z), max(hi, b.Place.Out(v).Z)
				}
			}
		}
		return lo, hi
	}
	_, sill := z("sill")
	under, top := z("tie")
	for _, s := range []string{"9 in 12 (36.9°)", "6'-8\" over the sills", f.Units.Format(top-sill) + " over the sills",
		f.Units.Format(under-sill) + " over the sills", "full-size templates, in templates.pdf, print check first"} {
		if !strings.Contains(text, s) {
			t.Errorf("the cover does not tell %q", s)
		}
	}
	for _, name := range drawnSamples() {
		f := trial.Sample(t, name)
		var kept []*geom.Timber
		for _, b := range f.Timbers {
			if !strings.HasSuffix(b.Role, "rafter") && b.Role != "plate" && b.Role != "tie" {
				kept = append(kept, b)
			}
		}
		f.Timbers = kept
		bare := said(Cover(f, nil, nil))
		for _, s := range []string{"roof pitch", "eave, top", "tie, top"} {
			if strings.Contains(bare, s) {
				t.Errorf("%s: %q of a frame that has none", name, s)
			}
		}
	}
}

// In the default sample no table of a joint runs on to a further sheet: the
// exploded view gives way first. A list of the joints served may.
func TestTablesEndBesideTheView(t *testing.T) {
	f := trial.Sample(t, "apiary-store")
	for _, g := range Groups(f) {
		for _, s := range Joint(f, g, nil) {
			if words := said([]*draw.Sheet{s}); strings.Contains(s.ID, "-served-") && (strings.Contains(words, "start end to") || strings.Contains(words, "angle")) {
				t.Errorf("%s: %s", s.ID, words)
			}
		}
	}
}
