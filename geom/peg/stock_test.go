package peg

import (
	"math"
	"testing"
)

// Closed form of two circles' common part, worked by hand for four pairs, and
// the area summed in strips as a second way.
func TestLens(t *testing.T) {
	for _, c := range [][6]float64{ // D, e, width, height, area, share
		{1, 1.0 / 16, 0.9375, 0.99804, 0.72294, 0.92047},
		{1, 1.0 / 8, 0.8750, 0.99216, 0.66072, 0.84126},
		{1, 3.0 / 16, 0.8125, 0.98226, 0.59900, 0.76267},
		{0.75, 1.0 / 16, 0.6875, 0.74739, 0.39497, 0.89402},
	} {
		l := Through(c[0], c[1])
		approx(t, "width", l.Width, c[2], 1e-9)
		approx(t, "height", l.Height, c[3], 6e-6)
		approx(t, "area", l.Area, c[4], 6e-6)
		approx(t, "share", l.Share, c[5], 6e-6)
		approx(t, "area in strips", l.Area, stripArea(c[0]/2, c[1]), 1e-5)
	}
	approx(t, "whole circle", Through(2, 0).Area, math.Pi, 1e-12)
	for _, l := range []Lens{Through(1, 1), Through(1, 2), Through(0, 0), Through(1, math.NaN())} {
		if l != (Lens{}) {
			t.Errorf("holes that do not meet share %+v", l)
		}
	}
}

// stripArea sums strips of the common part of two circles of radius r, e apart.
func stripArea(r, e float64) float64 {
	const n = 200000
	sum, h := 0.0, 2*r/n
	for i := range n {
		y := -r + (float64(i)+0.5)*h
		half := math.Sqrt(r*r - y*y)
		sum += math.Max(0, 2*half-e) * h
	}
	return sum
}

// The lead must pass the lens, and its taper lies within the trade's 2 to 3 in
// (common practice) for the two usual pegs at the usual offsets.
func TestLead(t *testing.T) {
	for _, bore := range []float64{0.75, 1} {
		for _, e := range []float64{1.0 / 16, 1.0 / 8, 3.0 / 16} {
			lead, ok := LeadFor(bore*inch, bore*inch, e*inch)
			if !ok || lead.Tip >= (bore-e)*inch || lead.Tip > bore*inch*0.6667 {
				t.Errorf("%g, %g: %+v %v", bore, e, lead, ok)
			}
			if lead.Length < 1.99*inch || lead.Length > 3*inch {
				t.Errorf("%g, %g: taper %g in", bore, e, lead.Length/inch)
			}
		}
	}
	if _, ok := LeadFor(inch, inch, 0.7*inch); ok {
		t.Error("a lead through a sliver")
	}
}

// Common practice for 8 in stock: pegs of 10 to 12 in.
func TestLength(t *testing.T) {
	lead, _ := LeadFor(inch, inch, inch/8)
	got := Length(8*inch, 0.75*inch, lead.Length, LengthStepImperial) / inch
	if got < 10 || got > 12 || math.Mod(got, 0.5) != 0 {
		t.Errorf("8 in stock: %g in", got)
	}
	approx(t, "exact length", Length(200, 20, 50, LengthStepMetric), 270, 0)
	approx(t, "just over", Length(200, 20, 50.01, LengthStepMetric), 280, 0)
}

// Cut the four corners of a square at the struck lines and measure what is
// left: eight equal sides, and the far corners apart as AcrossCorners says.
func TestCornerLine(t *testing.T) {
	for _, s := range []float64{19, 25.4, 31.75} {
		c := CornerLine(s)
		approx(t, "sides", math.Hypot(c, c), s-2*c, 1e-12)
		approx(t, "corners", AcrossCorners(s), math.Hypot(s, s-2*c), 1e-12)
	}
	o := OctagonFor(inch)
	if !(o.MostFlats < inch && o.LeastCorners > inch) {
		t.Errorf("corners do not bite: %+v", o)
	}
	// One builder: flats 0.99 in, points 0.06 to 0.08 in over a 1 in hole.
	approx(t, "flats", o.MostFlats/inch, 0.99, 1e-9)
	if over := o.MostCorners/inch - 1; over < 0.06 || over > 0.08 {
		t.Errorf("points %g in over", over)
	}
}

func TestRivingAndSpares(t *testing.T) {
	oak := Drying(woodOf(t, "white oak"), 70, 12) // 10.5 x 18/30 = 6.3 %
	side := Riving(0.99*inch, oak.Tangential, ShavingImperial, RivingStepImperial)
	// (0.99 + 0.125)/0.937 = 1.19, so 1-1/4 in.
	approx(t, "billet", side/inch, 1.25, 1e-9)
	if side*(1-oak.Tangential) < 0.99*inch+ShavingImperial {
		t.Error("the dried billet is too small")
	}
	approx(t, "no wood left", Riving(20, 1, 3, 5), 0, 0)
	for count, want := range map[int]int{0: 0, 1: 2, 20: 2, 21: 3, 84: 9} {
		if got := Spares(count); got != want {
			t.Errorf("%d pegs: %d spares", count, got)
		}
	}
}
