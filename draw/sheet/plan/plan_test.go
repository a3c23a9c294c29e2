package plan

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pegwright/draw"
	"pegwright/draw/setout"
	"pegwright/draw/sheet/tidy"
	"pegwright/geom"
	"pegwright/geom/measure"
	"pegwright/geom/vec"
	"pegwright/samples"
	"pegwright/samples/trial"
)

// What the descriptions of the samples ask for stands on the sheets: span, bays
// and their sum between the grid lines, the eave's height, the pitch.
func TestPlansSayWhatTheDescriptionAsksFor(t *testing.T) {
	for name, c := range map[string]struct {
		span, eave, run, rise string
		along                 []string
	}{
		"apiary-store":    {`8'-0"`, `6'-8"`, "12", "9", []string{`10'-0"`}},
		"boat-shelter":    {`12'-0"`, `8'-6"`, "12", "8", []string{`10'-0"`, `20'-0"`}},
		"bicycle-shelter": {"3000", "2300", "100", "70", []string{"4200"}}, // tan 35° = 0.7002
	} {
		sheets := Of(trial.Sample(t, name)).Sheets()
		for _, want := range []struct{ id, text string }{
			{"bent-1", c.span}, {"bent-1", c.eave + "  top of plate"}, {"bent-1", c.run}, {"bent-1", c.rise},
			{"section", c.span}, {"section", c.eave + "  top of plate"}, {"plan-sills", c.span}, {"plan-plates", c.span}, {"plan-roof", c.span},
			{"wall-north", c.eave + "  top of plate"},
		} {
			if !strings.Contains(tidy.TextsOn(sheets, want.id), "\n"+want.text+"\n") {
				t.Errorf("%s: %s does not say %q", name, want.id, want.text)
			}
		}
		for _, id := range []string{"wall-south", "wall-north", "plan-sills", "plan-plates", "plan-roof"} {
			for _, along := range c.along {
				if !strings.Contains(tidy.TextsOn(sheets, id), "\n"+along+"\n") {
					t.Errorf("%s: %s does not say %q", name, id, along)
				}
			}
		}
	}
}

// eachSurvey runs a check on every survey of the samples that are drawn in
// tests.
func eachSurvey(t *testing.T, check func(t *testing.T, f *geom.Frame, s *survey)) {
	for _, name := range trial.Drawn() {
		f := trial.Sample(t, name)
		seen := 0
		for _, s := range surveys(f) {
			if p := (&surveyPage{survey: s, f: f}); !p.measure() {
				continue // no timber stands there, and no sheet is drawn
			}
			seen++
			t.Run(name+"/"+s.id, func(t *testing.T) { check(t, f, s) })
		}
		if seen < 4 {
			t.Errorf("%s: only %d views of the building", name, seen)
		}
	}
}

// Every dimension measures on paper, times the scale, what its figures say when
// they are read back, within half of 1/16 in or 1 mm.
func TestSurveyDimensionsAreTrue(t *testing.T) {
	eachSurvey(t, func(t *testing.T, f *geom.Frame, s *survey) {
		p := &surveyPage{survey: s, f: f}
		if !p.measure() {
			t.Fatal("nothing to see")
		}
		x, y := p.requests()
		tol := 25.4 / 32
		if f.Units == measure.Metric {
			tol = 0.5
		}
		for i, r := range append(x, y...) {
			d := r.To.Sub(r.From)
			l := math.Abs(d.X)
			if i >= len(x) {
				l = math.Abs(d.Y)
			}
			text := r.Text
			var n float64 = 1
			if many, each, ok := strings.Cut(text, " x "); ok {
				fmt.Sscan(many, &n)
				text = each
			}
			if v, err := tidy.ReadLength(text, f.Units); err != nil || math.Abs(v-l/p.k/n) > tol+1e-6 {
				t.Errorf("%s measures %.2f (%v)", r.Text, l/p.k, err)
			}
		}
	})
}

// Nothing but what lies between the cutting planes is drawn, and nothing that
// lies there is left out: volumes before and after agree with clipping every
// cell by the planes.
func TestSawnKeepsTheSlab(t *testing.T) {
	eachSurvey(t, func(t *testing.T, f *geom.Frame, s *survey) {
		want, got := 0.0, 0.0
		for _, part := range s.whole {
			for _, c := range part.Body.Cells() {
				for _, pl := range s.cuts {
					if c = c.Clip(pl, ""); c.Empty() {
						break
					}
				}
				if !c.Empty() {
					want += c.Volume()
				}
			}
		}
		for _, part := range setout.Sawn(s.whole, s.cuts...) {
			got += part.Body.Volume()
		}
		if math.Abs(got-want) > 1e-6*want+1 {
			t.Errorf("%.0f mm3, clipped %.0f", got, want)
		}
	})
}

// Both ends of every diagonal of a bent or a wall lie on the reference arris of
// the timber that is named, where there is wood, and both diagonals of a pair
// are told apart; a plan's agree with the root of the sum of the squares.
func TestDiagonalsReachArrises(t *testing.T) {
	eachSurvey(t, func(t *testing.T, f *geom.Frame, s *survey) {
		if s.kind == "plan" {
			tryPlanDiagonals(t, s)
			return
		}
		for _, x := range s.diagonals {
			for name, p := range map[string]vec.V{x.NameA: x.A, x.NameB: x.B} {
				id, _, _ := strings.Cut(name, ",")
				on := f.Timber(id)
				if on == nil {
					t.Fatalf("no timber in %q", name)
				}
				q := on.Place.In(p)
				if math.Hypot(q.Y, q.Z) > 1e-6 || !on.Net.Contains(vec.V{X: q.X, Y: 0.5, Z: 0.5}, 1) {
					t.Errorf("%s is not on the arris: %v", name, q)
				}
			}
			if x.NameA == x.NameB || x.Length() < 100 {
				t.Errorf("diagonal %v", x)
			}
		}
	})
}

// tryPlanDiagonals compares each with the root of the sum of the squares, between the
// lines that its two corners are named by.
func tryPlanDiagonals(t *testing.T, s *survey) {
	at := map[string]float64{}
	for _, l := range append(slices.Clone(s.grid), s.side...) {
		at[l.Name] = l.At
	}
	for _, x := range s.diagonals {
		a, b := x.NameA[strings.LastIndex(x.NameA, " ")+1:], x.NameB
		want := math.Hypot(at[a[:1]]-at[b[:1]], at[a[1:]]-at[b[1:]])
		if math.Abs(x.Length()-want) > 1e-6 || want < 100 {
			t.Errorf("%s to %s: %.3f, by Pythagoras %.3f", a, b, x.Length(), want)
		}
	}
}

// A crew checks every bent on the ground and every bay of a wall with two tapes
// (common practice, no source): each has its two diagonals, which agree where the
// points lie at one height.
func TestEveryBentAndWallHasDiagonals(t *testing.T) {
	for _, name := range samples.Names() {
		f := trial.Sample(t, name)
		for _, s := range surveys(f) {
			bays := 0
			switch {
			case strings.HasPrefix(s.id, "bent-"):
				bays = 1
			case strings.HasPrefix(s.id, "wall-"):
				for _, x := range s.named {
					if x.Role == "post" && x.Bent > 0 {
						bays++
					}
				}
				bays--
			default:
				continue
			}
			if len(s.diagonals) != 2*bays {
				t.Fatalf("%s, %s: %d diagonals for %d bays", name, s.id, len(s.diagonals), bays)
			}
			for i := 0; i+1 < len(s.diagonals); i += 2 {
				a, b := s.diagonals[i], s.diagonals[i+1]
				if math.Abs(a.A.Z-b.A.Z) < 1e-6 && math.Abs(a.B.Z-b.B.Z) < 1e-6 && math.Abs(a.Length()-b.Length()) > 1 {
					t.Errorf("%s, %s: %s %.1f and %s %.1f do not agree", name, s.id, a.NameA, a.Length(), b.NameA, b.Length())
				}
			}
		}
	}
}

// Every bent has a place in exactly one title, and the sheet's two triangles'
// legs are as the pitch has them.
func TestBentsAndSlopes(t *testing.T) {
	for _, name := range trial.Drawn() {
		f := trial.Sample(t, name)
		_, numbers := setout.BentLines(f)
		count := map[string]int{}
		for _, s := range Of(f).Sheets() {
			if title, ok := strings.CutPrefix(s.Title, "Bent"); ok && !strings.Contains(title, "names,") {
				title, _, _ = strings.Cut(strings.TrimPrefix(title, "s"), ":")
				for _, n := range strings.Split(title, ",") {
					count[strings.TrimSpace(n)]++
				}
			}
			for _, it := range s.Items {
				if it.Head().Mark != "slope" {
					continue
				}
				p := it.(*draw.Path).Pts
				rise, run := math.Abs(p[1].Y-p[0].Y), math.Abs(p[2].X-p[0].X)
				ok := false
				for _, r := range f.Timbers {
					if r.Role == "rafter" {
						ok = ok || math.Abs(rise/run-math.Abs(r.Place.X.Z)/math.Hypot(r.Place.X.X, r.Place.X.Y)) < 1e-6
					}
				}
				if !ok {
					t.Errorf("%s: slope %.3f is no rafter's", s.ID, rise/run)
				}
			}
		}
		for _, n := range numbers {
			if count[fmt.Sprint(n)] != 1 {
				t.Errorf("%s: bent %d stands in %d titles", name, n, count[fmt.Sprint(n)])
			}
		}
	}
}
