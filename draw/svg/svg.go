// Package svg renders a sheet as an SVG file: the paper size in millimetres, a
// view box in millimetres, a group for every run of items in one layer and pen,
// and a subset of the font of the sheets embedded.
//
// Marks, owners and layers of the items are kept as data-mark, data-owner and
// data-layer, so that a measuring test can find an item again.
package svg

import (
	"bytes"
	"encoding/base64"
	"fmt"
	"io"
	"slices"
	"strings"

	svgo "github.com/ajstarks/svgo/float"

	"pegwright/draw"
	"pegwright/draw/font"
)

// Options are the things that are written on an SVG but are not on the sheet.
type Options struct {
	// Mark is the content mark of the packet, kept as data-packet.
	Mark string
	// Title is the document's title; "" means the sheet's own.
	Title string
	// Href returns the address of the file of another sheet, by the sheet's
	// ID; nil or "" leaves links between sheets out. Addresses on the web
	// need no Href.
	Href func(sheetID string) string
}

// Render returns the sheet as an SVG document. It fails if the sheet is not
// valid (draw.Sheet.Valid). The same sheet gives the same bytes.
func Render(s *draw.Sheet, o Options) ([]byte, error) {
	if err := s.Valid(); err != nil {
		return nil, err
	}
	var buf bytes.Buffer
	buf.Grow(usual)
	guard := &guarded{w: &buf}
	r := &renderer{sheet: s, out: svgo.New(guard), ids: map[string]int{}}
	r.out.Decimals = s.Places()
	if err := r.document(o); err != nil {
		return nil, err
	}
	if guard.err != nil {
		return nil, guard.err
	}
	return bytes.Clone(buf.Bytes()), nil // no longer than it must be: all sheets are kept
}

// usual is room for most sheets, bytes.
const usual = 60_000

// guarded keeps the first error of a writer: the SVG library drops them.
type guarded struct {
	w   io.Writer
	err error
}

// Write passes p on unless an earlier write failed.
func (g *guarded) Write(p []byte) (int, error) {
	if g.err != nil {
		return 0, g.err
	}
	n, err := g.w.Write(p)
	g.err = err
	return n, err
}

// renderer carries one sheet to the SVG library.
type renderer struct {
	sheet *draw.Sheet
	out   *svgo.SVG
	ids   map[string]int // how often a layer's name was used as an id
}

func (r *renderer) document(o Options) error {
	s := r.sheet
	w, h := r.num(s.W), r.num(s.H)
	r.out.Startraw(attr("width", w+"mm"), attr("height", h+"mm"), attr("viewBox", "0 0 "+w+" "+h),
		attr("data-sheet", s.ID), attr("data-kind", s.Kind), attr("data-packet", o.Mark), attr("xml:space", "preserve"))
	title := o.Title
	if title == "" {
		title = s.Title
	}
	r.out.Title(clean(title))
	if err := r.fonts(); err != nil {
		return err
	}
	r.out.Rect(0, 0, draw.Round(s.W, s.Places()), draw.Round(s.H, s.Places()), attr("fill", "#fff"), attr("class", "paper"))
	r.items()
	r.links(o)
	r.out.End()
	return nil
}

// fonts embeds one subset for each face that the sheet uses.
func (r *renderer) fonts() error {
	var css strings.Builder
	for _, bold := range []bool{false, true} {
		runes := usedRunes(r.sheet, bold)
		if len(runes) == 0 {
			continue
		}
		ttf, err := font.SubsetFace(bold, runes)
		if err != nil {
			return fmt.Errorf("font of sheet %q: %w", r.sheet.ID, err)
		}
		fmt.Fprintf(&css, "@font-face{font-family:%s;font-weight:%s;src:url(data:font/ttf;base64,%s) format(\"truetype\")}\n",
			family, weight(bold), base64.StdEncoding.EncodeToString(ttf))
	}
	if css.Len() > 0 {
		css.WriteString("text{white-space:pre}")
		r.out.Style("text/css", css.String())
	}
	return nil
}

// family is the name by which texts ask for the embedded font.
const family = "PegGo"

func weight(bold bool) string {
	if bold {
		return "700"
	}
	return "400"
}

// usedRunes returns the runes that the sheet sets in the face, sorted.
func usedRunes(s *draw.Sheet, bold bool) []rune {
	seen := map[rune]bool{}
	for _, it := range s.Items {
		t, ok := it.(*draw.Text)
		if !ok || t.Bold != bold {
			continue
		}
		for _, run := range font.Layout(t.S, t.Height, bold) {
			for _, c := range run.S {
				seen[c] = true
			}
		}
	}
	out := make([]rune, 0, len(seen))
	for c := range seen {
		out = append(out, c)
	}
	slices.Sort(out)
	return out
}

func (r *renderer) num(x float64) string { return draw.Number(x, r.sheet.Places()) }

// x and y are paper coordinates as SVG has them: y runs down from the top.
func (r *renderer) x(x float64) float64 { return draw.Round(x, r.sheet.Places()) }

func (r *renderer) y(y float64) float64 { return draw.Round(r.sheet.H-y, r.sheet.Places()) }
