package templates

import (
	"math"
	"strings"
	"testing"

	"pegwright/draw"
	"pegwright/draw/font"
	"pegwright/geom/finding"
	"pegwright/geom/vec"
)

// TestSheetsCanBeRead: lettering on a template is at least 3.5 mm high (ISO
// 3098 height; the title block apart), no text lies on another or on a hole,
// nothing lies in the outer 1/4 in of the paper, which printers leave white
// (common practice, no source), and the font has every sign.
func TestSheetsCanBeRead(t *testing.T) {
	for _, d := range all(t) {
		name := d.name
		for _, s := range d.sheets {
			if !s.FullScale {
				t.Errorf("%s %s is not marked as full scale", name, s.ID)
			}
			readable(t, name+" "+s.ID, s)
		}
	}
}

func readable(t *testing.T, where string, s *draw.Sheet) {
	t.Helper()
	edge := draw.Box{Min: vec.P{X: 6.35, Y: 6.35}, Max: vec.P{X: s.W - 6.35, Y: s.H - 6.35}}
	if b := s.Bounds(); !within(b, edge) {
		t.Errorf("%s: items reach the edge of the paper: %v", where, b)
	}
	var texts []*draw.Text
	for _, it := range s.Items {
		if x, ok := it.(*draw.Text); ok && x.Layer != "title" {
			texts = append(texts, x)
		}
	}
	for i, x := range texts {
		checkText(t, where, s, x, texts[:i], edge)
	}
}

func checkText(t *testing.T, where string, s *draw.Sheet, x *draw.Text, before []*draw.Text, edge draw.Box) {
	t.Helper()
	b := inked(x)
	if x.Height < 3.5 {
		t.Errorf("%s: %q is %v mm high", where, x.S, x.Height)
	}
	if !within(b, edge) {
		t.Errorf("%s: %q leaves the paper: %v", where, x.S, b)
	}
	if m := font.Missing(font.Normalise(x.S)); len(m) > 0 {
		t.Errorf("%s: %q has no sign for %q", where, x.S, m)
	}
	core := grown(b, -0.8) // clear room about a text may be shared
	for _, y := range before {
		if touch(core, grown(inked(y), -0.8)) {
			t.Errorf("%s: %q lies on %q", where, x.S, y.S)
		}
	}
	for _, it := range s.Items {
		c, ok := it.(*draw.Circle)
		if ok && touch(core, grown(draw.NoBox().With(c.C), 0.7*c.R)) {
			t.Errorf("%s: %q lies on a hole", where, x.S)
		}
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
				checkNames(t, s, g, sheets[s.ID+"-list-1"] != nil)
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

func checkNames(t *testing.T, s *draw.Sheet, g plan, listed bool) {
	t.Helper()
	text, marks := textOf(s), map[string]bool{}
	for _, it := range s.Items {
		marks[it.Head().Mark] = true
	}
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
	if g.kind != "tenon" && !strings.Contains(flow, startWords(g.v.t)) {
		t.Errorf("%s does not say where the start end is", s.ID)
	}
	for _, q := range g.serves {
		if len(g.serves) > 1 && !strings.Contains(flow, q.v.t.ID) && !listed {
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

// TestNoWideLineRunsThroughWords: a wide line that crosses lettering well
// inside its capitals is taken for a stroke of it. Lettering has a white ground,
// so that one line in a few hundred sheets that leave it no other room is borne.
func TestNoWideLineRunsThroughWords(t *testing.T) {
	struck, sheets := 0, 0
	for _, d := range all(t) {
		for _, s := range d.sheets {
			sheets++
			wide := wideLines(s)
			for _, it := range s.Items {
				if x, ok := it.(*draw.Text); ok && x.Layer != "title" && struckThrough(x, wide) {
					struck++
					t.Logf("%s %s: a wide line runs through %q at %v", d.name, s.ID, x.S, x.At)
					if !x.Halo {
						t.Errorf("%s %s: no white ground under %q", d.name, s.ID, x.S)
					}
				}
			}
		}
	}
	if struck*100 > sheets {
		t.Errorf("%d words struck through on %d sheets", struck, sheets)
	}
}

// wideLines returns the wide lines of a sheet, the border apart.
func wideLines(s *draw.Sheet) [][2]vec.P {
	var wide [][2]vec.P
	for _, it := range s.Items {
		p, ok := it.(*draw.Path)
		if !ok || p.Filled || p.Layer == "border" || p.PenAt(s.Step).Width < draw.PenFor(draw.Part, s.Step).Width-1e-9 {
			continue
		}
		for i := 1; i < len(p.Pts); i++ {
			wide = append(wide, [2]vec.P{p.Pts[i-1], p.Pts[i]})
		}
		if p.Closed {
			wide = append(wide, [2]vec.P{p.Pts[len(p.Pts)-1], p.Pts[0]})
		}
	}
	return wide
}

// struckThrough steps along the lines by a tenth of a millimetre and looks for
// points within the capitals of the text.
func struckThrough(x *draw.Text, wide [][2]vec.P) bool {
	u := vec.P{X: math.Cos(x.Rot), Y: math.Sin(x.Rot)}
	long := font.Measure(x.S, x.Height, x.Bold)
	from := [3]float64{draw.Start: 0, draw.Middle: -long / 2, draw.End: -long}[x.Anchor]
	for _, l := range wide {
		n := int(l[0].Dist(l[1])*10) + 1
		for k := range n + 1 {
			d := l[0].Lerp(l[1], float64(k)/float64(n)).Sub(x.At)
			if a, h := d.Dot(u), d.Dot(u.Left()); a > from+0.2 && a < from+long-0.2 && h > 0.2 && h < x.Height-0.2 {
				return true
			}
		}
	}
	return false
}
