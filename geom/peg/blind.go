package peg

import "math"

// Figures of a peg whose hole ends in the wood. Its taper must be short, for
// nothing of it comes out beyond, and a taper holds nothing; two bores of full
// body in the last timber are asked for, and one and a half are the least that
// passes without a word. All are common practice, no source.
const (
	Grip      = 2.0 // full body in the last timber, in bores
	LeastGrip = 1.5

	BlindStepImperial = 25.4 / 8 // that lengths are rounded down to, mm
	BlindStepMetric   = 2.0
	BlindWood         = 25.4 / 2 // least wood behind the bottom, mm

	blindLead = 1.0 / 3 // length of the taper over the bore
	blindTip  = 3.0 / 4 // tip over peg
)

// BlindLead returns the taper of a peg of the given diameter, mm, for a blind
// hole: a third of it long, down to three quarters of it. Such a hole is not
// offset, so that the tip has no lens to find its way through.
func BlindLead(peg float64) Lead {
	return Lead{Tip: float64(blindTip * peg), Length: float64(blindLead * peg)}
}

// BlindLength returns the length of a peg whose hole ends depth under the face
// that it enters, mm, rounded down to whole steps: a peg must not bottom out
// before its head is where it belongs. A step of zero or less does not round.
func BlindLength(depth, head, step float64) float64 {
	if !(step > 0) {
		return depth + head
	}
	return float64(math.Floor((depth+head+1e-6)/step) * step)
}

// BlindDepth returns how deep a blind hole goes into the last timber, mm, so
// that a peg as thick as the bore has Grip bores of full body there whatever
// the rounding of its length takes.
func BlindDepth(bore, step float64) float64 {
	return float64(Grip*bore) + BlindLead(bore).Length + max(step, 0)
}
