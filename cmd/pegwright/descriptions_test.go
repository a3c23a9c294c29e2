package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

const (
	top  = "frame: Test\nunits: in\n"
	shed = "building: {span: 8', bays: [10'], eave: 7', roof: {shape: gable, pitch: 9 in 12}}\n"
	pair = "timbers:\n" +
		"  p: {role: post, section: 6 x 6, from: [0, 0, 0], to: [0, 0, 60], faces: [south, west]}\n" +
		"  r: {role: tie, section: 6 x 6, from: [0, 6, 48], to: [0, 72, 48], faces: [top, west]}\n"
	meet = "joints:\n  - {kind: mortise and tenon, of: r, end: start, into: p"
)

// unusable are descriptions that no frame can be solved from, each with the
// line of its fault and a word of what the message must say. Lines by hand.
var unusable = []struct {
	name, src string
	line      string
	says      string
}{
	{"empty", "", "", "empty"},
	{"binary", "PK\x03\x04\x00\x01", "", "text"},
	{"not yaml", top + "building: {span: [\n", "3", "never closed"},
	{"second document", top + shed + "---\nframe: Two\n", "4", "second"},
	{"unknown key", top + "bilding: {}\n", "3", "building"},
	{"bad length", top + "building: {span: 8 feets, bays: [10'], eave: 7'}\n", "3", "8 feets"},
	{"no section", top + "timbers:\n  p: {role: post, from: [0,0,0], to: [0,0,60]}\n", "4", "section"},
	{"zero size", top + "building: {span: 0, bays: [10'], eave: 7'}\n", "3", "0"},
	{"negative size", top + "building: {span: 8', bays: [-10'], eave: 7'}\n", "3", "-10'"},
	{"timbers that do not meet", top + strings.Replace(pair, "[0, 6, 48], to: [0, 72, 48]", "[240, 6, 48], to: [240, 72, 48]", 1) + meet + "}\n", "7", "meet"},
	{"timbers not square", top + strings.Replace(pair, "to: [0, 72, 48]", "to: [0, 72, 72]", 1) + meet + "}\n", "7", "meet"},
	{"tenon thicker than timber", top + pair + meet + ", thickness: 7\"}\n", "7", "thick"},
	{"unknown parameter", top + "building: {span: wide, bays: [10'], eave: 7'}\n", "3", "wide"},
	{"parameter cycle", top + "parameters: {a: b, b: a}\n" + shed, "3", "a"},
	{"duplicate key", top + shed + "frame: Again\n", "4", "before"},
	{"duplicate id", top + pair + "  p: {role: post, section: 6 x 6, from: [9, 0, 0], to: [9, 0, 60]}\n", "6", "p"},
	{"deep nesting", top + "building: " + strings.Repeat("[", 10000) + strings.Repeat("]", 10000) + "\n", "3", "deep"},
	{"alias bomb", "a: &a [x,x,x,x,x,x,x,x,x]\nb: &b [*a,*a,*a,*a,*a,*a,*a,*a,*a]\nc: &c [*b,*b,*b,*b,*b,*b,*b,*b,*b]\nd: [*c,*c,*c,*c,*c,*c,*c,*c,*c]\n", "1", "anchor"},
	{"more bays than are built", top + "building: {span: 8', bays: [" + strings.Repeat("10', ", 300) + "10'], eave: 7'}\n", "3", "bays"},
	{"a thousand million for bays", top + "building: {span: 8', bays: 1000000000, eave: 7'}\n", "3", "1000000000"},
	{"a thousand million feet", top + "building: {span: 8', bays: [1000000000'], eave: 7'}\n", "3", "1000000000'"},
	{"not a number", top + "building: {span: .nan, bays: [10'], eave: 7'}\n", "3", ".nan"},
	{"infinity", top + "building: {span: .inf, bays: [10'], eave: 7'}\n", "3", ".inf"},
	{"overflow", top + "building: {span: 9e999, bays: [10'], eave: 7'}\n", "3", "9e999"},
	{"path as a name", top + strings.Replace(pair, "  p:", "  ../p:", 1), "4", "../p"},
	{"markup as a name", top + strings.Replace(pair, "  p:", "  <script>:", 1), "4", "<script>"},
	{"control character", "frame: a\x01b\nunits: in\n" + shed, "1", "control"},
	{"invalid UTF-8", "frame: a\xffb\nunits: in\n" + shed, "1", "UTF-8"},
	{"rune outside the font", "frame: 木\nunits: in\n" + shed, "1", "U+6728"},
	{"unknown wood", top + "wood: {timbers: {species: styrofoam}}\n" + shed, "3", "styrofoam"},
	{"unknown timber", top + pair + "joints:\n  - {kind: mortise and tenon, of: r, end: start, into: q}\n", "7", "q"},
	{"unknown joint kind", top + pair + "joints:\n  - {kind: weld, of: r, end: start, into: p}\n", "7", "weld"},
	{"selector of nothing", top + shed + "adjust:\n  - {joints: girts into posts, bore: 1\"}\n", "5", "girts into posts"},
	{"opening wider than its bay", top + "building: {span: 8', bays: [10'], eave: 7', openings: [{name: door, wall: south, bay: 1, width: 11', height: 5'}]}\n", "3", "wide"},
	{"door taller than its wall", top + "building: {span: 8', bays: [10'], eave: 7', openings: [{name: door, wall: south, bay: 1, width: 3', height: 9'}]}\n", "3", "high"},
	{"no such bay", top + "building: {span: 8', bays: [10'], eave: 7', openings: [{name: door, wall: south, bay: 4, width: 3', height: 5'}]}\n", "3", "bay"},
	{"zero division", top + "building: {span: 8' / 0, bays: [10'], eave: 7'}\n", "3", "0"},
	{"length times length", top + "building: {span: 8' * 2', bays: [10'], eave: 7'}\n", "3", "8' * 2'"},
}

var pointed = regexp.MustCompile(`^[^:]+:\d+:\d+: `)

// TestUnusable proves that each unusable description ends with exit 2, says
// where and how to mend it, prints nothing on stdout and writes nothing.
func TestUnusable(t *testing.T) {
	if len(unusable) < 30 {
		t.Fatal("fewer than thirty kinds")
	}
	for _, c := range unusable {
		t.Run(c.name, func(t *testing.T) {
			dir := t.TempDir()
			file := filepath.Join(dir, "bad.yaml")
			if err := os.WriteFile(file, []byte(c.src), 0o644); err != nil {
				t.Fatal(err)
			}
			out := filepath.Join(dir, "out")
			var stdout, stderr bytes.Buffer
			code := run([]string{"draw", file, "--out", out}, strings.NewReader(""), &stdout, &stderr)
			if code != exitUnusable || stdout.Len() > 0 {
				t.Fatalf("exit %d, stdout %q, stderr %s", code, stdout.String(), stderr.String())
			}
			msg := stderr.String()
			if !strings.Contains(msg, c.says) {
				t.Errorf("does not say %q: %s", c.says, msg)
			}
			if c.line != "" && !strings.Contains(msg, "bad.yaml:"+c.line+":") {
				t.Errorf("does not point at line %s: %s", c.line, msg)
			}
			first := strings.TrimPrefix(strings.SplitN(msg, "\n", 2)[0], dir+string(filepath.Separator))
			if !pointed.MatchString(first) {
				t.Errorf("no file:line:column: %s", first)
			}
			if list, _ := os.ReadDir(dir); len(list) != 1 {
				t.Errorf("%d entries in the folder, want the description alone", len(list))
			}
		})
	}
}

// uncut are frames that solve but must not be cut, with the rule that stops
// each. What a framer would say of them is common practice, no source.
var uncut = []struct{ name, src, rule string }{
	{"peg outside its tenon", top + pair + meet + ", off shoulder: 4 3/4\"}\n", "peg window"},
	{"peg through the shoulder", top + pair + meet + ", off shoulder: 1/4\", drawbore: none}\n", "peg window"},
	{"tenon outside its timber", top + pair + meet + ", from reference: 4 3/4\"}\n", "tenon"},
	{"offset of a third of the bore", top + pair + meet + ", bore: 1\", drawbore: 3/8\"}\n", "drawbore"},
	{"mortise out of the far face", top + pair + meet + ", tenon length: 5 1/4\", housing: 1/2\"}\n", "stick"},
	{"stick under its ideal", top + pair + meet + "}\nmeasured:\n  p: {foot: 5 1/4\" x 6\"}\n", "stick"},
	{"mortise through a mortise", top + pair + "  q: {role: tie, section: 6 x 6, from: [6, 0, 48], to: [72, 0, 48], faces: [top, south]}\n" +
		meet + "}\n  - {kind: mortise and tenon, of: q, end: start, into: p}\n", "voids"},
	{"opposed tenons that meet", top + pair + "  q: {role: tie, section: 6 x 6, from: [0, -60, 48], to: [0, 0, 48], faces: [top, west]}\n" +
		meet + ", tenon length: 3\"}\n  - {kind: mortise and tenon, of: q, end: end, into: p, tenon length: 3\"}\n", "voids"},
	{"two timbers in one place", top + pair + "  q: {role: tie, section: 6 x 6, from: [0, 30, 48], to: [0, 100, 48], faces: [top, west]}\n" + meet + "}\n", "overlap"},
	{"timber through a post unjoined", top + pair + "  q: {role: girt, section: 4 x 4, from: [-20, 1, 20], to: [40, 1, 20], faces: [top, south]}\n" + meet + "}\n", "overlap"},
	{"brace tenon outside its brace", top + pair + "  k: {role: brace, section: 3 x 5, between: [p, r], legs: 24\" x 24\", off reference: 0}\n" + meet + "}\n", "tenon"},
}

// TestUncut proves that each such frame ends with exit 1, that its packet is
// written all the same, that the sheets of the joint say so and that no
// full-size sheet is made for it.
func TestUncut(t *testing.T) {
	if len(uncut) < 10 {
		t.Fatal("fewer than ten frames")
	}
	for _, c := range uncut {
		t.Run(c.name, func(t *testing.T) {
			dir := t.TempDir()
			file := filepath.Join(dir, "bad.yaml")
			if err := os.WriteFile(file, []byte(c.src), 0o644); err != nil {
				t.Fatal(err)
			}
			out := filepath.Join(dir, "out")
			var stdout, stderr bytes.Buffer
			if code := run([]string{"draw", file, "--out", out}, strings.NewReader(""), &stdout, &stderr); code != exitStop {
				t.Fatalf("exit %d: %s", code, stderr.String())
			}
			if !strings.Contains(stderr.String(), "stop: "+c.rule) {
				t.Errorf("no stop of rule %q: %s", c.rule, stderr.String())
			}
			sheets, _ := filepath.Glob(filepath.Join(out, "svg", "*.svg"))
			named := stopped(t, stderr.String(), out)
			warned := 0
			for _, s := range sheets {
				text, err := os.ReadFile(s)
				if err != nil {
					t.Fatal(err)
				}
				base := filepath.Base(s)[4:]
				for _, joint := range named {
					switch {
					case strings.HasPrefix(base, "joint-"+joint), strings.HasPrefix(base, "drawbore-"+joint):
						if !bytes.Contains(text, []byte("DO NOT CUT")) {
							t.Errorf("%s does not say DO NOT CUT", base)
						}
						warned++
					case strings.HasPrefix(base, "hole-"+joint), strings.HasPrefix(base, "tenon-"+joint):
						t.Errorf("%s is a full-size sheet of a joint that must not be cut", base)
					}
				}
			}
			if warned == 0 {
				t.Errorf("no sheet of %v", named)
			}
		})
	}
}

// stopped returns the joints that the stop findings of a packet's model name,
// or those of the timbers that they name.
func stopped(t *testing.T, messages, out string) []string {
	t.Helper()
	raw, err := os.ReadFile(filepath.Join(out, "model.json"))
	if err != nil {
		t.Fatal(err, messages)
	}
	var model struct {
		Joints   []struct{ ID, Into, Of string }
		Findings []struct {
			Severity        string
			Timbers, Joints []string
		}
	}
	if err := json.Unmarshal(raw, &model); err != nil {
		t.Fatal(err)
	}
	var ids []string
	for _, f := range model.Findings {
		if f.Severity != "stop" {
			continue
		}
		ids = append(ids, f.Joints...)
		for _, j := range model.Joints {
			if len(f.Joints) == 0 && (slices.Contains(f.Timbers, j.Into) || slices.Contains(f.Timbers, j.Of)) {
				ids = append(ids, j.ID)
			}
		}
	}
	return ids
}
