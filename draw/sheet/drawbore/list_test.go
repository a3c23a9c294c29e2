package drawbore

import (
	"math"
	"testing"

	"pegwright/draw/scene"
	"pegwright/draw/sheet/tidy"
	"pegwright/samples/trial"
)

// The lead that a drawbore sheet draws has the tip and the taper that the list
// of pegs has for a peg of that bore and length.
func TestDrawboreSheetsTaperAsTheListDoes(t *testing.T) {
	for _, name := range trial.Drawn() {
		f := trial.Sample(t, name)
		rows := tidy.ListRows(t, f, "pegs")
		n := 0
		for _, g := range scene.Groups(f) {
			d, ok := newBored(f, g)
			if !ok || !d.enters {
				continue
			}
			n++
			found := false
			for _, r := range rows {
				found = found || isLength(r["bore"], d.p.Bore) && isLength(r["length"], d.p.Length) && isLength(r["tip Ø"], d.lead.Tip) && isLength(r["taper length"], d.lead.Length)
			}
			if !found {
				t.Errorf("%s: no row of the list has the tip %.2f and the taper %.2f of %s", name, d.lead.Tip, d.lead.Length, d.p.ID)
			}
		}
		if n == 0 {
			t.Errorf("%s: no drawbore sheet was looked at", name)
		}
	}
}

func isLength(v any, mm float64) bool {
	x, ok := v.(float64)
	return ok && math.Abs(x-mm) < 0.01
}
