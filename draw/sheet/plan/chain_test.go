package plan

import (
	"math"
	"strings"
	"testing"

	"pegwright/draw/setout"
	"pegwright/draw/sheet/tidy"
	"pegwright/geom"
	"pegwright/geom/vec"
	"pegwright/samples/trial"
)

// Spacings by arithmetic on the descriptions: rafters of 4 in from the outside of
// one gable to that of the other, in spaces of 36 in at most; joists by their
// middles; sticks where their ends are written.
func TestChainsAreAsTheDescriptionHasThem(t *testing.T) {
	for _, c := range []struct{ sample, id, words string }{
		{"apiary-store", "plan-roof", `4 x 2'-5"  rafters`},      // (10' - 4") / 4
		{"cart-barn", "plan-roof", `4 x 2'-11"  rafters`},        // (12' - 4") / 4
		{"cart-barn", "plan-roof", `4 x 2'-6"  lean-to-rafters`}, // between posts, clear of them by 2"
		{"cider-hall", "plan-roof", `4 x 2'-11"  rafters`},
		{"reading-hut", "plan-roof", `3 x 2'-10 11/16"  rafters`}, // (9' - 4") / 3
		{"reading-hut", "plan-sills", `2 x 2'-0"  joists`},
		{"reading-hut", "plan-sills", `2'-4"`},                              // (9' - 2 x 24") / 2, less half of 4"
		{"footbridge", "view-from-above", `2 x 10'-0"  posts, sills, caps`}, // x 0, 120, 240
		{"footbridge", "view-from-above", `4'-0"  posts, bearers`},          // y 0 to 4'
		{"footbridge", "view-from-above", `5'-4"`},                          // x 48 to 112
		{"footbridge", "view-from-above", `6'-10"  deck-beams`},             // x 112 to 194
		{"footbridge", "view-from-above", `3'-10"`},                         // x 194 to 240
		{"footbridge", "view-from-above", `2'-0"  scarf of bearer-south`},
		{"footbridge", "view-from-above", `1'-9"`}, // x 120 to 153, less half of 24"
		{"footbridge", "view-from-above", `6'-9"`}, // x 0 to 93, the same
		{"footbridge", "view-from-south", `2 x 10'-0"  posts`},
		{"footbridge", "view-from-south", `9"`},    // bearers from x -9
		{"footbridge", "view-from-south", `1'-3"`}, // to x 255
		{"footbridge", "view-from-west", `1'-0"`},  // sills from y -1'
		{"cart-barn", "plan-sills", `6'-0"`},
		{"cart-barn", "plan-sills", `3. corner of the posts B1 to C2: 13'-5"`}, // √(6² + 12²) ft
	} {
		if !strings.Contains(tidy.TextsOn(Of(trial.Sample(t, c.sample)).Sheets(), c.id), "\n"+c.words+"\n") {
			t.Errorf("%s, %s: no %q", c.sample, c.id, c.words)
		}
	}
}

// Braces and struts that lie under a roof are no part of its chain.
func TestARoofsChainHasNoBraces(t *testing.T) {
	for sample, no := range map[string][]string{
		"fair-shelter": {"19", "4162"}, "cider-hall": {`3/4"`, `2'-10 1/4"`, `3'-2 1/4"`}, "cart-barn": {`3/4"`, `2'-10 1/4"`, `3'-2 1/4"`},
	} {
		words := tidy.TextsOn(Of(trial.Sample(t, sample)).Sheets(), "plan-roof")
		for _, w := range no {
			if strings.Contains(words, "\n"+w+"\n") {
				t.Errorf("%s: %q", sample, w)
			}
		}
	}
}

// Both ends of everything that a plan chains lie where the wood of a timber ends
// that is called so, by the corners of its net solid; at its reference arris; or on
// a grid line or a post's face.
func TestChainsEndAtWood(t *testing.T) {
	eachSurvey(t, func(t *testing.T, f *geom.Frame, s *survey) {
		if s.kind != "plan" {
			return
		}
		for _, c := range []struct {
			list []setout.Stretch
			axis vec.V
		}{{s.across, s.cam.Right}, {s.up, s.cam.Up}} {
			for _, d := range c.list {
				for i := range max(d.N, 1) + 1 {
					at := d.From + (d.To-d.From)*float64(i)/float64(max(d.N, 1))
					if d.What != "" && !someEnd(f, c.axis, at) {
						t.Errorf("%s: nothing ends at %.1f", d.What, at)
					}
				}
			}
		}
	})
}

// someEnd reports whether the wood of a timber ends at a place along an axis, or has
// its reference arris there.
func someEnd(f *geom.Frame, axis vec.V, at float64) bool {
	for _, x := range f.Timbers {
		lo, hi := x.Place.O.Dot(axis), x.Place.O.Dot(axis)
		if math.Abs(lo-at) < 0.1 {
			return true
		}
		for _, c := range x.Net.Cells() {
			for _, v := range c.V {
				d := x.Place.Out(v).Dot(axis)
				lo, hi = min(lo, d), max(hi, d)
			}
		}
		if math.Abs(lo-at) < 0.1 || math.Abs(hi-at) < 0.1 {
			return true
		}
	}
	return false
}
