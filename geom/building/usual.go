package building

import "pegwright/geom/measure"

// usual holds the lengths of a building that are used where its description is
// silent, in mm. All are common practice, no source.
type usual struct {
	shallow       float64 // tenon at a post's top, in a 6 in plate
	hold          float64 // tenon held back from a sill's or plate's end
	cornerDown    float64 // sill corner: tenon below the sill's top
	footOff       float64 // foot tenons off the outside face
	stagger       float64 // between voids from neighbouring faces
	seatWood      float64 // under a blind seat bore, above mortises
	tieDown       float64 // tie top below the plate's underside
	legs          float64 // of a brace
	overhang      float64 // of rafters, level
	pastGable     float64 // plate and ridge past the end bents
	rafterSpacing float64 // most between rafters
	joistSpacing  float64 // most between joists
	purlinSpacing float64 // most between purlins
	heel          float64 // tie behind a principal rafter's foot
	relish        float64 // king post above its principals; tie past its plates
	strutUp       float64 // strut's lower edge above the tie
	cog           float64 // tie let down over the plates
	widest        float64 // span, bay or eave above which one is asked whether it is meant
	queenAt       float64 // queen post's middle, as a share of the span
}

// usualFor gives lengths that are round in the units of the description.
func usualFor(u measure.Units) usual {
	if u == measure.Metric {
		return usual{shallow: 80, hold: 50, cornerDown: 100, footOff: 38, stagger: 50, seatWood: 12, tieDown: 150, legs: 600,
			overhang: 200, pastGable: 100, rafterSpacing: 800, joistSpacing: 600, purlinSpacing: 1200,
			heel: 225, relish: 150, strutUp: 150, cog: 25, widest: 12000, queenAt: 0.3}
	}
	return usual{shallow: 3 * inch, hold: 2 * inch, cornerDown: 4 * inch, footOff: 1.5 * inch, stagger: 2 * inch, seatWood: inch / 2,
		tieDown: 6 * inch, legs: 24 * inch, overhang: 8 * inch, pastGable: 4 * inch, rafterSpacing: 32 * inch, joistSpacing: 24 * inch,
		purlinSpacing: 48 * inch, heel: 9 * inch, relish: 6 * inch, strutUp: 6 * inch, cog: inch, widest: 480 * inch, queenAt: 0.3}
}
