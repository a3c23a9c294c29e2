package packet

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"maps"
	"math"
	"slices"
	"strings"
	"testing"

	"pegwright/draw/measured"
	"pegwright/draw/sheet"
	"pegwright/samples"
	"pegwright/templates"
)

// Every SVG has one group for each layer, by its name, and every item lies in
// one: whoever opens it can hide the dimensions with one click.
func TestOneGroupForEachLayer(t *testing.T) {
	names := []string{"rail-and-post"}
	if !testing.Short() {
		names = append(names, samples.Default())
	}
	for _, name := range names {
		in := sample(t, name)
		in.Sheets, in.Templates = sheet.All, templates.Sheets
		for path, data := range build(t, in) {
			if strings.HasSuffix(path, ".svg") {
				layersOf(t, name+" "+path, data)
			}
		}
	}
}

// layersOf reads an SVG with encoding/xml and holds its layers to be groups of
// the document itself, no two of one name.
func layersOf(t *testing.T, name string, data []byte) {
	t.Helper()
	seen := map[string]bool{}
	var open []string // layers of the elements that are open, "" for none
	dec := xml.NewDecoder(bytes.NewReader(data))
	for {
		tok, err := dec.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		switch e := tok.(type) {
		case xml.StartElement:
			layer := valueOf(e, "data-layer")
			if layer != "" && (seen[layer] || len(open) != 1 || valueOf(e, "id") == "") {
				t.Errorf("%s: layer %q is not one group of the document", name, layer)
			}
			seen[layer] = true
			if valueOf(e, "data-class") != "" && valueOf(e, "data-class") != "link" && (len(open) < 2 || open[1] == "") {
				t.Errorf("%s: a %s of class %q lies in no layer", name, e.Name.Local, valueOf(e, "data-class"))
			}
			open = append(open, layer)
		case xml.EndElement:
			open = open[:len(open)-1]
		}
	}
	if !seen["border"] || !seen["title"] {
		t.Errorf("%s: layers %v", name, slices.Sorted(maps.Keys(seen)))
	}
}

func valueOf(e xml.StartElement, name string) string {
	for _, a := range e.Attr {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

// SVG and PDF show one picture: the same lines, circles and texts, painted in
// the same order, the SVG read by encoding/xml and the PDF by PDFium. A
// coordinate on a sheet is kept to 1e-3 mm, PDFium keeps single precision.
func TestSVGAndPDFShowOnePicture(t *testing.T) {
	in := sample(t, "rail-and-post")
	in.Sheets, in.Templates = sheet.All, templates.Sheets
	files := build(t, in)
	var pages []measured.Page
	for _, name := range []string{"packet.pdf", "templates.pdf"} {
		p, err := measured.PDF(files[name])
		if err != nil {
			t.Fatal(err)
		}
		pages = append(pages, p...)
	}
	n := 0
	for _, path := range slices.Sorted(maps.Keys(files)) {
		if !strings.HasSuffix(path, ".svg") {
			continue
		}
		p, err := measured.SVG(files[path])
		if err != nil || n == len(pages) {
			t.Fatalf("%s, page %d of %d: %v", path, n+1, len(pages), err)
		}
		samePicture(t, path, p, pages[n])
		n++
	}
	if n != len(pages) {
		t.Errorf("%d SVG files, %d PDF pages", n, len(pages))
	}
}

func samePicture(t *testing.T, name string, a, b measured.Page) {
	t.Helper()
	const near = 3e-3
	la, lb := a.Lines(), b.Lines()
	if len(la) != len(lb) || len(a.Circles) != len(b.Circles) || !a.Says(b.Text()) || !b.Says(a.Text()) || len(la) == 0 {
		t.Fatalf("%s: %d and %d lines, %d and %d circles", name, len(la), len(lb), len(a.Circles), len(b.Circles))
	}
	for i, l := range la {
		if m := lb[i]; l.A.Dist(m.A) > near || l.B.Dist(m.B) > near || math.Abs(l.StrokeWidth-m.StrokeWidth) > near || l.Filled != m.Filled {
			t.Fatalf("%s: line %d is %v in the SVG, %v in the PDF", name, i, l, m)
		}
	}
	for i, c := range a.Circles {
		if d := b.Circles[i]; c.C.Dist(d.C) > near || math.Abs(c.R-d.R) > near {
			t.Fatalf("%s: circle %d is %v in the SVG, %v in the PDF", name, i, c, d)
		}
	}
}
