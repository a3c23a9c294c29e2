package measured_test

import (
	"bytes"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pegwright/draw"
	"pegwright/draw/font"
	"pegwright/draw/measured"
	"pegwright/draw/pdf"
	"pegwright/draw/svg"
	"pegwright/geom/vec"
)

// A PDF written by hand: the reader is right about a file that no code of ours
// has written. A matrix of 72/25.4 makes its units millimetres.
func TestPDFByHand(t *testing.T) {
	const k = 0.5522847498 // 4/3 (√2 − 1): four Béziers to a circle
	body := fmt.Sprintf("q 2.834645669 0 0 2.834645669 0 0 cm 0.35 w [3 1] 0 d 20.01 30.02 m 120.01 30.02 l S\n[] 0 d "+
		"112.5 100 m 112.5 %[1]f %[2]f 112.5 100 112.5 c %[3]f 112.5 87.5 %[1]f 87.5 100 c 87.5 %[4]f %[3]f 87.5 100 87.5 c %[2]f 87.5 112.5 %[4]f 112.5 100 c h S\n"+
		"10 10 m 30 10 l 30 25 l h f Q", 100+12.5*k, 100+12.5*k, 100-12.5*k, 100-12.5*k)
	p := mustPDF(t, byHand(body))[0]
	if len(p.Circles) != 1 || len(p.Paths) != 2 {
		t.Fatalf("%+v", p)
	}
	if c := p.Circles[0]; c.C.Dist(vec.P{X: 100, Y: 100}) > 1e-3 || math.Abs(c.R-12.5) > 4e-3 || c.Off > 4e-3 || math.Abs(c.StrokeWidth-0.35) > 1e-5 {
		t.Errorf("circle %+v", c)
	}
	l := p.Lines()
	if len(l) != 1 || l[0].A.Dist(vec.P{X: 20.01, Y: 30.02}) > 1e-4 || l[0].B.Dist(vec.P{X: 120.01, Y: 30.02}) > 1e-4 || len(l[0].Dash) != 2 || math.Abs(l[0].Dash[0]-3) > 1e-5 {
		t.Errorf("lines %+v", l)
	}
	if f := p.Paths[1]; !f.Filled || f.StrokeWidth != 0 || !f.Closed {
		t.Errorf("area %+v", f)
	}
}

// byHand wraps a content stream in the least PDF that there is, on A4.
func byHand(content string) []byte {
	objs := []string{"<</Type /Catalog /Pages 2 0 R>>", "<</Type /Pages /Kids [3 0 R] /Count 1>>",
		"<</Type /Page /Parent 2 0 R /MediaBox [0 0 595.276 841.89] /Contents 4 0 R>>",
		fmt.Sprintf("<</Length %d>>\nstream\n%s\nendstream", len(content), content)}
	out, offs := "%PDF-1.4\n", []int{}
	for i, o := range objs {
		offs = append(offs, len(out))
		out += fmt.Sprintf("%d 0 obj\n%s\nendobj\n", i+1, o)
	}
	at := len(out)
	out += fmt.Sprintf("xref\n0 %d\n0000000000 65535 f \n", len(objs)+1)
	for _, o := range offs {
		out += fmt.Sprintf("%010d 00000 n \n", o)
	}
	return []byte(out + fmt.Sprintf("trailer\n<</Size %d /Root 1 0 R>>\nstartxref\n%d\n%%%%EOF\n", len(objs)+1, at))
}

func mustPDF(t *testing.T, data []byte) []measured.Page {
	t.Helper()
	p, err := measured.PDF(data)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// An SVG written by hand, with every element that is known.
func TestSVGByHand(t *testing.T) {
	p, err := measured.SVG([]byte(`<svg width="100mm" height="80mm" viewBox="0 0 100 80">
<g data-layer="part" fill="none" stroke="#000" stroke-width="0.5">
<circle cx="10" cy="20" r="5" data-mark="hole"/>
<path d="M50 40 A20 20 0 0 0 70 60"/>
<g transform="translate(30 70) rotate(-90)"><text x="4" y="0" font-size="5">up</text><path d="M0 0 L10 0 L10 5 Z" stroke="none" fill="#ccc"/></g>
</g>
<g data-class="centre" font-size="7"><g data-owner="post"><path d="M5 6H9V2Z"/></g><text x="1" y="2">a</text></g></svg>`))
	if err != nil {
		t.Fatal(err)
	}
	c, _ := p.Marked("hole")
	if len(c) != 1 || c[0].C != (vec.P{X: 10, Y: 60}) || c[0].R != 5 || c[0].Layer != "part" {
		t.Errorf("hole %+v", c)
	}
	// The arc sweeps counter-clockwise as seen, about (70, 40) in SVG.
	for _, q := range p.Paths[0].Points() {
		if d := q.Dist(vec.P{X: 70, Y: 40}); math.Abs(d-20) > 1e-9 {
			t.Errorf("arc at %v, %v from its centre", q, d)
		}
	}
	// Turned a quarter left about (30, 10): 4 along the base line is 4 up.
	if x := p.Texts[0]; x.S != "up" || math.Abs(x.X-30) > 1e-9 || math.Abs(x.Y-14) > 1e-9 || math.Abs(x.Turn-math.Pi/2) > 1e-9 {
		t.Errorf("text %+v", x)
	}
	// SVG's y runs down; a quarter left turns down into right.
	if q := p.Paths[1]; q.Segs[2].P.Dist(vec.P{X: 35, Y: 20}) > 1e-9 || !q.Filled || q.StrokeWidth != 0 || !q.Closed {
		t.Errorf("area %+v", q)
	}
	// A group hands its class, owner and size down to what lies in it (SVG 1.1,
	// 6.4), and H and V keep the other coordinate (8.3.4).
	q, x := p.Paths[2], p.Texts[1]
	if want := []vec.P{{X: 5, Y: 74}, {X: 9, Y: 74}, {X: 9, Y: 78}}; !slices.Equal(q.Points(), want) || !q.Closed || q.Class != "centre" || q.Owner != "post" {
		t.Errorf("path %+v", q)
	}
	if x.Class != "centre" || x.Owner != "" || x.Size != 7 {
		t.Errorf("text %+v", x)
	}
}

func TestSVGRefused(t *testing.T) {
	for _, bad := range []string{"", "<svg", `<svg width="100" height="80" viewBox="0 0 100 80"/>`, `<svg width="100mm" height="80mm" viewBox="0 0 50 80"/>`,
		`<svg width="9mm" height="9mm" viewBox="0 0 9 9"><line x1="1"/></svg>`, `<svg width="9mm" height="9mm" viewBox="0 0 9 9"><path d="M0 0 q1 1 2 2"/></svg>`,
		`<svg width="9mm" height="9mm" viewBox="0 0 9 9"><g transform="scale(2)"/></svg>`} {
		if _, err := measured.SVG([]byte(bad)); err == nil && bad != "" {
			t.Errorf("%s: read", bad)
		}
	}
	if _, err := measured.PDF([]byte("%PDF-1.4 not one")); err == nil {
		t.Error("nonsense was read as a PDF")
	}
}

// sheet is a sheet with every kind of item, whole and turned.
func sheet() *draw.Sheet {
	s := draw.NewSheet("demo", "demo-1", "All kinds of item", 279.4, 215.9)
	s.FullScale = true
	s.Rect(draw.FrameLine, draw.Box{Min: vec.P{X: 10, Y: 10}, Max: vec.P{X: 269.4, Y: 205.9}})
	for i, c := range draw.Classes()[1:] {
		y := 195 - 7*float64(i)
		s.Line(c, vec.P{X: 20, Y: y}, vec.P{X: 120, Y: y})
		s.Text(vec.P{X: 125, Y: y - 1.2}, 2.5, string(c))
	}
	s.Circle(draw.Part, vec.P{X: 200.0123, Y: 150.0456}, 12.7).Mark = "hole:a"
	s.Circle(draw.Hidden, vec.P{X: 203.1873, Y: 150.0456}, 12.7).Mark = "hole:b"
	s.Add(&draw.Ellipse{Meta: draw.Meta{Class: draw.Part}, C: vec.P{X: 240, Y: 150}, RX: 15, RY: 8, Rot: 0.5},
		&draw.Ellipse{Meta: draw.Meta{Class: draw.Part}, C: vec.P{X: 240, Y: 120}, RX: 15, RY: 8, Rot: 0.5, From: 1, To: 5, Filled: true, Grey: 0.8},
		&draw.Arc{Meta: draw.Meta{Class: draw.Dimension}, C: vec.P{X: 200, Y: 120}, R: 10, From: 3, To: 1})
	s.Tone(0.85, vec.P{X: 150, Y: 150}, vec.P{X: 180, Y: 150}, vec.P{X: 180, Y: 180})
	s.Add(&draw.Path{Meta: draw.Meta{Class: draw.Part}, Pts: []vec.P{{X: 150, Y: 110}, {X: 180, Y: 110}, {X: 180, Y: 140}, {X: 150, Y: 140}},
		Closed: true, Filled: true, Grey: 0.7, Holes: [][]vec.P{{{X: 160, Y: 120}, {X: 170, Y: 120}, {X: 170, Y: 130}}}})
	for i, a := range []draw.Anchor{draw.Start, draw.Middle, draw.End} {
		for k, rot := range []float64{0, math.Pi / 6, math.Pi / 2, -2} {
			x := s.Text(vec.P{X: 60 + 55*float64(k), Y: 40 + 22*float64(i)}, 3.5, `7'-6 1/2" Ø 15/16 in, ⌀ 6½`)
			x.Anchor, x.Rot, x.Halo, x.Bold = a, rot, k%2 == 0, i == 1
		}
	}
	return s
}

// The two renderers put the same things in the same places: every circle, every
// end of every line or curve, every run of text, to 0.002 mm; both against each
// other and (texts) against the layout.
func TestRenderersAgree(t *testing.T) {
	const tol = 0.002
	s := sheet()
	var buf bytes.Buffer
	if err := pdf.Render(&buf, pdf.Doc{Sheets: []*draw.Sheet{s}}); err != nil {
		t.Fatal(err)
	}
	a := mustPDF(t, buf.Bytes())[0]
	data, err := svg.Render(s, svg.Options{})
	if err != nil {
		t.Fatal(err)
	}
	b, err := measured.SVG(data)
	if err != nil {
		t.Fatal(err)
	}
	if len(a.Circles) != len(b.Circles) || len(a.Paths) != len(b.Paths) || len(a.Texts) != len(b.Texts) {
		t.Fatalf("PDF %d circles %d paths %d texts, SVG %d %d %d", len(a.Circles), len(a.Paths), len(a.Texts), len(b.Circles), len(b.Paths), len(b.Texts))
	}
	for i, c := range a.Circles {
		if d := b.Circles[i]; c.C.Dist(d.C) > tol || math.Abs(c.R-d.R) > tol || math.Abs(c.StrokeWidth-d.StrokeWidth) > tol {
			t.Errorf("circle %d: PDF %+v, SVG %+v", i, c, d)
		}
	}
	for i, p := range a.Paths {
		samePath(t, i, p, b.Paths[i], tol)
	}
	for i, x := range a.Texts {
		y := b.Texts[i]
		if strings.TrimSpace(x.S) != strings.TrimSpace(y.S) || math.Hypot(x.X-y.X, x.Y-y.Y) > tol || math.Abs(x.Size-y.Size) > tol || math.Abs(x.Turn-y.Turn) > 1e-5 {
			t.Errorf("text %d: PDF %+v, SVG %+v", i, x, y)
		}
	}
	if !a.Says(`7'-6 1/2" Ø 15/16 in, Ø 6 1/2`) || !b.Says(`7'-6 1/2" Ø 15/16 in, Ø 6 1/2`) {
		t.Errorf("text is not whole: %s", a.Text())
	}
	textsInPlace(t, s, a, tol)
}

// samePath holds the outlines of two paths, sampled, against each other both
// ways; the renderers cut curves into different pieces.
func samePath(t *testing.T, i int, p, q measured.Path, tol float64) {
	t.Helper()
	if p.Filled != q.Filled || math.Abs(p.StrokeWidth-q.StrokeWidth) > tol || len(p.Dash) != len(q.Dash) {
		t.Errorf("path %d: PDF %+v, SVG %+v", i, p.Stroke, q.Stroke)
	}
	ends := func(p measured.Path) (vec.P, vec.P) { return p.Segs[0].P, p.Segs[len(p.Segs)-1].P }
	a0, a1 := ends(p)
	b0, b1 := ends(q)
	// A closed path may begin anywhere.
	if p.Closed != q.Closed || !p.Closed && (a0.Dist(b0) > tol || a1.Dist(b1) > tol) {
		t.Errorf("path %d: PDF from %v to %v, SVG from %v to %v", i, a0, a1, b0, b1)
	}
	for _, pair := range [][2]measured.Path{{p, q}, {q, p}} {
		dense := samples(pair[1], 4000)
		for _, x := range pair[0].Points() {
			best := math.Inf(1)
			for _, y := range dense {
				best = min(best, x.Dist(y))
			}
			if best > 0.02 { // the samples are up to 0.02 mm apart on the curves here
				t.Errorf("path %d: %v is %.4f mm off the other", i, x, best)
			}
		}
	}
}

func samples(p measured.Path, n int) []vec.P {
	var out []vec.P
	at := p.Segs[0].P
	for _, s := range p.Segs {
		for k := range n + 1 {
			f := float64(k) / float64(n)
			u := 1 - f
			if s.Op == 'C' {
				out = append(out, at.Mul(u*u*u).Add(s.C1.Mul(3*u*u*f)).Add(s.C2.Mul(3*u*f*f)).Add(s.P.Mul(f*f*f)))
			} else if k == n {
				out = append(out, s.P)
			}
		}
		at = s.P
	}
	return out
}

// textsInPlace holds the first run of every text against its anchor: the start,
// the middle or the end of the base line, turned about it.
func textsInPlace(t *testing.T, s *draw.Sheet, p measured.Page, tol float64) {
	t.Helper()
	i := 0
	for _, it := range s.Items {
		x, ok := it.(*draw.Text)
		if !ok {
			continue
		}
		part := map[draw.Anchor]float64{draw.Start: 0, draw.Middle: 0.5, draw.End: 1}[x.Anchor]
		back := part * font.Measure(x.S, x.Height, x.Bold)
		want := vec.P{X: x.At.X - back*math.Cos(x.Rot), Y: x.At.Y - back*math.Sin(x.Rot)}
		if got := (vec.P{X: p.Texts[i].X, Y: p.Texts[i].Y}); got.Dist(want) > tol {
			t.Errorf("text %q starts at %v, want %v", x.S, got, want)
		}
		i += len(font.Layout(x.S, x.Height, x.Bold))
	}
}
