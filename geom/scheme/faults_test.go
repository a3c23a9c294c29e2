package scheme_test

import (
	"testing"

	"pegwright/samples/trial"
)

// Woods and sections that make no stick.
func TestWoodsAndSectionsRefused(t *testing.T) {
	trial.Refused(t, "no such wood", trial.Hut("wood: {timbers: {species: eastern wite pine}}", ""), "eastern wite pine", "not in the table")
	trial.Refused(t, "no such peg wood", trial.Hut("wood: {pegs: {species: lignite}}", ""), "lignite", "not in the table")
	trial.Refused(t, "wood of one timber", trial.TwoSticks+"  extra: {role: post, section: 6 x 6, species: cardboard, from: [9', 0, 0], to: [9', 0, 8']}\n", "cardboard", "not in the table")
	trial.Refused(t, "reduced to nothing", trial.TwoSticks+"  thin: {role: post, section: 3 x 3, reduce: 2.9, from: [9', 0, 0], to: [9', 0, 8']}\n", "thin:", "ideal timber")
	trial.Refused(t, "wood of the table described anew", trial.Hut("woods:\n  - {name: White Oak, specific gravity: 0.6, tangential: 9, radial: 5}", ""), "White Oak", "in the table already")
	trial.Refused(t, "wood described twice", trial.Hut("woods:\n  - {name: lot pine, specific gravity: 0.36, tangential: 6, radial: 2}\n  - {name: Lot-Pine, specific gravity: 0.4, tangential: 6, radial: 2}", ""), "Lot-Pine", "twice")
	trial.Refused(t, "radial above tangential", trial.Hut("woods:\n  - {name: lot pine, specific gravity: 0.36, tangential: 2, radial: 6}", ""), "radial: 6", "above tangential")
	trial.Refused(t, "volume shrinks too little", trial.Hut("woods:\n  - {name: lot pine, specific gravity: 0.36, tangential: 6, radial: 2, volumetric: 3}", ""), "volumetric: 3", "below tangential")
}
