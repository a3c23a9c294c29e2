package solve_test

import (
	"slices"
	"testing"

	"pegwright/geom/measure"
	"pegwright/samples/trial"
)

// What is written is what is offered, shortest first; else the usual.
func TestOffer(t *testing.T) {
	f := trial.Frame(t, "test.yaml", trial.Hut(`stock: {lengths: [16', 8', 12'], prices: {ewp: 1.85}, kerf: 1/4", billet: 5 x 20, lead screw: 1"}`, ""))
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
	if o := trial.Frame(t, "test.yaml", trial.Hut("", "")).Offer; len(o.Lengths) != 7 || o.Lengths[0] != 96*in || o.Lengths[6] != 240*in || !o.Usual {
		t.Errorf("usual lengths %+v", o)
	}
	m := trial.Frame(t, "test.yaml", "frame: M\nunits: mm\nbuilding: {span: 3 m, bays: [3 m], eave: 2.4 m, roof: {shape: gable, pitch: 37 deg}}\n")
	if m.Units != measure.Metric || m.Offer.Lengths[0] != 2400 || m.Offer.Lengths[6] != 6000 || m.Offer.Kerf != 3 {
		t.Errorf("usual metric stock %+v", m.Offer)
	}
}
