package peg

import "math"

// Steps that peg lengths and stock are rounded up to, and what is left for the
// drawknife, mm. All are common practice, no source.
const (
	LengthStepImperial = 25.4 / 2
	LengthStepMetric   = 10.0
	RivingStepImperial = 25.4 / 8
	RivingStepMetric   = 5.0
	ShavingImperial    = 25.4 / 8
	ShavingMetric      = 3.0
)

// Length returns the length of a peg, in mm, rounded up to whole steps: the
// thickness of the mortised timber, so that the full section crosses all of
// it, the head that stands proud, and the lead beyond the far face. A step of
// zero or less does not round.
func Length(thickness, head, lead, step float64) float64 {
	return roundUp(thickness+head+lead, step)
}

// roundUp returns the least whole number of steps that is not under x, with a
// slack of 1e-6 mm so that an exact length is not pushed up.
func roundUp(x, step float64) float64 {
	if !(step > 0) {
		return x
	}
	return float64(math.Ceil((x-1e-6)/step) * step)
}

// Octagon is the section of a shaved peg: a regular octagon whose flats are a
// little under the bore and whose corners are a little over it, so that the
// corners bite.
type Octagon struct {
	LeastFlats, MostFlats     float64 // across flats, mm
	LeastCorners, MostCorners float64 // across corners, mm
}

// Shares of the bore between which the flats are kept. One builder reports
// flats of 0.99 in with points 0.06 to 0.08 in more for a 1 in hole; the lower
// limit is ours. Common practice, no source.
const (
	leastFlats = 0.97
	mostFlats  = 0.99
)

// OctagonFor returns the section for a bore, in mm.
func OctagonFor(bore float64) Octagon {
	low, high := float64(leastFlats*bore), float64(mostFlats*bore)
	return Octagon{low, high, AcrossCorners(low), AcrossCorners(high)}
}

// AcrossCorners returns the distance across the corners of a regular octagon,
// given that across its flats: f / cos 22.5°.
func AcrossCorners(flats float64) float64 { return flats / math.Cos(math.Pi/8) }

// CornerLine returns how far from each arris a line is struck on the faces of
// square stock of the given side, in mm, so that planing the arrises down to
// the lines leaves a regular octagon: s (1 - 1/√2). The octagon's side is
// s (√2 - 1), and half of what remains of the face lies on either hand.
func CornerLine(side float64) float64 { return float64(side * (1 - math.Sqrt2/2)) }

// Riving returns the side of the square billet to rive, in mm, for a peg of the
// given distance across its flats when finished dry: the wood shrinks by the
// fraction shrunk from riving to finishing, shaving is left for the drawknife,
// and the result is rounded up to whole steps. A shrinkage of 1 or more gives 0.
func Riving(flats, shrunk, shaving, step float64) float64 {
	if shrunk >= 1 {
		return 0
	}
	return roundUp((flats+shaving)/(1-shrunk), step)
}

// PerBillet returns how many pegs come out of a square billet of the given side
// and length, both mm, when it is split by halves into squares no smaller than
// square and sawn into blanks no shorter than length with the given kerf: a
// split that is not down the middle runs out. 0 when not one does.
func PerBillet(side, long, square, length, kerf float64) int {
	if !(square > 0) || !(length > 0) || side < square {
		return 0
	}
	across := 1
	for side/float64(2*across) >= square {
		across *= 2
	}
	return across * across * int((long+kerf+1e-6)/(length+kerf))
}

// Spares returns how many pegs to make beyond the count needed: one in ten,
// rounded up, and at least two. Pegs break, and one that kinks is bored out.
// Common practice, no source.
func Spares(count int) int {
	if count <= 0 {
		return 0
	}
	return max(2, (count+9)/10)
}
