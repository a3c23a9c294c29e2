package peg

import "pegwright/geom/wood"

// Kind is what kind of surface a rule keeps the hole away from.
type Kind int

// The kinds of surface.
const (
	End  Kind = iota // cut across the grain: the relish behind the hole
	Edge             // along the grain: the side of the timber, or the mortise's edge
)

// String returns "end" or "edge".
func (k Kind) String() string {
	names := [...]string{"end", "edge"}
	if k < 0 || int(k) >= len(names) {
		return "unknown"
	}
	return names[k]
}

// Least distances from the hole's centre, in bores. Under WorkableEdge or
// WorkableEnd is a warning, under Closest a stop. Common practice, no source.
const (
	WorkableEnd  = 2.0
	WorkableEdge = 1.5
	Closest      = 1.0
)

// Distances are the least distances from hole centre to surface at which tests
// found that the peg fails before the timber, in bores.
type Distances struct {
	End    float64 // l_e, hole to the end of the tenon
	Edge   float64 // l_v, hole to the edge of the mortised timber
	Apart  float64 // l_s, hole to hole
	Tested bool    // the wood itself was tested; else the largest of its kind is taken
	Source string  // where the figures come from
}

// Where the rows of tested come from.
const (
	readRow     = "Schmidt & Scholl 2000, sec. 4.2"
	recalledRow = "Schmidt & Daniels 1999, recalled, not read"
	pineRow     = "Schmidt & Scholl 2000, recalled, not read"
	untestedRow = "wood not tested: the largest distances among tested woods of its kind"
)

// FullStrength returns the distances for a timber of wood w, by its shown name.
// Douglas-fir, eastern white pine, the oaks, the southern pines and
// yellow-poplar have rows of their own; any other wood gets the largest of the
// softwood or of the hardwood rows, and Tested is false.
func FullStrength(w wood.Wood) Distances {
	switch w.Name {
	case "Douglas-fir":
		return Distances{2, 2.5, 2.5, true, readRow}
	case "eastern white pine":
		return Distances{4, 4, 3, true, pineRow}
	case "northern red oak", "white oak":
		return Distances{3, 2, 2.5, true, recalledRow}
	case "loblolly pine", "shortleaf pine", "longleaf pine", "slash pine":
		return Distances{2, 2, 3, true, recalledRow}
	case "yellow-poplar":
		return Distances{2.5, 2.5, 3, true, recalledRow}
	}
	if w.Hard {
		return Distances{3, 2.5, 3, false, untestedRow}
	}
	return Distances{4, 4, 3, false, untestedRow}
}

// Least returns the workable and the full-strength distance from hole centre to
// a surface of kind k, in mm, for a bore in a timber of wood w.
func Least(k Kind, bore float64, w wood.Wood) (workable, full float64) {
	d := FullStrength(w)
	if k == End {
		return float64(WorkableEnd * bore), float64(d.End * bore)
	}
	return float64(WorkableEdge * bore), float64(d.Edge * bore)
}
