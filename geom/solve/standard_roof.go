package solve

import "pegwright/geom/measure"

// roofStandard are the lengths of roofs that are used where a description is
// silent (common practice, no source).
type roofStandard struct {
	heel          float64 // tie behind a principal rafter's foot
	relish        float64 // king post above its principals; tie past its plates
	strutUp       float64 // strut's lower edge above the tie
	cog           float64 // tie let down over the plates
	queenAt       float64 // queen post's middle, as part of the span
	purlinSpacing float64 // most between purlins
}

func roofStandardFor(u measure.Units) roofStandard {
	if u == measure.Metric {
		return roofStandard{heel: 225, relish: 150, strutUp: 150, cog: 25, queenAt: 0.3, purlinSpacing: 1200}
	}
	return roofStandard{heel: 9 * inch, relish: 6 * inch, strutUp: 6 * inch, cog: inch, queenAt: 0.3, purlinSpacing: 48 * inch}
}
