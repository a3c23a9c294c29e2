package timber

import (
	"fmt"
	"math"
	"strings"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/font"
	"pegwright/draw/page"
	"pegwright/draw/scene"
	"pegwright/geom"
	"pegwright/geom/measure"
	"pegwright/geom/vec"
)

// bandHigh is the height of the band over the table, paper mm; bandEnds the
// width of the end views in it and bandKey that of the key view.
const (
	bandHigh = 53.0
	bandLow  = 40.0 // the same where that saves a sheet
	bandEnds = 104.0
	bandKey  = 40.0

	besideWide = bandEnds // of the column at the right of a table
	besideGap  = 10.0
)

// cutTable is the table of a stick's cuts, about to be set.
type cutTable struct {
	f     *geom.Frame
	g     scene.Sticks
	grid  *page.Table
	rows  []cutRow
	lines []string // about the sticks cut alike
	// beside says that what the stick is and its ends stand at the right of the
	// table, on a sheet as wide as that, and not in a band over it.
	beside   bool
	wide     float64 // of the table
	facts    float64 // height of what the stick is
	headHigh float64 // of the headings
	note     float64 // height of cutsNote beside the table
}

// cutRow is a row of the table and the words of the stage that it begins.
type cutRow struct {
	feature *feature
	cells   []string
	stage   string  // "" where it begins none
	high    float64 // the words of the stage counted in
}

// newCutTable measures the table of a stick's cuts for a field of the given
// width, with what the stick is and its ends beside it if that is asked for and
// the field is wide enough.
func newCutTable(f *geom.Frame, g scene.Sticks, feats []feature, width float64, beside bool) *cutTable {
	w := &cutTable{f: f, g: g, grid: cutGrid(f, g, feats), wide: width}
	facts := block.Field{X1: width - bandEnds - bandKey - 7}
	if beside && w.grid.Natural() <= width-besideWide-besideGap {
		w.beside, w.wide = true, width-besideWide-besideGap
		facts.X1 = besideWide
	}
	w.facts = stickFacts(f, g, draw.NewSheet("", "", "", 1, 1), facts) + 1
	w.grid.Fit(w.wide)
	w.headHigh = w.grid.HeadHeight() + 2
	w.note = float64(len(font.Wrap(cutsNote, besideWide, dim.Small))) * dim.Small * page.Pitch
	w.lines = servedLines(f, g, w.wide)
	stage := -1
	for i, row := range w.grid.Rows {
		b := cutRow{feature: &feats[i], cells: row, high: w.grid.Height(row)}
		if feats[i].stage != stage {
			stage = feats[i].stage
			b.stage = fmt.Sprintf("%d. %s", nth(feats[:i], stage), stages()[stage])
			b.high += w.stageLine()
		}
		w.rows = append(w.rows, b)
	}
	return w
}

// servedHead is the height of the words over the sticks cut alike.
const servedHead = 3 + dim.Text*page.Pitch

// blocks returns the heights of what may not be parted by the end of a sheet:
// the rows, then the lines about the sticks cut alike, two of them under their
// heading.
func (w *cutTable) blocks() []float64 {
	var out []float64
	for _, r := range w.rows {
		out = append(out, r.high)
	}
	for i := range w.lines {
		if h := dim.Small * page.Pitch; i == 0 {
			out = append(out, servedHead+h)
		} else if i == 1 {
			out[len(out)-1] += h
		} else {
			out = append(out, h)
		}
	}
	return out
}

// height is what the whole table takes under one head.
func (w *cutTable) height() float64 {
	h := w.headHigh
	for _, b := range w.blocks() {
		h += b
	}
	return h
}

// band is the height of the band over the table where the table follows it in
// the room given: lower where the whole table then has room, none where the
// same stands beside the table.
func (w *cutTable) band(room float64) float64 {
	if w.beside {
		return 0
	}
	low := max(bandLow, w.facts)
	if need := w.height(); need > room-bandHigh && need <= room-low {
		return low
	}
	return bandHigh
}

// whole is the height of the whole table with all that belongs to it, in the
// room given.
func (w *cutTable) whole(room float64) float64 {
	if w.beside {
		return max(w.height(), w.facts+bandHigh+5+w.note)
	}
	return w.band(room) + w.height()
}

// cutGrid returns the table of the cuts.
func cutGrid(f *geom.Frame, g scene.Sticks, feats []feature) *page.Table {
	r := &page.Table{
		Heads:   []string{"no.", "cut", "joint", "face", "from", "to", "off the arris", "below face", "below floor", "bottom off face 1 or 2"},
		Numeric: []bool{true, false, false, true, true, true, false, true, true, true},
		Middle:  3, // so that no face is read as the first figure of a length
	}
	words := map[string]string{}
	for _, l := range letters(f, g) {
		words[l.joint.ID] = l.word
	}
	for i := range feats {
		r.Rows = append(r.Rows, feats[i].row(f.Units, words, len(g.Timbers) == 1))
	}
	bevelColumn(r, f.Units, feats)
	r.DropEmpty("below floor", "bottom off face 1 or 2")
	r.Settle()
	return r
}

// row writes a feature as a row of the table.
func (f *feature) row(u measure.Units, words map[string]string, named bool) []string {
	l := u.PlainJoint
	r := []string{fmt.Sprint(f.n), f.what, "", "end", l(f.from), l(f.to), "", "", "", ""}
	if f.joint != nil {
		r[2] = words[f.joint.ID]
		if named {
			other := f.joint.Into
			if f.into {
				other = f.joint.Of
			}
			r[2] = strings.TrimSpace(r[2] + " " + other.ID)
		}
	}
	if f.face == 0 {
		r[6] = "all round"
		return r
	}
	r[3] = fmt.Sprint(f.face)
	r[7] = l(f.deep)
	if f.through {
		r[7] = "through"
	}
	if f.bore != nil {
		r[1] = "bore Ø " + l(f.bore.Diameter)
		r[5], r[6] = "", l(f.lo)
		if f.leans != "" {
			r[1] += ", leans " + f.leanWords()
			if !f.through {
				r[7] += " along the bit"
			}
		}
		return r
	}
	r[6] = f.acrossWords(u)
	if f.floor > 0 {
		r[8] = l(f.deep - f.floor)
	}
	if !math.IsNaN(f.rest) && !f.through {
		r[9] = l(f.rest)
	}
	return r
}

// stageLine is the height of the words over a stage's rows.
func (w *cutTable) stageLine() float64 { return w.grid.Size()*page.Pitch + 1 }

// part sets the blocks from and before to in a field, the rows under their
// headings.
func (w *cutTable) part(s *draw.Sheet, field block.Field, from, to int) {
	y := field.Y1
	if from < len(w.rows) {
		y = w.grid.Head(s, field)
	}
	for _, r := range w.rows[min(from, len(w.rows)):min(to, len(w.rows))] {
		if r.stage != "" {
			w.grid.Letters.Text(s, vec.At(field.X0, y-1-w.grid.Size()), r.stage).Bold = true
			y -= w.stageLine()
		}
		before := len(s.Items)
		y = w.grid.Row(s, field, y, r.cells)
		for _, it := range s.Items[before:] {
			it.Head().Mark = fmt.Sprintf("row:%d", r.feature.n)
		}
	}
	if to > len(w.rows) {
		w.served(page.Pen{S: s, X: field.X0, Y: y, W: field.W()}, max(from-len(w.rows), 0), to-len(w.rows))
	}
}

// nth returns the number of a stage among those that come.
func nth(before []feature, stage int) int {
	n, last := 1, -1
	for _, f := range before {
		if f.stage != last && f.stage != stage {
			n++
		}
		last = f.stage
	}
	return n
}
