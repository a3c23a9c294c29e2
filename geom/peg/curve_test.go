package peg

import (
	"math"
	"math/rand"
	"testing"
)

// Eastern white pine, 6.1 % tangential, a 1.5 in, bore 3/4 in, offset 1/32 in,
// a dry peg: left = 0.03125 - 1.125 x 0.061 (30 - M)/30 in. By hand it is used
// up at M = 30 - 30 x 0.03125/(1.125 x 0.061) = 16.34 %, and at 12 % it is
// -0.00993 in. Radial, 2.1 %: 0.01708 in is left.
func TestCurveOfASquareJoint(t *testing.T) {
	pine := woodOf(t, "eastern white pine")
	s := Square{Offset: inch / 32, Bearing: 1.5 * inch, Bore: 0.75 * inch, Peg: 0.75 * inch}
	c := CurveOf(30, 12, 9, func(mc float64) []Bound { return s.Bounds(Drying(pine, 100, mc), Shrunk{}) })
	if len(c.Points) != 10 || !c.Goes {
		t.Fatalf("%d points, goes slack %v", len(c.Points), c.Goes)
	}
	first, last := c.Points[0], c.Points[9]
	approx(t, "wettest", first.Moisture, 30, 0)
	approx(t, "green", first.Worst, inch/32, 1e-9)
	approx(t, "driest", last.Moisture, 12, 1e-12)
	approx(t, "tangential", last.Worst/inch, -0.00993, 1e-5)
	approx(t, "radial", last.Best/inch, 0.01708, 2e-5)
	approx(t, "slack", c.Slack, 16.34, 0.01)
	for i := 1; i < len(c.Points); i++ {
		if c.Points[i].Worst > c.Points[i-1].Worst || c.Points[i].Best < c.Points[i].Worst {
			t.Errorf("point %d rises or crosses: %+v", i, c.Points[i])
		}
	}
	s.Offset = inch / 8
	if CurveOf(30, 12, 9, func(mc float64) []Bound { return s.Bounds(Drying(pine, 100, mc), Shrunk{}) }).Goes {
		t.Error("1/8 in goes slack")
	}
	if len(CurveOf(12, 12, 9, nil).Points) != 0 || len(CurveOf(30, 12, 0, nil).Points) != 0 {
		t.Error("a curve of nothing")
	}
}

// A joint that is slack from the start says so at its wettest.
func TestCurveSlackFromTheStart(t *testing.T) {
	c := CurveOf(28, 12, 4, func(float64) []Bound { return []Bound{{Left: Left{Shoulder: -1, Nose: math.Inf(1)}}} })
	if !c.Goes || c.Slack != 28 {
		t.Errorf("%v at %g", c.Goes, c.Slack)
	}
}

// What the trade expects of any rule: wood that shrinks more, or a hole farther
// from the shoulder, never asks for a smaller offset. (Of braces this holds from
// 45° up, where the nose asks for most: a brace's own shrinkage draws its hole
// toward the shoulder.)
func TestAutoSensitivity(t *testing.T) {
	rng := rand.New(rand.NewSource(13))
	found := 0
	for range 3000 {
		s := Square{Bearing: (1 + rng.Float64()*2) * inch, Bore: (0.75 + 0.5*rng.Float64()) * inch}
		s.Peg = s.Bore
		dry := Shrunk{Tangential: rng.Float64() * 0.07}
		dry.Radial = dry.Tangential * rng.Float64()
		wet := Shrunk{dry.Tangential * 1.3, dry.Radial * 1.3}
		far := s
		far.Bearing *= 1.2
		b := Brace{Angle: math.Pi/4 + rng.Float64()*0.6, Bearing: s.Bearing, Along: (1.5 + rng.Float64()) * inch}
		away := b
		away.Along *= 1.2
		step, need := StepImperial, LeftImperial
		for name, pair := range map[string][2]Choice{
			"more shrinkage":        {s.Auto(false, step, need, dry, Shrunk{}), s.Auto(false, step, need, wet, Shrunk{})},
			"farther from shoulder": {s.Auto(false, step, need, dry, Shrunk{}), far.Auto(false, step, need, dry, Shrunk{})},
			"brace, more shrinkage": {b.Auto(s.Bore, false, step, need, Shrunk{}, dry), b.Auto(s.Bore, false, step, need, Shrunk{}, wet)},
			"its receiver's":        {b.Auto(s.Bore, false, step, need, dry, Shrunk{}), b.Auto(s.Bore, false, step, need, wet, Shrunk{})},
			"brace, farther along":  {b.Auto(s.Bore, false, step, need, Shrunk{}, dry), away.Auto(s.Bore, false, step, need, Shrunk{}, dry)},
		} {
			less, more := pair[0], pair[1]
			if more.Needed > 0 && more.Needed < less.Needed || less.Needed == 0 && more.Needed > 0 {
				t.Fatalf("%s: %g after %g (%+v)", name, more.Needed, less.Needed, s)
			}
			if more.Needed > less.Needed {
				found++
			}
		}
	}
	if found < 500 {
		t.Errorf("only %d larger offsets: the test says little", found)
	}
}

// By hand: 6 in by halves holds 4 squares of 1 1/2 in across, and 24 in two
// blanks of 11 in with a kerf of 1/8 in; 1 5/8 in leaves only two across.
func TestPerBillet(t *testing.T) {
	for _, c := range []struct {
		side, long, square, length float64
		want                       int
	}{{6, 24, 1.5, 11, 32}, {6, 24, 1.625, 11, 8}, {6, 24, 1.25, 12, 16}, {6, 24, 1.25, 25, 0}, {1, 24, 1.25, 8, 0}, {6, 24, 0, 8, 0}} {
		if got := PerBillet(c.side*inch, c.long*inch, c.square*inch, c.length*inch, inch/8); got != c.want {
			t.Errorf("%+v: %d", c, got)
		}
	}
}
