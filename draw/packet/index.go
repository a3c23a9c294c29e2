package packet

import (
	"bytes"
	_ "embed"
	"fmt"
	"html/template"
	"strings"
	"unicode"
	"unicode/utf8"

	"pegwright/geom/finding"
	"pegwright/geom/list"
)

//go:embed index.html.tmpl
var indexSource string

// indexData is what the index page shows.
type indexData struct {
	Title, Mark string
	Facts       []string // short lines under the title
	Picture     *card
	Findings    []findingRow
	Stops       bool
	Groups      []group
	Files       []link
	Templates   []string // PDF files of templates
}

type card struct{ SVG, PDF, Title, Number string }

type group struct {
	Key, Title string
	Parts      []part
}

// part holds the sheets of one kind.
type part struct {
	Title string
	Cards []card
}

type findingRow struct {
	N                                       int
	Severity, Word, Rule, Place, Text, Mend string
	About                                   string
}

type link struct{ Path, Text string }

func addIndex(p *Packet, in Input, set []*page) error {
	t, err := template.New("index").Parse(indexSource)
	if err != nil {
		return fmt.Errorf("index page: %w", err)
	}
	var buf bytes.Buffer
	if err := t.Execute(&buf, indexOf(p, in, set)); err != nil {
		return fmt.Errorf("index page: %w", err)
	}
	p.Files = append([]File{{IndexFile, buf.Bytes()}}, p.Files...)
	return nil
}

func indexOf(p *Packet, in Input, set []*page) indexData {
	d := indexData{
		Title: in.Frame.Title, Mark: p.Mark, Stops: finding.Stops(in.Findings),
		Picture: picture(set), Groups: groups(set), Files: files(p),
		Templates: templateFiles(p),
	}
	d.Facts = append(d.Facts, strings.Join([]string{counted(len(in.Frame.Timbers), "timber"), counted(len(in.Frame.Joints), "joint"),
		counted(p.Sheets, "sheet"), counted(p.FullSize, "full-size template")}, ", "))
	for _, i := range in.Frame.Info {
		if i.Text != "" && i.Name != "title" {
			d.Facts = append(d.Facts, i.Name+": "+i.Text)
		}
	}
	for i, f := range in.Findings {
		d.Findings = append(d.Findings, findingRow{
			N: i + 1, Severity: f.Severity.String(), Word: severityWord(f.Severity), Rule: f.Rule,
			Place: placeWords(f.At), Text: sentence(f.Text), Mend: f.Mend, About: about(f),
		})
	}
	return d
}

// counted returns "1 joint", "2 joints".
func counted(n int, one string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %ss", n, one)
}

func severityWord(s finding.Severity) string {
	switch s {
	case finding.Stop:
		return "STOP – do not cut"
	case finding.Warn:
		return "Warning"
	}
	return "Note"
}

// sentence begins a text with a capital letter, unless it begins with an id.
func sentence(s string) string {
	first, _, _ := strings.Cut(s, " ")
	if s == "" || strings.Contains(first, "-") {
		return s
	}
	r, n := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(r)) + s[n:]
}

// placeWords says where in the description a finding comes from. The file's
// name is left out: the same description drawn from another folder gives the
// same page.
func placeWords(p finding.Pos) string {
	if p.Line == 0 {
		return ""
	}
	return fmt.Sprintf("line %d, column %d of the description", p.Line, p.Col)
}

// about lists the joints, or the timbers where there are none, at most six.
func about(f finding.Finding) string {
	ids := f.Joints
	if len(ids) == 0 {
		ids = f.Timbers
	}
	text := ""
	for i, id := range ids {
		if i == 6 {
			return text + fmt.Sprintf(" and %d more", len(ids)-6)
		}
		if i > 0 {
			text += ", "
		}
		text += id
	}
	return text
}

// picture is the first view of the whole frame, or else the first sheet.
func picture(set []*page) *card {
	for _, pg := range set {
		if pg.sheet.Kind == "frame" || pg.sheet.Kind == "view" {
			c := cardOf(pg)
			return &c
		}
	}
	if len(set) == 0 {
		return nil
	}
	c := cardOf(set[0])
	return &c
}

func cardOf(pg *page) card {
	title := pg.sheet.Title
	if title == "" {
		title = pg.sheet.ID
	}
	return card{"svg/" + pg.file, pg.pdfLink(), title, fmt.Sprint(pg.n)}
}

// groups returns the sheets by reader and within that by kind, in the order in
// which they come; groups without sheets are left out.
func groups(set []*page) []group {
	var r []group
	for _, g := range readers() {
		out := group{Key: g.Key, Title: g.Title}
		at := map[string]int{}
		for _, pg := range set {
			if pg.reader != g.reader {
				continue
			}
			k := pg.sheet.Kind
			if _, ok := at[k]; !ok {
				at[k] = len(out.Parts)
				out.Parts = append(out.Parts, part{Title: kindTitle(k)})
			}
			p := &out.Parts[at[k]]
			p.Cards = append(p.Cards, cardOf(pg))
		}
		if len(out.Parts) > 0 {
			r = append(r, out)
		}
	}
	return r
}

// templateFiles returns the paths of the PDF files of templates.
func templateFiles(p *Packet) []string {
	var r []string
	for _, v := range p.volumes {
		if v.pages[0].template {
			r = append(r, v.path)
		}
	}
	return r
}

func files(p *Packet) []link {
	var r []link
	for _, v := range p.volumes {
		text := "all sheets (PDF); the description is attached to it"
		switch template := v.pages[0].template; {
		case template && v.title != "":
			text = "full-size templates: " + v.title + " (PDF, print at 100 %)"
		case template:
			text = "full-size templates (PDF, print at 100 %)"
		case v.title != "":
			text = "sheets: " + v.title + " (PDF)"
		}
		r = append(r, link{v.path, text})
	}
	for _, n := range list.Names() {
		r = append(r, link{"lists/" + n + ".csv", "list of " + n + " (spreadsheet)"})
	}
	return append(r, link{"lists.json", "all lists (JSON)"}, link{"model.json", "solved frame (JSON)"})
}
