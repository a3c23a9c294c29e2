package peg

import (
	"math"
	"testing"
)

// The caps are the house rule (common practice, no source): softwood warns
// above D/5 and refuses above D/4, hardwood refuses above D/8. 3/16 in through a
// 1 in bore in softwood is usual.
func TestJudge(t *testing.T) {
	for _, c := range []struct {
		offset, bore float64
		hard         bool
		want         Verdict
	}{
		{3.0 / 16, 1, false, Usual}, {0.2, 1, false, Usual}, {0.201, 1, false, Large},
		{0.25, 1, false, Large}, {0.251, 1, false, Refused}, {3.0 / 16, 0.75, false, Large},
		{1.0 / 4, 0.75, false, Refused}, {0.125, 1, true, Usual}, {0.126, 1, true, Refused},
		{-0.3, 1, false, Refused}, {math.NaN(), 1, false, Refused},
	} {
		if got := Judge(c.offset*inch, c.bore*inch, c.hard); got != c.want {
			t.Errorf("%g in %g, hard %v: %v, want %v", c.offset, c.bore, c.hard, got, c.want)
		}
	}
}

// Offsets found with pencil and paper: steps of 1/16 in, 1/32 in to be left,
// green to 12 %, dry peg.
//
// White pine, square, a 1.5, D 1: loss 1.0 x 0.0366 = 0.037; 1/16 leaves 0.026,
// short of 0.031; 1/8 leaves 0.088.
// White oak, same: loss 1.0 x 0.063; 1/8 leaves 0.062, and D/8 is 1/8.
// White oak, a 2.5: loss 2.0 x 0.063 = 0.126; 3/16 would serve but is above D/8.
func TestAutoSquare(t *testing.T) {
	for _, c := range []struct {
		name   string
		hard   bool
		a      float64
		want   float64
		reason Reason
		needed float64
	}{
		{"eastern white pine", false, 1.5, 1.0 / 8, Serves, 1.0 / 8},
		{"white oak", true, 1.5, 1.0 / 8, Serves, 1.0 / 8},
		{"white oak", true, 2.5, 0, OverHardwood, 3.0 / 16},
		{"Douglas-fir", false, 6.5, 0, OverSoftwood, 5.0 / 16}, // loss 6 x 0.0456 = 0.274
	} {
		s := Square{Bearing: c.a * inch, Bore: inch, Peg: inch}
		got := s.Auto(c.hard, StepImperial, LeftImperial, Drying(woodOf(t, c.name), 80, 12), Shrunk{})
		if got.Reason != c.reason || (got.Verdict == Refused) != (c.reason != Serves) {
			t.Errorf("%s, a %g: %v, %v", c.name, c.a, got.Reason, got.Verdict)
		}
		approx(t, c.name+" offset", got.Offset/inch, c.want, 1e-12)
		approx(t, c.name+" needed", got.Needed/inch, c.needed, 1e-12)
	}
}

// A brace of green pine at 45° through a 3/4 in bore: along the brace 1/8 in
// leaves 0.024 in at the nose, short of 1/32, so 3/16 in is chosen, which is
// above D/5; square to the shoulder the nose is never held.
func TestAutoBrace(t *testing.T) {
	pine := Drying(woodOf(t, "eastern white pine"), 100, 12)
	b := Brace{Way: AlongBrace, Angle: math.Pi / 4, Bearing: 1.5 * inch, Along: 2 * inch}
	got := b.Auto(0.75*inch, false, StepImperial, LeftImperial, pine, pine)
	approx(t, "offset", got.Offset/inch, 3.0/16, 1e-12)
	if got.Verdict != Large || got.Reason != Serves {
		t.Errorf("along: %v, %v", got.Verdict, got.Reason)
	}
	b.Way = SquareToShoulder
	if got := b.Auto(inch, false, StepImperial, LeftImperial, pine, pine); got.Reason != NeverHolds || got.Offset != 0 {
		t.Errorf("square to the shoulder: %+v", got)
	}
	// Dry timber does not move: one step is enough.
	got = b.Auto(inch, false, StepMetric, 0, Shrunk{}, Shrunk{})
	approx(t, "dry", got.Offset, 1, 0)
}

func TestAutoRefusesBadInput(t *testing.T) {
	for _, w := range []Wish{{}, {Bore: -1, Step: 1}, {Bore: 20, Step: math.NaN()}, {Bore: 20, Step: 1}} {
		if got := Auto(w); got.Reason != BadInput || got.Verdict != Refused {
			t.Errorf("%+v", got)
		}
	}
	nan := func(float64) float64 { return math.NaN() }
	if got := Auto(Wish{Bore: 20, Step: 1, Left: nan}); got.Reason != NeverHolds {
		t.Errorf("not a number: %+v", got)
	}
}
