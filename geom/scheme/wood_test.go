package scheme_test

import (
	"math"
	"testing"

	"pegwright/geom/wood"
	"pegwright/samples/trial"
)

// A wood of one's own serves as any other: 6.5 % tangential to 12 % is 3.9 %,
// its oven-dry gravity 0.36/(1 - 0.265 x 0.36) = 0.398 (Wood Handbook ch. 4, the
// laws worked by hand), green at 90 % it weighs 360 x 1.9 = 684 kg/m³.
func TestOwnWood(t *testing.T) {
	f := trial.Frame(t, "test.yaml", trial.Hut(`woods: [{name: lot pine, specific gravity: 0.36, tangential: 6.5, radial: 2.4, green moisture: 90}]
wood: {timbers: {species: Lot Pine}}`, ""))
	s := f.Timbers[0]
	if s.Wood.Name != "lot pine" || s.Moisture != 90 || s.Wood.Confidence != wood.Given || s.Wood.Hard {
		t.Errorf("%+v at %g %%", s.Wood, s.Moisture)
	}
	for _, c := range []struct{ got, want float64 }{
		{s.Wood.FromGreen(wood.Tangential, 12), 0.039}, {s.Wood.Oven, 0.3980}, {s.Density, 684},
	} {
		if math.Abs(c.got-c.want) > 1e-4*max(1, c.want) {
			t.Errorf("%g, want %g", c.got, c.want)
		}
	}
}
