package sheet

import (
	"testing"

	"pegwright/draw/sheet/plan"
	"pegwright/draw/sheet/tidy"
	"pegwright/samples/trial"
)

// No leader of a name runs through a word, crosses another leader or crosses a
// line of a dimension.
func TestLeadersRunClear(t *testing.T) {
	f := trial.Sample(t, "cart-barn")
	n := 0
	for _, s := range append(append(Views(f), Apart(f)...), plan.Of(f).Sheets()...) {
		found, faults := tidy.Leaders(s)
		n += found
		for _, fault := range faults {
			t.Error(fault)
		}
	}
	if n < 20 {
		t.Errorf("only %d leaders found", n)
	}
}
