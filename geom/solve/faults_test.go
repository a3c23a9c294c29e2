package solve_test

import (
	"fmt"
	"strings"
	"testing"

	"pegwright/geom/solve"
	"pegwright/geom/spec"
	"pegwright/samples/trial"
)

const twoSticks = `frame: Two
units: in
timbers:
  post: {role: post, section: 6 x 6, from: [0, 0, 0], to: [0, 0, 8'], faces: [south, west]}
  rail: {role: tie, section: 6 x 6, from: [0, 6, 48], to: [0, 6', 48], faces: [top, west]}
`

// inOneLine is the rail with another of the given section running on from it.
func inOneLine(section, kind string) string {
	return twoSticks + "  on: {role: tie, section: " + section + ", from: [0, 6', 48], to: [0, 12', 48], faces: [top, west]}\njoints:\n  - {" + kind + ", of: on, end: start, into: rail}\n"
}

const hut = `frame: Hut
units: in
%s
building:
  span: 10'
  bays: [10']
  eave: 8'
  roof: {shape: gable, pitch: 9 in 12}
%s`

// Descriptions that can be read and make no frame. Each must be faulted at the
// line of the word that is wrong, marked here with the text that the line
// holds, and with a mend.
var unusable = []struct {
	name, src, line, says string
}{
	{"no such wood", fmt.Sprintf(hut, "wood: {timbers: {species: eastern wite pine}}", ""), "eastern wite pine", "not in the table"},
	{"no such peg wood", fmt.Sprintf(hut, "wood: {pegs: {species: lignite}}", ""), "lignite", "not in the table"},
	{"wood of one timber", twoSticks + "  extra: {role: post, section: 6 x 6, species: cardboard, from: [9', 0, 0], to: [9', 0, 8']}\n", "cardboard", "not in the table"},
	{"no such enterer", fmt.Sprintf(hut, "", "joints:\n  - {kind: mortise and tenon, of: tei-1, end: start, into: post-1-south}\n"), "of: tei-1", "no timber called"},
	{"no such receiver", fmt.Sprintf(hut, "", "joints:\n  - {kind: mortise and tenon, of: tie-1, end: start, into: post-9-south}\n"), "into: post-9", "no timber called"},
	{"timbers do not meet", twoSticks + "  far: {role: post, section: 6 x 6, from: [20', 0, 0], to: [20', 0, 8']}\njoints:\n  - {kind: mortise and tenon, of: rail, end: start, into: far}\n",
		"into: far", "do not meet"},
	{"timbers pass above each other", twoSticks + "  low: {role: post, section: 6 x 6, from: [0, 8', 0], to: [0, 8', 2']}\njoints:\n  - {kind: mortise and tenon, of: rail, end: end, into: low}\n",
		"into: low", "do not meet"},
	{"parallel timbers", twoSticks + "  next: {role: post, section: 6 x 6, from: [0, 3', 0], to: [0, 3', 8']}\njoints:\n  - {kind: mortise and tenon, of: post, end: end, into: next}\n",
		"into: next", "meet"},
	{"square joint of a sloping timber", twoSticks + "  slope: {role: strut, section: 4 x 4, from: [0, 6, 60], to: [0, 6', 90]}\njoints:\n  - {kind: mortise and tenon, of: slope, end: start, into: post}\n",
		"of: slope", "square"},
	{"angled joint of a square timber", twoSticks + "joints:\n  - {kind: brace mortise and tenon, of: rail, end: start, into: post}\n", "of: rail", "square"},
	{"scarf of timbers at an angle", twoSticks + "joints:\n  - {kind: half-lap scarf, of: rail, end: start, into: post}\n", "kind: half-lap scarf", "one line"},
	{"scarf of unlike timbers", inOneLine("4 x 6", "kind: splayed scarf"), "kind: splayed scarf", "one section"},
	{"butts too high", inOneLine("6 x 6", "kind: splayed scarf, scarf: {butt: 3}"), "butt: 3", "no slope"},
	{"key too thick", inOneLine("6 x 6", "kind: half-lap scarf, scarf: {key: key, key size: 3}"), "key size: 3", "no wood"},
	{"scarf drawn", inOneLine("6 x 6", "kind: half-lap scarf, drawbore: 1/8"), "drawbore: 1/8", "in line"},
	{"scarf longer than its timber", inOneLine("6 x 6", "kind: half-lap scarf, scarf: {length: 30'}"), "length: 30'", "no room"},
	{"drop too great", twoSticks + "joints:\n  - {kind: wedged through tenon, of: rail, end: start, into: post, drop: 3}\n", "drop: 3", "half the height"},
	{"bridle of timbers in one line", twoSticks + "  on: {role: tie, section: 6 x 6, from: [0, 6', 48], to: [0, 12', 48], faces: [top, west]}\njoints:\n  - {kind: bridle, of: on, end: start, into: rail}\n",
		"kind: bridle", "one line"},
	{"tenon thicker than its timber", twoSticks + "joints:\n  - {kind: mortise and tenon, of: rail, end: start, into: post, thickness: 7}\n", "thickness: 7", "thick"},
	{"tenon thicker by layout", strings.Replace(twoSticks, "timbers:", "layout: {tie: {thickness: 6}}\ntimbers:", 1) +
		"joints:\n  - {kind: mortise and tenon, of: rail, end: start, into: post}\n", "thickness: 6", "thick"},
	{"bore wider than the timber", twoSticks + "joints:\n  - {kind: mortise and tenon, of: rail, end: start, into: post, bore: 4}\n", "bore: 4", "bore"},
	{"too many pegs", twoSticks + "joints:\n  - {kind: mortise and tenon, of: rail, end: start, into: post, pegs: 5}\n", "pegs: 5", "four pegs"},
	{"the same joint twice", twoSticks + "joints:\n  - {kind: mortise and tenon, of: rail, end: start, into: post}\n  - {kind: mortise and tenon, of: rail, end: start, into: post, pegs: 2}\n",
		"pegs: 2", "already"},
	{"brace between posts", twoSticks + "  other: {role: post, section: 6 x 6, from: [0, 9', 0], to: [0, 9', 8']}\n  brace: {role: brace, section: 3 x 5, between: [post, other], legs: 24 x 24}\n",
		"between: [post, other]", "one plumb and one level"},
	{"brace on a post that leans a little", strings.Replace(twoSticks, "from: [0, 0, 0]", "from: [1, 0, 0]", 1) + "  brace: {role: brace, section: 3 x 5, between: [post, rail], legs: 24 x 24}\n",
		"between: [post, rail]", "one plumb and one level"},
	{"brace on a rail askew to its post", strings.Replace(twoSticks, "to: [0, 6', 48]", "to: [36, 68.35, 48]", 1) + "  brace: {role: brace, section: 3 x 5, between: [post, rail], legs: 24 x 24}\n",
		"between: [post, rail]", "square to a face of its post"},
	{"brace to nothing", fmt.Sprintf(hut, "", "timbers:\n  extra: {role: brace, section: 3 x 5, between: [post-1-south, tei-1], legs: 24 x 24}\n"), "between: [", "no timber called"},
	{"reference face at the end", twoSticks + "  odd: {role: post, section: 6 x 6, from: [9', 0, 0], to: [9', 0, 8'], faces: [top, west]}\n", "faces: [top, west]", "reference faces"},
	{"reduced to nothing", twoSticks + "  thin: {role: post, section: 3 x 3, reduce: 2.9, from: [9', 0, 0], to: [9', 0, 8']}\n", "thin:", "ideal timber"},
	{"too short to be a timber", twoSticks + "  stub: {role: post, section: 6 x 6, from: [9', 0, 0], to: [9', 0, 1/2]}\n", "stub:", ""},
	{"too long to be a timber", twoSticks + "  endless: {role: post, section: 6 x 6, from: [9', 0, 0], to: [9', 0, 300']}\n", "endless:", "long"},
	{"measured what is not there", fmt.Sprintf(hut, "", "measured: {post-9-south: {foot: 6 x 6}}\n"), "post-9-south:", "no timber called"},
	{"opening wider than its bay", fmt.Sprintf(hut, "", "  openings:\n    - {name: barn door, wall: south, bay: 1, width: 9' 6\", height: 5'}\n"), "barn door", "clear"},
	{"opening in a bay of the gable", strings.Replace(fmt.Sprintf(hut, "", "  openings:\n    - {name: door, wall: west, bay: 2, width: 3', height: 5'}\n"), "[10']", "[10', 10']", 1), "bay: 2", "no bay 2"},
	{"opening past its bay", fmt.Sprintf(hut, "", "  openings:\n    - {name: door, wall: south, bay: 1, width: 3', height: 5', from: 7'}\n"), "from: 7'", "clear"},
	{"opening higher than the wall", fmt.Sprintf(hut, "", "  openings:\n    - {name: door, wall: south, bay: 1, width: 3', height: 8'}\n"), "height: 8'}", "high"},
	{"openings overlap", fmt.Sprintf(hut, "", "  openings:\n    - {name: door, wall: west, width: 3', height: 5'}\n    - {name: slit, wall: west, width: 1', height: 5', sill: 3'}\n"), "name: slit", "overlap"},
	{"window without height", fmt.Sprintf(hut, "", "  openings:\n    - {name: slit, wall: east, width: 1', height: 4', sill: 4'}\n"), "sill: 4'", "head at"},
	{"girt above its wall", fmt.Sprintf(hut, "", "  girts: {height: [9'], in: [south]}\n"), "height: [9']", "starts at"},
	{"girt below its wall", fmt.Sprintf(hut, "", "  girts: {height: [3], in: [south]}\n"), "height: [3]", "below the foot"},
	{"floor without sills", fmt.Sprintf(hut, "", "  floor: {spacing: 2'}\n"), "floor:", "no sills"},
	{"joists deeper than sills", fmt.Sprintf(hut, "", "  sills: yes\n  floor: {joists: 4 x 12}\n"), "joists: 4 x 12", "carries them"},
	{"braces down to no sill", fmt.Sprintf(hut, "", "  braces: {legs: 2' x 2', go: down}\n"), "go: down", "no sills"},
	{"braces of no bent", fmt.Sprintf(hut, "", "  braces: {legs: 2' x 2', bents: [3]}\n"), "bents: [3]", "only 2 bents"},
	{"loft of no bay", fmt.Sprintf(hut, "", "  loft: {bays: [2]}\n"), "bays: [2]", "last bay of the building is bay 1"},
	{"generated name taken", fmt.Sprintf(hut, "", "timbers:\n  tie-1: {role: post, section: 6 x 6, from: [30', 0, 0], to: [30', 0, 8']}\n"), "tie-1:", "already"},
	{"selector that picks no joint", fmt.Sprintf(hut, "", "adjust:\n  - {joints: joists, drawbore: 1/8}\n"), "joints: joists", "is a joist"},
	{"selector that picks no timber", fmt.Sprintf(hut, "", "adjust:\n  - {timbers: braces, section: 4 x 4}\n"), "timbers: braces", "is a brace"},
	{"selector with a slip in an id", fmt.Sprintf(hut, "", "adjust:\n  - {joints: tei-1, drawbore: 1/8}\n"), "joints: tei-1", "no timber called tei-1"},
	{"selector of a bent that is not there", fmt.Sprintf(hut, "", "adjust:\n  - {joints: ties of bent 7, drawbore: 1/8}\n"), "bent 7", "no bent 7: the last is bent 2"},
	{"selector whose words do not go together", fmt.Sprintf(hut, "", "adjust:\n  - {joints: posts into ties, drawbore: 1/8}\n"), "posts into ties", "fits all of these words"},
	{"legs in feet", fmt.Sprintf(hut, "", "  braces: {legs: 24' x 24'}\n"), "24' x 24'", "longer than the posts"},
	{"second leg in feet", fmt.Sprintf(hut, "", "  braces: {legs: 24\" x 24'}\n"), "24\" x 24'", "longer than the timber it runs along"},
	{"bore of half the stick", fmt.Sprintf(hut, "layout: {pegs: {bore: 5\"}}", ""), "bore: 5", "a bore of 5\" is more than half"},
	{"bays counted", strings.Replace(fmt.Sprintf(hut, "", ""), "bays: [10']", "bays: 3", 1), "bays: 3", "makes 3\" of building"},
	{"ridge of a shed roof", strings.Replace(fmt.Sprintf(hut, "", ""), "shape: gable", "ridge: beam, shape: shed", 1), "shape: shed", "no ridge"},
	{"high wall of a gable roof", strings.Replace(fmt.Sprintf(hut, "", ""), "shape: gable", "high wall: north, shape: gable", 1), "high wall: north", "one height"},
	{"king posts without a ridge", strings.Replace(fmt.Sprintf(hut, "", ""), "shape: gable", "king posts: gables, shape: gable", 1), "king posts: gables", "no ridge beam"},
	{"trusses of a shed roof", strings.Replace(fmt.Sprintf(hut, "", ""), "shape: gable", "truss: king post, shape: shed", 1), "truss: king post", "no trusses"},
	{"king post truss without a ridge", strings.Replace(fmt.Sprintf(hut, "", ""), "shape: gable", "ridge: none, truss: king post, shape: gable", 1), "truss: king post", "ridge beam"},
	{"king post truss in a narrow span", strings.Replace(fmt.Sprintf(hut, "", ""), "span: 10'\n  bays: [10']\n  eave: 8'\n  roof: {", "span: 6'\n  bays: [10']\n  eave: 8'\n  roof: {truss: king post, ", 1), "truss: king post", "no room for a truss"},
	{"heel too short for the ridge", strings.Replace(fmt.Sprintf(hut, "", "  tie height: 92\n"), "shape: gable", "truss: king post, heel: 1, ridge: beam, shape: gable", 1), "truss: king post", "below the ridge"},
	{"queen posts under a flat roof", strings.Replace(fmt.Sprintf(hut, "", ""), "shape: gable, pitch: 9 in 12", "truss: queen posts, shape: gable, pitch: 4 in 12", 1), "truss: queen posts", "high"},
	{"ties over the plates under a ridge", strings.Replace(fmt.Sprintf(hut, "", "  ties: over plates\n"), "shape: gable", "ridge: beam, shape: gable", 1), "ties: over plates", "ridge beam"},
	{"height of ties over the plates", fmt.Sprintf(hut, "", "  ties: over plates\n  tie height: 9'\n"), "tie height", "no height of their own"},
	{"collars at the plates", strings.Replace(fmt.Sprintf(hut, "", ""), "shape: gable", "collars: {height: 1}, shape: gable", 1), "collars", "closer"},
	{"collars at the peak", strings.Replace(fmt.Sprintf(hut, "", ""), "shape: gable", "collars: {height: 40}, shape: gable", 1), "collars", "peak"},
	{"collars of a shed roof", strings.Replace(fmt.Sprintf(hut, "", ""), "shape: gable", "collars: {height: 12}, shape: shed", 1), "collars", "no pairs"},
	{"lean-to too low", fmt.Sprintf(hut, "", "  lean-tos:\n    - {wall: north, span: 10', pitch: 6 in 12}\n"), "wall: north", "above the datum"},
	{"lean-to above the braces", fmt.Sprintf(hut, "", "  braces: {in: [walls]}\n  lean-tos:\n    - {wall: north, span: 3', pitch: 3 in 12, height: 7'}\n"), "height: 7'", "braces"},
	{"lean-to over a door", fmt.Sprintf(hut, "", "  lean-tos:\n    - {wall: north, span: 3', pitch: 3 in 12}\n  openings:\n    - {name: door, wall: north, bay: 1, width: 3', height: 5'}\n"), "name: door", "cross the posts"},
	{"two lean-tos on a wall", fmt.Sprintf(hut, "", "  lean-tos:\n    - {wall: south, span: 3', pitch: 3 in 12}\n    - {wall: south, span: 4', pitch: 3 in 12}\n"), "span: 4'", "already"},
	{"no room under the ridge", strings.Replace(fmt.Sprintf(hut, "", "  tie height: 8'\n"), "shape: gable, pitch: 9 in 12", "shape: gable, ridge: beam, pitch: 2 in 12", 1), "ridge: beam", "no room"},
	{"wood of the table described anew", fmt.Sprintf(hut, "woods:\n  - {name: White Oak, specific gravity: 0.6, tangential: 9, radial: 5}", ""), "White Oak", "in the table already"},
	{"wood described twice", fmt.Sprintf(hut, "woods:\n  - {name: lot pine, specific gravity: 0.36, tangential: 6, radial: 2}\n  - {name: Lot-Pine, specific gravity: 0.4, tangential: 6, radial: 2}", ""), "Lot-Pine", "twice"},
	{"radial above tangential", fmt.Sprintf(hut, "woods:\n  - {name: lot pine, specific gravity: 0.36, tangential: 2, radial: 6}", ""), "radial: 6", "above tangential"},
	{"volume shrinks too little", fmt.Sprintf(hut, "woods:\n  - {name: lot pine, specific gravity: 0.36, tangential: 6, radial: 2, volumetric: 3}", ""), "volumetric: 3", "below tangential"},
	{"price of no wood", fmt.Sprintf(hut, "stock: {prices: {whit oak: 3}}", ""), "whit oak", "not in the table"},
	{"two prices", fmt.Sprintf(hut, "stock:\n  prices: {white oak: 3,\n    American white oak: 4}", ""), "American white oak", "two prices"},
}

func TestUnusableDescriptions(t *testing.T) {
	for _, c := range unusable {
		t.Run(c.name, func(t *testing.T) {
			d, faults := spec.Read("test.yaml", []byte(c.src), nil)
			if len(faults) > 0 {
				t.Fatalf("the reader already refuses it: %v", faults)
			}
			f, faults := solve.Solve(d)
			if len(faults) == 0 || f != nil {
				t.Fatalf("%d faults, frame %v", len(faults), f != nil)
			}
			want, said := 0, false
			for i, l := range strings.Split(c.src, "\n") {
				if strings.Contains(l, c.line) {
					want = i + 1
				}
			}
			for _, x := range faults {
				if x.At.File != "test.yaml" || x.At.Line == 0 || x.At.Col == 0 {
					t.Errorf("no place: %v", x)
				}
				if strings.TrimSpace(x.Mend) == "" {
					t.Errorf("no mend: %v", x)
				}
				said = said || x.At.Line == want && strings.Contains(x.Text, c.says)
			}
			if !said {
				t.Errorf("no fault at line %d says %q:\n%v", want, c.says, faults)
			}
		})
	}
}

// A fault points at its own word, by line and column.
func TestFaultsPointAtTheWord(t *testing.T) {
	for _, c := range []struct {
		src       string
		line, col int
	}{
		{fmt.Sprintf(hut, "", "joints:\n  - {kind: mortise and tenon, of: tei-1, end: start, into: post-1-south}\n"), 10, 35},
		{fmt.Sprintf(hut, "", "joints:\n  - {kind: mortise and tenon, of: tie-1, end: start, into: pots-1-south}\n"), 10, 60},
		{fmt.Sprintf(hut, "", "measured: {post-9-south: {foot: 6 x 6}}\n"), 9, 12},
		{fmt.Sprintf(hut, "wood: {timbers: {species: eastern wite pine}}", ""), 3, 27},
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
		fmt.Sprintf(hut, "", "joints:\n  - {kind: mortise and tenon, of: tei-1, end: start, into: post-1-south}\n"): "tie-1",
		fmt.Sprintf(hut, "wood: {timbers: {species: eastern wite pine}}", ""):                                       "eastern white pine",
		fmt.Sprintf(hut, "wood: {timbers: {species: zebrawood}}", ""):                                               "cedar",
		// A softwood is no wood for pegs.
		fmt.Sprintf(hut, "wood: {pegs: {species: zebrawood}}", ""): "name one of: European oak",
	} {
		if _, faults := trial.Solve("test.yaml", src); len(faults) != 1 || !strings.Contains(faults[0].Mend, want) {
			t.Errorf("the mend does not name %s: %v", want, faults)
		}
	}
}
