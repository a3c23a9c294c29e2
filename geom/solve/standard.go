package solve

import "pegwright/geom/measure"

const inch = 25.4

// standard holds the lengths that are used where a description is silent, in
// the file's unit system. All are common practice, no source, unless a line
// says otherwise; see the joints they belong to.
type standard struct {
	roofStandard
	paper                      string
	reduce                     float64 // rough-sawn sticks: nominal less ideal
	thin, thick                float64 // tenon thickness in sticks up to 6 in, and over
	offRef                     float64 // reference face to tenon
	tenon, braceTenon, shallow float64 // tenon lengths: principal; braces, girts; post top in a 6 in plate
	stub                       float64
	deeper                     float64
	smallBore, bigBore         float64
	offShoulder, offShoulder2  float64
	along, braceAlong          float64
	head, lead                 float64
	hold                       float64 // tenon held back, and from a sill's end
	cornerDown                 float64 // sill corner: tenon below the sill's top
	footOff                    float64 // foot tenons off the outside face
	web                        float64 // wood left between opposed tenons
	stagger                    float64 // between voids from neighbouring faces
	pastGable                  float64
	overhang, rafterSpacing    float64
	tieDown                    float64 // tie top below the plate's underside
	seatWood                   float64 // under a blind seat bore, above mortises
	pegStep                    float64
	drawStep, drawLeft         float64
	legs                       float64
	flare                      float64 // of a dovetail, run for a rise of one
	bearing                    float64 // length of a drop-in pocket
	deep                       float64 // angled enterers this deep have two pegs
	shop                       float64 // step of sizes that are chosen to be marked out
}

func standardFor(u measure.Units) standard {
	if u == measure.Metric {
		return standard{paper: "a4", reduce: 12, thin: 38, thick: 50, offRef: 50, tenon: 100, braceTenon: 80, shallow: 80,
			stub: 45, deeper: 6, smallBore: 20, bigBore: 25, offShoulder: 40, offShoulder2: 50, along: 50, braceAlong: 50,
			head: 25, lead: 100, hold: 50, cornerDown: 100, footOff: 38, web: 12, stagger: 50, pastGable: 100,
			overhang: 200, rafterSpacing: 800, tieDown: 150, seatWood: 12, pegStep: 10, drawStep: 1, drawLeft: 0.8, legs: 600, flare: 7, bearing: 50, deep: 200, shop: 2,
			roofStandard: roofStandardFor(u)}
	}
	return standard{paper: "letter", reduce: inch / 2, thin: 1.5 * inch, thick: 2 * inch, offRef: 2 * inch, tenon: 4 * inch,
		braceTenon: 3 * inch, shallow: 3 * inch, stub: 1.75 * inch, deeper: inch / 4, smallBore: 0.75 * inch, bigBore: inch,
		offShoulder: 1.5 * inch, offShoulder2: 2 * inch, along: 2 * inch, braceAlong: 2 * inch, head: inch, lead: 4 * inch,
		hold: 2 * inch, cornerDown: 4 * inch, footOff: 1.5 * inch, web: inch / 2, stagger: 2 * inch, pastGable: 4 * inch,
		overhang: 8 * inch, rafterSpacing: 32 * inch, tieDown: 6 * inch, seatWood: inch / 2, pegStep: inch / 2,
		drawStep: inch / 16, drawLeft: inch / 32, legs: 24 * inch, flare: 7, bearing: 2 * inch, deep: 8 * inch, shop: inch / 8,
		roofStandard: roofStandardFor(u)}
}

// sizes are the usual sections by role where the description gives none, stouter
// where the ties carry trusses.
func (s standard) size(role string, metric, trussed bool) (a, b float64) {
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
