package measure

import (
	"fmt"
	"math"
	"math/big"
	"testing"
)

// Expected texts by hand.
func TestFormats(t *testing.T) {
	in := func(x float64) float64 { return x * 25.4 }
	for _, c := range []struct{ got, want string }{
		{FeetInches(in(90.5), 16), `7'-6 1/2"`},
		{FeetInches(in(84), 16), `7'-0"`},
		{FeetInches(in(84.5), 16), `7'-0 1/2"`},
		{FeetInches(in(6.5), 16), `6 1/2"`},
		{FeetInches(in(0.5), 16), `1/2"`},
		{FeetInches(0, 16), `0"`},
		{FeetInches(math.Copysign(0, -1), 16), `0"`},
		{FeetInches(-0.1, 16), `0"`},
		{FeetInches(in(11+31.0/32), 16), `1'-0"`},
		{FeetInches(in(11+31.0/32), 32), `11 31/32"`},
		{FeetInches(in(23.999), 16), `2'-0"`},
		{FeetInches(in(-90.5), 16), `-7'-6 1/2"`},
		{FeetInches(in(1.0/32), 16), `1/16"`},
		{FeetInches(math.NaN(), 16), "?"},
		{FeetInches(math.Inf(-1), 16), "?"},
		{Inches(in(90.5), 16), `90 1/2"`},
		{Inches(in(12), 16), `12"`},
		{Inches(in(-0.25), 32), `-1/4"`},
		{Millimetres(2298.7, 1), "2299"},
		{Millimetres(2298.7, 0.5), "2298.5"},
		{Millimetres(2298.9, 0.5), "2299"},
		{Millimetres(-0.2, 1), "0"},
		{Millimetres(-0.2, 0.5), "0"},
		{Millimetres(-12.5, 0.5), "-12.5"},
		{Millimetres(2.5, 1), "3"},
		{Imperial.Format(in(90.5)), `7'-6 1/2"`},
		{Imperial.FormatJoint(in(1 + 17.0/32)), `1 17/32"`},
		{Metric.Format(2299.4), "2299 mm"},
		{Metric.FormatJoint(2299.4), "2299.5 mm"},
		{Metric.Plain(2299.4), "2299"},
		{Imperial.PlainJoint(in(1 + 17.0/32)), `1 17/32"`},
	} {
		if c.got != c.want {
			t.Errorf("%s, want %s", c.got, c.want)
		}
	}
}

// Every 32nd up to 20 ft against exact rational arithmetic (math/big), and
// read back by the parser.
func TestFeetInchesExactly(t *testing.T) {
	for n := int64(1); n < 20*12*32; n++ {
		mm := float64(n) * 25.4 / 32
		text := FeetInches(mm, 32)
		back, err := ParseLength(text, Scope{Unit: Millimetre})
		if err != nil || math.Abs(back-mm) > 1e-9 {
			t.Fatalf("%d/32 in is %s, read back as %v, %v", n, text, back, err)
		}
		if want := byRational(n); text != want {
			t.Fatalf("%d/32 in is %s, want %s", n, text, want)
		}
	}
}

func byRational(n int64) string {
	feet := n / (12 * 32)
	rest := big.NewRat(n%(12*32), 32)
	whole := new(big.Int).Quo(rest.Num(), rest.Denom()).Int64()
	part := new(big.Rat).Sub(rest, big.NewRat(whole, 1))
	text := fmt.Sprint(whole)
	if part.Sign() > 0 {
		text = part.RatString()
		if whole > 0 || feet > 0 {
			text = fmt.Sprint(whole, " ", part.RatString())
		}
	}
	if feet > 0 {
		return fmt.Sprintf(`%d'-%s"`, feet, text)
	}
	return text + `"`
}

// Rounding is to the nearest step: never more than half a step away.
func TestRoundingIsNearest(t *testing.T) {
	for i := range 20000 {
		mm := float64(i) * 0.37137
		back, err := ParseLength(FeetInches(mm, 16), Scope{})
		if err != nil || math.Abs(back-mm) > 25.4/32+1e-6 {
			t.Fatalf("%v mm is shown as %s", mm, FeetInches(mm, 16))
		}
	}
}

func TestUnits(t *testing.T) {
	for s, want := range map[string]float64{"in": 25.4, "ft": 304.8, "mm": 1, "m": 1000} {
		u, ok := ParseUnit(s)
		if !ok || u.MM() != want || u.String() != s {
			t.Errorf("%s: %v %v", s, u, ok)
		}
		if (u.Units() == Imperial) != (s == "in" || s == "ft") {
			t.Errorf("%s shows %v", s, u.Units())
		}
	}
	if _, ok := ParseUnit("yard"); ok {
		t.Error("yard accepted")
	}
}
