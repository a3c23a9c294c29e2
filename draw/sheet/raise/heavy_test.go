package raise

import (
	"strings"
	"testing"

	"pegwright/samples"
	"pegwright/samples/trial"
)

// What weighs more than ten times 23 kg, the load constant of the revised NIOSH
// lifting equation (1994), is not left to hands. Weights are summed here from
// volumes and densities. The pieces of work are called only by roles that the
// frame has.
func TestHeavyLiftsAreNotLeftToHands(t *testing.T) {
	heavy := 0
	for _, name := range samples.Names() {
		f := trial.Sample(t, name)
		r := &raising{f: f, bodies: map[string]raisePart{}}
		r.gather()
		most := 0.0
		for _, s := range f.Steps {
			kg := 0.0
			for _, id := range s.Move {
				tm := f.Timber(id)
				kg += tm.NetVolume / 1e9 * tm.Density
			}
			most = max(most, kg)
		}
		text := strings.Join(r.things(), " ")
		rigged := strings.Contains(text, "a machine, or a rigging plan")
		if rigged != (most > 10*23) || rigged == strings.Contains(text, "Hands or a machine") {
			t.Errorf("%s: %.0f kg: %s", name, most, text)
		}
		if rigged {
			heavy++
		}
		for _, p := range r.phases() {
			for _, role := range []string{"ridge", "girt", "post", "header", "brace", "purlin"} {
				if strings.Contains(strings.ToLower(p.what), role) && !holds(r, role) {
					t.Errorf("%s: %q, and the frame has no %s", name, p.what, role)
				}
			}
		}
	}
	if heavy < 2 {
		t.Errorf("%d samples have a lift for a machine", heavy)
	}
}

// holds reports whether a timber of the frame has the role, or one named after it.
func holds(r *raising, role string) bool {
	for _, t := range r.f.Timbers {
		if strings.Contains(t.Role, role) {
			return true
		}
	}
	return false
}
