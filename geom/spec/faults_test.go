package spec

import (
	"fmt"
	"slices"
	"strings"
	"testing"
)

// badCase is an unusable description: exactly one fault, at that place, whose
// text and mend hold the words. Descriptions and places by hand.
type badCase struct {
	name, src  string
	line, col  int
	text, mend string
}

const head = "frame: F\nunits: in\n"

// house puts one more line, at the end, under building (line 4, column 3).
func house(line string) string {
	return head + "building: {span: 12', bays: [10'], eave: 8', \n  " + line + "}\n"
}

// stick puts text among the keys of one timber (line 3).
func stick(keys string) string {
	return head + "timbers: {a-1: {role: post, " + keys + "}}\n"
}

const fine = "building: {span: 12', bays: [10'], eave: 8'}\n" // 44 characters

func badCases() []badCase { return slices.Concat(textCases(), frameCases(), timberCases()) }

// textCases are no text, no YAML, or more than a description needs of it.
func textCases() []badCase {
	deep := strings.Repeat("[", 60) + strings.Repeat("]", 60)
	return []badCase{
		{"empty", "", 1, 1, "empty", "units"},
		{"comments only", "# nothing\n\n", 1, 1, "empty", "units"},
		{"null", "~\n", 1, 1, "empty", "units"},
		{"binary", "PK\x03\x04\x00\x00", 1, 1, "not a text file", "YAML"},
		{"utf-16", "\xff\xfef\x00", 1, 1, "UTF-16", "UTF-8"},
		{"invalid utf-8", "frame: F\nunits: \xff\n", 2, 8, "not UTF-8", "UTF-8"},
		{"control character", "frame: é\x07\n", 1, 9, "control character", "take it away"},
		{"hidden line end", "frame: a\u2028b\n", 1, 9, "control character", "take it away"},
		{"too large", strings.Repeat("# x\n", 1<<18+1), 1, 1, "1 MiB", "right file"},
		{"not yaml", "frame: F\nplace: ? [\n", 2, 1, "not YAML", "brackets"},
		{"tabs", "frame: F\nbuilding:\n\tspan: 12'\n", 3, 1, "indented with a tab", "spaces"},
		{"no colon", "frame: F\nunits in # what a number means: in, ft\n", 2, 1, "no colon", "units: in"},
		{"no space after the colon", "frame: F\nunits:in\nplace: x\n", 2, 6, "space is missing", "write units: in"},
		{"no colon inside", head + "building:\n  span 12'\n  bays: [10']\n", 4, 3, "no colon", "key: value"},
		{"too far right", head + "building:\n span: 12'\n  bays: [10']\n", 5, 3, "farther right than span on line 4", "same column"},
		{"no column of its own", head + "building:\n    span: 12'\n  bays: [10']\n", 5, 3, "no column of the keys above", "same column"},
		{"open bracket", head + "building:\n  bays: [10'\n  eave: 8'\n  roof: {shape: gable, pitch: 9 in 12}\n", 4, 9, "never closed", "close it with ]"},
		{"wrong bracket", head + "building: {span: 12', bays: [10'}, eave: 8'}\n", 3, 33, "does not fit the [", "close that one first with ]"},
		{"open quote", "frame: \"Tool shed\nunits: in\n" + fine, 1, 8, "quote is not closed", "inch mark"},
		{"half a title in quotes", "frame: 'Tool' shed\nunits: in\n" + fine, 1, 15, "goes on after its closing quote", "whole of it"},
		{"colon in a title", "frame: Shed: tools\nunits: in\n" + fine, 1, 12, "second colon", "in quotes"},
		{"sign before a title", "frame: @home\nunits: in\n" + fine, 1, 8, "cannot begin with @", `"@home"`},
		{"number sign before a title", "frame: #1 shed\nunits: in\n" + fine, 1, 1, "no value", "is a comment"},
		{"slip below a note of several lines", "frame: F\nunits: in\nnote: oak and\n  more oak\ndate: |\n  no colon\nplace x\n", 7, 1, "no colon", "key: value"},
		{"comma in a number", head + "building: {span: 2,4 m, bays: [10'], eave: 8'}\n", 3, 20, "follow a comma", "decimal point"},
		{"second document", head + fine + "---\nframe: G\n", 4, 1, "second", "of its own"},
		{"a list", "- frame\n- units\n", 1, 1, "not a list", "key: value"},
		{"a word", "frame\n", 1, 1, "not a single value", "key: value"},
		{"duplicate key", head + fine + "frame: G\n", 4, 1, "before, on line 1", "keep one"},
		{"anchor", "frame: &x F\nunits: in\nplace: *x\n" + fine, 1, 8, "anchors", "parameter"},
		{"lost alias", head + "place: é*\ndate: *x\n" + fine, 4, 7, "anchors", "parameter"},
		{"tag", "frame: !!str F\nunits: in\n" + fine, 1, 8, "tags", "take the tag away"},
		{"too deep", head + "building: " + deep + "\n", 3, 61, "50 deep", "brackets"},
		{"far too deep", head + "building: " + strings.Repeat("[", 11000) + "\n", 3, 1, "50 deep", "brackets"},
		{"list as key", head + fine + "[a, b]: c\n", 4, 1, "key must be a word", "key: value"},
	}
}

// frameCases go wrong in the keys of a frame, its wood, its building or its layout.
func frameCases() []badCase {
	return []badCase{
		{"bays without brackets", head + "building:\n  span: 12'\n  bays: 10', 12'\n  eave: 8'\n", 5, 9, "brackets", "[10', 12']"},
		{"unit of cloth", head + "building: {span: 8 yards, bays: [10'], eave: 8'}\n", 3, 20, "no unit called yards", "in, ft, mm"},
		{"file in centimetres", "frame: F\nunits: cm\n" + fine, 2, 8, "no meaning", "in, ft, mm, m"},
		{"file in Inches", "frame: F\nunits: Inches\n" + fine, 2, 8, "no meaning", "did you mean in?"},
		{"pitch with a colon", house("roof: {shape: gable, pitch: 9:12}"), 4, 31, "not a pitch", "did you mean 9 in 12?"},
		{"pitch of one number", house("roof: {shape: gable, pitch: 9}"), 4, 31, "not a pitch", "9 in 12, or 9 deg"},
		{"wall by its letter", house("openings: [{name: a, wall: s, width: 3', height: 6'}]"), 4, 30, "no meaning", "did you mean south?"},
		{"one leg", house("braces: {legs: 24}"), 4, 18, "two sizes", "with an x between"},
		{"legs of a giant", house("braces: {legs: 24' x 2400'}"), 4, 18, "larger than the legs of any brace, 32'-9", "counts in inches"},
		{"stick of 6 mm", head + "sections: {post: 6 mm x 150 mm}\n" + fine, 3, 18, "smaller than any stick", "counts in inches"},
		{"no frame", "units: in\n" + fine, 1, 1, "needs the key frame", "title"},
		{"no units", "frame: F\n" + fine, 1, 1, "needs the key units", "bare number"},
		{"unknown unit", "frame: F\nunits: yd\n" + fine, 2, 8, "no meaning", "in, ft, mm, m"},
		{"no timbers", head, 1, 1, "no timbers", "building"},
		{"unknown key", head + fine + "sectoins: {}\n", 4, 1, "no such key", "did you mean sections"},
		{"wood without gravity", head + fine + "woods: [{name: a, tangential: 6, radial: 2}]\n", 4, 9, "needs the key specific gravity", "green volume"},
		{"gravity of iron", head + fine + "woods: [{name: a, specific gravity: 7.8, tangential: 6, radial: 2}]\n", 4, 37, "0.2 to 1.2", "range"},
		{"shrinks too much", head + fine + "woods: [{name: a, specific gravity: 0.4, tangential: 60, radial: 2}]\n", 4, 54, "0.5 to 20", "range"},
		{"unknown key of a wood", head + fine + "woods: [{name: a, specific gravity: 0.4, tangential: 6, radial: 2, softwood: yes}]\n", 4, 68, "no such key", "hardwood"},
		{"no stock lengths", head + fine + "stock: {lengths: []}\n", 4, 18, "empty list", "take the key away"},
		{"stock of no length", head + fine + "stock: {lengths: [0]}\n", 4, 19, "greater than zero", "above zero"},
		{"negative kerf", head + fine + "stock: {kerf: -1/8}\n", 4, 15, "less than zero", "zero"},
		{"prices in words", head + fine + "stock: {prices: {oak: dear}}\n", 4, 23, "no parameter called dear", "parameters"},
		{"unknown inner key", house("raof: 3"), 4, 3, "no such key", "did you mean roof"},
		{"far key", house("colour: red"), 4, 3, "no such key", "write one of"},
		{"no value", head + "place:\n" + fine, 3, 1, "no value", "take it away"},
		{"list for text", "frame: [a]\nunits: in\n" + fine, 1, 8, "not a list", "text"},
		{"long title", "frame: " + strings.Repeat("a", 121) + "\nunits: in\n" + fine, 1, 8, "120 characters", "shorten"},
		{"emoji title", "frame: Hen 🐔 house\nunits: in\n" + fine, 1, 12, "no such character", "letters"},
		{"escaped control", "frame: \"a\\tb\"\nunits: in\n" + fine, 1, 8, "control character", "letters"},
		{"no span", head + "building: {bays: [10'], eave: 8'}\n", 3, 11, "needs the key span", "across"},
		{"zero span", head + "building: {span: 0, bays: [10'], eave: 8'}\n", 3, 18, "greater than zero", "above zero"},
		{"negative eave", head + "building: {span: 9', bays: [10'], eave: -8'}\n", 3, 41, "greater than zero", "above zero"},
		{"nan", head + "building: {span: .nan, bays: [10'], eave: 8'}\n", 3, 18, "not a number", "digits"},
		{"inf", head + "building: {span: .inf, bays: [10'], eave: 8'}\n", 3, 18, "not a number", "digits"},
		{"far too long", head + "building: {span: 99999 ft, bays: [10'], eave: 8'}\n", 3, 18, "kilometre", "unit"},
		{"half read length", head + "building: {span: 12' x, bays: [10'], eave: 8'}\n", 3, 22, "nothing joins", "between two values"},
		{"two readings", head + "building: {span: 12' - 6\", bays: [10'], eave: 8'}\n", 3, 18, "two ways", `7'-6"`},
		{"unknown parameter", head + "parameters: {width: 8'}\nbuilding: {span: widht, bays: [10'], eave: 8'}\n", 4, 18, "no parameter called widht", "did you mean width"},
		{"in quotes", head + "building: {span: '6 + b', bays: [10'], eave: 8'}\n", 3, 23, "no parameter called b", "name it"},
		{"cycle", head + "parameters: {a: b, b: 2 * a}\n" + fine, 3, 27, "needs itself", "length of its own"},
		{"self", head + "parameters: {a: a + 1}\nbuilding: {span: a, bays: [a], eave: a}\n", 3, 17, "needs itself", "length of its own"},
		{"bad parameter used", head + "parameters: {a: 6 6}\nbuilding: {span: a, bays: [a], eave: a}\n", 3, 19, "nothing joins", "between"},
		{"parameter name", head + "parameters: {in: 3}\n" + fine, 3, 14, "cannot name a parameter", "letter"},
		{"parameter path name", head + "parameters: {../a: 3}\n" + fine, 3, 14, "cannot name a parameter", "letter"},
		{"area", head + "parameters: {a: 3' * 2'}\n" + fine, 3, 20, "area", "plain number"},
		{"ratio", head + "building: {span: 12', bays: [10'/2'], eave: 8'}\n", 3, 30, "ratio", "multiply"},
		{"empty bays", head + "building: {span: 12', bays: [], eave: 8'}\n", 3, 29, "empty list", "one item"},
		{"many bays", head + "building: {span: 12', bays: [" + strings.Repeat("9,", 200) + "9], eave: 8'}\n", 3, 430, "more than 200", "divide"},
		{"yes or no", house("sills: perhaps"), 4, 10, "yes or no", "yes or no"},
		{"girts: yes", house("girts: yes"), 4, 10, "or no", "its keys"},
		{"word twice", house("braces: {legs: 2 x 2, in: [bents, bents]}"), 4, 37, "before", "once"},
		{"bad pitch", house("roof: {shape: gable, pitch: 9/12}"), 4, 31, "not a pitch", "9 in 12"},
		{"steep pitch", house("roof: {shape: gable, pitch: 80 deg}"), 4, 31, "between 1 and 75", "9 in 12"},
		{"shape", house("roof: {shape: gabel, pitch: 9 in 12}"), 4, 17, "no meaning", "did you mean gable"},
		{"no roof pitch", house("roof: {shape: shed}"), 4, 9, "needs the key pitch", "slope"},
		{"opening name", house("openings: [{name: a/b, wall: east, width: 3', height: 6'}]"), 4, 21, "cannot hold /", "hyphens"},
		{"no such bay", house("openings: [{name: a, wall: north, bay: 2, width: 3', height: 6'}]"), 4, 42, "last bay of the building is bay 1", "number of one"},
		{"half a bay", house("openings: [{name: a, wall: north, bay: 1.5, width: 3', height: 6'}]"), 4, 42, "whole number", "range"},
		{"no section", head + "sections: {post: 6}\n" + fine, 3, 18, "two sizes", "6 x 8"},
		{"zero section", head + "sections: {post: 0 x 6}\n" + fine, 3, 18, "greater than zero", "above zero"},
		{"feet sections", "frame: F\nunits: ft\nsections: {post: 6 x 6}\n" + fine, 3, 18, "larger than any stick, 4'-11", "counts in feet"},
		{"role", head + "sections: {pots: 6 x 6}\n" + fine, 3, 12, "no such role", "did you mean post"},
		{"role twice", head + "sections: {post: 6 x 6, posts: 6 x 8}\n" + fine, 3, 25, "before", "keep one"},
		{"seasoning", head + "wood: {timbers: {seasoning: wet}}\n" + fine, 3, 29, "no meaning", "green"},
		{"moisture", head + "wood: {pegs: {seasoning: 300%}}\n" + fine, 3, 26, "200 %", "19%"},
		{"layout role", head + "layout: {brasses: {bore: 1}}\n" + fine, 3, 10, "no such key", "did you mean brace"},
		{"negative housing", head + "layout: {housing: -1}\n" + fine, 3, 19, "less than zero", "zero"},
		{"set twice", head + "layout: {bore: 1, pegs: {bore: 1}}\n" + fine, 3, 32, "another key", "keep one"},
		{"peg count", head + "layout: {pegs: 1 in}\n" + fine, 3, 16, "plain number", "unit away"},
	}
}

// timberCases go wrong in single timbers, joints, selectors or the paper.
func timberCases() []badCase {
	return []badCase{
		{"timber id", head + "timbers: {Post 1: {role: post, section: 6 x 6, from: [0,0,0], to: [0,0,9]}}\n", 3, 11, "small letters", "post-1-north"},
		{"no place", stick("section: 6 x 6"), 3, 11, "where this timber lies", "from and to"},
		{"one end", stick("section: 6 x 6, from: [0,0,0]"), 3, 11, "where this timber lies", "from and to"},
		{"no length", stick("section: 6 x 6, from: [0,0,0], to: [0,0,0]"), 3, 11, "same place", "other end"},
		{"two coordinates", stick("section: 6 x 6, from: [0,0], to: [0,0,9]"), 3, 51, "three lengths", "[x, y, z]"},
		{"no stick size", stick("from: [0,0,0], to: [0,0,9]"), 3, 11, "no section", "post"},
		{"opposite faces", stick("section: 6 x 6, from: [0,0,0], to: [0,0,9], faces: [east, west]"), 3, 80, "arris", "neighbours"},
		{"lost receiver", head + "timbers:\n  a-1: {role: post, section: 6 x 6, from: [0,0,0], to: [0,0,9]}\n" +
			"  b-1: {role: brace, section: 3 x 5, between: [a-1, a-11], legs: 2 x 2}\n", 5, 53, "no timber with this id", "did you mean a-1?"},
		{"joint kind", head + fine + "joints: [{kind: morticed, of: a-1, end: end, into: b-1}]\n", 4, 17, "no meaning", "write one of"},
		{"joint of", head + fine + "joints: [{kind: bridle, end: end, into: b-1}]\n", 4, 10, "needs the key of", "entering timber"},
		{"flare too steep", head + fine + "joints: [{kind: half-dovetail lap, of: a-1, into: b-1, flare: 1 in 2}]\n", 4, 63, "between 1 in 4", "1 in 7"},
		{"no flare", head + fine + "joints: [{kind: half-dovetail lap, of: a-1, into: b-1, flare: seventh}]\n", 4, 63, "not a flare", "1 in 7"},
		{"face 5", head + fine + "joints: [{kind: half lap, of: a-1, into: b-1, into face: 5}]\n", 4, 58, "from 1 to 4", "range"},
		{"joint id twice", head + fine + "joints:\n  - {id: j, kind: bridle, of: a-1, end: end, into: b-1}\n  - {id: j, kind: bridle, of: a-2, end: end, into: b-2}\n", 6, 10, "another joint", "own"},
		{"measured twice", head + fine + "measured: {a-1: {foot: 6 x 6, start: 6 x 6}}\n", 4, 38, "another key", "keep one"},
		{"selector word", head + fine + "adjust: [{joints: braces of bend 1, bore: 1}]\n", 4, 29, "bent or bay", "[all | role"},
		{"selector place", head + fine + "adjust: [{joints: 'braces, sills of', bore: 1}]\n", 4, 34, "bent or bay", "[all | role"},
		{"selector all", head + fine + "adjust: [{joints: all braces, bore: 1}]\n", 4, 19, "stands alone", "[all | role"},
		{"selector twice", head + fine + "adjust: [{joints: braces ties, bore: 1}]\n", 4, 26, "said twice", "[all | role"},
		{"selector end", head + fine + "adjust: [{joints: braces into, bore: 1}]\n", 4, 26, "is missing", "[all | role"},
		{"selector role", head + fine + "adjust: [{joints: brases, bore: 1}]\n", 4, 19, "nearest: brace", "[all | role"},
		{"selector number", head + fine + "adjust: [{joints: braces of bent two, bore: 1}]\n", 4, 34, "needs one number", "[all | role"},
		{"selector wall", head + fine + "adjust: [{joints: braces in the up wall, bore: 1}]\n", 4, 33, "name a wall", "[all | role"},
		{"no selector", head + fine + "adjust: [{bore: 1}]\n", 4, 10, "what it changes", "selector"},
		{"both selectors", head + fine + "adjust: [{joints: all, timbers: all, trim: 1}]\n", 4, 10, "not both", "two"},
		{"changes nothing", head + fine + "adjust: [{joints: all}]\n", 4, 10, "changes nothing", "setting"},
		{"joint key on timbers", head + fine + "adjust: [{timbers: all, bore: 1}]\n", 4, 25, "no such key", "write one of"},
		{"scarf key", head + "layout: {scarf: {key: wedge}}\n" + fine, 3, 23, "no meaning", "did you mean wedges"},
		{"undercut", head + "layout: {scarf: {undercut: 13}}\n" + fine, 3, 28, "0 to 12", "range"},
		{"scarf word", head + "layout: {scarf: {lenght: 3}}\n" + fine, 3, 18, "no such key", "did you mean length"},
		{"taper", head + "layout: {taper: 2}\n" + fine, 3, 17, "6 to 40", "range"},
		{"drop", head + "layout: {drop: 0}\n" + fine, 3, 16, "greater than zero", "above zero"},
		{"proud", head + "layout: {proud: -1}\n" + fine, 3, 17, "less than zero", "zero"},
		{"roll for drawings", head + fine + "paper: {sheets: roll 24 in}\n", 4, 17, "no meaning", "letter"},
		{"printer far off", head + fine + "paper: {printed along: 94 mm}\n", 4, 24, "between 98 mm and 102 mm", "100 %"},
		{"paper", head + fine + "paper: {sheets: a5}\n", 4, 17, "no meaning", "did you mean a4"},
		{"design value", head + fine + "design: {snow: [1]}\n", 4, 16, "not a list", "text"},
	}
}

func TestBadDescriptions(t *testing.T) {
	for _, c := range badCases() {
		t.Run(c.name, func(t *testing.T) {
			_, faults := Read("f", []byte(c.src), nil)
			if len(faults) != 1 {
				t.Fatalf("%d faults, want one:\n%v", len(faults), faults)
			}
			f := faults[0]
			if f.At.Line != c.line || f.At.Col != c.col {
				t.Errorf("at %v, want %d:%d: %v", f.At, c.line, c.col, f)
			}
			if !strings.Contains(f.Text, c.text) || !strings.Contains(f.Mend, c.mend) {
				t.Errorf("%v\nwant %q and %q", f, c.text, c.mend)
			}
		})
	}
}

// Many faults at once: every one, once, in file order.
func TestAllFaultsAtOnce(t *testing.T) {
	_, faults := Read("f", []byte("units: in\nframe: F\nbuilding: {span: 0, bays: [1, x2, 0], eave: -1, colour: red}\npaper: {sheets: a9}\n"), nil)
	var got []string
	for _, f := range faults {
		got = append(got, fmt.Sprint(f.At.Line, ":", f.At.Col))
	}
	if want := "3:18 3:31 3:35 3:45 3:49 4:17"; strings.Join(got, " ") != want {
		t.Errorf("%v, want %s\n%v", got, want, faults)
	}
}

func TestFaultsAreCapped(t *testing.T) {
	_, faults := Read("f", []byte(head+"building: {span: 1, eave: 1, bays: ["+strings.Repeat("0,", 150)+"0]}\n"), nil)
	if len(faults) != 101 || !strings.Contains(faults[100].Text, "51 more") {
		t.Errorf("%d faults, last %v", len(faults), faults[len(faults)-1])
	}
}
