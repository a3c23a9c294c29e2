package packet

import (
	"bytes"
	"strings"
	"testing"

	"github.com/klippa-app/go-pdfium"
	"github.com/klippa-app/go-pdfium/references"
	"github.com/klippa-app/go-pdfium/requests"

	"pegwright/draw"
	"pegwright/draw/measured"
	"pegwright/draw/scene"
	"pegwright/draw/sheet"
	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/samples"
	"pegwright/samples/trial"
)

// sample returns the input of a sample, drawn by somebody.
func sample(t *testing.T, name string) Input {
	t.Helper()
	src, ok := samples.Source(name)
	if !ok {
		t.Fatalf("no sample %s", name)
	}
	src = append([]byte("drawn by: M. Hewer\n"), src...)
	f := trial.Frame(t, name, string(src))
	return Input{Frame: f, Source: src, Name: name, Templates: func(*geom.Frame, []finding.Finding) []*draw.Sheet { return nil }}
}

// pdfReader reads a PDF with PDFium, a program of others.
type pdfReader struct {
	t   *testing.T
	in  pdfium.Pdfium
	doc references.FPDF_DOCUMENT
}

func (r pdfReader) page(i int) requests.Page {
	return requests.Page{ByIndex: &requests.PageByIndex{Document: r.doc, Index: i}}
}

// leads returns the page that the link at a place of a page (mm) leads to, -1
// for none.
func (r pdfReader) leads(page int, b draw.Box) int {
	const pt = 72 / 25.4
	l, err := r.in.FPDFLink_GetLinkAtPoint(&requests.FPDFLink_GetLinkAtPoint{Page: r.page(page), X: b.Mid().X * pt, Y: b.Mid().Y * pt})
	if err != nil || l.Link == nil {
		return -1
	}
	d, err := r.in.FPDFLink_GetDest(&requests.FPDFLink_GetDest{Document: r.doc, Link: *l.Link})
	if err != nil || d.Dest == nil {
		return -1
	}
	i, err := r.in.FPDFDest_GetDestPageIndex(&requests.FPDFDest_GetDestPageIndex{Document: r.doc, Dest: *d.Dest})
	if err != nil {
		r.t.Fatal(err)
	}
	return i.Index
}

func (r pdfReader) text(page int) string {
	x, err := r.in.GetPageText(&requests.GetPageText{Page: r.page(page)})
	if err != nil {
		r.t.Fatal(err)
	}
	return joined(x.Text)
}

// joined takes all spaces and line ends out: names wrap on paper.
func joined(s string) string { return strings.Join(strings.Fields(s), "") }

// The finished PDF, read by PDFium: the description comes back as it was
// written, the information names who drew it, and the views and elevations lead
// to the sheet of every timber and joint.
func TestPacketPDF(t *testing.T) {
	in := sample(t, samples.Default())
	var sheets []*draw.Sheet
	in.Sheets = func(f *geom.Frame, finds []finding.Finding) []*draw.Sheet {
		sheets = sheet.All(f, finds)
		return sheets
	}
	data := build(t, in)[SheetsFile]
	err := measured.Open(data, func(p pdfium.Pdfium, doc references.FPDF_DOCUMENT) error {
		r := pdfReader{t, p, doc}
		at, err := p.GetAttachments(&requests.GetAttachments{Document: doc})
		if err != nil {
			return err
		}
		if len(at.Attachments) != 1 || at.Attachments[0].Name != in.Name+".yaml" || !bytes.Equal(at.Attachments[0].Content, in.Source) {
			t.Errorf("the description does not come back: %d attachments", len(at.Attachments))
		}
		md, err := p.GetMetaData(&requests.GetMetaData{Document: doc})
		if err != nil {
			return err
		}
		said := map[string]string{}
		for _, m := range md.Tags {
			said[m.Tag] = m.Value
		}
		if said["Title"] != in.Frame.Title || said["Author"] != "M. Hewer" || !strings.Contains(said["Subject"], "permit") {
			t.Errorf("information %v", said)
		}
		checkLinks(t, r, in.Frame, sheets)
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}

// checkLinks follows the links of the views, plans and elevations. What stands
// on the page they lead to says which timber or joint it is about.
func checkLinks(t *testing.T, r pdfReader, f *geom.Frame, sheets []*draw.Sheet) {
	t.Helper()
	expect, want := map[string]string{}, map[string]bool{}
	for _, g := range scene.AllSticks(f) {
		id := "timber-" + g.First().ID
		expect[id], want[id] = g.First().ID, true
	}
	for _, g := range scene.Groups(f) {
		j := g.First()
		expect[j.ID], want[j.ID] = j.Of.ID+" into "+j.Into.ID, true
	}
	texts := map[int]string{}
	for i, s := range sheets {
		if s.Kind != "frame" && s.Kind != "elevation" && s.Kind != "plan" {
			continue
		}
		for _, l := range s.Links {
			n := r.leads(i, l.Rect)
			if n < 0 {
				t.Errorf("%s: the link to %s leads nowhere", s.ID, l.To)
				continue
			}
			if texts[n] == "" {
				texts[n] = r.text(n)
			}
			// A link may lie under another: what counts is that the page is
			// that of its own target or of one that overlaps it.
			for _, m := range s.Links {
				if overlap(l.Rect, m.Rect) && strings.Contains(texts[n], joined(expect[m.To])) {
					delete(want, m.To)
					n = -1
					break
				}
			}
			if n >= 0 {
				t.Errorf("%s: the link to %s leads to page %d, which does not name %q", s.ID, l.To, n+1, expect[l.To])
			}
		}
	}
	for id := range want {
		t.Errorf("no view or elevation leads to %s", id)
	}
}

func overlap(a, b draw.Box) bool {
	return min(a.Max.X, b.Max.X) > max(a.Min.X, b.Min.X) && min(a.Max.Y, b.Max.Y) > max(a.Min.Y, b.Min.Y)
}
