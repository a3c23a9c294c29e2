// Package block draws what every sheet has: border, title block (fields after
// ISO 7200), boxed cautions, the warning on a sheet that must not be cut from,
// and the small key view. Coordinates are paper millimetres.
package block

import (
	"fmt"

	"pegwright/draw"
	"pegwright/draw/dim"
	"pegwright/draw/font"
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

// Field is the free drawing area of a sheet, from X0 to X1 and from Y0 up to Y1,
// paper millimetres.
type Field struct{ X0, Y0, X1, Y1 float64 }

// W returns the width of the field, millimetres.
func (f Field) W() float64 { return f.X1 - f.X0 }

// H returns the height of the field, millimetres.
func (f Field) H() float64 { return f.Y1 - f.Y0 }

// Mid returns the middle of the field.
func (f Field) Mid() vec.P { return vec.P{X: (f.X0 + f.X1) / 2, Y: (f.Y0 + f.Y1) / 2} }

// Inset returns the field made smaller by d on every side, millimetres.
func (f Field) Inset(d float64) Field { return Field{f.X0 + d, f.Y0 + d, f.X1 - d, f.Y1 - d} }

// Box returns the field as a box.
func (f Field) Box() draw.Box {
	return draw.Box{Min: vec.P{X: f.X0, Y: f.Y0}, Max: vec.P{X: f.X1, Y: f.Y1}}
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

// FieldFor returns the field that ForFrame leaves free, which is the same on every
// sheet of the frame.
func FieldFor(f *geom.Frame) Field {
	p := paperFor(f.Paper.Sheets, true)
	return fieldOf(draw.NewSheet("", "", "", p.W, p.H))
}

// fieldOf is what border and title block leave free on a sheet.
func fieldOf(s *draw.Sheet) Field {
	b := border(s)
	return Field{b.Min.X + air, gridOf(s).top + air, b.Max.X - air, b.Max.Y - air}
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

// grid is the division of the title block: the corners of its columns in the
// upper two rows, and the rows below them.
type grid struct {
	col  []float64 // x of column borders, first and last on the border
	top  float64
	base float64
	rows int
	part float64 // x of the border in the row of what is shown and the note
}

// shares returns what part of the width each column takes. On a narrow sheet
// the date and the sheet's number need a larger part.
func shares(narrow bool) [5]float64 {
	if narrow {
		return [5]float64{0.31, 0.18, 0.125, 0.175, 0.21}
	}
	return [5]float64{0.345, 0.235, 0.155, 0.13, 0.135}
}

func gridOf(s *draw.Sheet) grid {
	b := border(s)
	g := grid{rows: 3, base: b.Min.Y, col: []float64{b.Min.X}}
	if s.W < 250 {
		g.rows = 4
	}
	g.top = g.base + float64(g.rows)*row
	x, wide := b.Min.X, min(b.W(), widest)
	for _, k := range shares(s.W < 250) {
		x += k * wide
		g.col = append(g.col, x)
	}
	g.col[len(g.col)-1] = b.Min.X + wide
	g.part = g.col[1]
	return g
}

// y returns the lower edge of row n, from the top, starting at 0.
func (g grid) y(n int) float64 { return g.top - float64(n+1)*row }

func (g grid) lines(s *draw.Sheet) {
	last := len(g.col) - 1
	thin := func(a, b vec.P) { s.Line(draw.Dimension, a, b).Layer = "border" }
	s.Line(draw.FrameLine, vec.P{X: g.col[0], Y: g.top}, vec.P{X: g.col[last], Y: g.top}).Layer = "border"
	for n := range g.rows - 1 {
		thin(vec.P{X: g.col[0], Y: g.y(n)}, vec.P{X: g.col[last], Y: g.y(n)})
	}
	if b := border(s); g.col[last] < b.Max.X { // the long side of a roll: close the block
		s.Line(draw.FrameLine, vec.P{X: g.col[last], Y: g.top}, vec.P{X: g.col[last], Y: g.base}).Layer = "border"
	}
	for _, x := range g.col[1:last] {
		thin(vec.P{X: x, Y: g.top}, vec.P{X: x, Y: g.y(1)})
	}
	if g.rows == 3 {
		thin(vec.P{X: g.part, Y: g.y(1)}, vec.P{X: g.part, Y: g.base})
	}
}

// cellAir is what a cell of the title block is wider than its text at least.
const cellAir = 2.5

// makeRoom moves the border between what is shown and the note where the first
// is too long for its cell and the note leaves room.
func (g *grid) makeRoom(foot dim.Group, t Title) {
	last := g.col[len(g.col)-1]
	most := last - foot.Measure(t.Note) - cellAir - 0.1
	need := g.col[0] + foot.Measure(t.Shows) + cellAir + 0.1
	if need > g.part && need <= most {
		g.part = need
	}
}

func (g grid) texts(s *draw.Sheet, t Title, foot dim.Group) {
	last := len(g.col) - 1
	g.name(s, 0, t.Frame)
	g.name(s, 1, t.Sheet)
	fields := [2][3]string{{"scale  " + t.Scale, "unit  " + t.Units, "date  " + t.Date}, {"for  " + t.DrawnFor, "by  " + t.DrawnBy, "rev.  " + t.Revision}}
	all := dim.Together("title fields", append(fields[0][:], fields[1][:]...)...)
	for n, row := range fields {
		for c, f := range row {
			g.put(s, all, n, g.col[c+1], g.col[c+2], f)
		}
	}
	if g.rows == 3 {
		g.put(s, foot, 2, g.col[0], g.part, t.Shows)
		g.put(s, foot, 2, g.part, g.col[last], t.Note)
		return
	}
	g.put(s, foot, 2, g.col[0], g.col[last], t.Shows)
	g.put(s, foot, 3, g.col[0], g.col[last], t.Note)
}

// name writes the title of the frame or of the sheet into row n: large and
// bold, or a step smaller where it is too long for that.
func (g grid) name(s *draw.Sheet, n int, title string) {
	letters := dim.Group{Height: large}
	if font.Measure(title, large, true) > g.col[1]-g.col[0]-cellAir {
		letters = dim.Together("", title)
	}
	x := g.put(s, letters, n, g.col[0], g.col[1], title)
	x.Bold, x.S = true, Fit(title, g.col[1]-g.col[0]-cellAir, letters.Height, true)
}

// without returns a new list of the items that do not carry the mark.
func without(items []draw.Item, mark string) []draw.Item {
	kept := make([]draw.Item, 0, len(items)+2)
	for _, it := range items {
		if it.Head().Mark != mark {
			kept = append(kept, it)
		}
	}
	return kept
}

// put sets a text of a group in a cell of row n, shortened where it is too long.
func (g grid) put(s *draw.Sheet, letters dim.Group, n int, x0, x1 float64, text string) *draw.Text {
	h := letters.Height
	t := letters.Text(s, vec.P{X: x0 + 1.5, Y: g.y(n) + (row-h)/2 + 0.2}, Fit(text, x1-x0-cellAir, h, false))
	t.Layer = "title"
	if text == "" {
		s.Items = s.Items[:len(s.Items)-1] // an empty cell
	}
	return t
}

// Fit returns text shortened with three dots until it is at most width mm wide.
func Fit(text string, width, height float64, bold bool) string {
	if font.Measure(text, height, bold) <= width {
		return text
	}
	r := []rune(text)
	for len(r) > 1 {
		r = r[:len(r)-1]
		if s := string(r) + "..."; font.Measure(s, height, bold) <= width {
			return s
		}
	}
	return string(r)
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
