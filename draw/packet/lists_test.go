package packet

import (
	"strings"
	"testing"

	"pegwright/geom"
	"pegwright/geom/vec"
)

// The finding of the input stops the joints a and b: the lists forbid the bore
// of a under the number that the index page gives the finding, and not that
// of c.
func TestListsForbidWhatIsStopped(t *testing.T) {
	in := input()
	s := [2]float64{150, 200}
	bore := func(joint string, x float64) geom.Bore {
		return geom.Bore{Joint: joint, From: vec.V{X: x, Y: -8, Z: 100}, To: vec.V{X: x, Y: 158, Z: 100}, Diameter: 25, Entry: 1, Exit: 3}
	}
	in.Frame.Timbers = []*geom.Timber{{ID: "post", Length: 1000, Section: s, Ideal: s, Blank: geom.BlankOf(1000, s, s),
		Place: vec.Identity, Bores: []geom.Bore{bore("a", 100), bore("c", 900)}}}
	files := build(t, in)
	const no = "DO NOT BORE – finding 1"
	lines := strings.Split(string(files["lists/bores.csv"]), "\n")
	if len(lines) < 3 || !strings.Contains(lines[1], no) || strings.Contains(lines[2], no) {
		t.Errorf("bores:\n%s", strings.Join(lines, "\n"))
	}
	if strings.Count(string(files["lists.json"]), no) != 1 {
		t.Errorf("lists.json does not forbid one bore:\n%s", files["lists.json"])
	}
}
