// Package packet puts the sheets of a frame together: their order, numbers and
// content mark, the two PDF files, an index page that works from disk, and the
// lists and the model beside them. It returns files as bytes and touches no
// disk.
package packet

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/crew"
	"pegwright/geom"
	"pegwright/geom/finding"
)

// Composer draws sheets of a frame; findings are in the order in which they are
// numbered.
type Composer func(*geom.Frame, []finding.Finding) []*draw.Sheet

// Input is what a packet is made from.
type Input struct {
	Frame    *geom.Frame       // solved
	Findings []finding.Finding // sorted; shown with numbers from 1
	Source   []byte            // the description as it was read
	Name     string            // short name of the frame, for errors
	// Sheets and Templates compose the sheets; nil stands for all that the
	// program can draw.
	Sheets, Templates Composer
	// Done, if it is not nil, is told how many sheets are rendered of how many
	// there are: one call at a time, from 0 on, growing by one.
	Done func(rendered, all int)
}

// File is one file of a packet: a path with forward slashes, relative to the
// packet's folder, and its bytes.
type File struct {
	Path string
	Data []byte
}

// Packet is everything that is written for a frame.
type Packet struct {
	Files            []File
	Mark             string   // 12 hexadecimal figures, the same for the same content
	Sheets, FullSize int      // how many sheets and 1:1 sheets there are
	Contents         []Entry  // of every sheet
	volumes          []volume // PDF files, in order
}

// Entry is one sheet of a packet, in its order.
type Entry struct {
	Number          int    // from 1
	Kind, ID, Title string // as the sheet has them
	Group           string // the reader it is for, as headed on the index page
	SVG             string // path of its SVG file
	FullSize        bool   // printed at 1:1
}

// Names of the files that others point to. A packet of very many pages has the
// PDF files in volumes by reader, such as packet-cut.pdf.
const (
	IndexFile     = "index.html"
	SheetsFile    = sheetsName + ".pdf"
	TemplatesFile = templatesName + ".pdf"
)

const sheetsName, templatesName = "packet", "templates"

// Build composes, numbers and renders all sheets. The same input gives the same
// bytes. It fails when a sheet cannot be rendered or a number of the frame is
// not finite. A PDF file with no sheets is left out.
func Build(in Input) (*Packet, error) {
	set := compose(in)
	mark := contentMark(in, set)
	for i, p := range set {
		block.Number(p.sheet, i+1, len(set), mark)
	}
	p := &Packet{Mark: mark}
	for _, pg := range set {
		if pg.template {
			p.FullSize++
		} else {
			p.Sheets++
		}
		p.Contents = append(p.Contents, Entry{pg.n, pg.sheet.Kind, pg.sheet.ID, pg.sheet.Title, pg.reader.Title, "svg/" + pg.file, pg.template})
	}
	if err := p.render(in, set); err != nil {
		return nil, fmt.Errorf("%s: %w", in.Name, err)
	}
	return p, nil
}

// contentMark returns the first 12 hexadecimal figures of a SHA-256: that of the
// sums of the description and of every sheet before it is numbered.
func contentMark(in Input, set []*page) string {
	sums := make([][sha256.Size]byte, 1+len(set))
	sums[0] = sha256.Sum256(in.Source)
	crew.Each(len(set), func(i int) { sums[1+i] = set[i].sheet.Sum() })
	h := sha256.New()
	for _, s := range sums {
		h.Write(s[:])
	}
	return hex.EncodeToString(h.Sum(nil))[:12]
}
