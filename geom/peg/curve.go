package peg

import "math"

// Dried is the draw left at one moisture: for the worst and for the best
// pairing of ring directions, each the lesser of its two directions, mm. In a
// square joint the worst is the tangential receiver and the best the radial.
type Dried struct{ Moisture, Worst, Best float64 }

// Curve is the draw left as timbers dry, wettest first.
type Curve struct {
	Points []Dried
	Slack  float64 // moisture at which the worst pairing is left without draw, percent
	Goes   bool    // it comes to that on the way; Slack is 0 where it does not
}

// CurveOf follows the bounds that left gives from moisture from down to
// moisture to, in percent, in n steps. It is empty when the wood does not dry
// on the way or n is under 1.
func CurveOf(from, to float64, n int, left func(moisture float64) []Bound) Curve {
	var c Curve
	if !(from > to) || n < 1 {
		return c
	}
	for i := range n + 1 {
		mc := from + float64((to-from)*float64(i)/float64(n))
		c.Points = append(c.Points, Dried{mc, Worst(left(mc)), best(left(mc))})
	}
	for i := 1; i < len(c.Points) && !c.Goes; i++ {
		a, b := c.Points[i-1], c.Points[i]
		if a.Worst < 0 || b.Worst >= 0 {
			continue
		}
		c.Goes = true
		c.Slack = crossing(a.Moisture, b.Moisture, func(mc float64) float64 { return Worst(left(mc)) })
	}
	if c.Points[0].Worst < 0 {
		c.Slack, c.Goes = from, true
	}
	return c
}

// crossing returns where f falls from zero or above at wet to below it at dry.
func crossing(wet, dry float64, f func(float64) float64) float64 {
	for range 60 {
		mid := (wet + dry) / 2
		if f(mid) < 0 {
			dry = mid
		} else {
			wet = mid
		}
	}
	return wet
}

// best returns the most draw left over the bounds, mm, each bound counting for
// the lesser of its directions; -Inf when there are none.
func best(bounds []Bound) float64 {
	most := math.Inf(-1)
	for _, b := range bounds {
		most = math.Max(most, b.Left.Least())
	}
	return most
}
