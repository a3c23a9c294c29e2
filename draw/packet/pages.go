package packet

import (
	"fmt"
	"strings"

	"pegwright/draw"
)

// page is one sheet in its place in the packet.
type page struct {
	sheet    *draw.Sheet
	n        int    // 1-based, over all sheets
	pdf      string // path of its PDF file
	inPDF    int    // 1-based, within its PDF file
	file     string // name of the SVG file
	template bool   // in templates.pdf, printed at full size
	reader   reader
}

// reader is a group of sheets by the person who uses them.
type reader struct{ Key, Title string }

// readers are the groups in the order in which they are shown. Kinds that no
// group names belong to the cutter, who needs the most.
func readers() []struct {
	reader
	kinds []string
} {
	return []struct {
		reader
		kinds []string
	}{
		{reader{"start", "Start here"}, []string{"cover", "frame", "view", "plan", "elevation", "list"}},
		{reader{"cut", "Cut"}, nil},
		{reader{"bore", "Bore and peg"}, []string{"drawbore", "bore", "hole", "tenon", "flap", "peg", "pattern", "check"}},
		{reader{"raise", "Raise"}, []string{"raise", "step"}},
		{reader{"permit", "Permit"}, []string{"permit"}},
	}
}

// readerOf returns the group of a sheet of that kind.
func readerOf(kind string) reader {
	groups := readers()
	for _, g := range groups {
		for _, k := range g.kinds {
			if k == kind {
				return g.reader
			}
		}
	}
	return groups[1].reader
}

// kindTitle heads the sheets of one kind on the index page.
func kindTitle(kind string) string {
	titles := map[string]string{
		"cover": "Cover", "frame": "The frame", "plan": "Plans", "elevation": "Elevations and section", "list": "Lists", "joint": "Joints", "permit": "Permit set", "timber": "Timbers",
		"drawbore": "Drawbore", "raise": "Raising, step by step", "check": "Print check", "hole": "Hole templates, full size",
		"tenon": "Tenon templates, full size", "flap": "Flaps of entered faces, full size",
		"end": "End patterns, full size", "pole": "Story poles, full size", "pattern": "Peg patterns, full size",
	}
	if t := titles[kind]; t != "" {
		return t
	}
	return "Sheets: " + kind
}

// compose returns the pages of the packet in order, the 1:1 sheets last.
func compose(in Input) []*page {
	sheets, templates := composers(in)
	var set []*page
	for _, s := range sheets(in.Frame, in.Findings) {
		set = append(set, &page{sheet: s})
	}
	for _, s := range templates(in.Frame, in.Findings) {
		set = append(set, &page{sheet: s, template: true})
	}
	for i, p := range set {
		p.n = i + 1
		p.reader = readerOf(p.sheet.Kind)
		p.file = fileName(p.n, p.sheet)
	}
	return set
}

// fileName returns the name of a sheet's SVG file: number, kind and id. An id
// that begins with the kind does not say it twice.
func fileName(n int, s *draw.Sheet) string {
	kind := fileWord(s.Kind, 20)
	id := strings.TrimPrefix(fileWord(s.ID, 60), kind+"-")
	if id == kind {
		id = "1"
	}
	return fmt.Sprintf("%03d-%s-%s.svg", n, kind, id)
}

// fileWord brings a word to [a-z0-9-], at most n characters, never empty.
func fileWord(s string, n int) string {
	var b strings.Builder
	for _, c := range strings.ToLower(s) {
		switch {
		case c >= 'a' && c <= 'z' || c >= '0' && c <= '9':
			b.WriteRune(c)
		case b.Len() > 0 && !strings.HasSuffix(b.String(), "-"):
			b.WriteByte('-')
		}
	}
	w := b.String()
	if len(w) > n {
		w = w[:n]
	}
	if w = strings.Trim(w, "-"); w == "" {
		return "sheet"
	}
	return w
}

// label names the page in the outline and on the index page.
func (p *page) label() string { return fmt.Sprintf("%d  %s", p.n, p.sheet.Title) }

// pdfLink returns the address of the page within its PDF file.
func (p *page) pdfLink() string { return fmt.Sprintf("%s#page=%d", p.pdf, p.inPDF) }
