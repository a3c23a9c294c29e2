package templates

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"pegwright/draw"
	"pegwright/draw/measured"
	"pegwright/draw/pdf"
	"pegwright/geom"
	"pegwright/samples"
	"pegwright/samples/trial"
)

// sample returns the solved default sample.
func sample(t testing.TB) *geom.Frame {
	t.Helper()
	return trial.Sample(t, samples.Default())
}

// solveText returns the frame of a description.
func solveText(name string, src []byte) (*geom.Frame, error) {
	f, faults := trial.Solve(name, string(src))
	return f, faults.Err()
}

// hard are descriptions of what the samples do not have: two pegs, a peg from
// the other side, a housing in a reference face, a hole that no one page
// reaches from its arris, metric and inch paper.
var hard = map[string]string{
	"housed in a reference face, two pegs": `
frame: Housed
units: in
timbers:
  gate-post: {role: post, section: 6 x 6, from: [0, 0, 0], to: [0, 0, 5'], faces: [south, west]}
  top-rail: {role: tie, section: 6 x 7, from: [0, -6', 4'], to: [0, 0, 4'], faces: [top, west]}
joints:
  - {kind: mortise and tenon, of: top-rail, end: end, into: gate-post, housing: 1/2", pegs: {count: 2}, bore: 1"}
`,
	"far from the arris, bored from face 3": `
frame: Stout
units: mm
timbers:
  gate-post: {role: post, section: 360 x 360, from: [0, 0, 0], to: [0, 0, 1500], faces: [south, west]}
  top-rail: {role: tie, section: 200 x 300, from: [0, 360, 1000], to: [0, 2000, 1000], faces: [top, west]}
joints:
  - {kind: mortise and tenon, of: top-rail, end: start, into: gate-post, pegs: {count: 1, from face: 3}, bore: 25}
`,
	"splayed scarf": `
frame: Splayed
units: in
timbers:
  long-a: {role: plate, section: 6 x 8, from: [0, 0, 8'], to: [8', 0, 8'], faces: [top, south]}
  long-b: {role: plate, section: 6 x 8, from: [8', 0, 8'], to: [16', 0, 8'], faces: [top, south]}
joints:
  - {kind: splayed scarf, of: long-b, end: start, into: long-a}
`,
	"half-lap scarf": `
frame: Lapped
units: mm
timbers:
  long-a: {role: plate, section: 150 x 200, from: [0, 0, 2400], to: [2500, 0, 2400], faces: [top, south]}
  long-b: {role: plate, section: 150 x 200, from: [2500, 0, 2400], to: [5000, 0, 2400], faces: [top, south]}
joints:
  - {kind: half-lap scarf, of: long-b, end: start, into: long-a, scarf: {key: wedges}}
`,
	"wedged through tenon": `
frame: Wedged
units: in
timbers:
  gate-post: {role: post, section: 8 x 8, from: [0, 0, 0], to: [0, 0, 8'], faces: [south, west]}
  top-rail: {role: tie, section: 6 x 8, from: [0, 0, 6'], to: [0, 8', 6'], faces: [top, west]}
joints:
  - {kind: wedged through tenon, of: top-rail, end: start, into: gate-post}
`,
}

// measuredSamples are the samples that the tests draw and measure: all of them,
// or in short some that together have every kind of joint that the samples have.
func measuredSamples() []string {
	if !testing.Short() {
		return samples.Names()
	}
	return []string{samples.Default(), "fair-shelter", "footbridge", "rail-and-post", "reading-hut", "vine-arbour"}
}

// drawn is a frame with its templates, and every sheet as read back from SVG and
// from PDF.
type drawn struct {
	name   string
	f      *geom.Frame
	sheets []*draw.Sheet
	groups []plan
	pegs   []pegSize
	read   map[string][]found // by sheet id: SVG, then PDF
}

// everything draws the samples and the hard ones once for all tests.
var everything = sync.OnceValues(func() ([]drawn, error) {
	src := map[string][]byte{}
	names := measuredSamples()
	for _, n := range names {
		src[n], _ = samples.Source(n)
	}
	for n, s := range hard {
		names, src[n] = append(names, n), []byte(s)
	}
	var out []drawn
	for _, n := range names {
		f, err := solveText(n, src[n])
		if err != nil {
			return nil, err
		}
		d := drawn{name: n, f: f, sheets: Sheets(f, nil), groups: gather(plans(f, nil)), pegs: pegSizes(f, nil), read: map[string][]found{}}
		if err := d.readBack(); err != nil {
			return nil, err
		}
		out = append(out, d)
	}
	return out, nil
})

func (d *drawn) readBack() error {
	pages, data, err := pagesOf(d.sheets, d.name)
	if err != nil {
		return err
	}
	for i, s := range d.sheets {
		if d.read[s.ID] != nil {
			return fmt.Errorf("two sheets are called %s", s.ID)
		}
		a, err := fromSVG(s)
		if err != nil {
			return err
		}
		d.read[s.ID] = []found{a, fromPDF(s, pages[i])}
	}
	if dir := os.Getenv("TEMPLATES_OUT"); dir != "" { // to look at them
		return os.WriteFile(filepath.Join(dir, strings.Fields(d.name)[0]+".pdf"), data, 0o644)
	}
	return nil
}

// pagesOf renders sheets as PDF and reads them back.
func pagesOf(sheets []*draw.Sheet, title string) ([]measured.Page, []byte, error) {
	var b bytes.Buffer
	if err := pdf.Render(&b, pdf.Doc{Title: title, Sheets: sheets, PrintScalingNone: true}); err != nil {
		return nil, nil, err
	}
	pages, err := measured.PDF(b.Bytes())
	return pages, b.Bytes(), err
}

func all(t *testing.T) []drawn {
	t.Helper()
	d, err := everything()
	if err != nil {
		t.Fatal(err)
	}
	return d
}
