// Package block draws what every sheet has: border, title block (fields after
// ISO 7200), boxed cautions, the warning on a sheet that must not be cut from,
// and the small key view. Coordinates are paper millimetres.
package block

import (
	"fmt"

	"pegwright/draw"
	"pegwright/draw/dim"
	"pegwright/geom"
	"pegwright/geom/measure"
	"pegwright/geom/vec"
)

// Title holds the texts of a title block. Empty fields stay blank. N, Of and
// Mark may be left out and filled in later by Number.
type Title struct {
	// Frame is the name of the frame, Sheet that of the sheet, and Shows what of
	// the frame is on it.
	Frame, Sheet, Shows string
	// Scale is written as 1:8, or says that there is none; Units is a word such as
	// UnitName returns.
	Scale, Units string
	// Date, Revision, DrawnFor and DrawnBy are as the description has them.
	Date, Revision, DrawnFor, DrawnBy string
	// Note stands at the foot of the block, one line.
	Note string
	// Mark is the mark of the packet, and N of Of the number of the sheet in it.
	Mark  string
	N, Of int
}

// Margins of the border from the edge of the paper: a wider one on the left for
// the file (ISO 5457 has 20 mm there; 15 mm leaves room for the holes of a
// ring binder on Letter and A4), and the air between border and drawing.
const (
	Left  = 15.0
	Other = 10.0
	air   = 3.6
	row   = 6.0 // height of a row of the title block
	small = dim.Small
	large = dim.Text
	// widest is how wide a title block becomes: the border of an ARCH D sheet.
	widest = 890.0
)

// DefaultNote is the note of a sheet that shows dimensions, for the unit that
// the sheet is in.
func DefaultNote(u measure.Units) string {
	unit := "feet and inches"
	if u == measure.Metric {
		unit = "millimetres"
	}
	return "dimensions in " + unit
}

// UnitName returns the title block's word for the unit system.
func UnitName(u measure.Units) string {
	if u == measure.Metric {
		return "mm"
	}
	return "ft-in"
}

// TitleFor returns the title of a sheet of the frame, with the texts that the
// description gives. A text that it does not give stays blank.
func TitleFor(fr *geom.Frame, sheet, shows, scale string) Title {
	return Title{
		Frame: fr.Title, Sheet: sheet, Shows: shows, Scale: scale, Units: UnitName(fr.Units),
		Date: fr.InfoText("date"), Revision: fr.InfoText("revision"),
		DrawnFor: fr.InfoText("drawn for"), DrawnBy: fr.InfoText("drawn by"),
		Note: DefaultNote(fr.Units),
	}
}

// New returns a sheet with its border and title block, and the field that is
// left free for the drawing. Paper is a name that draw.PaperNamed knows; any
// other is taken as Letter.
func New(paper string, landscape bool, kind, id string, t Title) (*draw.Sheet, Field) {
	return On(paperFor(paper, landscape), kind, id, t)
}

// paperFor returns the paper of a name, Letter for one that is not known.
func paperFor(name string, landscape bool) draw.Paper {
	p, ok := draw.PaperNamed(name)
	if !ok {
		p, _ = draw.PaperNamed("Letter")
	}
	if landscape {
		return p.Landscape()
	}
	return p.Portrait()
}

// ForFrame begins a sheet on the frame's paper, lying on its long side. The
// title of a sheet in the drawing list says what it shows too.
func ForFrame(f *geom.Frame, kind, id string, t Title) (*draw.Sheet, Field) {
	s, field := New(f.Paper.Sheets, true, kind, id, t)
	if t.Shows != "" {
		s.Title = t.Sheet + ": " + t.Shows
	}
	return s, field
}

// On is New on paper of the very size given, W across.
func On(p draw.Paper, kind, id string, t Title) (*draw.Sheet, Field) {
	s := draw.NewSheet(kind, id, t.Sheet, p.W, p.H)
	s.Rect(draw.FrameLine, border(s)).Layer = "border"
	g := gridOf(s)
	foot := dim.Together("title foot", t.Shows, t.Note)
	g.makeRoom(foot, t)
	g.lines(s)
	g.texts(s, t, foot)
	if t.N > 0 || t.Mark != "" {
		Number(s, t.N, t.Of, t.Mark)
	}
	return s, fieldOf(s)
}

// border returns the box of the border line.
func border(s *draw.Sheet) draw.Box {
	return draw.Box{Min: vec.P{X: Left, Y: Other}, Max: vec.P{X: s.W - Other, Y: s.H - Other}}
}

// Number writes "sheet n of N" and the packet's content mark into their places
// in the title block. Texts that an earlier Number wrote are replaced. An n of
// 0 or an empty mark leaves its place blank.
func Number(s *draw.Sheet, n, of int, mark string) {
	s.Items = without(s.Items, "number")
	g := gridOf(s)
	last := len(g.col) - 1
	letters := dim.Group{Name: "title number", Height: small}
	put := func(r int, text string) *draw.Text {
		t := g.put(s, letters, r, g.col[last-1], g.col[last], text)
		t.Mark = "number"
		return t
	}
	if n > 0 {
		put(0, fmt.Sprintf("sheet %d of %d", n, of)).Bold = true
	}
	put(1, mark)
}

// HiddenNote says what becomes of the hidden lines on sheets that can do
// without them.
func HiddenNote(f *geom.Frame) string {
	if f.Paper.Hidden {
		return "hidden lines dashed"
	}
	return "hidden lines left out"
}
