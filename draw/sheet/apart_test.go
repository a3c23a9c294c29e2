package sheet

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"pegwright/draw/setout"
	"pegwright/draw/sheet/tidy"
	"pegwright/geom/vec"
	"pegwright/samples"
	"pegwright/samples/trial"
)

// Pulled apart, a long frame stands on the first sheet without names; then each
// part names the posts and the tie of both its bents, every timber is named on a
// part or told in a title block, and leaders run clear.
func TestALongFrameIsPulledApartInParts(t *testing.T) {
	f := trial.LongBarn(t, "letter")
	list := Apart(f)
	if len(list) < 3 {
		t.Fatalf("%d sheets", len(list))
	}
	if words := tidy.TextsOn(list[:1], ""); strings.Contains(words, "\npost-") {
		t.Error("the overview names timbers")
	}
	for i, s := range list[1:] {
		if _, faults := tidy.Leaders(s); len(faults) > 0 {
			t.Error(strings.Join(faults, "\n"))
		}
		tidy.Check(t, s)
		_, last, _ := strings.Cut(s.Title, "bents ")
		var a, b int
		if n, _ := fmt.Sscanf(last, "%d to %d", &a, &b); n != 2 || i == 0 && a != 1 || i == len(list)-2 && b != 8 {
			t.Errorf("part %d: title %q", i+1, s.Title)
		}
		for _, id := range []string{"post-%d-south", "post-%d-north", "tie-%d"} {
			for _, n := range []int{a, b} {
				if id := fmt.Sprintf(id, n); !strings.Contains(tidy.TextsOn(list[i+1:i+2], ""), id) {
					t.Errorf("%s does not name %s", s.ID, id)
				}
			}
		}
	}
	all := tidy.TextsOn(list, "")
	for _, x := range f.Timbers {
		if !strings.Contains(all, "\n"+x.ID+"\n") && !regexp.MustCompile(`no room to name .*\b`+x.ID+`\b`).MatchString(all) {
			t.Errorf("%s is not told", x.ID)
		}
	}
}

// Pulled apart, every timber stands clear of those of other layers: no two
// sub-assemblies overlap where they are drawn.
func TestApartIsApart(t *testing.T) {
	f := trial.Sample(t, samples.Default())
	lines, numbers := setout.BentLines(f)
	shift := func(id string) vec.V { return apartShift(f, f.Timber(id), lines, numbers) }
	if a, b := shift("post-1-south"), shift("post-2-south"); b.X-a.X < 300 || a.Z != b.Z {
		t.Errorf("bents are carried %v and %v", a, b)
	}
	if a, b, c := shift("sill-south"), shift("plate-south"), shift("rafter-1-south"); !(a.Z < 0 && b.Z > 0 && c.Z > b.Z) {
		t.Errorf("layers are carried %v %v %v", a, b, c)
	}
	if a, b := shift("post-1-south"), shift("tie-1"); a != b {
		t.Errorf("a bent comes apart: %v %v", a, b)
	}
}
