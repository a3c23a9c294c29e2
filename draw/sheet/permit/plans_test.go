package permit

import (
	"strings"
	"testing"

	"pegwright/draw/scene"
	"pegwright/draw/sheet/plan"
	"pegwright/draw/sheet/tidy"
	"pegwright/samples"
	"pegwright/samples/trial"
)

// The permit set has none of the crew's diagonals, and tells the section of every
// timber that its plans and elevations name, with the openings' clear sizes as
// the description of the sample asks for them.
func TestPermitSpeaksToAnOfficial(t *testing.T) {
	f := trial.Sample(t, samples.Default())
	words := tidy.TextsOn(Sheets(f, plan.Of(f), scene.Groups(f)), "permit-")
	for _, no := range []string{"Check square", "foot shoulder", "bearing line", "\npost-1-south\n"} {
		if strings.Contains(words, no) {
			t.Errorf("the permit set says %q", no)
		}
	}
	for _, must := range []string{"tie 6 x 7", "2 posts 6 x 6", "2 braces 3 x 5", "10 rafters 4 x 6", "door, clear", "2'-10\" x 6'-2\"", "2'-0\" x 1'-8\""} {
		if !strings.Contains(words, "\n"+must+"\n") {
			t.Errorf("the permit set does not say %q", must)
		}
	}
	// The peak that is left when a rafter's head is cut, not its stick's corner, which
	// is 1 in higher; and the room under a tie of 7 in with its top at 5'-8".
	for _, must := range []string{"10'-0 9/16\"  top of rafter", "5'-1\"  under tie"} {
		if !strings.Contains(words, "\n"+must+"\n") {
			t.Errorf("the permit set does not say %q", must)
		}
	}
	for _, s := range Sheets(f, plan.Of(f), scene.Groups(f)) {
		for _, it := range s.Items {
			if it.Head().Mark == "diagonal" {
				t.Errorf("%s has a diagonal", s.ID)
			}
		}
	}
}
