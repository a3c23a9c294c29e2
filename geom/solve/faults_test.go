package solve_test

import (
	"strings"
	"testing"

	"pegwright/samples/trial"
)

// inOneLine is the rail with another of the given section running on from it.
func inOneLine(section, kind string) string {
	return trial.TwoSticks + "  on: {role: tie, section: " + section + ", from: [0, 6', 48], to: [0, 12', 48], faces: [top, west]}\njoints:\n  - {" + kind + ", of: on, end: start, into: rail}\n"
}

// Timbers and joints that can be laid and make no frame.
func TestJointsRefused(t *testing.T) {
	trial.Refused(t, "timbers do not meet", trial.TwoSticks+"  far: {role: post, section: 6 x 6, from: [20', 0, 0], to: [20', 0, 8']}\njoints:\n  - {kind: mortise and tenon, of: rail, end: start, into: far}\n",
		"into: far", "do not meet")
	trial.Refused(t, "timbers pass above each other", trial.TwoSticks+"  low: {role: post, section: 6 x 6, from: [0, 8', 0], to: [0, 8', 2']}\njoints:\n  - {kind: mortise and tenon, of: rail, end: end, into: low}\n",
		"into: low", "do not meet")
	trial.Refused(t, "parallel timbers", trial.TwoSticks+"  next: {role: post, section: 6 x 6, from: [0, 3', 0], to: [0, 3', 8']}\njoints:\n  - {kind: mortise and tenon, of: post, end: end, into: next}\n",
		"into: next", "meet")
	trial.Refused(t, "square joint of a sloping timber", trial.TwoSticks+"  slope: {role: strut, section: 4 x 4, from: [0, 6, 60], to: [0, 6', 90]}\njoints:\n  - {kind: mortise and tenon, of: slope, end: start, into: post}\n",
		"of: slope", "square")
	trial.Refused(t, "angled joint of a square timber", trial.TwoSticks+"joints:\n  - {kind: brace mortise and tenon, of: rail, end: start, into: post}\n", "of: rail", "square")
	trial.Refused(t, "scarf of timbers at an angle", trial.TwoSticks+"joints:\n  - {kind: half-lap scarf, of: rail, end: start, into: post}\n", "kind: half-lap scarf", "one line")
	trial.Refused(t, "scarf of unlike timbers", inOneLine("4 x 6", "kind: splayed scarf"), "kind: splayed scarf", "one section")
	trial.Refused(t, "butts too high", inOneLine("6 x 6", "kind: splayed scarf, scarf: {butt: 3}"), "butt: 3", "no slope")
	trial.Refused(t, "key too thick", inOneLine("6 x 6", "kind: half-lap scarf, scarf: {key: key, key size: 3}"), "key size: 3", "no wood")
	trial.Refused(t, "scarf drawn", inOneLine("6 x 6", "kind: half-lap scarf, drawbore: 1/8"), "drawbore: 1/8", "in line")
	trial.Refused(t, "scarf longer than its timber", inOneLine("6 x 6", "kind: half-lap scarf, scarf: {length: 30'}"), "length: 30'", "no room")
	trial.Refused(t, "drop too great", trial.TwoSticks+"joints:\n  - {kind: wedged through tenon, of: rail, end: start, into: post, drop: 3}\n", "drop: 3", "half the height")
	trial.Refused(t, "bridle of timbers in one line", trial.TwoSticks+"  on: {role: tie, section: 6 x 6, from: [0, 6', 48], to: [0, 12', 48], faces: [top, west]}\njoints:\n  - {kind: bridle, of: on, end: start, into: rail}\n",
		"kind: bridle", "one line")
	trial.Refused(t, "tenon thicker than its timber", trial.TwoSticks+"joints:\n  - {kind: mortise and tenon, of: rail, end: start, into: post, thickness: 7}\n", "thickness: 7", "thick")
	trial.Refused(t, "tenon thicker by layout", strings.Replace(trial.TwoSticks, "timbers:", "layout: {tie: {thickness: 6}}\ntimbers:", 1)+
		"joints:\n  - {kind: mortise and tenon, of: rail, end: start, into: post}\n", "thickness: 6", "thick")
	trial.Refused(t, "bore wider than the timber", trial.TwoSticks+"joints:\n  - {kind: mortise and tenon, of: rail, end: start, into: post, bore: 4}\n", "bore: 4", "bore")
	trial.Refused(t, "too many pegs", trial.TwoSticks+"joints:\n  - {kind: mortise and tenon, of: rail, end: start, into: post, pegs: 5}\n", "pegs: 5", "four pegs")
	trial.Refused(t, "too short to be a timber", trial.TwoSticks+"  stub: {role: post, section: 6 x 6, from: [9', 0, 0], to: [9', 0, 1/2]}\n", "stub:", "")
	trial.Refused(t, "too long to be a timber", trial.TwoSticks+"  endless: {role: post, section: 6 x 6, from: [9', 0, 0], to: [9', 0, 300']}\n", "endless:", "long")
	trial.Refused(t, "measured what is not there", trial.Hut("", "measured: {post-9-south: {foot: 6 x 6}}\n"), "post-9-south:", "no timber called")
	trial.Refused(t, "selector that picks no joint", trial.Hut("", "adjust:\n  - {joints: joists, drawbore: 1/8}\n"), "joints: joists", "is a joist")
	trial.Refused(t, "selector that picks no timber", trial.Hut("", "adjust:\n  - {timbers: braces, section: 4 x 4}\n"), "timbers: braces", "is a brace")
	trial.Refused(t, "selector with a slip in an id", trial.Hut("", "adjust:\n  - {joints: tei-1, drawbore: 1/8}\n"), "joints: tei-1", "no timber called tei-1")
	trial.Refused(t, "selector of a bent that is not there", trial.Hut("", "adjust:\n  - {joints: ties of bent 7, drawbore: 1/8}\n"), "bent 7", "no bent 7: the last is bent 2")
	trial.Refused(t, "selector whose words do not go together", trial.Hut("", "adjust:\n  - {joints: posts into ties, drawbore: 1/8}\n"), "posts into ties", "fits all of these words")
	trial.Refused(t, "bore of half the stick", trial.Hut("layout: {pegs: {bore: 5\"}}", ""), "bore: 5", "a bore of 5\" is more than half")
	trial.Refused(t, "seat depth that no line gives", trial.Hut("", "adjust:\n  - {joints: rafters into plates, seat depth: 1}\n"), "seat depth: 1", "is 1 27/32\" deep")
	trial.Refused(t, "price of no wood", trial.Hut("stock: {prices: {whit oak: 3}}", ""), "whit oak", "not in the table")
	trial.Refused(t, "two prices", trial.Hut("stock:\n  prices: {white oak: 3,\n    American white oak: 4}", ""), "American white oak", "two prices")
}

// A fault points at its own word, by line and column.
func TestFaultsPointAtTheWord(t *testing.T) {
	for _, c := range []struct {
		src       string
		line, col int
	}{
		{trial.Hut("", "joints:\n  - {kind: mortise and tenon, of: tei-1, end: start, into: post-1-south}\n"), 10, 35},
		{trial.Hut("", "joints:\n  - {kind: mortise and tenon, of: tie-1, end: start, into: pots-1-south}\n"), 10, 60},
		{trial.Hut("", "measured: {post-9-south: {foot: 6 x 6}}\n"), 9, 12},
		{trial.Hut("wood: {timbers: {species: eastern wite pine}}", ""), 3, 27},
	} {
		_, faults := trial.Solve("test.yaml", c.src)
		if len(faults) != 1 || faults[0].At.Line != c.line || faults[0].At.Col != c.col {
			t.Errorf("want one fault at %d:%d, got %v", c.line, c.col, faults)
		}
	}
}

// A near miss is met with a suggestion.
func TestMendsSuggest(t *testing.T) {
	for src, want := range map[string]string{
		trial.Hut("", "joints:\n  - {kind: mortise and tenon, of: tei-1, end: start, into: post-1-south}\n"): "tie-1",
		trial.Hut("wood: {timbers: {species: eastern wite pine}}", ""):                                       "eastern white pine",
		trial.Hut("wood: {timbers: {species: zebrawood}}", ""):                                               "cedar",
		// A softwood is no wood for pegs.
		trial.Hut("wood: {pegs: {species: zebrawood}}", ""): "name one of: European oak",
	} {
		if _, faults := trial.Solve("test.yaml", src); len(faults) != 1 || !strings.Contains(faults[0].Mend, want) {
			t.Errorf("the mend does not name %s: %v", want, faults)
		}
	}
}
