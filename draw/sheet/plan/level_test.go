package plan

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pegwright/draw"
	"pegwright/draw/sheet/tidy"
	"pegwright/geom"
	"pegwright/geom/measure"
	"pegwright/geom/vec"
	"pegwright/samples"
	"pegwright/samples/trial"
)

// leaders returns how high on the paper the leader of every height of a sheet
// begins, by the words at its end.
func leaders(s *draw.Sheet) map[string]float64 {
	out := map[string]float64{}
	begin := math.NaN()
	for _, it := range s.Items {
		switch x := it.(type) {
		case *draw.Path:
			if x.Mark == "level" && len(x.Pts) == 4 {
				begin = x.Pts[0].Y
			}
		case *draw.Text:
			if words := strings.SplitN(x.S, "  ", 2); len(words) == 2 && !math.IsNaN(begin) {
				out[x.S] = begin
				begin = math.NaN()
			}
		}
	}
	return out
}

// half is half of what the figures of a unit are rounded to on a plan: 1/16 in or
// 1 mm.
func half(u measure.Units) float64 {
	if u == measure.Metric {
		return 0.5
	}
	return 25.4 / 32
}

// called are the timbers that a height may speak of: of a role, or of an id that
// begins so.
func called(f *geom.Frame, what string) []*geom.Timber {
	var out []*geom.Timber
	for _, t := range f.Timbers {
		if t.Role == what || t.ID == what || strings.HasPrefix(t.ID, what+"-") {
			out = append(out, t)
		}
	}
	return out
}

// The figures of a height are as far from those of another on the sheet as their
// leaders are, by a rule laid on the paper; and a top is the highest corner that is
// left of some timber of that name when its joints are cut, by the corners of its
// net solid. No words stand for two heights of a sheet.
func TestHeightsSayWhereTheirLeadersStand(t *testing.T) {
	for _, name := range everyFrame() {
		f := trial.Sample(t, name)
		told := 0
		for _, s := range Of(f).Sheets() {
			told += tryHeights(t, f, s)
		}
		if told == 0 {
			t.Errorf("%s: no heights", name)
		}
	}
}

// everyFrame is the names of all samples, and of the frames drawn by lot that are
// asked for.
func everyFrame() []string {
	out := samples.Names()
	for _, name := range trial.Drawn() {
		if !slices.Contains(out, name) {
			out = append(out, name)
		}
	}
	return out
}

// tryHeights checks the heights of a sheet, that no words stand for two of them,
// and returns how many there are.
func tryHeights(t *testing.T, f *geom.Frame, s *draw.Sheet) int {
	zero := math.NaN()
	at := map[string]string{}
	told := leaders(s)
	for words, y := range told {
		figures, what, _ := strings.Cut(words, "  ")
		z, err := tidy.ReadLength(figures, f.Units)
		if err != nil {
			t.Fatal(err)
		}
		off := y*scaleOn(s) - z
		if math.IsNaN(zero) {
			zero = off
		}
		if math.Abs(off-zero) > 2*half(f.Units)+1e-3 {
			t.Errorf("%s, %s: the leader of %q stands %.1f mm off", f.Title, s.ID, words, off-zero)
		}
		if top, ok := strings.CutPrefix(what, "top of "); ok && !someTop(f, called(f, top), z) {
			t.Errorf("%s, %s: no wood ends at %q", f.Title, s.ID, words)
		}
		if at[what] != "" {
			t.Errorf("%s, %s: %q is at %s and at %s", f.Title, s.ID, what, at[what], figures)
		}
		at[what] = figures
	}
	return len(told)
}

// someTop reports whether the wood of one of the timbers ends at a height over the
// datum.
func someTop(f *geom.Frame, list []*geom.Timber, over float64) bool {
	for _, x := range list {
		if math.Abs(topOfWood(x)-datumOf(f)-over) < half(f.Units)+1e-3 {
			return true
		}
	}
	return false
}

func topOfWood(x *geom.Timber) float64 {
	hi := math.Inf(-1)
	for _, c := range x.Net.Cells() {
		for _, v := range c.V {
			hi = max(hi, x.Place.Out(v).Z)
		}
	}
	return hi
}

// datumOf is the top of the highest sill, or the lowest end of a post.
func datumOf(f *geom.Frame) float64 {
	top, foot := math.Inf(-1), math.Inf(1)
	for _, x := range f.Timbers {
		switch x.Role {
		case "sill":
			top = max(top, topOfWood(x))
		case "post":
			foot = min(foot, x.Place.O.Z, x.Place.Out(vec.V{X: x.Length}).Z)
		}
	}
	if !math.IsInf(top, -1) {
		return top
	}
	return foot
}

// A height is told only of wood that shows there: walking along the line of sight
// just inside the edge.
func TestHeightsAreOfWoodThatShows(t *testing.T) {
	eachSurvey(t, func(t *testing.T, f *geom.Frame, s *survey) {
		p := &surveyPage{survey: s, f: f}
		if !p.measure() || len(p.levels) == 0 {
			return
		}
		var drawn []*geom.Timber
		for _, part := range s.whole {
			drawn = append(drawn, f.Timber(part.Owner))
		}
		w := tidy.NewWalker(drawn)
		w.Step = 0.8 // a bent is cut 1 mm before its posts
		for _, l := range p.levels {
			word, what, _ := strings.Cut(l.what, "of ")
			in := -1.0
			if !strings.HasPrefix(word, "top") && !strings.HasPrefix(word, "upper") {
				in = 1
				what = strings.TrimPrefix(what, "under ")
			}
			if word == l.what {
				what = strings.TrimPrefix(l.what, "under ")
			}
			ok := false
			for _, back := range []float64{0, 0.5, 2} {
				id := w.First(s.cam, vec.At(l.at.X-back, l.z+1.5*in), s.gone)
				ok = ok || id != "" && (f.Timber(id).Role == what || strings.HasPrefix(id, what))
			}
			if !ok {
				t.Errorf("%s, %s: not seen", p.levelText(l), s.id)
			}
		}
	})
}

// Rough faces lie nowhere exact, so under a rough stick the line is told that
// shoulders bear on: the top less the depth, plus what the description reduces,
// both as the samples have them.
func TestUndersidesAreBearingLines(t *testing.T) {
	for _, c := range []struct{ sample, id, words string }{
		{"apiary-store", "bent-1", `5'-1 1/2"  bearing of tie`},             // top 5'-8", 7 deep, 1/2 off
		{"apiary-store", "bent-1", `6'-2 1/2"  bearing of plate`},           // eave 6'-8", 6 deep
		{"cart-barn", "bent-1", `9'-1 1/2"  bearing of tie`},                // top 9'-10", 9 deep
		{"cart-barn", "bent-2", `4'-4"  bearing of lean-to-plate-north`},    // top 4'-11 1/2", 8 deep
		{"fair-shelter", "bent-1", "2612  bearing of plate"},                // eave 2800, 200 deep, 12 off
		{"footbridge", "view-from-west", `5'-0 1/2"  bearing of cap-west`},  // z 74 over sills at 6, 8 deep
		{"footbridge", "view-from-west", `5'-7"  bearing of bearer`},        // z 80 1/2, 8 deep
		{"footbridge", "view-from-south", `6'-2 1/2"  top of bearer-south`}, // z 80 1/2
		{"cart-barn", "section", `4'-11 1/2"  top of lean-to-plate-north`},  // not the plates at the eave
		{"apiary-store", "bent-1", `0"  top of cross sill`},                 // the datum
	} {
		if !strings.Contains(tidy.TextsOn(Of(trial.Sample(t, c.sample)).Sheets(), c.id), "\n"+c.words+"\n") {
			t.Errorf("%s, %s: no %q", c.sample, c.id, c.words)
		}
	}
}
