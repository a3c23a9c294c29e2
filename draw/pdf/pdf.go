// Package pdf renders sheets as one PDF file. Page content is written in exact
// millimetres with y up, under one scaling matrix, so that nothing is rounded
// to the hundredths of a point that the PDF library keeps. Text is set from the
// runs of draw/font, with the same font, at the same places as in draw/svg, and
// can be searched and copied.
package pdf

import (
	"fmt"
	"io"
	"strings"
	"time"
	"unicode/utf8"

	"github.com/go-pdf/fpdf"

	"pegwright/draw"
)

// Doc is a document: sheets in order, and what is said about them.
type Doc struct {
	// Title, Subject, Author and Keywords go into the document's information.
	// Nothing is written for an empty one.
	Title, Subject, Author, Keywords string
	// Creator is the program's name; "" means "pegwright".
	Creator string
	// Sheets are the pages, in order; at least one.
	Sheets []*draw.Sheet
	// Outline are the bookmarks, in order of reading.
	Outline []OutlineEntry
	// Attachment is a file carried within the PDF; nil for none.
	Attachment *Attachment
	// PrintScalingNone asks the viewer to print at full size (ISO 32000-1,
	// table 150, PrintScaling).
	PrintScalingNone bool
}

// OutlineEntry is a bookmark: a title, its level (0 outermost) and the place of
// its sheet in Doc.Sheets, from 0. A level more than one below the entry before
// it is raised.
type OutlineEntry struct {
	Title string
	Level int
	Sheet int
}

// Attachment is a file carried within a PDF.
type Attachment struct {
	Name string
	Data []byte
}

// ptPerMM is the PDF's unit: 72 points to the inch of 25.4 mm.
const ptPerMM = 72 / 25.4

// fixedDate stands where the format wants a date: the document has none of its
// own, and the same input must give the same bytes.
var fixedDate = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)

// Render writes the document to w. It fails if a sheet is not valid
// (draw.Sheet.Valid), if there is no sheet, if a bookmark points beyond the
// sheets, or if w fails. The same document gives the same bytes.
func Render(w io.Writer, doc Doc) error {
	if err := check(doc); err != nil {
		return err
	}
	p := newPDF(doc)
	var err error
	if p.press, err = newPress(); err != nil {
		return err
	}
	for _, s := range doc.Sheets {
		if err := p.page(s); err != nil {
			return err
		}
	}
	if err := p.fonts(); err != nil {
		return err
	}
	p.bookmarks()
	q := filler{pages: p.made}
	if err := p.f.Output(&q); err != nil {
		return fmt.Errorf("pdf: %w", err)
	}
	out := q.out.Bytes()
	if doc.PrintScalingNone || doc.Attachment != nil {
		tail, err := update(out, doc)
		if err != nil {
			return err
		}
		out = append(out, tail...)
	}
	if _, err := w.Write(out); err != nil {
		return fmt.Errorf("pdf: %w", err)
	}
	return nil
}

func check(doc Doc) error {
	if len(doc.Sheets) == 0 {
		return fmt.Errorf("pdf: no sheets")
	}
	for _, s := range doc.Sheets {
		if err := s.Valid(); err != nil {
			return err
		}
	}
	for _, o := range doc.Outline {
		if o.Sheet < 0 || o.Sheet >= len(doc.Sheets) {
			return fmt.Errorf("pdf: bookmark %q: there is no sheet %d", o.Title, o.Sheet+1)
		}
	}
	return nil
}

// writer carries a document to the PDF library.
type writer struct {
	f       *fpdf.Fpdf
	doc     Doc
	links   map[string]int  // link numbers of the sheets, by ID
	placed  map[string]bool // whether the link of an ID has its page
	content content
	press   *press
	made    [][]byte // compressed contents of the pages so far
}

func newPDF(doc Doc) *writer {
	f := fpdf.NewCustom(&fpdf.InitType{UnitStr: "mm", Size: fpdf.SizeType{Wd: doc.Sheets[0].W, Ht: doc.Sheets[0].H}})
	f.SetMargins(0, 0, 0)
	f.SetAutoPageBreak(false, 0)
	f.SetCatalogSort(true)
	f.SetCompression(false) // see press
	f.SetCreationDate(fixedDate)
	f.SetModificationDate(fixedDate)
	f.SetProducer("pegwright", true)
	f.SetLang("en")
	if doc.Creator == "" {
		doc.Creator = "pegwright"
	}
	for _, m := range []struct {
		set  func(string, bool)
		text string
	}{{f.SetTitle, doc.Title}, {f.SetSubject, doc.Subject}, {f.SetAuthor, doc.Author},
		{f.SetKeywords, doc.Keywords}, {f.SetCreator, doc.Creator}} {
		if m.text != "" {
			m.set(plainText(m.text), true)
		}
	}
	p := &writer{f: f, doc: doc, links: map[string]int{}, placed: map[string]bool{}}
	for _, s := range doc.Sheets {
		if _, ok := p.links[s.ID]; !ok {
			p.links[s.ID] = f.AddLink()
		}
	}
	return p
}

// plainText returns s fit for the library, which fails on bytes that are not
// UTF-8 and on runes beyond U+FFFF: these and control characters become '?'.
func plainText(s string) string {
	return strings.Map(func(c rune) rune {
		if c == utf8.RuneError || c > 0xffff || c < ' ' || c >= 0x7f && c < 0xa0 {
			return '?'
		}
		return c
	}, s)
}
