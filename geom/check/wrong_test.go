package check_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pegwright/geom/finding"
	"pegwright/samples/trial"
)

// Frames with one thing wrong, as a master framer would find it on looking the
// drawings over. Each must be met by one finding at the line that causes it, in
// words that say what is wrong, and by no other stop. What is no frame at all
// must be refused as a fault, with a mend.

// cross is a post under two beams that leave it to the north and to the east,
// with a brace under each.
const crossing = `frame: Corner
units: in
timbers:
  post: {role: post, section: 6 x 6, from: [0, 0, 0], to: [0, 0, 9'], faces: [south, west]}
  beam: {role: beam, section: 6 x 6, from: [0, -1', 9'], to: [0, 9', 9'], faces: [top, west]}
  side: {role: tie, section: 6 x 6, from: [6, 0, %s], to: [9', 0, %s], faces: [top, south]}
  brace: {role: brace, section: 3 x 5, between: [post, beam], legs: 36 x 36, toward: north}
  strut: {role: brace, section: 3 x 5, between: [post, side], legs: %s, toward: east}
joints:
  - {kind: mortise and tenon, of: post, end: end, into: beam, tenon length: 3}
  - {kind: mortise and tenon, of: side, end: start, into: post, tenon length: 2, pegs: 0}
`

// portal is two posts under a beam that runs past them.
const portal = `frame: Portal
units: in
timbers:
  west: {role: post, section: 6 x 6, from: [0, 0, 0], to: [0, 0, 8'], faces: [south, west]}
  east: {role: post, section: 6 x 6, from: [0, 10', 0], to: [0, 10', 8'], faces: [north, west]}
  plate: {role: plate, section: 6 x 6, from: [0, %s, 96], to: [0, %s, 96], faces: [top, west]}
%sjoints:
  - {kind: mortise and tenon, of: west, end: end, into: plate, tenon length: 3%s}
  - {kind: mortise and tenon, of: east, end: end, into: plate, tenon length: 3}
%s`

// floor is a beam with a joist let into its south side, or across it.
const floor = `frame: Floor
units: in
timbers:
  beam: {role: beam, section: 8 x 8, from: [0, 0, 96], to: [12', 0, 96], faces: [top, south]}
  joist: {role: joist, section: 5 x 6, from: [70, %s, %s], to: [70, 4', %s], faces: [top, west]}
joints:
  - {kind: %s, of: joist, into: beam%s}
`

// ring is four timbers that hold each other: a rail tenoned into two posts, one
// of them under a beam and the other lapped by it.
const ring = `frame: Ring
units: in
timbers:
  left: {role: post, section: 6 x 6, from: [0, 0, 0], to: [0, 0, 96], faces: [south, west]}
  right: {role: post, section: 6 x 6, from: [96, 3, 0], to: [96, 3, 114], faces: [south, west]}
  rail: {role: rail, section: 6 x 6, from: [6, 1.5, 48], to: [96, 1.5, 48], faces: [top, south]}
  beam: {role: beam, section: 6 x 6, from: [-12, 0, 96], to: [114, 0, 96], faces: [top, south]}
joints:
  - {kind: mortise and tenon, of: rail, end: start, into: left}
  - {kind: mortise and tenon, of: rail, end: end, into: right}
  - {kind: mortise and tenon, of: left, end: end, into: beam, tenon length: 3}
  - {kind: cross lap, of: beam, into: right}
`

// trapped is a brace between a post and a beam that are lapped across each
// other: the lap closes from the side, the brace's tenons do not.
const trapped = `frame: Trapped
units: in
timbers:
  post: {role: post, section: 6 x 6, from: [0, 0, 0], to: [0, 0, 114], faces: [south, west]}
  beam: {role: beam, section: 6 x 6, from: [0, -12, 96], to: [0, 120, 96], faces: [top, west]}
  brace: {role: brace, section: 3 x 5, between: [post, beam], legs: 30 x 30, toward: north}
joints:
  - {kind: cross lap, of: beam, into: post}
`

type wrong struct {
	name, src string
	rule      string           // "fault" for what is no frame at all
	severity  finding.Severity // of the finding
	line      string           // words that only the line to blame holds
	says      string
	timbers   []string // nil: not asked
}

const stop, warn, note = finding.Stop, finding.Warn, finding.Note

// wrongs are all of them.
func wrongs() []wrong {
	return slices.Concat(wrongVoids(), wrongPegs(), wrongTenons(), wrongSticks(), wrongPlaces(), wrongBearings(), wrongOrder())
}

// railed is the gate with one joint, its settings as given.
func railed(set string) string { return gate + joints(into("rail", "start", set)) }

// stray is the gate with a further timber.
func stray(line string) string {
	return gate + "  stray: " + line + "\n" + joints(into("rail", "start", "pegs: 1"))
}

func wrongVoids() []wrong {
	two := func(a, b string) string { return corner + joints(into("rail", "start", a), into("side", "start", b)) }
	opposed := func(n string) string {
		return inLine + joints(into("rail", "start", "pegs: 0, tenon length: "+n), into("back", "end", "pegs: 0, tenon length: "+n))
	}
	return []wrong{
		{"equal brace pockets crossing in a post", fmt.Sprintf(crossing, "94", "94", "22 x 22"), "voids", stop, "", "run into each other in post", []string{"post"}},
		{"peg through a neighbour's tenon", two("bore: 3/4, off shoulder: 2.5", "pegs: 0, tenon length: 1.25"), "voids", stop, "off shoulder: 2.5", "through the tenon of side", []string{"post"}},
		{"two bores crossing", two("bore: 3/4, from reference: 3/4, thickness: 1", "bore: 3/4, tenon length: 2.75, lead: 0"), "voids", stop, "of: rail, end: start", "cross in post", []string{"post"}},
		{"mortise through a mortise", two("pegs: 0, tenon length: 1.9", "pegs: 0, tenon length: 3"), "voids", stop, "of: rail, end: start", "run into each other", []string{"post"}},
		{"opposed tenons meeting", opposed("3"), "voids", stop, "of: rail, end: start", "tenons would meet", []string{"post"}},
		{"thin web between opposed mortises", opposed("2.4"), "voids", warn, "of: rail, end: start", "of wood is left between", []string{"post"}},
	}
}

func wrongPegs() []wrong {
	return []wrong{
		{"no relish in the tenon", railed("tenon length: 2.25"), "peg window", stop, "tenon length: 2.25", "tenon end", []string{"rail", "post"}},
		{"peg too near the tenon's end", railed("off shoulder: 3.75"), "peg window", stop, "off shoulder: 3.75", "tenon end of rail", []string{"rail", "post"}},
		{"peg outside its tenon", railed("off shoulder: 4.5"), "peg window", stop, "off shoulder: 4.5", "beyond the tenon end", []string{"rail", "post"}},
		{"peg out of the tenon's edge", railed("pegs: {count: 1, along: 1/4}"), "peg window", stop, "along: 1/4", "tenon edge", []string{"rail", "post"}},
		{"peg too near the bearing face", railed("off shoulder: 1/2, drawbore: none"), "peg window", stop, "off shoulder: 1/2", "bearing face of post", []string{"rail", "post"}},
		{"brace peg past its nose", fmt.Sprintf(knee, "") + "layout: {brace: {pegs: {along: 1/4}}}\n", "peg window", stop, "brace: {role", "nose of brace", nil},
		{"negative offset", railed("drawbore: -1/8"), "fault", stop, "drawbore: -1/8", "", nil},
		{"offset over a quarter of the bore", railed("drawbore: 3/8"), "drawbore", stop, "drawbore: 3/8", "more than the 1/4\"", []string{"rail", "post"}},
		{"offset over an eighth in oak", gate + "wood: {timbers: {species: white oak}}\n" + joints(into("rail", "start", "drawbore: 3/16")), "drawbore", stop, "drawbore: 3/16", "in white oak takes", []string{"rail", "post"}},
	}
}

func wrongTenons() []wrong {
	return []wrong{
		{"brace tenon outside its brace", fmt.Sprintf(knee, ", off reference: 0"), "tenon", stop, "off reference: 0", "outside its own timber", nil},
		{"tenon outside its timber", strings.Replace(railed("from reference: 3"), "section: 6 x 6, from: [0, 6, 48]", "section: 4 x 6, from: [0, 6, 48]", 1),
			"tenon", stop, "from reference: 3", "outside its own timber", []string{"rail", "post"}},
		{"mortise breaking out behind", railed("tenon length: 5.3"), "stick", stop, "tenon length: 5.3", "breaks out of post at face", []string{"rail", "post"}},
		{"tenon longer than its receiver", railed("tenon length: 6"), "stick", stop, "tenon length: 6", "breaks out of post at face", []string{"rail", "post"}},
		{"mortise at the side of its post", railed("from reference: 0"), "stick", stop, "from reference: 0", "breaks out of post at face 1 west", []string{"rail", "post"}},
		{"thin wood behind a mortise", railed("tenon length: 5"), "stick", warn, "tenon length: 5", "of wood at face", []string{"rail", "post"}},
	}
}

func wrongSticks() []wrong {
	return []wrong{
		{"stick under its ideal", gate + "measured: {post: {foot: 6 x 5 1/4, top: 6 x 6}}\n" + joints(into("rail", "start", "pegs: 1")), "stick", stop, "measured:", "under its ideal", []string{"post"}},
		{"post cut in two", railed("pegs: 0, housing: 5.5, tenon length: 1/4, from reference: 2"), "stick", stop, "post: {role", "2 pieces", []string{"post"}},
		{"housing too deep", railed("pegs: 0, housing: 3, tenon length: 1"), "housing", stop, "housing: 3", "housing for rail takes 3\"", []string{"post"}},
		{"housing deeper than a quarter", railed("pegs: 0, housing: 2, tenon length: 1"), "housing", warn, "housing: 2", "takes 2\" of the 5 1/2\"", []string{"post"}},
		{"tenon thicker than the cheek beside it", railed("thickness: 2, from reference: 2"), "cheek", warn, "thickness: 2", "less wood is left than the tenon is thick", []string{"post"}},
		{"plate too short over its post", fmt.Sprintf(portal, "1", "124", "", "", ""), "relish", stop, "of: west", "breaks out at the start of plate", []string{"west", "plate"}},
		{"plate with little relish over its post", fmt.Sprintf(portal, "-1", "124", "", "", ""), "relish", warn, "of: west", "1\" of wood before the start of plate", []string{"west", "plate"}},
		{"tie higher than its post", gate + "  low: {role: tie, section: 6 x 6, from: [0, 6, 98], to: [0, 6', 98], faces: [top, west]}\n" + joints(into("low", "start", "pegs: 0")),
			"relish", stop, "of: low", "breaks out at the end of post", []string{"low", "post"}},
	}
}

func wrongPlaces() []wrong {
	return []wrong{
		{"brace flatter than 15°", strings.Replace(fmt.Sprintf(knee, ""), "legs: 36 x 36", "legs: 12 x 60", 1), "fault", stop, "legs: 12 x 60", "flatter than 15°", nil},
		{"brace longer than its bay", strings.Replace(fmt.Sprintf(knee, ""), "legs: 36 x 36", "legs: 80 x 130", 1), "fault", stop, "legs: 80 x 130", "do not meet", nil},
		{"timbers that do not meet", gate + "  far: {role: post, section: 6 x 6, from: [20', 0, 0], to: [20', 0, 8']}\njoints:\n  - {kind: mortise and tenon, of: rail, end: start, into: far}\n",
			"fault", stop, "into: far", "do not meet", nil},
		{"the same joint twice", gate + joints(into("rail", "start", "pegs: 1"), into("rail", "start", "pegs: 2")), "fault", stop, "pegs: 2", "already a joint", nil},
		{"timber through another", stray("{role: beam, section: 4 x 4, from: [-1', 3', 46], to: [1', 3', 46]}"), "overlap", stop, "rail: {role", "same space", []string{"rail", "stray"}},
		{"timber run into a post unjoined", stray("{role: beam, section: 4 x 4, from: [5, 1, 80], to: [3', 1, 80]}"), "overlap", stop, "post: {role", "same space", []string{"post", "stray"}},
		{"door taller than its wall", strings.Replace(fmt.Sprintf(barn, "", "3'"), "  sills: yes", "  sills: yes\n  openings:\n    - {name: door, wall: south, bay: 1, width: 3', height: 8'}", 1), "fault", stop, "height: 8'}", "high", nil},
		{"rafters on untied plates", fmt.Sprintf(roof, "", peak), "thrust", warn, "left: {role", "nothing ties their feet", []string{"left", "right"}},
		{"rafter foot past its plate", strings.Replace(fmt.Sprintf(roof, "", peak), "to: [120, 120, 96]", "to: [30, 120, 96]", 1), "fault", stop, "of: right, end: start", "do not cross", nil},
	}
}

func wrongBearings() []wrong {
	return []wrong{
		{"shoulder above its post", strings.Replace(railed("pegs: 0"), "to: [0, 0, 8'], faces: [south, west]", "to: [0, 0, 40], faces: [south, west]", 1),
			"bearing", stop, "of: rail, end: start", "stands on nothing", []string{"rail", "post"}},
		{"shoulder beside its post", strings.Replace(railed("pegs: 0, thickness: 1, from reference: 1/2"), "from: [0, 6, 48], to: [0, 6', 48]", "from: [-3.5, 6, 48], to: [-3.5, 6', 48]", 1),
			"bearing", warn, "of: rail, end: start", "touches post over 22 %", []string{"rail", "post"}},
		{"squared end beyond its post", strings.Replace(gate, "to: [0, 0, 8']", "to: [0, 0, 40]", 1) + "joints:\n  - {kind: plain bearing, of: rail, end: start, into: post}\n",
			"bearing", stop, "kind: plain bearing", "stands on nothing", []string{"rail", "post"}},
		{"seat deeper than a third", strings.Replace(fmt.Sprintf(roof, "", peak), "from: [40, 132, 92], to: [40, 60, 146]", "from: [40, 132, 91], to: [40, 60, 145]", 1),
			"notch", warn, "of: right, end: start", "notched 2 13/16\" deep at its seat: more than a third", []string{"right"}},
		{"tail in green wood", fmt.Sprintf(floor, "8", "96", "96", "half-dovetail lap", ", end: start"), "slip", note, "half-dovetail lap", "the tail of joist will slip", []string{"joist", "beam"}},
		{"joist notched at its end", fmt.Sprintf(floor, "8", "96", "96", "drop-in pocket", ", end: start, pocket depth: 2"), "notch", warn, "drop-in pocket", "where a quarter is the most", []string{"joist", "beam"}},
		{"beam lapped from below", fmt.Sprintf(floor, "-4'", "93", "93", "cross lap", ""), "notch", warn, "cross lap", "from below, on its stretched side", []string{"beam"}},
	}
}

func wrongOrder() []wrong {
	return []wrong{
		{"trapped brace", trapped, "assembly", stop, "post: {role", "hold each other", []string{"post", "beam", "brace"}},
		{"rail trapped in a ring", ring, "assembly", stop, "left: {role", "hold each other", []string{"left", "right", "rail", "beam"}},
		{"long foot tenons under a bent to be reared", fmt.Sprintf(barn, "", "3'") + "adjust:\n  - {joints: posts into sills, tenon length: 4}\n  - {joints: cross sills into sills, from reference: 5 1/2}\n",
			"assembly", stop, "", "foot tenons are 4\" long", nil},
		{"scarf on a post's mortise", spliced("half-lap scarf", "123"), "scarf", stop, "kind: half-lap scarf", "the joint of post-2 take the same wood", []string{"plate-b", "plate-a", "post-2"}},
		{"scarf close to a post", spliced("half-lap scarf", "142"), "scarf", warn, "kind: half-lap scarf", "of whole wood is left", []string{"plate-b", "plate-a", "post-2"}},
		{"scarf in the middle of a bay", spliced("half-lap scarf", "208"), "scarf", note, "kind: half-lap scarf", "of its bay from the nearer post", []string{"plate-b", "plate-a"}},
	}
}

func TestWrongFrames(t *testing.T) {
	list := wrongs()
	if len(list) < 30 {
		t.Errorf("only %d frames", len(list))
	}
	for _, c := range list {
		t.Run(c.name, func(t *testing.T) {
			f, faults := trial.Solve(c.name, c.src)
			if c.rule == "fault" {
				c.refused(t, faults)
			} else if len(faults) > 0 {
				t.Fatalf("cannot be solved: %v", faults)
			} else {
				c.found(t, proofs(f))
			}
		})
	}
}

// blamed returns the number of the one line that holds the words.
func (c wrong) blamed(t *testing.T) int {
	t.Helper()
	at := 0
	for i, l := range strings.Split(c.src, "\n") {
		if strings.Contains(l, c.line) {
			if at > 0 && c.line != "" {
				t.Fatalf("lines %d and %d hold %q", at, i+1, c.line)
			}
			at = i + 1
		}
	}
	if at == 0 {
		t.Fatalf("no line holds %q", c.line)
	}
	return at
}

func (c wrong) refused(t *testing.T, faults finding.Faults) {
	if len(faults) != 1 {
		t.Fatalf("%d faults, want one:\n%v", len(faults), faults)
	}
	x := faults[0]
	if x.At.Line != c.blamed(t) || x.At.Col == 0 || x.Mend == "" || !strings.Contains(x.Text, c.says) {
		t.Errorf("want line %d, a mend and %q: %v", c.blamed(t), c.says, x)
	}
}

func (c wrong) found(t *testing.T, list []finding.Finding) {
	var hits []finding.Finding
	for _, x := range list {
		if x.Rule == c.rule && x.Severity == c.severity {
			hits = append(hits, x)
		} else if x.Severity == stop {
			t.Errorf("another stop: %s: %s", x.Rule, x.Text)
		}
	}
	if len(hits) != 1 {
		t.Fatalf("%d findings of rule %s and severity %v in:%s", len(hits), c.rule, c.severity, all(list))
	}
	x := hits[0]
	if !strings.Contains(x.Text, c.says) || x.Mend == "" {
		t.Errorf("want a mend and %q: %+v", c.says, x)
	}
	if c.line != "" && x.At.Line != c.blamed(t) {
		t.Errorf("at line %d, want %d: %s", x.At.Line, c.blamed(t), x.Text)
	}
	if c.timbers != nil && !slices.Equal(x.Timbers, c.timbers) {
		t.Errorf("timbers %q, want %q", x.Timbers, c.timbers)
	}
}

func all(list []finding.Finding) string {
	var b strings.Builder
	for _, x := range list {
		fmt.Fprintf(&b, "\n  %v %s at %d: %s", x.Severity, x.Rule, x.At.Line, x.Text)
	}
	return b.String()
}
