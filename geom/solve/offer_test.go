package solve_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"pegwright/geom/measure"
	species "pegwright/geom/wood"
	"pegwright/samples/trial"
)

// A wood of one's own serves as any other: 6.5 % tangential to 12 % is 3.9 %,
// its oven-dry gravity 0.36/(1 - 0.265 x 0.36) = 0.398 (Wood Handbook ch. 4, the
// laws worked by hand), green at 90 % it weighs 360 x 1.9 = 684 kg/m³.
func TestOwnWood(t *testing.T) {
	f := trial.Frame(t, "test.yaml", fmt.Sprintf(hut, `woods: [{name: lot pine, specific gravity: 0.36, tangential: 6.5, radial: 2.4, green moisture: 90}]
wood: {timbers: {species: Lot Pine}}`, ""))
	s := f.Timbers[0]
	if s.Wood.Name != "lot pine" || s.Moisture != 90 || s.Wood.Confidence != species.Given || s.Wood.Hard {
		t.Errorf("%+v at %g %%", s.Wood, s.Moisture)
	}
	for _, c := range []struct{ got, want float64 }{
		{s.Wood.FromGreen(species.Tangential, 12), 0.039}, {s.Wood.Oven, 0.3980}, {s.Density, 684},
	} {
		if math.Abs(c.got-c.want) > 1e-4*max(1, c.want) {
			t.Errorf("%g, want %g", c.got, c.want)
		}
	}
}

// What is written is what is offered, shortest first; else the usual.
func TestOffer(t *testing.T) {
	f := trial.Frame(t, "test.yaml", fmt.Sprintf(hut, `stock: {lengths: [16', 8', 12'], prices: {ewp: 1.85}, kerf: 1/4", billet: 5 x 20, lead screw: 1"}`, ""))
	o := f.Offer
	const in = 25.4
	if !slices.Equal(o.Lengths, []float64{96 * in, 144 * in, 192 * in}) || o.Usual || o.Kerf != in/4 || o.LeadScrew != in || o.Billet != [2]float64{5 * in, 20 * in} {
		t.Errorf("%+v", o)
	}
	if cost, ok := o.PriceOf("eastern white pine"); !ok || cost != 1.85 {
		t.Errorf("price %g, %v", cost, ok)
	}
	if _, ok := o.PriceOf("white oak"); ok {
		t.Error("a price that nobody gave")
	}
	if o := trial.Frame(t, "test.yaml", fmt.Sprintf(hut, "", "")).Offer; len(o.Lengths) != 7 || o.Lengths[0] != 96*in || o.Lengths[6] != 240*in || !o.Usual {
		t.Errorf("usual lengths %+v", o)
	}
	m := trial.Frame(t, "test.yaml", "frame: M\nunits: mm\nbuilding: {span: 3 m, bays: [3 m], eave: 2.4 m, roof: {shape: gable, pitch: 37 deg}}\n")
	if m.Units != measure.Metric || m.Offer.Lengths[0] != 2400 || m.Offer.Lengths[6] != 6000 || m.Offer.Kerf != 3 {
		t.Errorf("usual metric stock %+v", m.Offer)
	}
}
