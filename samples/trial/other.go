package trial

import (
	"testing"

	"pegwright/geom"
)

// others describes the frames of EachOther.
func others() map[string]string {
	return map[string]string{
		"long barn": `frame: Long barn
units: in
building: {span: 20', bays: [12', 12', 12', 12'], eave: 10', sills: yes, roof: {shape: gable, pitch: 9 in 12, overhang: 12"}, braces: {legs: 30" x 30", in: [bents, walls]}}
sections: {sill: 8 x 8, post: 8 x 8, tie: 8 x 10, plate: 8 x 8, rafter: 6 x 8}
paper: {sheets: tabloid}
`,
		"lean-to": `frame: Lean-to
units: mm
building: {span: 3 m, bays: [2.4 m, 2.4 m], eave: 2.2 m, sills: no, roof: {shape: shed, pitch: 15 deg, overhang: 200}, braces: {legs: 500 x 500, in: [bents, walls]}}
paper: {sheets: a3}
`,
		"loft": `frame: Loft
units: in
building:
  span: 14'
  bays: [10', 9']
  eave: 9'
  roof: {shape: gable, pitch: 9 in 12, overhang: 8", truss: king post}
  sills: yes
  floor: {joists: 4 x 6, spacing: 24"}
  loft: {joists: 4 x 6, spacing: 24"}
  braces: {legs: 24" x 24", in: [bents, walls]}
wood: {timbers: {longest: 14'}}
`,
		"four pegs": fourPegs("6 x 16"),
		// More holes than the tenon has room for, which is a finding that stops.
		"four pegs in a row too long": fourPegs("8 x 8"),
	}
}

// fourPegs is a rail of the section given on a post, with as many pegs as a joint
// may have.
func fourPegs(section string) string {
	return `frame: Four pegs
units: in
timbers:
  gate-post: {role: post, section: 8 x 8, from: [0, 0, 0], to: [0, 0, 5'], faces: [south, west]}
  top-rail: {role: tie, section: ` + section + `, from: [0, 8, 4'], to: [0, 6', 4'], faces: [top, west]}
joints:
  - {kind: mortise and tenon, of: top-rail, end: start, into: gate-post, pegs: 4, bore: 1"}
`
}

// EachOther runs a test on invented frames that show what the samples do not:
// many bays on large paper, a shed roof in millimetres, trusses, floors, a loft,
// long plates, four pegs.
func EachOther(t *testing.T, test func(t *testing.T, f *geom.Frame)) {
	t.Helper()
	for name, src := range others() {
		t.Run(name, func(t *testing.T) { test(t, Frame(t, name, src)) })
	}
}

// LongBarn is a barn of seven bays of 12 ft, drawn on paper of the name given.
func LongBarn(t testing.TB, paper string) *geom.Frame {
	return Frame(t, "long barn", `frame: Long barn
units: in
building: {span: 24', bays: [12', 12', 12', 12', 12', 12', 12'], eave: 10', sills: yes, roof: {shape: gable, pitch: 9 in 12, overhang: 12"}, braces: {legs: 30" x 30", in: [bents, walls]}}
sections: {sill: 8 x 8, post: 8 x 8, tie: 8 x 10, plate: 8 x 8, rafter: 6 x 8}
paper: {sheets: `+paper+`}
`)
}
