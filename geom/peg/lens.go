package peg

import "math"

// Lens is the opening that is seen through two equal holes set off from each
// other.
type Lens struct {
	Width  float64 // between the arcs, along the offset, mm: D - e
	Height float64 // across the offset, mm: sqrt(D^2 - e^2)
	Area   float64 // mm2
	Share  float64 // of the full circle, 0 to 1
}

// Through returns the lens of two holes of diameter bore whose centres are
// offset mm apart. With r = D/2 its area is
// 2 r^2 acos(e/2r) - (e/2) sqrt(4 r^2 - e^2). The holes share nothing when the
// offset is the bore or more, or the bore is not above zero: the zero Lens.
func Through(bore, offset float64) Lens {
	e := math.Abs(offset)
	if !(bore > 0) || !(e < bore) {
		return Lens{}
	}
	r := bore / 2
	height := math.Sqrt(float64((bore - e) * (bore + e)))
	area := float64(2*r*r*math.Acos(e/bore)) - float64(e/2*height)
	return Lens{Width: bore - e, Height: height, Area: area, Share: area / (math.Pi * r * r)}
}

// Figures of the lead, the thinned end that finds its way through the lens.
// The clearance and the slope are ours; the trade tapers the last 2 to 3 in to
// one half to two thirds of the diameter, common practice, no source.
const (
	LeadClearance = 25.4 / 16 // between the lead's tip and the lens, mm
	LeadShare     = 2.0 / 3   // tip over peg, at most
	LeadSlope     = 8.0       // length over loss of diameter: 1 in 8
)

// Lead is the thinned end of a peg.
type Lead struct {
	Tip    float64 // diameter at the end, mm
	Length float64 // of the taper, mm
}

// LeadFor returns the lead of a peg of diameter peg for a bore and an offset,
// in mm: its tip is two thirds of the peg, or less where the lens less the
// clearance is narrower; the taper is 1 in 8, which makes it 2 in on a 3/4 in
// peg and 2-2/3 in on a 1 in peg. ok is false where no tip is left that could
// enter, that is where the tip would be under a third of the peg.
func LeadFor(peg, bore, offset float64) (lead Lead, ok bool) {
	tip := math.Min(float64(LeadShare*peg), Through(bore, offset).Width-LeadClearance)
	if !(tip >= peg/3) || !(peg > 0) {
		return Lead{}, false
	}
	return Lead{Tip: tip, Length: LeadSlope * (peg - tip)}, true
}
