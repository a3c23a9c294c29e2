package pdf

import (
	"strings"

	"github.com/go-pdf/fpdf"

	"pegwright/draw"
)

// page adds a sheet. The library would swap width and
// height for a page called landscape, so all are called portrait.
func (p *writer) page(s *draw.Sheet) error {
	p.f.AddPageFormat("P", fpdf.SizeType{Wd: s.W, Ht: s.H})
	if !p.placed[s.ID] {
		p.f.SetLink(p.links[s.ID], 0, p.f.PageNo())
		p.placed[s.ID] = true
	}
	p.areas(s)
	data, err := p.press.squeeze(p.content.write(s))
	p.made = append(p.made, data)
	return err
}

// areas adds the links of a sheet; a link to a sheet that is not in the
// document is left out.
func (p *writer) areas(s *draw.Sheet) {
	for _, l := range s.Links {
		x, y, w, h := l.Rect.Min.X, s.H-l.Rect.Max.Y, l.Rect.W(), l.Rect.H()
		if strings.HasPrefix(l.To, "https://") || strings.HasPrefix(l.To, "http://") {
			p.f.LinkString(x, y, w, h, address(l.To))
		} else if n, ok := p.links[l.To]; ok {
			p.f.Link(x, y, w, h, n)
		}
	}
}

// address returns a web address with everything but printable ASCII left out.
func address(s string) string {
	return strings.Map(func(c rune) rune {
		if c <= ' ' || c > '~' {
			return -1
		}
		return c
	}, s)
}

// bookmarks adds the outline, when all pages are there. The library measures
// every bookmark from the height of the last page of the document, so the
// difference is taken off here.
func (p *writer) bookmarks() {
	if len(p.doc.Outline) == 0 {
		return
	}
	pages := len(p.doc.Sheets)
	last, level := p.doc.Sheets[pages-1], -1
	for _, o := range p.doc.Outline {
		level = max(0, min(o.Level, level+1))
		y := last.H - p.doc.Sheets[o.Sheet].H
		if y == -1 { // which the library takes for "here"
			y = -1.001
		}
		p.f.SetPage(o.Sheet + 1)
		p.f.Bookmark(plainText(o.Title), level, y)
	}
	p.f.SetPage(pages)
}
