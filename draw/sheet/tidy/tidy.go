// Package tidy tells tests what a drawing sheet must keep: margins, heights of
// lettering, air between words and lines, leaders that run clear, no page left
// nearly empty. It reads back what sheets and lists say, and walks along lines of
// sight through the wood. Only tests use it.
package tidy

import (
	"bytes"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/legible"
	"pegwright/draw/pdf"
	"pegwright/geom/measure"
	"pegwright/geom/vec"
)

// TextsOn returns the texts of the sheets whose id begins so, each between the ends
// of two lines.
func TextsOn(sheets []*draw.Sheet, id string) string {
	var out []string
	for _, s := range sheets {
		if !strings.HasPrefix(s.ID, id) {
			continue
		}
		for _, it := range s.Items {
			if x, ok := it.(*draw.Text); ok {
				out = append(out, x.S)
			}
		}
	}
	return "\n" + strings.Join(out, "\n") + "\n"
}

// linesCount reports whether wide lines may not run through a sheet's words; joint
// and drawbore sheets are held apart by tests of their own.
func linesCount(s *draw.Sheet) bool {
	return s.Kind == "timber" || s.Kind == "plan" || s.Kind == "elevation" || s.Kind == "view" || s.Kind == "raise"
}

// rules are what a drawing sheet must keep. Lettering after ISO 3098:
// 2.5 mm at least, fraction figures too.
func rules(s *draw.Sheet) legible.Rules {
	at := func(x0, y0, x1, y1 float64) draw.Box {
		return draw.Box{Min: vec.P{X: x0, Y: y0}, Max: vec.P{X: x1, Y: y1}}
	}
	return legible.Rules{
		Items: at(block.Left-0.3, block.Other-0.3, s.W-block.Other+0.3, s.H-block.Other+5),
		Words: at(block.Left, block.Other-0.01, s.W-block.Other, s.H-block.Other+5),
		Least: dim.Small, Figures: dim.Small, Lines: linesCount(s), Together: true,
		Loose: map[string]bool{"title": true}, Apart: map[string]bool{"border": true, "key view": true},
	}
}

// Faults tells what spoils the layout of a sheet.
func Faults(s *draw.Sheet) []string { return rules(s).Faults(s) }

// Empty tells that a cover or a sheet with a drawing is left nearly empty, the key
// view apart. The rest of a list that goes on from the sheet before is as long
// as it is.
func Empty(s *draw.Sheet) []string {
	switch s.Kind {
	case "timber", "plan", "elevation", "joint", "drawbore", "frame", "cover":
	default:
		return nil
	}
	if strings.Contains(s.ID, "-served-") {
		return nil
	}
	field := draw.Box{Min: vec.P{X: block.Left, Y: block.Other}, Max: vec.P{X: s.W - block.Other, Y: s.H - block.Other}}
	return legible.Sparse(s, field, map[string]bool{"border": true, "title": true, "key view": true, draw.LayerUnder: true})
}

// Check fails a test for every fault in the layout of a sheet.
func Check(t *testing.T, s *draw.Sheet) {
	t.Helper()
	for _, f := range Faults(s) {
		t.Error(f)
	}
}

// Sheets numbers sheets and fails a test for what is wrong with one of them.
func Sheets(t *testing.T, sheets []*draw.Sheet) {
	t.Helper()
	for i, s := range sheets {
		block.Number(s, i+1, len(sheets), "0123456789ab")
		if err := s.Valid(); err != nil {
			t.Error(err)
		}
		Check(t, s)
	}
}

// Write dumps sheets as a PDF into the folder named by PEGWRIGHT_PICTURES.
func Write(t *testing.T, name string, sheets []*draw.Sheet) {
	dir := os.Getenv("PEGWRIGHT_PICTURES")
	if dir == "" {
		return
	}
	var b bytes.Buffer
	if err := pdf.Render(&b, pdf.Doc{Title: name, Sheets: sheets}); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(dir, name+".pdf"), b.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
}

// ReadLength reads a length as the sheets print it: feet-inches with a reduced
// fraction, or millimetres.
func ReadLength(s string, u measure.Units) (float64, error) {
	if u == measure.Metric {
		return strconv.ParseFloat(s, 64)
	}
	mm := 0.0
	if feet, rest, ok := strings.Cut(s, "'-"); ok {
		n, err := strconv.ParseFloat(feet, 64)
		if err != nil {
			return 0, err
		}
		mm, s = n*304.8, rest
	}
	for _, w := range strings.Fields(strings.TrimSuffix(s, `"`)) {
		num, den, ok := strings.Cut(w, "/")
		n, err := strconv.ParseFloat(num, 64)
		if err != nil {
			return 0, err
		}
		d := 1.0
		if ok {
			if d, err = strconv.ParseFloat(den, 64); err != nil {
				return 0, err
			}
		}
		mm += n / d * 25.4
	}
	return mm, nil
}
