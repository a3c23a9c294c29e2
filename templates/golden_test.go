package templates

import (
	"testing"

	"pegwright/draw/block"
	"pegwright/golden"
	"pegwright/samples/trial"
)

// One sheet of each kind of a frame of two sticks is as it was when last looked
// at, line by line; so is one of an end that is cut aslant, which that frame has
// not got.
func TestGoldenTemplates(t *testing.T) {
	scarf := trial.Frame(t, "splayed-scarf.yaml", hard["splayed scarf"])
	for _, s := range Sheets(scarf, nil) {
		if s.Kind == "end" {
			block.Number(s, 1, 1, "0123456789ab")
			golden.Compare(t, "splayed-scarf.end.template.txt", s.Dump())
			break
		}
	}
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
