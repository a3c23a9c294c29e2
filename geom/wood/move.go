package wood

import (
	"fmt"
	"strings"
)

// Kind is a direction across the grain.
type Kind int

// The two directions across the grain. Along the grain, wood is taken not to
// move (green to oven-dry is 0.1 to 0.2 %).
const (
	Tangential Kind = iota // along the growth rings, the larger movement
	Radial                 // from the heart to the bark
)

// String returns "tangential" or "radial".
func (k Kind) String() string {
	if k == Radial {
		return "radial"
	}
	return "tangential"
}

// total returns the whole shrinkage in direction k as a fraction.
func (w Wood) total(k Kind) float64 {
	if k == Radial {
		return w.Radial / 100
	}
	return w.Tangential / 100
}

// FromGreen returns the part of its green size that the wood has lost at
// moisture mc (percent), as a fraction: S_0 (F - M)/F below fibre saturation F,
// nothing above it. Moisture below zero counts as zero. (WH ch. 4.)
func (w Wood) FromGreen(k Kind, mc float64) float64 {
	if mc >= w.Saturation {
		return 0
	}
	if mc < 0 {
		mc = 0
	}
	return w.total(k) * (w.Saturation - mc) / w.Saturation
}

// Shrinkage returns the part of its size at moisture from (percent) that the
// wood loses on its way to moisture to, as a fraction; below zero when it
// swells. From green this is FromGreen(k, to); from a drier state it is the
// ratio of the two sizes, since the tabled percentages are of the green size.
func (w Wood) Shrinkage(k Kind, from, to float64) float64 {
	start := 1 - w.FromGreen(k, from)
	return (w.FromGreen(k, to) - w.FromGreen(k, from)) / start
}

// Coefficient returns the dimensional change coefficient, the part of its size
// that the wood moves for each percent of moisture between 6 and 14 %:
// C = S/(100 F - (F - 10) S) with S and F in percent (WH Table 13-5).
func (w Wood) Coefficient(k Kind) float64 {
	s, f := 100*w.total(k), w.Saturation
	return s / (100*f - float64((f-10)*s))
}

// saturationForGravity is the moisture at which the specific gravity law
// starts, and volumeFactor its volumetric shrinkage for a gravity of 1
// (WH ch. 4).
const (
	saturationForGravity = 30.0
	volumeFactor         = 0.265
)

// Gravity returns oven-dry mass over the volume at moisture mc (percent):
// Gb at 30 % and above, Gb/(1 - 0.265 a Gb) with a = (30 - M)/30 below
// (WH ch. 4). Good to about 0.02 for most species.
func (w Wood) Gravity(mc float64) float64 {
	if mc >= saturationForGravity {
		return w.Basic
	}
	if mc < 0 {
		mc = 0
	}
	a := (saturationForGravity - mc) / saturationForGravity
	return w.Basic / (1 - float64(volumeFactor*a*w.Basic))
}

// Density returns the weight of a cubic metre at moisture mc (percent), in
// kg/m3: 1000 G_M (1 + M/100) (WH ch. 4). Multiply by the volume at that
// moisture.
func (w Wood) Density(mc float64) float64 {
	if mc < 0 {
		mc = 0
	}
	return 1000 * w.Gravity(mc) * (1 + mc/100)
}

// Seasoning is how dry a timber is when it is cut.
type Seasoning int

// The three states in which timber is bought.
const (
	Green        Seasoning = iota // fresh from the saw, nothing has shrunk yet
	PartSeasoned                  // a year or so under cover
	Dry                           // kiln-dried or long seasoned, at service moisture
)

// Moisture taken where the description gives none, percent.
const (
	ServiceMoisture = 12.0 // a heated or open, covered building at about 65 % relative humidity (WH Table 4-2)
	PartMoisture    = 21.0 // part seasoned: the middle of 20 to 22, common practice, no source
	greenSoftwood   = 100.0
	greenHardwood   = 80.0
)

// String returns "green", "part seasoned" or "dry".
func (s Seasoning) String() string {
	names := [...]string{"green", "part seasoned", "dry"}
	if s < 0 || int(s) >= len(names) {
		return "unknown"
	}
	return names[s]
}

// ParseSeasoning reads "green", "part seasoned" (also with a hyphen) or "dry"
// in any case.
func ParseSeasoning(text string) (Seasoning, bool) {
	for s := Green; s <= Dry; s++ {
		if plain(text) == s.String() {
			return s, true
		}
	}
	return Green, false
}

// Moisture returns the moisture to reckon with for a state of seasoning, in
// percent, and one line on where the figure comes from. Green is the mean of
// heartwood and sapwood (WH Table 4-1); a figure that is not on record is taken
// as 100 % in softwood and 80 % in hardwood, an assumption. The mean errs on
// the heavy side for timbers that are mostly heartwood.
func (w Wood) Moisture(s Seasoning) (mc float64, why string) {
	switch s {
	case Dry:
		return ServiceMoisture, "dry: taken as 12 %"
	case PartSeasoned:
		return PartMoisture, "part seasoned: taken as 21 % (usually 20 to 22)"
	}
	guess := greenSoftwood
	if w.Hard {
		guess = greenHardwood
	}
	heart, sap := w.GreenHeart, w.GreenSap
	var assumed []string
	if heart == 0 {
		heart, assumed = guess, append(assumed, "heartwood")
	}
	if sap == 0 {
		sap, assumed = guess, append(assumed, "sapwood")
	}
	mc = (heart + sap) / 2
	if len(assumed) > 0 {
		return mc, fmt.Sprintf("green: %s assumed at %g %%", strings.Join(assumed, " and "), guess)
	}
	return mc, "green: mean of heartwood and sapwood"
}
