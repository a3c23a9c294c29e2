// Package packet puts the sheets of a frame together: their order, numbers and
// content mark, the two PDF files, an index page that works from disk, and the
// lists and the model beside them. It returns files as bytes and touches no
// disk.
package packet

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"hash"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/pdf"
	"pegwright/draw/svg"
	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/list"
	"pegwright/geom/model"
)

// Composer draws sheets of a frame; findings are in the order in which they are
// numbered.
type Composer func(*geom.Frame, []finding.Finding) []*draw.Sheet

// Input is what a packet is made from.
type Input struct {
	Frame    *geom.Frame
	Findings []finding.Finding // sorted; shown with numbers from 1
	Source   []byte            // the description as it was read
	Name     string            // short name of the frame, for errors
	// Sheets and Templates compose the sheets; nil stands for all that the
	// program can draw.
	Sheets, Templates Composer
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
	Mark             string // 12 hexadecimal figures, the same for the same content
	Sheets, FullSize int    // how many sheets and 1:1 sheets there are
	Contents         []Entry
	volumes          []volume // PDF files, in order
}

// Entry is one sheet of a packet, in its order.
type Entry struct {
	Number          int // from 1
	Kind, ID, Title string
	Group           string // the reader it is for, as headed on the index page
	SVG             string // path of its SVG file
	FullSize        bool
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
	steps := []func(*Packet, Input, []*page) error{addSVG, addSheetsPDF, addTemplatesPDF, addLists, addModel, addIndex}
	for _, step := range steps {
		if err := step(p, in, set); err != nil {
			return nil, fmt.Errorf("%s: %w", in.Name, err)
		}
	}
	return p, nil
}

func (p *Packet) add(path string, data []byte) {
	p.Files = append(p.Files, File{path, data})
}

// contentMark returns the first 12 hexadecimal figures of the SHA-256 of the
// description and of every sheet before it is numbered.
func contentMark(in Input, set []*page) string {
	h := sha256.New()
	hashPart(h, in.Source)
	for _, p := range set {
		hashPart(h, []byte(p.sheet.Dump()))
	}
	return hex.EncodeToString(h.Sum(nil))[:12]
}

// hashPart hashes a length and the bytes, so that parts cannot run together.
func hashPart(h hash.Hash, b []byte) {
	fmt.Fprintf(h, "%d\n", len(b))
	h.Write(b)
}

func addSVG(p *Packet, _ Input, set []*page) error {
	byID := map[string]string{}
	for _, pg := range set {
		if _, ok := byID[pg.sheet.ID]; !ok {
			byID[pg.sheet.ID] = pg.file
		}
	}
	href := func(id string) string { return byID[id] }
	for _, pg := range set {
		data, err := svg.Render(pg.sheet, svg.Options{Mark: p.Mark, Href: href})
		if err != nil {
			return err
		}
		p.add("svg/"+pg.file, data)
	}
	return nil
}

func addSheetsPDF(p *Packet, in Input, set []*page) error {
	doc := pdf.Doc{Title: in.Frame.Title, Author: in.Frame.InfoText("drawn by"),
		Subject: "Sheets for cutting, boring, raising and permit, packet " + p.Mark}
	if len(in.Source) > 0 {
		doc.Attachment = &pdf.Attachment{Name: fileWord(in.Name, 60) + ".yaml", Data: in.Source}
	}
	return addPDF(p, doc, chosen(set, false))
}

func addTemplatesPDF(p *Packet, in Input, set []*page) error {
	doc := pdf.Doc{Title: in.Frame.Title + ": full-size templates", Author: in.Frame.InfoText("drawn by"), PrintScalingNone: true,
		Subject: "Print at 100 %, actual size. Packet " + p.Mark}
	return addPDF(p, doc, chosen(set, true))
}

// chosen returns the files of the templates, or of all other sheets.
func chosen(set []*page, templates bool) []volume {
	var r []*page
	for _, pg := range set {
		if pg.template == templates {
			r = append(r, pg)
		}
	}
	if templates {
		return volumes(r, templatesName, mostPages)
	}
	return volumes(r, sheetsName, mostPages)
}

func addPDF(p *Packet, doc pdf.Doc, files []volume) error {
	for _, v := range files {
		own := doc
		if v.title != "" {
			own.Title += ": " + v.title
		}
		var buf bytes.Buffer
		if err := pdf.Render(&buf, outlined(own, v.pages)); err != nil {
			return fmt.Errorf("%s: %w", v.path, err)
		}
		p.add(v.path, buf.Bytes())
		p.volumes = append(p.volumes, v)
	}
	return nil
}

// outlined puts the pages into a document, with an entry for each and one for
// each group.
func outlined(doc pdf.Doc, pages []*page) pdf.Doc {
	group := ""
	for i, pg := range pages {
		if pg.reader.Title != group {
			group = pg.reader.Title
			doc.Outline = append(doc.Outline, pdf.OutlineEntry{Title: group, Sheet: i})
		}
		doc.Outline = append(doc.Outline, pdf.OutlineEntry{Title: pg.label(), Level: 1, Sheet: i})
		doc.Sheets = append(doc.Sheets, pg.sheet)
	}
	return doc
}

func addLists(p *Packet, in Input, _ []*page) error {
	tables := list.Of(in.Frame, list.Stopped(in.Frame, in.Findings))
	for _, t := range tables {
		p.add("lists/"+t.Name+".csv", t.CSV())
	}
	data, err := list.JSON(tables)
	if err != nil {
		return err
	}
	p.add("lists.json", data)
	return nil
}

func addModel(p *Packet, in Input, _ []*page) error {
	data, err := model.JSON(in.Frame, in.Findings)
	if err != nil {
		return err
	}
	p.add("model.json", data)
	return nil
}
