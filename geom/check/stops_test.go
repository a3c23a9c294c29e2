package check_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pegwright/geom/finding"
	"pegwright/samples/trial"
)

// Frames that can be solved and must not be cut. Each is a sound frame with
// one thing wrong; the sound ones are tested too.

const gate = `frame: Gate
units: in
timbers:
  post: {role: post, section: 6 x 6, from: [0, 0, 0], to: [0, 0, 8'], faces: [south, west]}
  rail: {role: tie, section: 6 x 6, from: [0, 6, 48], to: [0, 6', 48], faces: [top, west]}
`

// corner is the post with two rails, one to the north and one to the east.
const corner = gate + `  side: {role: tie, section: 6 x 6, from: [6, 0, 48], to: [6', 0, 48], faces: [top, south]}
`

// line is the post with two rails in one line, to the north and to the south.
const inLine = gate + `  back: {role: tie, section: 6 x 6, from: [0, -6', 48], to: [0, -6, 48], faces: [top, west]}
`

// knee is a post under a beam with a brace between them.
const knee = `frame: Knee
units: in
timbers:
  post: {role: post, section: 6 x 6, from: [0, 0, 0], to: [0, 0, 9'], faces: [south, west]}
  beam: {role: beam, section: 6 x 6, from: [0, -1', 9'], to: [0, 9', 9'], faces: [top, west]}
  brace: {role: brace, section: 3 x 5, between: [post, beam], legs: 36 x 36, toward: north%s}
joints:
  - {kind: mortise and tenon, of: post, end: end, into: beam, tenon length: 3}
`

// into is one joint of a rail into the post.
func into(rail, end, set string) string {
	return fmt.Sprintf("  - {kind: mortise and tenon, of: %s, end: %s, into: post, %s}\n", rail, end, set)
}

func joints(list ...string) string { return "joints:\n" + strings.Join(list, "") }

const barn = `frame: Barn
units: in
building:
  span: 12'
  bays: [10']
  eave: 8'
  roof: {shape: gable, pitch: 9 in 12%s}
  sills: yes
  girts: {height: [%s], in: [eave walls]}
`

var sound = []struct{ name, src string }{
	{"gate", gate + joints(into("rail", "start", "pegs: 1"))},
	{"corner", corner + joints(into("rail", "start", "pegs: 0, tenon length: 1.5"), into("side", "start", "pegs: 0, tenon length: 3"))},
	{"in line", inLine + joints(into("rail", "start", "pegs: 0, tenon length: 2"), into("back", "end", "pegs: 0, tenon length: 2"))},
	{"knee", fmt.Sprintf(knee, "")},
	{"barn", fmt.Sprintf(barn, "", "3'")},
}

var spoiled = []struct {
	name, src, rule, says string
}{
	{"peg outside its tenon", gate + joints(into("rail", "start", "off shoulder: 4.5")), "peg window", "tenon end"},
	{"peg at the tenon's end", gate + joints(into("rail", "start", "off shoulder: 3.75")), "peg window", "tenon end"},
	{"peg on the tenon's edge", gate + joints(into("rail", "start", "pegs: {count: 1, along: 1/4}")), "peg window", "tenon edge"},
	{"peg at the bearing face", gate + joints(into("rail", "start", "off shoulder: 1/2, drawbore: none")), "peg window", "bearing face"},
	{"mortise through a mortise", corner + joints(into("rail", "start", "pegs: 0, tenon length: 1.9"), into("side", "start", "pegs: 0, tenon length: 3")),
		"voids", "run into each other"},
	{"bore through a mortise", corner + joints(into("rail", "start", "bore: 3/4, off shoulder: 2.5"), into("side", "start", "pegs: 0, tenon length: 1.25")),
		"voids", "runs through the tenon of side"},
	{"bores crossing", corner + joints(into("rail", "start", "bore: 3/4, from reference: 3/4, thickness: 1"), into("side", "start", "bore: 3/4, tenon length: 2.75, pegs: {lead: 0}")),
		"voids", "cross"},
	{"opposed mortises meeting", inLine + joints(into("rail", "start", "pegs: 0, tenon length: 2.6"), into("back", "end", "pegs: 0, tenon length: 2.6")),
		"voids", "run into each other"},
	{"tenon outside its timber", strings.Replace(gate, "section: 6 x 6, from: [0, 6, 48]", "section: 4 x 6, from: [0, 6, 48]", 1) +
		joints(into("rail", "start", "from reference: 3")), "tenon", "outside its own timber"},
	{"brace tenon outside its brace", fmt.Sprintf(knee, ", off reference: 0"), "tenon", "outside its own timber"},
	{"offset too large", gate + joints(into("rail", "start", "drawbore: 3/8")), "drawbore", "more than"},
	{"offset too large for oak", gate + "wood: {timbers: {species: white oak}}\n" + joints(into("rail", "start", "drawbore: 3/16")), "drawbore", "more than"},
	{"mortise breaking out behind", gate + joints(into("rail", "start", "tenon length: 5.3")), "stick", "breaks out"},
	{"tenon out behind", gate + joints(into("rail", "start", "tenon length: 6")), "stick", "breaks out"},
	{"mortise breaking out at the side", gate + joints(into("rail", "start", "from reference: 0")), "stick", "breaks out"},
	{"stick under its ideal", gate + "measured: {post: {foot: 6 x 5 1/4, top: 6 x 6}}\n" + joints(into("rail", "start", "pegs: 1")), "stick", "under its ideal"},
	{"post cut in two", gate + joints(into("rail", "start", "pegs: 0, housing: 5.5, tenon length: 1/4, from reference: 2")), "stick", "pieces"},
	{"timber through a timber", gate + "  stray: {role: beam, section: 4 x 4, from: [-1', 3', 46], to: [1', 3', 46]}\n" +
		joints(into("rail", "start", "pegs: 1")), "overlap", "same space"},
	{"rail not joined", gate + "  stray: {role: beam, section: 4 x 4, from: [5, 1, 80], to: [3', 1, 80]}\n" +
		joints(into("rail", "start", "pegs: 1")), "overlap", "same space"},
	{"peg past a brace's nose", fmt.Sprintf(knee, "") + "layout: {brace: {pegs: {along: 1/4}}}\n", "peg window", "nose"},
}

func TestSoundFramesPass(t *testing.T) {
	for _, c := range sound {
		t.Run(c.name, func(t *testing.T) {
			if list := proofs(trial.Frame(t, c.name, c.src)); len(stops(list)) > 0 {
				t.Errorf("stops:%s", texts(list))
			}
		})
	}
}

func TestSpoiledFramesAreStopped(t *testing.T) {
	for _, c := range spoiled {
		t.Run(c.name, func(t *testing.T) {
			list := proofs(trial.Frame(t, c.name, c.src))
			if got := stops(list); !slices.Equal(got, []string{c.rule}) {
				t.Fatalf("stop rules %q, want only %q:%s", got, c.rule, texts(list))
			}
			said := false
			for _, x := range list {
				if x.Severity != finding.Stop {
					continue
				}
				said = said || strings.Contains(x.Text, c.says)
				if x.At.Line == 0 || x.At.Col == 0 {
					t.Errorf("no place in the file: %s", x.Text)
				}
				if x.Mend == "" || len(x.Timbers) == 0 {
					t.Errorf("no mend, or no timber: %+v", x)
				}
			}
			if !said {
				t.Errorf("no stop says %q:%s", c.says, texts(list))
			}
		})
	}
}

// Two timbers in one place are said once: as an overlap where the sticks
// themselves run through each other, though their notches do too; as voids
// where only their tenons meet.
func TestOneClashIsSaidOnce(t *testing.T) {
	for _, c := range []struct{ name, src, rule, says string }{
		{"opposed tenons meeting", inLine + joints(into("rail", "start", "pegs: 0, tenon length: 3"), into("back", "end", "pegs: 0, tenon length: 3")), "voids", "tenons would meet"},
		{"rafters within their widths", fmt.Sprintf(barn, ", rafter spacing: 3", "3'"), "overlap", "same space"},
	} {
		list := proofs(trial.Frame(t, c.name, c.src))
		if got := stops(list); !slices.Equal(got, []string{c.rule}) {
			t.Errorf("%s: stop rules %q, want %q:%s", c.name, got, c.rule, texts(list))
		} else if !strings.Contains(texts(list), c.says) {
			t.Errorf("%s: nothing says %q:%s", c.name, c.says, texts(list))
		}
	}
}

// Common practice, no source: an offset of 1/8 to 3/16 in in softwood passes
// for a 1 in bore without a word; 1/4 in is the most, with a warning; beyond
// it the peg will not drive.
func TestUsualOffsets(t *testing.T) {
	for _, c := range []struct {
		offset string
		want   finding.Severity
		any    bool
	}{{"1/8", 0, false}, {"5/32", 0, false}, {"3/16", 0, false}, {"1/4", finding.Warn, true}, {"9/32", finding.Stop, true}} {
		src := gate + "wood: {timbers: {species: eastern hemlock}}\n" + joints(into("rail", "start", "bore: 1, drawbore: "+c.offset))
		found := false
		for _, x := range proofs(trial.Frame(t, c.offset, src)) {
			if x.Rule == "drawbore" {
				found = true
				if x.Severity != c.want {
					t.Errorf("%s in: %v", c.offset, x.Severity)
				}
			}
		}
		if found != c.any {
			t.Errorf("%s in: finding %v, want %v", c.offset, found, c.any)
		}
	}
}
