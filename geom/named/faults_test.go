package named_test

import (
	"strings"
	"testing"

	"pegwright/samples/trial"
)

// What is named one by one and cannot be laid.
func TestNamedRefused(t *testing.T) {
	trial.Refused(t, "no such enterer", trial.Hut("", "joints:\n  - {kind: mortise and tenon, of: tei-1, end: start, into: post-1-south}\n"), "of: tei-1", "no timber called")
	trial.Refused(t, "no such receiver", trial.Hut("", "joints:\n  - {kind: mortise and tenon, of: tie-1, end: start, into: post-9-south}\n"), "into: post-9", "no timber called")
	trial.Refused(t, "the same joint twice", trial.TwoSticks+"joints:\n  - {kind: mortise and tenon, of: rail, end: start, into: post}\n  - {kind: mortise and tenon, of: rail, end: start, into: post, pegs: 2}\n",
		"pegs: 2", "already")
	trial.Refused(t, "brace between posts", trial.TwoSticks+"  other: {role: post, section: 6 x 6, from: [0, 9', 0], to: [0, 9', 8']}\n  brace: {role: brace, section: 3 x 5, between: [post, other], legs: 24 x 24}\n",
		"between: [post, other]", "one plumb and one level")
	trial.Refused(t, "brace on a post that leans a little", strings.Replace(trial.TwoSticks, "from: [0, 0, 0]", "from: [1, 0, 0]", 1)+"  brace: {role: brace, section: 3 x 5, between: [post, rail], legs: 24 x 24}\n",
		"between: [post, rail]", "one plumb and one level")
	trial.Refused(t, "brace on a rail askew to its post", strings.Replace(trial.TwoSticks, "to: [0, 6', 48]", "to: [36, 68.35, 48]", 1)+"  brace: {role: brace, section: 3 x 5, between: [post, rail], legs: 24 x 24}\n",
		"between: [post, rail]", "square to a face of its post")
	trial.Refused(t, "brace to nothing", trial.Hut("", "timbers:\n  extra: {role: brace, section: 3 x 5, between: [post-1-south, tei-1], legs: 24 x 24}\n"), "between: [", "no timber called")
	trial.Refused(t, "reference face at the end", trial.TwoSticks+"  odd: {role: post, section: 6 x 6, from: [9', 0, 0], to: [9', 0, 8'], faces: [top, west]}\n", "faces: [top, west]", "reference faces")
	trial.Refused(t, "generated name taken", trial.Hut("", "timbers:\n  tie-1: {role: post, section: 6 x 6, from: [30', 0, 0], to: [30', 0, 8']}\n"), "tie-1:", "already")
}
