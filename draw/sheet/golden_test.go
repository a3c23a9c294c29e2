package sheet

import (
	"testing"

	"pegwright/draw/block"
	"pegwright/golden"
	"pegwright/samples/trial"
)

// One sheet of each kind of a frame of two sticks is drawn as it was, line by
// line: a change that is meant shows in the diff of its golden file.
func TestGoldenSheets(t *testing.T) {
	f := trial.Sample(t, "rail-and-post")
	seen := map[string]bool{}
	for _, s := range All(f, nil) {
		if s.Kind == "raise" {
			continue // has a golden file of its own
		}
		if seen[s.Kind] {
			continue
		}
		seen[s.Kind] = true
		block.Number(s, 1, 1, "0123456789ab")
		golden.Compare(t, "rail-and-post."+s.Kind+".sheet.txt", s.Dump())
	}
	for _, kind := range []string{"cover", "frame", "plan", "elevation", "list", "timber", "joint", "drawbore", "permit"} {
		if !seen[kind] {
			t.Errorf("no %s sheet", kind)
		}
	}
}
