package drawbore

import (
	"bytes"
	"fmt"
	"math"
	"strings"
	"testing"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/legible"
	"pegwright/draw/measured"
	"pegwright/draw/pdf"
	"pegwright/draw/scene"
	"pegwright/draw/sheet/tidy"
	"pegwright/draw/svg"
	"pegwright/geom"
	"pegwright/geom/vec"
	"pegwright/samples"
	"pegwright/samples/trial"
)

// drawbores returns the drawbore sheets of every group of a frame, numbered.
func drawbores(f *geom.Frame) []*draw.Sheet {
	var out []*draw.Sheet
	for _, g := range scene.Groups(f) {
		out = append(out, Sheets(f, g, map[string]int{})...)
	}
	for i, s := range out {
		block.Number(s, i+1, len(out), "0123456789ab")
	}
	return out
}

// The layout holds on every paper that a sheet may be asked for.
func TestDrawboreLayout(t *testing.T) {
	for _, name := range trial.Drawn() {
		for _, paper := range []string{"", "tabloid"} {
			f := trial.Sample(t, name)
			if paper != "" && name != "rail-and-post" && name != "bicycle-shelter" {
				continue
			} else if paper != "" {
				f.Paper.Sheets = paper
			}
			sheets := drawbores(f)
			tidy.Write(t, "drawbore-"+name+paper, sheets)
			for _, s := range sheets {
				if err := s.Valid(); err != nil {
					t.Error(err)
				}
				tidy.Check(t, s)
			}
		}
	}
}

// Joints set otherwise than usual: two pegs, braces drawn square to the
// shoulder, dry timbers, a given offset, a thick peg.
func TestDrawboreOfOtherSettings(t *testing.T) {
	store, _ := samples.Source("apiary-store")
	shelter, _ := samples.Source("bicycle-shelter")
	for name, src := range map[string]string{
		"square braces": string(store) + "layout: {brace: {draw: square}, tie: {pegs: 2, bore: 3/4\"}}\n",
		"given offset":  string(store) + "layout: {drawbore: 3/16\", brace: {drawbore: 1/16\"}}\n",
		"half inch":     string(store) + "layout: {drawbore: 1/2\"}\n",
		"dry":           strings.Replace(string(shelter), "seasoning: green", "seasoning: dry", 1),
	} {
		f := trial.Frame(t, name, src)
		sheets := drawbores(f)
		tidy.Write(t, "drawbore-"+name, sheets)
		for _, s := range sheets {
			tidy.Check(t, s)
			detailIsClear(t, s)
			pegIsClear(t, f, s)
		}
		if name == "dry" {
			continue
		}
		for _, d := range readBack(t, f) {
			detailCircles(t, d)
		}
	}
}

// throughPeg returns the first peg of a joint that goes through, or nil.
func throughPeg(j *geom.Joint) *geom.Peg {
	for i := range j.Pegs {
		if j.Pegs[i].Exit != 0 {
			return &j.Pegs[i]
		}
	}
	return nil
}

// Every group with a peg that goes through has its section, every one that is
// drawn its holes too, and no other group has any.
func TestDrawboreSheetsPerGroup(t *testing.T) {
	for _, name := range trial.Drawn() {
		f := trial.Sample(t, name)
		for _, g := range scene.Groups(f) {
			want := 0
			if p := throughPeg(g.First()); p != nil {
				want = 1
				if p.Offset != 0 {
					want = 2
				}
			}
			got := Sheets(f, g, nil)
			if len(got) != want {
				t.Errorf("%s: %d sheets, want %d", g.First().ID, len(got), want)
			}
			rule := "bore each from its template, or close the joint and bore both at once"
			if text := legible.Words(got); want > 0 && strings.Contains(text, rule) != (want == 1) {
				t.Errorf("%s: two ways of boring on %d sheets: %s", g.First().ID, want, text)
			}
		}
	}
}

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

// Eastern white pine from green to 12 %: 6.1 and 2.1 % (Wood Handbook table
// 4-3) by 18/30. A brace at 45° with a 1-1/2 in, p 2 in and 1/8 in along it
// keeps e_s - a S_r + q S_b cos θ toward the shoulder and e_n - q S_b sin θ
// toward the nose (plane geometry).
func TestDrawboreDryingTable(t *testing.T) {
	f := trial.Sample(t, "apiary-store")
	for _, g := range scene.Groups(f) {
		p := throughPeg(g.First())
		if p == nil || p.PFrom != "nose line" {
			continue
		}
		page := pagesOf(t, Sheets(f, g, nil))[1]
		c := math.Sqrt2 / 2
		es := 0.125 * c
		q := (2+es)*c + (1.5-es)*c
		for _, sr := range []float64{0.0366, 0.0126} {
			for _, sb := range []float64{0.0366, 0.0126} {
				row := fmt.Sprintf("%+.3fin%+.3fin", es-1.5*sr+q*sb*c, es-q*sb*c)
				if !page.Says(row) {
					t.Errorf("%s: no row %s", g.First().ID, row)
				}
			}
		}
		return
	}
	t.Error("no brace")
}

func TestDrawboreStops(t *testing.T) {
	f := trial.Sample(t, "rail-and-post")
	g := scene.Groups(f)[0]
	for i, p := range pagesOf(t, Sheets(f, g, map[string]int{g.First().ID: 7})) {
		if !p.Says("DO NOT CUT – see finding 7") {
			t.Errorf("sheet %d may be cut from", i+1)
		}
	}
}

// curvesOf returns the two lines of a sheet's drying plot, the worst pairing
// first, and the height of the axis of no draw.
func curvesOf(t *testing.T, s *draw.Sheet) (worst, best []vec.P, axis float64) {
	t.Helper()
	var lines [][]vec.P
	for _, it := range s.Items {
		p, ok := it.(*draw.Path)
		switch {
		case ok && p.Mark == "draw left" && p.Class == draw.Hidden:
			best = p.Pts
		case ok && p.Mark == "draw left":
			worst = p.Pts
		case ok && p.Class == draw.Dimension && len(p.Pts) == 2:
			lines = append(lines, p.Pts)
		}
	}
	if len(worst) == 0 || len(best) == 0 {
		t.Fatalf("%s has no drying plot", s.ID)
	}
	for _, l := range lines {
		if l[0].Y == l[1].Y && l[0].X == worst[0].X && l[1].X == worst[len(worst)-1].X {
			return worst, best, l[0].Y
		}
	}
	t.Fatalf("%s: no axis", s.ID)
	return nil, nil, 0
}

// The plot's lines, measured on paper against the height of the whole offset,
// keep what the drying laws leave of it (worked by hand: white pine, 6.1 and
// 2.1 %, 18/30 of it). A brace drawn 1/8 in square to its shoulder is without
// draw toward its nose from the start, ends at -0.062 in, and is marked slack.
func TestDrawboreDryingPlot(t *testing.T) {
	store, _ := samples.Source("apiary-store")
	f := trial.Frame(t, "plot", string(store)+"layout: {drawbore: 1/8\", brace: {draw: square}}\n")
	ties, braces := 0, 0
	for _, g := range scene.Groups(f) {
		j := g.First()
		p := throughPeg(j)
		if p == nil || p.Offset == 0 {
			continue
		}
		sheet := Sheets(f, g, nil)[1]
		worst, best, axis := curvesOf(t, sheet)
		slack := strings.Contains(legible.Words([]*draw.Sheet{sheet}), "slack")
		full, n := best[0].Y-axis, len(worst)-1
		switch j.Of.Role {
		case "tie": // a 1-1/2 in, bore 1 in: 0.125 - 1.0 x 0.0366 and x 0.0126
			ties++
			for _, c := range []struct{ got, want float64 }{{(worst[n].Y - axis) / full, 1 - 0.0366/0.125}, {(best[n].Y - axis) / full, 1 - 0.0126/0.125}} {
				if math.Abs(c.got-c.want) > 1e-3 || slack {
					t.Errorf("%s keeps %.4f of its draw, want %.4f; slack %v", j.ID, c.got, c.want, slack)
				}
			}
		case "brace":
			braces++
			if math.Abs(worst[0].Y-axis) > 1e-6 || worst[n].Y >= axis || best[n].Y >= axis || !slack {
				t.Errorf("%s: the nose does not come off on the plot; slack %v", j.ID, slack)
			}
			// worst and best toward the nose are as tangential and radial wood
			if r := (worst[n].Y - axis) / (best[n].Y - axis); math.Abs(r-6.1/2.1) > 1e-2 {
				t.Errorf("%s: worst and best are as %.3f to 1", j.ID, r)
			}
		}
	}
	if ties == 0 || braces == 0 {
		t.Errorf("%d ties, %d braces", ties, braces)
	}
}
