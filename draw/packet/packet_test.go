package packet

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"regexp"
	"strings"
	"testing"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/vec"
)

// hostile is text that must come out as text, whatever reads it.
const hostile = `</title><script src="http://example.org/x.js">alert(1)</script><img src=//example.org/a>"'&`

// stand returns a composer of n sheets of the given kinds in turn.
func stand(prefix string, n int, kinds ...string) Composer {
	return func(f *geom.Frame, _ []finding.Finding) []*draw.Sheet {
		var r []*draw.Sheet
		for i := range n {
			title := fmt.Sprintf("%s %d %s", prefix, i+1, hostile)
			s, field := block.New("Letter", i%2 == 0, kinds[i%len(kinds)], fmt.Sprintf("%s %d/../x", prefix, i), block.TitleFor(f, title, "", "1:1"))
			s.Line(draw.Part, field.Mid(), field.Mid().Add(vec.P{X: float64(i + 1)}))
			r = append(r, s)
		}
		return r
	}
}

func input() Input {
	return Input{
		Frame:    &geom.Frame{Title: "Store " + hostile},
		Findings: []finding.Finding{{Severity: finding.Stop, Rule: "overlap", Text: "two posts " + hostile, Mend: hostile, Joints: []string{"a", "b"}, At: finding.Pos{File: "/home/x/f.yaml", Line: 3, Col: 1}}},
		Source:   []byte("frame: x"), Name: "store",
		Sheets: stand("Sheet", 5, "cover", "frame", "joint", "drawbore", "permit"), Templates: stand("Template", 3, "check", "hole", "tenon"),
	}
}

func build(t *testing.T, in Input) map[string][]byte {
	t.Helper()
	p, err := Build(in)
	if err != nil {
		t.Fatal(err)
	}
	files := map[string][]byte{}
	for _, f := range p.Files {
		if files[f.Path] != nil {
			t.Errorf("%s stands twice in the packet", f.Path)
		}
		files[f.Path] = f.Data
	}
	return files
}

// attribute finds the addresses that a page refers to.
var attribute = regexp.MustCompile(`(?:src|href|action|data|poster)="([^"]*)"`)

// The index page refers to files of the packet only, all of which are there,
// and to places in itself.
func TestIndexRefersToThePacketOnly(t *testing.T) {
	files := build(t, input())
	page := string(files[IndexFile])
	ids := map[string]bool{}
	for _, m := range regexp.MustCompile(` id="([^"]*)"`).FindAllStringSubmatch(page, -1) {
		ids[m[1]] = true
	}
	n := 0
	for _, m := range attribute.FindAllStringSubmatch(page, -1) {
		path, fragment, _ := strings.Cut(m[1], "#")
		switch {
		case path == "" && !ids[fragment]:
			t.Errorf("%q leads nowhere", m[1])
		case path != "" && files[path] == nil:
			t.Errorf("%q is not in the packet", m[1])
		}
		n++
	}
	if n < 3*8 {
		t.Errorf("only %d addresses: 8 sheets have a picture and two links each", n)
	}
	for _, bad := range []string{"<script", "<img src=//", "@import", "url(", "<link"} {
		if strings.Contains(page, bad) {
			t.Errorf("%q stands in the index page", bad)
		}
	}
	if strings.Contains(page, "/home/") {
		t.Error("the page names a folder of the machine it was made on")
	}
}

func TestIndexShowsEveryGroupAndFinding(t *testing.T) {
	page := string(build(t, input())[IndexFile])
	for _, want := range []string{`id="start"`, `id="cut"`, `id="bore"`, `id="permit"`, "1. STOP", "line 3, column 1", "at a, b", "100 %", "Two posts"} {
		if !strings.Contains(page, want) {
			t.Errorf("no %s on the page", want)
		}
	}
	if strings.Contains(page, `id="raise"`) {
		t.Error("a group without sheets is shown")
	}
}

// Raising sheets stand in a group of their own, on the index page and in the
// outline of the PDF file.
func TestRaisingSheetsHaveAGroup(t *testing.T) {
	in := input()
	in.Sheets = func(*geom.Frame, []finding.Finding) []*draw.Sheet {
		return []*draw.Sheet{draw.NewSheet("raise", "raise-order", "Raising", 279.4, 215.9)}
	}
	files := build(t, in)
	if page := string(files[IndexFile]); !strings.Contains(page, `id="raise"`) || !strings.Contains(page, "Raising, step by step") {
		t.Error("the index page has no group for raising")
	}
	if files["svg/001-raise-order.svg"] == nil {
		t.Error("no SVG file of that name")
	}
}

// File names follow svg/NNN-kind-id.svg with ids of [a-z0-9-].
func TestFileNames(t *testing.T) {
	name := regexp.MustCompile(`^svg/[0-9]{3,}-[a-z0-9-]+\.svg$`)
	fixed := map[string]bool{IndexFile: true, SheetsFile: true, TemplatesFile: true, "lists.json": true, "model.json": true,
		"lists/timbers.csv": true, "lists/pegs.csv": true, "lists/bores.csv": true, "lists/order.csv": true,
		"lists/lifting.csv": true, "lists/tools.csv": true, "lists/capacities.csv": true, "lists/steps.csv": true, "lists/wedges.csv": true}
	n := 0
	for path := range build(t, input()) {
		if name.MatchString(path) {
			n++
		} else if !fixed[path] {
			t.Errorf("a file called %s", path)
		}
	}
	if n != 8 {
		t.Errorf("%d SVG files, want 8", n)
	}
	for in, want := range map[string]string{"../../etc/passwd": "etc-passwd", "": "sheet", "…": "sheet", "A  B": "a-b", strings.Repeat("x", 99): strings.Repeat("x", 60)} {
		if got := fileWord(in, 60); got != want {
			t.Errorf("fileWord(%q) = %q, want %q", in, got, want)
		}
	}
}

// Every SVG is well-formed XML and carries the content mark and its number of
// all sheets.
func TestEverySheetCarriesMarkAndNumber(t *testing.T) {
	in := input()
	p, err := Build(in)
	if err != nil {
		t.Fatal(err)
	}
	if !regexp.MustCompile(`^[0-9a-f]{12}$`).MatchString(p.Mark) {
		t.Errorf("mark %q", p.Mark)
	}
	n := 0
	for _, f := range p.Files {
		if !strings.HasPrefix(f.Path, "svg/") {
			continue
		}
		n++
		text := letters(t, f.Data)
		if !strings.Contains(text, p.Mark) || !strings.Contains(text, fmt.Sprintf("%d of 8", n)) {
			t.Errorf("%s has no mark %s or no “%d of 8”", f.Path, p.Mark, n)
		}
	}
}

// letters returns all character data of a document.
func letters(t *testing.T, doc []byte) string {
	t.Helper()
	var b strings.Builder
	d := xml.NewDecoder(bytes.NewReader(doc))
	for {
		tok, err := d.Token()
		if errors.Is(err, io.EOF) {
			return b.String()
		}
		if err != nil {
			t.Fatalf("not XML: %v", err)
		}
		if c, ok := tok.(xml.CharData); ok {
			b.Write(c)
		}
	}
}

// pageObject is a page of a PDF file (ISO 32000-1, 7.7.3.3).
var pageObject = regexp.MustCompile(`/Type */Page\b`)

func TestPDFFiles(t *testing.T) {
	files := build(t, input())
	for name, want := range map[string]int{SheetsFile: 5, TemplatesFile: 3} {
		doc := files[name]
		if got := len(pageObject.FindAll(doc, -1)); got != want {
			t.Errorf("%s has %d pages, want %d", name, got, want)
		}
		if !bytes.Contains(doc, []byte("/Outlines")) {
			t.Errorf("%s has no outline", name)
		}
	}
	// ISO 32000-1, table 150: PrintScaling None asks the viewer not to scale.
	none := regexp.MustCompile(`/PrintScaling */None`)
	if !none.Match(files[TemplatesFile]) || none.Match(files[SheetsFile]) {
		t.Error("the templates, and they alone, must ask not to be scaled")
	}
}

// The mark follows what the sheets show and what the description says.
func TestMarkFollowsTheContent(t *testing.T) {
	mark := func(in Input) string {
		p, err := Build(in)
		if err != nil {
			t.Fatal(err)
		}
		return p.Mark
	}
	base := mark(input())
	if mark(input()) != base {
		t.Error("the same input has two marks")
	}
	source := input()
	source.Source = []byte("frame: y")
	sheet := input()
	sheet.Sheets = stand("Sheet", 5, "cover", "frame", "joint", "drawbore", "raise")
	template := input()
	template.Templates = stand("Template", 2, "check", "hole")
	seen := map[string]string{base: "the first"}
	for name, in := range map[string]Input{"source": source, "sheets": sheet, "templates": template} {
		m := mark(in)
		if seen[m] != "" {
			t.Errorf("another %s has the mark of %s", name, seen[m])
		}
		seen[m] = name
	}
}

func TestABadSheetIsRefused(t *testing.T) {
	in := input()
	in.Sheets = func(*geom.Frame, []finding.Finding) []*draw.Sheet {
		return []*draw.Sheet{draw.NewSheet("x", "x", "x", -1, 5)}
	}
	if _, err := Build(in); err == nil {
		t.Error("a sheet of -1 mm was drawn")
	}
}

func TestNoSheets(t *testing.T) {
	in := input()
	none := func(*geom.Frame, []finding.Finding) []*draw.Sheet { return nil }
	in.Sheets, in.Templates = none, none
	files := build(t, in)
	if files[SheetsFile] != nil || files[TemplatesFile] != nil || files[IndexFile] == nil {
		t.Error("a packet without sheets has PDF files, or no index")
	}
}
