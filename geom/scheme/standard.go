package scheme

import (
	"math"

	"pegwright/geom/measure"
	"pegwright/geom/peg"
)

// Standard holds the lengths that are used where a description is silent, in
// mm, by the file's unit system. All are common practice, no source.
type Standard struct {
	Paper                     string
	Reduce                    float64 // rough-sawn sticks: nominal less ideal
	Thin, Thick               float64 // tenon thickness in sticks up to 6 in, and over
	OffRef                    float64 // reference face to tenon
	Tenon, BraceTenon         float64 // tenon lengths: principal timbers; braces and girts
	Stub                      float64 // length of an unpegged tenon
	Deeper                    float64 // mortise than its tenon
	SmallBore, BigBore        float64 // bores of slight and of stout joints
	OffShoulder, OffShoulder2 float64 // shoulder to mortise hole, for a thin and a thick tenon
	Along                     float64 // bearing edge to mortise hole
	Head, Lead                float64 // of a peg, beyond either face
	Web                       float64 // wood left between opposed tenons
	PegStep                   float64 // of the lengths of pegs
	BlindStep                 float64 // the same for blind holes
	DrawStep, DrawLeft        float64 // of offsets; offset that is left after drying
	Flare                     float64 // of a dovetail, run for a rise of one
	Bearing                   float64 // length of a drop-in pocket
	Deep                      float64 // angled enterers this deep have two pegs
	Shop                      float64 // step of sizes that are chosen to be marked out
	Chisel                    float64 // step of the widths of chisels, and so of what is chopped to a width
}

// Fork returns the width of the slot of a bridle in a stick of width w, the third
// of it that a chisel has, and of the cheek on its reference side, in mm.
func (s Standard) Fork(w float64) (slot, cheek float64) {
	slot = max(math.Round(w/3/s.Chisel), 1) * s.Chisel
	return slot, (w - slot) / 2
}

// standardFor gives inches that are round to a description in inches or feet,
// and millimetres that are round to one in metres.
func standardFor(u measure.Units) Standard {
	if u == measure.Metric {
		return Standard{Paper: "a4", Reduce: 12, Thin: 38, Thick: 50, OffRef: 50, Tenon: 100, BraceTenon: 80, Stub: 45, Deeper: 6,
			SmallBore: 20, BigBore: 25, OffShoulder: 40, OffShoulder2: 50, Along: 50, Head: 25, Lead: 100, Web: 12,
			PegStep: peg.LengthStepMetric, BlindStep: peg.BlindStepMetric, DrawStep: peg.StepMetric, DrawLeft: peg.LeftMetric, Flare: 7, Bearing: 50, Deep: 200, Shop: 2, Chisel: 5}
	}
	return Standard{Paper: "letter", Reduce: inch / 2, Thin: 1.5 * inch, Thick: 2 * inch, OffRef: 2 * inch, Tenon: 4 * inch,
		BraceTenon: 3 * inch, Stub: 1.75 * inch, Deeper: inch / 4, SmallBore: 0.75 * inch, BigBore: inch,
		OffShoulder: 1.5 * inch, OffShoulder2: 2 * inch, Along: 2 * inch, Head: inch, Lead: 4 * inch, Web: inch / 2,
		PegStep: peg.LengthStepImperial, BlindStep: peg.BlindStepImperial, DrawStep: peg.StepImperial, DrawLeft: peg.LeftImperial, Flare: 7, Bearing: 2 * inch, Deep: 8 * inch, Shop: inch / 8, Chisel: inch / 8}
}

// size is the usual section of a role where the description gives none, stouter
// where the ties carry trusses.
func (s Standard) size(role string, metric, trussed bool) (a, b float64) {
	type pair struct{ a, b float64 }
	in := map[string]pair{"sill": {6, 8}, "cross sill": {6, 8}, "post": {6, 6}, "door post": {5, 5}, "window post": {5, 5},
		"tie": {6, 7}, "plate": {6, 6}, "girt": {5, 5}, "header": {5, 5}, "rail": {5, 5}, "brace": {3, 5}, "rafter": {4, 6},
		"ridge": {6, 8}, "king post": {6, 6},
		"principal rafter": {6, 8}, "strut": {4, 5}, "queen post": {6, 6}, "straining beam": {6, 6}, "purlin": {4, 6}, "collar": {3, 6},
		"ledger": {6, 8}, "joist": {4, 6}}
	p, ok := in[role]
	switch {
	case trussed && (role == "post" || role == "plate" || role == "king post"):
		p = pair{8, 8}
	case trussed && role == "tie":
		p = pair{8, 10}
	case !ok:
		p = pair{6, 6}
	}
	if metric {
		return p.a * 25, p.b * 25
	}
	return p.a * inch, p.b * inch
}
