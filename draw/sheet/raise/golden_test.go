package raise

import (
	"strings"
	"testing"

	"pegwright/golden"
	"pegwright/samples/trial"
)

// The raising sheet of the smallest sample is as it was when last looked at.
func TestGoldenRaise(t *testing.T) {
	sheets := Sheets(trial.Sample(t, "rail-and-post"))
	golden.Compare(t, "rail-and-post.raise.txt", withoutBlock(sheets[len(sheets)-1].Dump()))
}

// withoutBlock leaves border and title block out of a dump: every sheet has them.
func withoutBlock(dump string) string {
	var kept []string
	for _, l := range strings.Split(dump, "\n") {
		if !strings.Contains(l, `layer="title"`) && !strings.Contains(l, `layer="border"`) {
			kept = append(kept, l)
		}
	}
	return strings.Join(kept, "\n")
}
