package drawbore

import (
	"bytes"
	"fmt"
	"math"
	"strings"
	"testing"

	"pegwright/draw"
	"pegwright/draw/measured"
	"pegwright/draw/pdf"
	"pegwright/draw/scene"
	"pegwright/draw/svg"
	"pegwright/geom"
	"pegwright/geom/vec"
	"pegwright/samples/trial"
)

// drawn is a drawn joint with its two sheets as they are read back from a PDF.
type drawn struct {
	j             *geom.Joint
	p             *geom.Peg
	sheets        []*draw.Sheet
	section, hole measured.Page
}

// readBack returns drawn joints of a frame, one of every third group.
func readBack(t *testing.T, f *geom.Frame) []drawn {
	t.Helper()
	var out []drawn
	var all []*draw.Sheet
	for i, g := range scene.Groups(f) {
		if i%3 != 0 {
			continue
		}
		if s := Sheets(f, g, nil); len(s) == 2 {
			out = append(out, drawn{j: g.First(), p: throughPeg(g.First()), sheets: s})
			all = append(all, s...)
		}
	}
	for i, page := range pagesOf(t, all) {
		if i%2 == 0 {
			out[i/2].section = page
		} else {
			out[i/2].hole = page
		}
	}
	return out
}

// What PDFium and the SVG say of the drawn joints of the samples is held against
// the joints themselves.
func TestDrawboreReadBack(t *testing.T) {
	leaning, square := 0, 0
	for _, name := range trial.Drawn() {
		f := trial.Sample(t, name)
		for _, d := range readBack(t, f) {
			detailCircles(t, d)
			sectionAxes(t, d)
			saysNumbers(t, f, d)
			hands(t, d)
			if d.p.PFrom == "nose line" {
				leaning++
			} else {
				square++
			}
		}
	}
	if leaning < 6 || square < 6 {
		t.Errorf("only %d leaning and %d square joints: the test says little", leaning, square)
	}
}

// leastDetail is the enlargement that a framer needs to see the offset: 4 to 1
// for a usual one. A wide one, above a fifth of the bore, is plain at less.
func leastDetail(p *geom.Peg) float64 {
	if p.Offset > p.Bore/5 {
		return 2
	}
	return 4
}

// The two circles of the detail: the offset at the scale that the sheet prints,
// to 0.02 mm, and the way. By the definition of the joint the shoulder is above,
// and the tenon hole (dashed) is nearer to it by A - B, more where the shoulder
// slopes; along a brace at angle θ the rest is e cos θ (plane trigonometry, from
// the axes of the two timbers).
func detailCircles(t *testing.T, x drawn) {
	p, k := x.p, scaleAfter(t, x.hole, "detail")
	m, tenon := circlesOf(t, x.hole, p.Bore/2*k)
	d := tenon.Sub(m)
	if got := d.Len(); math.Abs(got-p.Offset*k) > 0.02 || k < leastDetail(p) {
		t.Errorf("%s: circles %.3f mm apart at %g:1, want %.3f", x.j.ID, got, k, p.Offset*k)
	}
	cos := math.Abs(x.j.Into.Place.X.Dot(x.j.Of.Place.X))
	if !p.AlongBrace { // drawn square to the shoulder
		cos = 0
	}
	// The floor of a diminished housing rises to nothing at the brace's inner
	// edge: between the two holes by this much, which A - B lacks.
	n := x.j.Bearing.N.Dot(x.j.Axes.W)
	rise := p.Offset * cos * math.Sqrt(max(0, 1-n*n)) / n
	if want := p.A - p.B + rise; math.Abs(d.Y-want*k) > 0.02 || d.Y <= 0 {
		t.Errorf("%s: %.3f mm toward the shoulder, want %.3f", x.j.ID, d.Y, want*k)
	}
	if math.Abs(math.Abs(d.X)-p.Offset*k*cos) > 0.02 {
		t.Errorf("%s: %.3f mm along the receiver, want %.3f", x.j.ID, d.X, p.Offset*k*cos)
	}
}

// pagesOf returns sheets as they are read back from one PDF.
func pagesOf(t *testing.T, sheets []*draw.Sheet) []measured.Page {
	t.Helper()
	var b bytes.Buffer
	if err := pdf.Render(&b, pdf.Doc{Sheets: sheets}); err != nil {
		t.Fatal(err)
	}
	pages, err := measured.PDF(b.Bytes())
	if err != nil || len(pages) != len(sheets) {
		t.Fatalf("%d pages of %d sheets: %v", len(pages), len(sheets), err)
	}
	return pages
}

// scaleAfter returns the n of the "n:1" that stands after a word in a text of
// the page, or 1/n for "1:n".
func scaleAfter(t *testing.T, page measured.Page, word string) float64 {
	t.Helper()
	all := strings.ReplaceAll(page.Text(), " ", "")
	_, after, ok := strings.Cut(all, strings.TrimSpace(word))
	var a, b float64
	if _, err := fmt.Sscanf(after, "%f:%f", &a, &b); !ok || err != nil {
		t.Fatalf("no scale after %q in %q", word, all)
	}
	return a / b
}

// circlesOf returns the centres of the full and of the dashed circle of radius
// r.
func circlesOf(t *testing.T, page measured.Page, r float64) (full, dashed vec.P) {
	t.Helper()
	var n [2]int
	for _, c := range page.Circles {
		if math.Abs(c.R-r) > 0.02 {
			continue
		}
		if len(c.Dash) > 0 {
			dashed, n[1] = c.C, n[1]+1
		} else {
			full, n[0] = c.C, n[0]+1
		}
	}
	if n != [2]int{1, 1} {
		t.Fatalf("%v full and dashed circles of radius %.2f", n, r)
	}
	return full, dashed
}

// hands: the view along the peg is no mirror image. A viewer who looks forward
// with up above has forward x up on the right hand: there or opposite is the
// receiver's start end. The tenon hole of a brace lies on the other side of the
// mortise hole than the nose line, which is found from the joint's lines.
func hands(t *testing.T, x drawn) {
	j, p := x.j, x.p
	page := vectors(t, x.sheets[1])
	_, arrow := page.Marked("to start")
	m, _ := page.Marked("hole:mortise:" + j.ID)
	h, _ := page.Marked("hole:tenon:" + j.ID)
	if len(arrow) != 1 || len(m) != 1 || len(h) != 1 {
		t.Fatalf("%s: %d arrows, %d and %d circles", j.ID, len(arrow), len(m), len(h))
	}
	pts := arrow[0].Points()
	toStart := pts[0].X - (pts[1].X+pts[2].X)/2
	right := p.To.Sub(p.From).Cross(j.Axes.W)
	if toStart*right.Dot(j.Into.Place.X) >= 0 {
		t.Errorf("%s: the start end is on the wrong hand", j.ID)
	}
	if p.PFrom != "nose line" {
		return
	}
	u, _, _ := j.Axes.Of(p.Mortise)
	toNose := scene.MainLine(j) - u // along the receiver from its start end
	if tenon := h[0].C.X - m[0].C.X; tenon*(-toStart)*toNose >= 0 {
		t.Errorf("%s: the tenon hole lies toward the nose", j.ID)
	}
}

func vectors(t *testing.T, s *draw.Sheet) measured.Page {
	t.Helper()
	b, err := svg.Render(s, svg.Options{})
	if err != nil {
		t.Fatal(err)
	}
	page, err := measured.SVG(b)
	if err != nil {
		t.Fatal(err)
	}
	return page
}

// sectionAxes: in the section the axes of the two holes are the offset apart at
// the sheet's scale, the tenon's above, where the enterer is. The pull arrow
// points down.
func sectionAxes(t *testing.T, x drawn) {
	k := scaleAfter(t, x.section, "scale")
	page := vectors(t, x.sheets[0])
	_, m := page.Marked("axis:mortise")
	_, h := page.Marked("axis:tenon")
	_, pull := page.Marked("pull")
	if len(m) != 1 || len(h) != 1 || len(pull) != 1 {
		t.Fatalf("%s: %d, %d axes, %d arrows", x.j.ID, len(m), len(h), len(pull))
	}
	if got := h[0].Points()[0].Y - m[0].Points()[0].Y; math.Abs(got-x.p.Offset*k) > 0.02 {
		t.Errorf("%s: axes %.3f mm apart, want %.3f", x.j.ID, got, x.p.Offset*k)
	}
	if tip := pull[0].Points(); tip[3].Y >= tip[0].Y {
		t.Errorf("%s: the pull points out of the joint", x.j.ID)
	}
}

// saysNumbers: the sheets say the joint's own numbers. The clear width of two
// equal holes is the bore less the offset.
func saysNumbers(t *testing.T, f *geom.Frame, x drawn) {
	p, text := x.p, f.Units.PlainJoint
	for _, s := range []string{"e" + text(p.Offset), "R" + text(p.Relish), "peg" + text(p.Length) + "long", p.Words, x.j.Mark} {
		if !x.section.Says(s) {
			t.Errorf("%s: the section does not say %q", x.j.ID, s)
		}
	}
	for _, s := range []string{"A" + text(p.A), "B" + text(p.B), "P" + text(p.P), "e" + text(p.Offset), text(p.Bore-p.Offset) + "clear", p.Words, p.Why} {
		if !x.hole.Says(s) {
			t.Errorf("%s: the holes do not say %q", x.j.ID, s)
		}
	}
}
