package check_test

import (
	"fmt"
	"strings"
	"testing"

	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/samples/trial"
)

// roof is a pair of rafters on two plates, timber by timber: 10 ft from plate to
// plate, 9 in 12, with whatever is added.
const roof = `frame: Roof
units: in
wood: {timbers: {reduce: 0}}
timbers:
  south: {role: plate, section: 6 x 6, from: [0, 0, 96], to: [120, 0, 96], faces: [top, south]}
  north: {role: plate, section: 6 x 6, from: [0, 120, 96], to: [120, 120, 96], faces: [top, north]}
  left: {role: rafter, section: 4 x 6, from: [40, -12, 92], to: [40, 60, 146], faces: [top, west]}
  right: {role: rafter, section: 4 x 6, from: [40, 132, 92], to: [40, 60, 146], faces: [top, west]}
%s
joints:
  - {kind: birdsmouth seat, of: left, end: start, into: south}
  - {kind: birdsmouth seat, of: right, end: start, into: north}
%s
`

const peak = "  - {kind: bridle, of: right, end: end, into: left}\n"

// thrusts returns the findings of rule thrust.
func thrusts(f *geom.Frame) []finding.Finding {
	var r []finding.Finding
	for _, x := range proofs(f) {
		if x.Rule == "thrust" {
			r = append(r, x)
		}
	}
	return r
}

// Statics, no source: two rafters that lean on each other push out at their feet
// unless tied at the feet; a rafter borne at foot and head by level timbers
// pushes nowhere. Where a tie is dropped, the distance is worked by hand.
func TestThrust(t *testing.T) {
	posts := `  ps: {role: post, section: 6 x 6, from: [0, 0, 0], to: [0, 0, 90], faces: [south, west]}
  pn: {role: post, section: 6 x 6, from: [0, 120, 0], to: [0, 120, 90], faces: [north, west]}
`
	tops := `  - {kind: mortise and tenon, of: ps, end: end, into: south, tenon length: 3}
  - {kind: mortise and tenon, of: pn, end: end, into: north, tenon length: 3}
`
	tie := func(z int, s, n string) (timber, joints string) {
		return fmt.Sprintf("  tie: {role: tie, section: 6 x 6, from: [0, 6, %d], to: [0, 114, %d], faces: [top, west]}\n", z, z),
			fmt.Sprintf("  - {kind: mortise and tenon, of: tie, end: start, into: %s, pegs: 0}\n  - {kind: mortise and tenon, of: tie, end: end, into: %s, pegs: 0}\n", s, n)
	}
	atPlate, atPlateJoints := tie(96, "south", "north")
	low, lowJoints := tie(80, "ps", "pn")
	oneSided := "  ridge: {role: ridge, section: 4 x 6, from: [0, 58, 130], to: [120, 58, 130], faces: [top, south]}\n"
	for _, c := range []struct {
		name, timbers, joints, says string
	}{
		{"untied", "", peak, "nothing ties their feet"},
		{"tied at the plates", atPlate, peak + atPlateJoints, ""},
		// The plates' underside lies at 90, the tie's top at 80.
		{"tied 10 in below the plates", posts + low, peak + tops + lowJoints, `10" below the underside`},
		{"ridge that nothing carries", oneSided, peak, "nothing ties their feet"},
	} {
		t.Run(c.name, func(t *testing.T) {
			list := thrusts(trial.Frame(t, c.name, fmt.Sprintf(roof, c.timbers, c.joints)))
			switch {
			case c.says == "" && len(list) > 0:
				t.Errorf("a warning: %s", list[0].Text)
			case c.says != "" && (len(list) != 1 || !strings.Contains(list[0].Text, c.says)):
				t.Errorf("want one warning that says %q, got %+v", c.says, list)
			case c.says != "" && (list[0].Severity != finding.Warn || list[0].At.Line != 7 || list[0].Mend == ""):
				t.Errorf("severity, place or mend: %+v", list[0])
			}
		})
	}
}

// One warning speaks for all pairs of a building that push alike, and names
// every rafter.
func TestThrustIsGathered(t *testing.T) {
	f := trial.Frame(t, "barn", fmt.Sprintf(barn, "", "3'"))
	list := thrusts(f)
	if len(list) != 1 {
		t.Fatalf("%d warnings", len(list))
	}
	rafters := 0
	for _, tm := range f.Timbers {
		if tm.Role == "rafter" {
			rafters++
		}
	}
	if len(list[0].Timbers) != rafters || rafters < 4 {
		t.Errorf("%d rafters named of %d", len(list[0].Timbers), rafters)
	}
}

// Roofs as the program lays them, 16 ft wide and 8 in 12, so 64 in high. A
// collar 14 in up lies in the lowest third and one 40 in up does not; purlins
// and ridge beams on posts carry their rafters at two heights; a shed's rafters
// bear level at both ends.
func TestThrustOfLaidRoofs(t *testing.T) {
	const shell = `frame: Hall
units: in
sections: {post: 8 x 8, tie: 8 x 9, plate: 8 x 8, rafter: 4 x 7}
building:
  span: 16'
  bays: [10', 10']
  eave: 8' 6"
  roof: {pitch: 8 in 12, %s}
%s`
	for _, c := range []struct{ roof, more, says string }{
		{"shape: gable", "", `ties lie 6 1/2" below the underside of the plates`},
		{"shape: gable", "  tie height: 7'\n", `ties lie 10 1/2" below`},
		{"shape: gable", "  ties: over plates\n", ""},
		{"shape: gable, ridge: beam", "", ""},
		{"shape: gable, ridge: beam, king posts: gables", "", ""},
		{"shape: gable, collars: {height: 14}", "", ""},
		{"shape: gable, collars: {height: 40}", "", "above the lowest third"},
		{"shape: gable, truss: king post", "", ""},
		{"shape: gable, truss: queen posts", "", ""},
		{"shape: shed", "", ""},
	} {
		list := thrusts(trial.Frame(t, c.roof, fmt.Sprintf(shell, c.roof, c.more)))
		switch {
		case c.says == "" && len(list) > 0:
			t.Errorf("%s%s: a warning: %s", c.roof, c.more, list[0].Text)
		case c.says != "" && (len(list) != 1 || !strings.Contains(list[0].Text, c.says)):
			t.Errorf("%s%s: want one warning that says %q, got %+v", c.roof, c.more, c.says, list)
		}
	}
}
