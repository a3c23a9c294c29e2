package peg

import "math"

// Usual steps of the offset and the draw that should be left after drying, mm.
// All are common practice, no source.
const (
	StepImperial = 25.4 / 16
	LeftImperial = 25.4 / 32
	StepMetric   = 1.0
	LeftMetric   = 0.8
)

// same is the slack of a comparison of two lengths that may have been reckoned
// by different ways, mm.
const same = 1e-9

// Verdict is what the caps say about an offset.
type Verdict int

// The three verdicts, mildest first.
const (
	Usual   Verdict = iota // within the usual
	Large                  // softwood above D/5: a framer should decide
	Refused                // above D/4 in softwood, D/8 in hardwood: the peg will not drive
)

// String returns "usual", "large" or "refused".
func (v Verdict) String() string {
	names := [...]string{"usual", "large", "refused"}
	if v < 0 || int(v) >= len(names) {
		return "unknown"
	}
	return names[v]
}

// Caps returns the largest offset that is usual and the largest allowed, in mm,
// for a bore through a receiver of hardwood or softwood. Common practice, no
// source; in hardwood the two are the same.
func Caps(bore float64, hard bool) (usual, most float64) {
	if hard {
		return bore / 8, bore / 8
	}
	return bore / 5, bore / 4
}

// Judge holds an offset against the caps. Only its size counts, not its sign;
// one that is no number is refused.
func Judge(offset, bore float64, hard bool) Verdict {
	usual, most := Caps(bore, hard)
	switch size := math.Abs(offset); {
	case !(size <= most+same):
		return Refused
	case !(size <= usual+same):
		return Large
	}
	return Usual
}

// Reason says why no offset serves.
type Reason int

// The reasons why Auto finds no offset.
const (
	Serves       Reason = iota // an offset was found
	OverSoftwood               // it would have to be above D/4 in softwood
	OverHardwood               // it would have to be above D/8 in hardwood
	NeverHolds                 // no offset up to half the bore leaves enough
	BadInput                   // bore or step is not above zero
)

// String returns the reason in a few words.
func (r Reason) String() string {
	names := [...]string{
		"an offset serves",
		"the offset that drying calls for is above a quarter of the bore, too much to drive in softwood",
		"the offset that drying calls for is above an eighth of the bore, too much to drive in hardwood",
		"no offset leaves enough draw after drying",
		"bore and step must be above zero",
	}
	if r < 0 || int(r) >= len(names) {
		return "unknown"
	}
	return names[r]
}

// Wish is what Auto chooses an offset for. Left returns the least draw left
// after drying, in mm, when the offset is e mm; NaN counts as never enough.
type Wish struct {
	Bore float64                 // D, mm
	Hard bool                    // the receiver is hardwood
	Step float64                 // usual step, mm
	Need float64                 // draw to be left, mm
	Left func(e float64) float64 // least draw left for offset e
}

// Choice is the offset that Auto found, or why there is none.
type Choice struct {
	Offset  float64 // mm, 0 when there is none
	Left    float64 // draw left with it, mm
	Verdict Verdict // Usual or Large when found, Refused when not
	Reason  Reason  // Serves when found
	Needed  float64 // the first step that leaves enough, even if refused; 0 if none does
}

// Auto returns the least offset, in whole steps of at least one, that leaves
// Need after drying and that the receiver's wood allows.
func Auto(w Wish) Choice {
	if !(w.Bore > 0) || !(w.Step > 0) || w.Left == nil {
		return Choice{Verdict: Refused, Reason: BadInput}
	}
	choice := Choice{Verdict: Refused, Reason: NeverHolds}
	for n := 1; n <= 1000 && float64(n)*w.Step <= w.Bore/2+same; n++ {
		e := float64(n) * w.Step
		left := w.Left(e)
		if !(left >= w.Need-same) {
			continue
		}
		choice.Needed = e
		switch verdict := Judge(e, w.Bore, w.Hard); {
		case verdict != Refused:
			choice.Offset, choice.Left = e, left
			choice.Verdict, choice.Reason = verdict, Serves
		case w.Hard:
			choice.Reason = OverHardwood
		default:
			choice.Reason = OverSoftwood
		}
		return choice
	}
	return choice
}

// Auto chooses the offset of a square joint for the worse of the two bounds;
// Offset of s is not used.
func (s Square) Auto(hard bool, step, need float64, receiver, peg Shrunk) Choice {
	return Auto(Wish{Bore: s.Bore, Hard: hard, Step: step, Need: need, Left: func(e float64) float64 {
		s.Offset = e
		return Worst(s.Bounds(receiver, peg))
	}})
}

// Auto chooses the offset of a brace through a bore for the worst of its four
// bounds in both directions; Offset of b is not used. Drawn square to the
// shoulder, nothing pulls the nose home, so a green brace never holds.
func (b Brace) Auto(bore float64, hard bool, step, need float64, receiver, brace Shrunk) Choice {
	return Auto(Wish{Bore: bore, Hard: hard, Step: step, Need: need, Left: func(e float64) float64 {
		b.Offset = e
		return Worst(b.Bounds(receiver, brace))
	}})
}
