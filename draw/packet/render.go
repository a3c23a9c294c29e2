package packet

import (
	"bytes"
	"fmt"
	"sync"

	"pegwright/draw/crew"
	"pegwright/draw/pdf"
	"pegwright/draw/svg"
	"pegwright/geom/list"
	"pegwright/geom/model"
)

// maker makes some of the files of a packet.
type maker func() ([]File, error)

// render makes the files of the packet, many at a time, the index last. The
// long work is begun first; the order of the files is fixed.
func (p *Packet) render(in Input, set []*page) error {
	var makers []maker
	p.volumes = append(chosen(set, false), chosen(set, true)...)
	for _, v := range p.volumes {
		makers = append(makers, func() ([]File, error) { return v.file(p.Mark, in) })
	}
	makers = append(makers,
		func() ([]File, error) { return listFiles(in) },
		func() ([]File, error) { return modelFile(in) })
	href, book := hrefs(set), svg.NewBook()
	tell := teller(in.Done, len(set))
	for _, pg := range set {
		makers = append(makers, func() ([]File, error) {
			data, err := book.Render(pg.sheet, svg.Options{Mark: p.Mark, Href: href})
			tell()
			return []File{{"svg/" + pg.file, data}}, err
		})
	}
	made, errs := make([][]File, len(makers)), make([]error, len(makers))
	crew.Each(len(makers), func(i int) { made[i], errs[i] = makers[i]() })
	for i, files := range made {
		if errs[i] != nil {
			return errs[i]
		}
		p.Files = append(p.Files, files...)
	}
	return addIndex(p, in, set)
}

// teller returns a function to call after each sheet, from many sides at once.
func teller(done func(rendered, all int), all int) func() {
	if done == nil {
		return func() {}
	}
	var mu sync.Mutex
	n := 0
	done(0, all)
	return func() {
		mu.Lock()
		defer mu.Unlock()
		n++
		done(n, all)
	}
}

// hrefs returns the addresses of the sheets' files by the sheets' ids.
func hrefs(set []*page) func(id string) string {
	byID := map[string]string{}
	for _, pg := range set {
		if _, ok := byID[pg.sheet.ID]; !ok {
			byID[pg.sheet.ID] = pg.file
		}
	}
	return func(id string) string { return byID[id] }
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

// file renders the volume. Sheets carry the description that they were made
// from; templates ask to be printed at full size.
func (v volume) file(mark string, in Input) ([]File, error) {
	doc := pdf.Doc{Title: in.Frame.Title, Author: in.Frame.InfoText("drawn by"),
		Subject: "Sheets for cutting, boring, raising and permit, packet " + mark}
	switch {
	case v.pages[0].template:
		doc.Title += ": full-size templates"
		doc.Subject = "Print at 100 %, actual size. Packet " + mark
		doc.PrintScalingNone = true
	case len(in.Source) > 0:
		doc.Attachment = &pdf.Attachment{Name: fileWord(in.Name, 60) + ".yaml", Data: in.Source}
	}
	if v.title != "" {
		doc.Title += ": " + v.title
	}
	var buf bytes.Buffer
	if err := pdf.Render(&buf, outlined(doc, v.pages)); err != nil {
		return nil, fmt.Errorf("%s: %w", v.path, err)
	}
	return []File{{v.path, buf.Bytes()}}, nil
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

func listFiles(in Input) ([]File, error) {
	var out []File
	tables := list.Of(in.Frame, list.Stopped(in.Frame, in.Findings))
	for _, t := range tables {
		out = append(out, File{"lists/" + t.Name + ".csv", t.CSV()})
	}
	data, err := list.JSON(tables)
	return append(out, File{"lists.json", data}), err
}

func modelFile(in Input) ([]File, error) {
	data, err := model.JSON(in.Frame, in.Findings)
	return []File{{"model.json", data}}, err
}
