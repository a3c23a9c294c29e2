// Package svg renders a sheet as an SVG file: the paper size in millimetres, a
// view box in millimetres, one group for each layer by its name, in it a group
// for every run of items in one pen, and a subset of the font of the sheets
// embedded.
//
// Marks, owners and layers of the items are kept as data-mark, data-owner and
// data-layer, so that a measuring test can find an item again.
package svg

import (
	"bytes"
	"encoding/base64"
	"fmt"
	"slices"
	"sync"
	"unicode/utf8"

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
func Render(s *draw.Sheet, o Options) ([]byte, error) { return NewBook().Render(s, o) }

// Book renders sheets that belong together. Many of them use the same
// characters, and the subsets of the font are made once. Sheets may be rendered
// by several goroutines at a time.
type Book struct {
	faces sync.Map // the rule of a face by its face and characters
	rooms sync.Pool
}

// NewBook returns a book that has no subsets yet.
func NewBook() *Book { return &Book{} }

// Render is Render for one sheet of the book.
func (b *Book) Render(s *draw.Sheet, o Options) ([]byte, error) {
	if err := s.Valid(); err != nil {
		return nil, err
	}
	room, ok := b.rooms.Get().(*paper)
	if !ok {
		room = new(paper)
	}
	defer b.rooms.Put(room)
	room.text = room.text[:0]
	r := &renderer{sheet: s, book: b, paper: room, out: svgo.New(room), ids: map[string]int{}}
	r.out.Decimals = s.Places()
	if err := r.document(o); err != nil {
		return nil, err
	}
	return bytes.Clone(room.text), nil // no longer than it must be: all sheets are kept
}

// paper is the text of a document so far. The SVG library writes what frames
// the drawing; the items, of which there are thousands, are appended.
type paper struct{ text []byte }

// Write appends p.
func (w *paper) Write(p []byte) (int, error) {
	w.text = append(w.text, p...)
	return len(p), nil
}

// renderer writes one sheet.
type renderer struct {
	sheet *draw.Sheet
	book  *Book
	*paper
	out *svgo.SVG
	ids map[string]int // how often an id was taken
}

func (r *renderer) document(o Options) error {
	s := r.sheet
	w, h := r.num(s.W), r.num(s.H)
	r.out.Startraw(attr("width", w+"mm"), attr("height", h+"mm"), attr("viewBox", "0 0 "+w+" "+h),
		attr("data-sheet", s.ID), attr("data-kind", s.Kind), attr("data-packet", o.Mark),
		attr("xml:space", "preserve"), attr("font-family", family), attr("font-weight", weight(false)))
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
	var css []string
	for _, bold := range []bool{false, true} {
		runes := usedRunes(r.sheet, bold)
		if len(runes) == 0 {
			continue
		}
		rule, err := r.book.face(bold, runes)
		if err != nil {
			return fmt.Errorf("font of sheet %q: %w", r.sheet.ID, err)
		}
		css = append(css, rule)
	}
	if len(css) > 0 {
		r.out.Style("text/css", append(css, "text{white-space:pre}")...)
	}
	return nil
}

// face returns the rule that embeds the glyphs of the runes (sorted).
func (b *Book) face(bold bool, runes []rune) (string, error) {
	key := weight(bold) + string(runes)
	if rule, ok := b.faces.Load(key); ok {
		return rule.(string), nil
	}
	ttf, err := font.SubsetFace(bold, runes)
	if err != nil {
		return "", err
	}
	head := "@font-face{font-family:" + family + ";font-weight:" + weight(bold) + ";src:url(data:font/ttf;base64,"
	rule := base64.StdEncoding.AppendEncode([]byte(head), ttf)
	rule = append(rule, ") format(\"truetype\")}"...)
	b.faces.Store(key, string(rule))
	return string(rule), nil
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
	var plain [utf8.RuneSelf]bool
	var out []rune
	for _, it := range s.Items {
		t, ok := it.(*draw.Text)
		if !ok || t.Bold != bold {
			continue
		}
		for _, run := range font.Layout(t.S, t.Height, bold) {
			for _, c := range run.S {
				if c >= utf8.RuneSelf {
					out = append(out, c)
				} else {
					plain[c] = true
				}
			}
		}
	}
	for c, used := range plain {
		if used {
			out = append(out, rune(c))
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

func (r *renderer) num(x float64) string { return draw.Number(x, r.sheet.Places()) }
