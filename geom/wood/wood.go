// Package wood holds the figures of framing and peg woods: specific gravity,
// shrinkage and green moisture, with the place each figure comes from, and the
// straight-line laws that turn them into movement and weight.
//
// Three specific gravities are kept apart on purpose: Basic (oven-dry mass over
// green volume), G12 (over the volume at 12 % moisture) and Oven (over the
// oven-dry volume, the one that connection tables are entered with).
//
// Real timbers (boxed heart, rings at a mixed angle) move by something between
// the radial and the tangential figure, and the straight line from fibre
// saturation to oven-dry is itself an approximation.
//
// Sources named in the rows: WH is the Wood Handbook of the USDA Forest
// Products Laboratory (FPL-GTR-190 of 2010, FPL-GTR-282 of 2021), Tables 4-1
// (green moisture), 4-3 (shrinkage), 5-3 (specific gravity) and 13-5
// (coefficients). NDS is the National Design Specification for Wood
// Construction, Table 12.3.3A.
package wood

import "sort"

// Confidence says how well the weakest figure of a row is known.
type Confidence int

// The degrees of confidence, best first.
const (
	Read     Confidence = iota // read on the publication's page or a copy of it
	Quoted                     // read where another public text quotes the publication
	Recalled                   // recalled from the publication, with good confidence
	Doubtful                   // recalled with little confidence, derived, or assumed
	Given                      // given by the user, who answers for it
)

// String returns "read", "quoted", "recalled", "doubtful" or "given".
func (c Confidence) String() string {
	names := [...]string{"read", "quoted", "recalled", "doubtful", "given"}
	if c < 0 || int(c) >= len(names) {
		return "unknown"
	}
	return names[c]
}

// Wood is one species. Specific gravities are plain ratios; shrinkage is total
// shrinkage from green to oven-dry in percent of the green size; moisture is
// percent of the oven-dry mass. A zero Volumetric, GreenHeart or GreenSap means
// that no figure is on record.
type Wood struct {
	Name       string     // the name it is shown by, such as "eastern white pine"
	Aliases    []string   // further names that Lookup accepts; do not change
	Hard       bool       // hardwood (broad-leaved), else softwood
	Framing    bool       // in use as framing timber
	Peg        bool       // in use as peg wood
	Basic      float64    // Gb, oven-dry mass over green volume
	G12        float64    // oven-dry mass over volume at 12 % moisture
	Oven       float64    // oven-dry mass over oven-dry volume (NDS G where there is a row)
	OvenGroup  string     // NDS species group of Oven; "" where Oven is computed from Basic
	Radial     float64    // total radial shrinkage, percent
	Tangential float64    // total tangential shrinkage, percent
	Volumetric float64    // total volumetric shrinkage, percent; 0: not on record
	GreenHeart float64    // green moisture of heartwood, percent; 0: not on record
	GreenSap   float64    // green moisture of sapwood, percent; 0: not on record
	Saturation float64    // moisture below which the wood shrinks, percent
	Source     string     // where the figures come from
	Confidence Confidence // of the weakest figure of shrinkage and gravity
}

// Own returns a wood that a user describes by name, kind, basic specific
// gravity, shrinkage and green moisture: the other gravities follow by the law
// of Gravity, fibre saturation is the usual 30 %.
func Own(w Wood) Wood {
	w.Framing, w.Peg, w.Saturation = true, w.Hard, usualSaturation
	w.G12, w.Oven = w.Gravity(12), w.Gravity(0)
	w.Source, w.Confidence = "given in the description", Given
	return w
}

// FramingNames returns the shown names of the framing timbers, sorted.
func FramingNames() []string { return pick(func(w Wood) bool { return w.Framing }) }

// PegNames returns the shown names of the peg woods, sorted.
func PegNames() []string { return pick(func(w Wood) bool { return w.Peg }) }

func pick(want func(Wood) bool) []string {
	var names []string
	for _, w := range table {
		if want(w) {
			names = append(names, w.Name)
		}
	}
	sort.Strings(names)
	return names
}
