package pdf

import (
	"bytes"
	"errors"
	"fmt"
	"math"
	"regexp"
	"strings"
	"testing"

	"github.com/klippa-app/go-pdfium"
	"github.com/klippa-app/go-pdfium/references"
	"github.com/klippa-app/go-pdfium/requests"
	"github.com/klippa-app/go-pdfium/responses"

	"pegwright/draw"
	"pegwright/draw/measured"
	"pegwright/geom/vec"
)

func render(t *testing.T, d Doc) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Render(&b, d); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// Every circle and line of a full-scale sheet is where it was put, as PDFium
// reads the finished file: 0.002 mm, a tenth of what a template is allowed.
func TestMeasured(t *testing.T) {
	const tol = 0.002
	s := draw.NewSheet("t", "t", "t", 431.8, 279.4)
	s.FullScale = true
	var lines [][2]vec.P
	var holes []draw.Circle
	for i := range 40 {
		f := float64(i)
		a, b := vec.P{X: 10.0123 + 10.1*f, Y: 5.4321 + f}, vec.P{X: 420.777 - 3.3*f, Y: 270.0049 - 2*f}
		lines = append(lines, [2]vec.P{a, b})
		s.Line(draw.Part, a, b)
		c := s.Circle(draw.Part, vec.P{X: 30.0123 + 9.3*f, Y: 40.0456 + 5*f}, 1.5875+f)
		holes = append(holes, *c)
	}
	pages, err := measured.PDF(render(t, Doc{Sheets: []*draw.Sheet{s}, PrintScalingNone: true}))
	if err != nil {
		t.Fatal(err)
	}
	p := pages[0]
	if math.Abs(p.W-431.8) > tol || math.Abs(p.H-279.4) > tol {
		t.Errorf("paper %v x %v", p.W, p.H)
	}
	if len(p.Circles) != len(holes) || len(p.Lines()) != len(lines) {
		t.Fatalf("%d circles, %d lines", len(p.Circles), len(p.Lines()))
	}
	for i, c := range p.Circles {
		if c.C.Dist(holes[i].C) > tol || math.Abs(c.R-holes[i].R) > tol || c.Off > tol || math.Abs(c.StrokeWidth-0.7) > tol {
			t.Errorf("circle %d: %+v, meant %v r %v", i, c, holes[i].C, holes[i].R)
		}
	}
	for i, l := range p.Lines() {
		if l.A.Dist(lines[i][0]) > tol || l.B.Dist(lines[i][1]) > tol {
			t.Errorf("line %d: %v %v, meant %v", i, l.A, l.B, lines[i])
		}
	}
}

// Pens arrive with their widths and dashes.
func TestPensMeasured(t *testing.T) {
	s := draw.NewSheet("t", "t", "t", 210, 297)
	for i, c := range draw.Classes()[1:] {
		s.Line(c, vec.P{X: 10, Y: 10 + float64(i)}, vec.P{X: 90, Y: 10 + float64(i)})
	}
	pages, err := measured.PDF(render(t, Doc{Sheets: []*draw.Sheet{s}}))
	if err != nil {
		t.Fatal(err)
	}
	for i, c := range draw.Classes()[1:] {
		want, got := draw.PenFor(c, 0), pages[0].Paths[i]
		if math.Abs(got.StrokeWidth-want.Width) > 1e-4 || len(got.Dash) != len(want.Dash) {
			t.Fatalf("%s: %+v, meant %+v", c, got.Stroke, want)
		}
		for k := range want.Dash {
			if math.Abs(got.Dash[k]-want.Dash[k]) > 1e-4 {
				t.Errorf("%s: dash %v, meant %v", c, got.Dash, want.Dash)
			}
		}
	}
}

func page(id string, w, h float64) *draw.Sheet {
	s := draw.NewSheet("k", id, id, w, h)
	s.Text(vec.P{X: 20, Y: 20}, 3.5, "sheet "+id)
	return s
}

// Bookmarks, links, the attached file and the print preference, on pages of
// mixed sizes, as PDFium reads them. Bookmarks go to the top of their page even
// out of page order.
func TestDocument(t *testing.T) {
	a, b, c := page("a", 210, 297), page("b", 609.6, 914.4), page("c", 210, 298)
	area := draw.Box{Min: vec.P{X: 20, Y: 100}, Max: vec.P{X: 60, Y: 110}}
	a.Links = []draw.Link{{Rect: area, To: "c"}, {Rect: draw.Box{Min: vec.P{X: 20, Y: 200}, Max: vec.P{X: 60, Y: 210}}, To: "https://example.org/x(1)"},
		{Rect: draw.Box{Max: vec.P{X: 5, Y: 5}}, To: "nowhere"}}
	src := []byte("title: Shed\nendstream endobj\n\x00\xff")
	data := render(t, Doc{Title: "Shed – ½ é", Author: "A. Framer", Sheets: []*draw.Sheet{a, b, c}, PrintScalingNone: true,
		Attachment: &Attachment{"frame é.yaml", src},
		Outline:    []OutlineEntry{{"C first", 0, 2}, {"B under", 3, 1}, {"A (x)", 0, 0}}})
	err := measured.Open(data, func(in pdfium.Pdfium, doc references.FPDF_DOCUMENT) error {
		bm, err := in.GetBookmarks(&requests.GetBookmarks{Document: doc})
		if err != nil {
			return err
		}
		checkOutline(t, in, bm.Bookmarks)
		at, err := in.GetAttachments(&requests.GetAttachments{Document: doc})
		if err != nil {
			return err
		}
		if len(at.Attachments) != 1 || at.Attachments[0].Name != "frame é.yaml" || !bytes.Equal(at.Attachments[0].Content, src) {
			t.Errorf("attachments %+v", at.Attachments)
		}
		ps, err := in.FPDF_VIEWERREF_GetPrintScaling(&requests.FPDF_VIEWERREF_GetPrintScaling{Document: doc})
		if err != nil || ps.PreferPrintScaling {
			t.Errorf("print scaling preferred (%v)", err)
		}
		if got := target(t, in, doc, 40, 105); got != "page 2" {
			t.Errorf("link leads to %s", got)
		}
		if got := target(t, in, doc, 40, 205); got != "https://example.org/x(1)" {
			t.Errorf("link leads to %s", got)
		}
		md, err := in.GetMetaData(&requests.GetMetaData{Document: doc})
		if err != nil {
			return err
		}
		text := fmt.Sprint(md.Tags)
		for _, want := range []string{"Shed – ½ é", "A. Framer", "pegwright"} {
			if !strings.Contains(text, want) {
				t.Errorf("information lacks %q: %s", want, text)
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}

func checkOutline(t *testing.T, in pdfium.Pdfium, bm []responses.GetBookmarksBookmark) {
	t.Helper()
	if len(bm) != 2 || len(bm[0].Children) != 1 {
		t.Fatalf("outline %+v", bm)
	}
	for _, c := range []struct {
		b     responses.GetBookmarksBookmark
		title string
		page  int
		top   float64
	}{{bm[0], "C first", 2, 298}, {bm[0].Children[0], "B under", 1, 914.4}, {bm[1], "A (x)", 0, 297}} {
		if c.b.Title != c.title || c.b.DestInfo == nil || c.b.DestInfo.PageIndex != c.page {
			t.Errorf("bookmark %q leads to %+v, want page %d", c.b.Title, c.b.DestInfo, c.page)
			continue
		}
		loc, err := in.FPDFDest_GetLocationInPage(&requests.FPDFDest_GetLocationInPage{Dest: c.b.DestInfo.Reference})
		if err != nil || loc.Y == nil || math.Abs(float64(*loc.Y)*25.4/72-c.top) > 0.01 {
			t.Errorf("bookmark %q: not at the top of its page (%+v, %v)", c.title, loc, err)
		}
	}
}

// target returns where the link at a place (mm) of the first page leads.
func target(t *testing.T, in pdfium.Pdfium, doc references.FPDF_DOCUMENT, x, y float64) string {
	t.Helper()
	pg := requests.Page{ByIndex: &requests.PageByIndex{Document: doc, Index: 0}}
	l, err := in.FPDFLink_GetLinkAtPoint(&requests.FPDFLink_GetLinkAtPoint{Page: pg, X: x * ptPerMM, Y: y * ptPerMM})
	if err != nil || l.Link == nil {
		return fmt.Sprintf("no link (%v)", err)
	}
	if d, err := in.FPDFLink_GetDest(&requests.FPDFLink_GetDest{Document: doc, Link: *l.Link}); err == nil && d.Dest != nil {
		i, err := in.FPDFDest_GetDestPageIndex(&requests.FPDFDest_GetDestPageIndex{Document: doc, Dest: *d.Dest})
		if err != nil {
			t.Fatal(err)
		}
		return fmt.Sprintf("page %d", i.Index)
	}
	a, err := in.FPDFLink_GetAction(&requests.FPDFLink_GetAction{Link: *l.Link})
	if err != nil || a.Action == nil {
		return fmt.Sprintf("no action (%v)", err)
	}
	u, err := in.FPDFAction_GetURIPath(&requests.FPDFAction_GetURIPath{Document: doc, Action: *a.Action})
	if err != nil || u.URIPath == nil {
		return fmt.Sprintf("no address (%v)", err)
	}
	return *u.URIPath
}

// Every offset of both cross-reference sections points at its object
// (ISO 32000-1, 7.5.4).
func TestCrossReference(t *testing.T) {
	data := render(t, Doc{Sheets: []*draw.Sheet{page("a", 210, 297)}, PrintScalingNone: true, Attachment: &Attachment{"f", []byte("x")}})
	if n := bytes.Count(data, []byte("/EmbeddedFiles")); n != 2 { // once as it was, once as it is
		t.Errorf("%d lists of embedded files", n)
	}
	starts := regexp.MustCompile(`startxref\n(\d+)\n%%EOF\n`).FindAllSubmatch(data, -1)
	if len(starts) != 2 {
		t.Fatalf("%d cross-reference sections", len(starts))
	}
	for _, s := range starts {
		var at int
		fmt.Sscan(string(s[1]), &at)
		checkSection(t, data, at)
	}
}

func checkSection(t *testing.T, data []byte, at int) {
	t.Helper()
	section, _, ok := strings.Cut(string(data[at:]), "trailer")
	if !ok || !strings.HasPrefix(section, "xref\n") {
		t.Fatalf("no section at %d", at)
	}
	next, seen := 0, 0
	for _, line := range strings.Split(strings.TrimSpace(section[5:]), "\n") {
		var off, gen int
		var kind string
		if n, _ := fmt.Sscanf(line, "%010d %05d %1s", &off, &gen, &kind); n == 3 {
			if kind == "n" {
				seen++
				if want := fmt.Sprintf("%d 0 obj", next); !strings.HasPrefix(string(data[off:]), want) {
					t.Errorf("object %d is not at %d", next, off)
				}
			}
			next++
			continue
		}
		fmt.Sscanf(line, "%d", &next)
	}
	if seen == 0 {
		t.Error("no objects")
	}
}

func TestSameBytes(t *testing.T) {
	doc := func() Doc {
		a, b := page("a", 210, 297), page("b", 420, 297)
		b.Text(vec.P{X: 30, Y: 30}, 5, "bold").Bold = true
		return Doc{Title: "x", Sheets: []*draw.Sheet{a, b}, Outline: []OutlineEntry{{"a", 0, 0}}, PrintScalingNone: true, Attachment: &Attachment{"f", []byte("x")}}
	}
	first := render(t, doc())
	for range 25 {
		if !bytes.Equal(first, render(t, doc())) {
			t.Fatal("bytes differ")
		}
	}
}

// Whatever a description may hold, there is a PDF that can be read, and every
// text in it can be found again.
func TestHostile(t *testing.T) {
	for _, h := range []string{"", "\xe2", "😀", "a\x00b", "(\\)", "%%EOF", "endstream", "trailer\nstartxref\n", "⌀ ½", "日本", strings.Repeat("x", 5000)} {
		s := page(h, 210, 297)
		s.Title = h
		s.Text(vec.P{X: 5, Y: 50}, 3.5, h)
		s.Links = []draw.Link{{To: h}, {To: "http://" + h}}
		data := render(t, Doc{Title: h, Subject: h, Author: h, Keywords: h, Creator: h, Sheets: []*draw.Sheet{s, s},
			Outline: []OutlineEntry{{h, -3, 1}, {h, 9, 0}}, Attachment: &Attachment{h, []byte(h)}, PrintScalingNone: true})
		pages, err := measured.PDF(data)
		if err != nil || len(pages) != 2 || !pages[1].Says("sheet ") {
			t.Errorf("%q: %d pages, %v", h, len(pages), err)
		}
	}
}

func TestRefused(t *testing.T) {
	good := page("a", 210, 297)
	bad := page("b", 210, 297)
	bad.Circle(draw.Part, vec.P{Y: math.Inf(1)}, 3)
	for name, d := range map[string]Doc{"none": {}, "not finite": {Sheets: []*draw.Sheet{good, bad}},
		"bookmark": {Sheets: []*draw.Sheet{good}, Outline: []OutlineEntry{{"x", 0, 1}}}} {
		var b bytes.Buffer
		if err := Render(&b, d); err == nil || b.Len() > 0 {
			t.Errorf("%s: error %v, %d bytes", name, err, b.Len())
		}
	}
	if err := Render(full{}, Doc{Sheets: []*draw.Sheet{good}}); err == nil {
		t.Error("a writer that fails was not noticed")
	}
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("full") }

func BenchmarkRender(b *testing.B) {
	s := draw.NewSheet("t", "t", "t", 431.8, 279.4)
	for i := range 2000 {
		s.Line(draw.Part, vec.P{X: float64(i % 400), Y: 10}, vec.P{X: float64(i % 371), Y: 200})
	}
	for i := range 200 {
		s.Text(vec.P{X: float64(i), Y: float64(i)}, 3.5, `7'-6 1/2" to arris`)
	}
	sheets := make([]*draw.Sheet, 50)
	for i := range sheets {
		sheets[i] = s
	}
	for b.Loop() {
		var buf bytes.Buffer
		if err := Render(&buf, Doc{Sheets: sheets}); err != nil {
			b.Fatal(err)
		}
	}
}
