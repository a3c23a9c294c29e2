package check

import (
	"strings"
	"testing"

	"pegwright/geom/finding"
	"pegwright/samples/trial"
)

const shed = `frame: x
units: in
wood: {timbers: {species: eastern white pine, seasoning: %s}}
building: {span: 8', bays: [8'], eave: 7', sills: yes, girts: no, braces: {legs: 24" x 24"}, roof: {shape: gable, pitch: 9 in 12}}
adjust:
  - {joints: %s}
`

// driedOut returns the findings about drying of the shed, cut from timber of
// the seasoning given and with one adjustment.
func driedOut(t *testing.T, seasoning, adjust string) []finding.Finding {
	t.Helper()
	text := strings.Replace(strings.Replace(shed, "%s", seasoning, 1), "%s", adjust, 1)
	f := trial.Frame(t, "x.yaml", text)
	p := &proof{f: f}
	p.drying()
	return p.list
}

// A brace drawn square to its shoulder lifts its nose by 0.062 in in green
// white pine (worked by hand in peg's tests); dry timber does not, and so does
// none drawn 1/8 in along itself. Drawn 1/16 in along itself at 45° it has
// 0.0442 in toward the nose and loses (2 + 1.5) x 0.7071 x 0.7071 x S, so that it
// is slack at S = 0.02525, 17.6 % moisture, and 0.0199 in off at 0.0366. A tie drawn 1/32 in, with the hole 2 in off the
// shoulder in a 1 in bore, loses 1.5 x 0.0366 = 0.055 in and ends 0.024 in open.
func TestDryingWarns(t *testing.T) {
	for _, c := range []struct{ seasoning, adjust, says string }{
		{"green", "braces, draw: square, drawbore: 1/8\"", "drawn square to the shoulder only: nothing draws the nose home as the brace shrinks, and the dry peg holds it off by up to 0.062 in"},
		{"dry", "braces, draw: square, drawbore: 1/8\"", ""},
		{"green", "braces, draw: along the brace, drawbore: 1/8\"", ""},
		{"green", "braces, drawbore: 1/16\"", "the offset is used up toward the nose as the brace shrinks, in the first from 18 % moisture on, and the dry peg holds the nose off by up to 0.020 in"},
		{"green", "ties into posts, bore: 1\", off shoulder: 2\", drawbore: 1/32\"", "open by up to 0.024 in"},
	} {
		got := driedOut(t, c.seasoning, c.adjust)
		if c.says == "" {
			if len(got) != 0 {
				t.Errorf("%s, %s: %q", c.seasoning, c.adjust, got[0].Text)
			}
			continue
		}
		if len(got) != 1 || got[0].Severity != finding.Warn || got[0].Rule != dryingRule || !strings.Contains(got[0].Text, c.says) {
			t.Errorf("%s, %s: %+v", c.seasoning, c.adjust, got)
		}
	}
}

// A tie that is not drawn, its hole 2 in off the shoulder in a 1 in bore, opens
// by (2 - 1/2) x S: the dry peg bears on the far side of a hole that comes nearer
// (S = 6.1 % x 18/30 = 0.0366 for green white pine at 12 %, Wood Handbook from
// memory). Dry wood does not, and bridles, laps and seats have no draw to lose.
func TestUndrawnPegIsNoted(t *testing.T) {
	const tie = "ties into posts, bore: 1\", off shoulder: 2\", drawbore: "
	for _, c := range []struct{ seasoning, adjust, says string }{
		{"green", tie + "0\"", "not drawn: the shoulder will open by up to 0.055 in"},
		{"green", tie + "3/16\"", ""},
		{"dry", tie + "0\"", ""},
	} {
		f := trial.Frame(t, "x.yaml", strings.Replace(strings.Replace(shed, "%s", c.seasoning, 1), "%s", c.adjust, 1))
		p := &proof{f: f}
		p.undrawn()
		if c.says == "" {
			if len(p.list) > 0 {
				t.Errorf("%s, %s: %q", c.seasoning, c.adjust, p.list[0].Text)
			}
			continue
		}
		if len(p.list) != 1 || p.list[0].Severity != finding.Note || p.list[0].Rule != undrawnRule || !strings.Contains(p.list[0].Text, c.says) || len(p.list[0].Joints) != 2*2 {
			t.Errorf("%s, %s: %+v", c.seasoning, c.adjust, p.list)
		}
	}
}
