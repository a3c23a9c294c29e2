package templates

import (
	"testing"

	"pegwright/draw/block"
	"pegwright/golden"
	"pegwright/samples/trial"
)

// One sheet of each kind of a frame of two sticks is as it was when last looked
// at, line by line.
func TestGoldenTemplates(t *testing.T) {
	seen := map[string]bool{}
	for _, s := range Sheets(trial.Sample(t, "rail-and-post"), nil) {
		if seen[s.Kind] {
			continue
		}
		seen[s.Kind] = true
		block.Number(s, 1, 1, "0123456789ab")
		golden.Compare(t, "rail-and-post."+s.Kind+".template.txt", s.Dump())
	}
	for _, kind := range []string{"check", "hole", "flap", "tenon", "pattern", "pole"} {
		if !seen[kind] {
			t.Errorf("no %s sheet", kind)
		}
	}
}
