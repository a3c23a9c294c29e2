package sheet

import (
	"os"
	"path/filepath"
	"testing"

	"pegwright/draw/block"
	"pegwright/samples/trial"
)

// One sheet of each kind of a frame of two sticks is drawn as it was, line by
// line: a change that is meant shows in the diff of its golden file.
func TestGoldenSheets(t *testing.T) {
	f := trial.Sample(t, "rail-and-post")
	seen := map[string]bool{}
	for _, s := range All(f, nil) {
		switch s.Kind {
		case "timber", "joint", "drawbore", "elevation", "plan":
		default:
			continue
		}
		if seen[s.Kind] {
			continue
		}
		seen[s.Kind] = true
		block.Number(s, 1, 1, "0123456789ab")
		path := filepath.Join("..", "..", "golden", "rail-and-post."+s.Kind+".sheet.txt")
		got := s.Dump()
		if *update {
			if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
				t.Fatal(err)
			}
			continue
		}
		want, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if got != string(want) {
			t.Errorf("%s differs from %s; see with -update what has changed", s.ID, path)
		}
	}
	for _, kind := range []string{"timber", "joint", "drawbore"} {
		if !seen[kind] {
			t.Errorf("no %s sheet", kind)
		}
	}
}
