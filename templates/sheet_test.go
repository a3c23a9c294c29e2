package templates

import (
	"math"
	"strings"
	"testing"

	"pegwright/draw"
	"pegwright/draw/legible"
	"pegwright/geom/finding"
	"pegwright/geom/vec"
)

// rules are what a full-size sheet must keep: lettering at least 3.5 mm high
// (ISO 3098 height, the title block and fraction figures apart), none on other
// lettering or on a hole, no wide line through it, nothing in the outer 1/4 in
// of the paper, which printers leave white (common practice, no source).
func rules(s *draw.Sheet) legible.Rules {
	const white = 6.35
	edge := draw.Box{Min: vec.P{X: white, Y: white}, Max: vec.P{X: s.W - white, Y: s.H - white}}
	return legible.Rules{Items: edge, Words: edge, Least: lettering, Figures: 2.5, Lines: true, Holes: true,
		Loose: map[string]bool{"title": true}, Apart: map[string]bool{"border": true}}
}

// TestSheetsCanBeRead holds every template to the rules.
func TestSheetsCanBeRead(t *testing.T) {
	for _, d := range all(t) {
		for _, s := range d.sheets {
			if !s.FullScale {
				t.Errorf("%s %s is not marked as full scale", d.name, s.ID)
			}
			readable(t, d.name, s)
		}
	}
}

func readable(t *testing.T, where string, s *draw.Sheet) {
	t.Helper()
	for _, f := range rules(s).Faults(s) {
		t.Errorf("%s: %s", where, f)
	}
}

// TestEveryLineIsNamed: each line of a template has its meaning written on the
// sheet.
func TestEveryLineIsNamed(t *testing.T) {
	for _, d := range all(t) {
		sheets := map[string]*draw.Sheet{}
		for _, s := range d.sheets {
			sheets[s.ID] = s
		}
		for _, g := range d.groups {
			_, word := g.title()
			if s := sheets[g.joint.ID+"-"+word]; s != nil {
				checkNames(t, s, g, d.sheets)
			}
		}
	}
}

// textOf returns all lettering of a sheet, lines parted by strokes.
func textOf(s *draw.Sheet) string {
	text := ""
	for _, it := range s.Items {
		if x, ok := it.(*draw.Text); ok {
			text += "|" + x.S
		}
	}
	return text
}

func checkNames(t *testing.T, s *draw.Sheet, g plan, sheets []*draw.Sheet) {
	t.Helper()
	text, marks := textOf(s), map[string]bool{}
	for _, it := range s.Items {
		marks[it.Head().Mark] = true
	}
	_, word := g.title()
	whole := flow(sheets, g.joint.ID+"-"+word)
	flow := strings.ReplaceAll(strings.ReplaceAll(text, "-|", "-"), "|", " ")
	for _, l := range g.guides {
		if marks[l.mark] && !strings.HasPrefix(l.mark, "line:other") && !strings.Contains(flow, " "+l.name) {
			t.Errorf("%s: %q is not named", s.ID, l.name)
		}
	}
	if g.kind == "far" && !strings.Contains(flow, "FAR FACE") {
		t.Errorf("%s does not say FAR FACE", s.ID)
	}
	if p := g.joint.Pegs[0]; g.kind == "tenon" && p.Offset > 0 && (!marks["arrow:draw"] || strings.Count(flow, p.Words) < 2) {
		t.Errorf("%s does not show which way: %q", s.ID, p.Words)
	}
	if g.kind != "tenon" && !strings.Contains(flow, g.startWords()) {
		t.Errorf("%s does not say where the start end is", s.ID)
	}
	for _, q := range g.serves {
		if len(g.serves) > 1 && !strings.Contains(whole, q.v.t.ID) {
			t.Errorf("%s does not list %s", s.ID, q.v.t.ID)
		}
	}
}

// TestStoppedJointsGetNoSheet: no 1:1 sheet for a joint that a stop finding
// names, nor for those of a timber where it names no joint; warnings change
// nothing.
func TestStoppedJointsGetNoSheet(t *testing.T) {
	f := sample(t)
	serving := func(finds ...finding.Finding) map[string]bool {
		out := map[string]bool{}
		for _, g := range gather(plans(f, finds)) {
			for _, q := range g.serves {
				out[q.joint.ID] = true
			}
		}
		return out
	}
	all := serving()
	var j, tm string
	for _, x := range f.Joints {
		if len(x.Pegs) > 0 {
			j, tm = x.ID, x.Of.ID
			break
		}
	}
	if !all[j] {
		t.Fatalf("%s has no sheet to begin with", j)
	}
	if serving(finding.Finding{Severity: finding.Stop, Joints: []string{j}})[j] {
		t.Error("a stopped joint has a sheet")
	}
	if serving(finding.Finding{Severity: finding.Stop, Timbers: []string{tm}})[j] {
		t.Error("a joint of a stopped timber has a sheet")
	}
	if n := len(serving(finding.Finding{Severity: finding.Warn, Joints: []string{j}})); n != len(all) {
		t.Errorf("a warning leaves %d joints of %d", n, len(all))
	}
}

// TestEveryPeggedJointIsServed: for each peg of each joint there is a near, a
// far and a tenon template, or one for a blind peg.
func TestEveryPeggedJointIsServed(t *testing.T) {
	for _, d := range all(t) {
		name, f := d.name, d.f
		got := map[string]int{}
		for _, g := range d.groups {
			for _, q := range g.serves {
				got[q.joint.ID+" "+q.kind]++
			}
		}
		for _, j := range f.Joints {
			for _, p := range j.Pegs {
				kinds := []string{"near", "far", "tenon"}
				if p.Exit == 0 {
					kinds = []string{"through"}
				}
				for _, k := range kinds {
					if k == "tenon" && got[j.ID+" mate"] > 0 {
						continue // a scarf has no shoulder to fold at
					}
					if got[j.ID+" "+k] == 0 {
						t.Errorf("%s: %s has no %s template", name, j.ID, k)
					}
				}
			}
		}
	}
}

// TestMirrorImagesAreNotAlike: a template and its mirror image are two.
func TestMirrorImagesAreNotAlike(t *testing.T) {
	for _, p := range plans(sample(t), nil) {
		if len(p.holes) == 0 {
			continue
		}
		q := p
		q.holes = append([]hole(nil), p.holes...)
		for i := range q.holes {
			q.holes[i].c.Y = -q.holes[i].c.Y
		}
		if !p.signature().alike(p.signature()) || p.signature().alike(q.signature()) {
			t.Fatalf("%s %s", p.joint.ID, p.kind)
		}
	}
}

// TestSameBytes: the same frame gives the same sheets.
func TestSameBytes(t *testing.T) {
	text := func() string {
		out := ""
		for _, s := range Sheets(sample(t), nil) {
			out += s.Dump()
		}
		return out
	}
	if one, two := text(), text(); one != two {
		t.Error("two runs differ")
	}
}

// A brace at 45° comes in along the slope of its pocket, so that its side meets
// the face as far out as the bearing lies below it (tan 45° is 1); a tie comes in
// square and meets it nowhere else.
func TestFlareOfAHousedPocket(t *testing.T) {
	f := sample(t)
	for id, tan := range map[string]float64{"brace-1-south-into-post-1-south": 1, "brace-1-south-into-tie-1": 1, "tie-1-into-post-1-south": 0} {
		j := f.Joint(id)
		if j.LetIn < 12 {
			t.Fatalf("%s is let in by %.1f", id, j.LetIn)
		}
		if got, want := flare(j), j.LetIn*tan; math.Abs(got-want) > 0.3 {
			t.Errorf("%s: %.2f, want %.2f", id, got, want)
		}
	}
}
