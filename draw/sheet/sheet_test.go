package sheet

import (
	"testing"

	"pegwright/draw/block"
	"pegwright/draw/sheet/tidy"
	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/list"
	"pegwright/samples"
	"pegwright/samples/trial"
)

// findings are invented ones: a stop on the first joint, a warning, a note.
func findings(f *geom.Frame) []finding.Finding {
	return []finding.Finding{
		{Severity: finding.Note, Rule: "x", Text: "the peg of a brace stands outside full strength by 1.5 bores of 4", Mend: "nothing to mend where it only locates"},
		{Severity: finding.Stop, Rule: "y", Joints: []string{f.Joints[0].ID}, Text: "the hole breaks out of the tenon end by 1/4 in", Mend: "lengthen the tenon to 4 1/2 in"},
		{Severity: finding.Warn, Rule: "z", Timbers: []string{f.Timbers[0].ID}, Text: "the web between two mortises is 3/8 in thick", Mend: "stagger the mortises"},
	}
}

// Every text of every sheet keeps to itself: inside the border, apart from
// every other text, no figure under 2.5 mm (ISO 3098 sizes; the least of the
// sheets), no rune that the font lacks.
func TestLayoutOfAllSamples(t *testing.T) {
	for _, name := range trial.Drawn() {
		t.Run(name, func(t *testing.T) {
			f := trial.Sample(t, name)
			sheets := All(f, findings(f))
			for i, s := range sheets {
				block.Number(s, i+1, len(sheets), "0123456789ab")
			}
			tidy.Write(t, name, sheets)
			for _, s := range sheets {
				if err := s.Valid(); err != nil {
					t.Error(err)
				}
				tidy.Check(t, s)
			}
		})
	}
}

func TestSameSheetsEveryTime(t *testing.T) {
	f := trial.Sample(t, samples.Default())
	dump := func() string {
		out := ""
		for _, s := range All(f, findings(f)) {
			out += s.Dump()
		}
		return out
	}
	first, second := dump(), dump()
	if first != second {
		t.Error("two runs differ")
	}
}

func TestStoppedJoints(t *testing.T) {
	f := trial.Sample(t, samples.Default())
	got := list.Stopped(f, findings(f))
	if len(got) != 1 || got[f.Joints[0].ID] != 1 {
		t.Errorf("stopped %v", got)
	}
	timber := f.Timbers[0]
	got = list.Stopped(f, []finding.Finding{{Severity: finding.Warn}, {Severity: finding.Stop, Timbers: []string{timber.ID}}})
	if len(got) != len(f.JointsOf(timber)) {
		t.Errorf("%d joints stopped, %d at the timber", len(got), len(f.JointsOf(timber)))
	}
}
