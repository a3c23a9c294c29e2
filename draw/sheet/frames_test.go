package sheet

import (
	"strings"
	"testing"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/geom"
	"pegwright/samples/trial"
)

// others are invented frames that show what the samples do not: many bays on
// large paper, a shed roof in millimetres, trusses, floors, a loft, long plates.
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
	}
}

// inOthers runs a check on the frames that the samples do not show.
func inOthers(t *testing.T, check func(t *testing.T, f *geom.Frame)) {
	for name, src := range others() {
		t.Run(name, func(t *testing.T) {
			f := trial.Frame(t, name, src)
			check(t, f)
		})
	}
}

// Timber sheets, plans and elevations keep their layout in other frames, and
// tell every cut of every timber and every timber's name.
func TestOtherFrames(t *testing.T) {
	inOthers(t, func(t *testing.T, f *geom.Frame) {
		surveys := append(Apart(f), Surveys(f)...)
		all := wordsOn(surveys, "")
		for _, x := range f.Timbers {
			if !strings.Contains(all, "\n"+x.ID+"\n") {
				t.Errorf("%s is not named", x.ID)
			}
		}
		var sheets []*draw.Sheet
		for _, g := range AllSticks(f) {
			list := Timber(f, g, nil)
			everyCut(t, g.First(), list)
			sheets = append(sheets, list...)
		}
		for i, s := range append(surveys, sheets...) {
			block.Number(s, i+1, len(surveys)+len(sheets), "0123456789ab")
			if err := s.Valid(); err != nil {
				t.Error(err)
			}
			checkLayout(t, s)
		}
	})
}
