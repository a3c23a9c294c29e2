package timber

import (
	"fmt"
	"math"
	"sort"
	"strings"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/font"
	"pegwright/draw/page"
	"pegwright/draw/scene"
	"pegwright/draw/view"
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

// headHigh is what the headings of the table take.
func (w *cutTable) headHigh() float64 { return w.grid.HeadHeight() + 2 }

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
	h := w.headHigh()
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
		note := float64(len(font.Wrap(cutsNote, besideWide, dim.Small))) * dim.Small * page.Pitch
		return max(w.height(), w.facts+bandHigh+5+note)
	}
	return w.band(room) + w.height()
}

// cutSheets returns the table on sheets of its own: what the stick is, both its
// ends, and its cuts in the order in which they are best made. A short table
// has the others over it, so that the sheet is filled from its head.
func cutSheets(f *geom.Frame, g scene.Sticks, feats []feature) []*draw.Sheet {
	_, field := block.ForFrame(f, "", "", block.TitleFor(f, "", g.Shows(), ""))
	w := newCutTable(f, g, feats, field.W(), true)
	if w.height() < field.H()/2 {
		w = newCutTable(f, g, feats, field.W(), false)
	}
	return w.sheets()
}

// sheets sets the table on the fewest sheets that hold it.
func (w *cutTable) sheets() []*draw.Sheet {
	title := block.TitleFor(w.f, "Timber, cuts in order", w.g.Shows(), "")
	title.Note = cutsNote
	next := func() (*draw.Sheet, block.Field) {
		return block.ForFrame(w.f, "timber", "timber-"+w.g.First().ID, title)
	}
	_, field := next()
	band, full := w.band(field.H()), field.H()-w.headHigh()
	title.Scale = w.endsWords(band)
	s, _ := next()
	block.KeyView(s, w.head(s, field, band), w.f, w.g.Dark())
	out := []*draw.Sheet{s}
	field.Y1 -= band
	from := 0
	for i, n := range page.Breaks(w.blocks(), full-band, full) {
		if i > 0 {
			s, field = next()
			out = append(out, s)
		}
		w.part(s, field, from, from+n)
		from += n
	}
	return out
}

// cutsNote says what the columns of the table are measured from.
const cutsNote = "from: start end; off the arris: from face 1 on the faces 2 and 4, from face 2 on the faces 1 and 3"

// endsWords tells the scale of the ends in a band of the given height.
func (w *cutTable) endsWords(band float64) string { return "ends " + page.Scale(1/w.ends(band)) }

// ends is the scale of the end views in a band of the given height.
func (w *cutTable) ends(band float64) float64 {
	if w.beside {
		band = bandHigh
	}
	return endScale(w.f, w.g.First(), band)
}

// head sets what the stick is and both its ends into a band over the table, or
// at the right of it, and returns the room that is left for a key view.
func (w *cutTable) head(s *draw.Sheet, field block.Field, band float64) (rest block.Field) {
	t := w.g.First()
	if w.beside {
		side := field
		side.X0, side.Y1 = side.X1-besideWide, side.Y1-1
		stickFacts(w.f, w.g, s, side)
		side.Y1 -= w.facts
		ends := side
		ends.Y0 = ends.Y1 - bandHigh
		endViews(w.f, t, s, ends, w.ends(band))
		side.Y1 = ends.Y0 - 4
		side.Y0 = max(side.Y0, side.Y1-bandHigh)
		return side
	}
	field.Y0 = field.Y1 - band
	facts, right := page.Split(field, field.X1-bandEnds-bandKey-4, 6)
	ends, key := page.Split(right, right.X1-bandKey, 4)
	stickFacts(w.f, w.g, s, facts)
	endViews(w.f, t, s, ends, w.ends(band))
	key.Y0 += 6
	return key
}

// under sets the table with all that belongs to it in a field that has room for
// it, a band of the given height over it.
func (w *cutTable) under(s *draw.Sheet, field block.Field, band float64) {
	note := w.head(s, field, band)
	p := page.Pen{S: s, X: note.X0, Y: note.Y1, W: note.W()}
	p.Para(cutsNote)
	field.Y1 -= band
	w.part(s, field, 0, len(w.blocks()))
}

// stickFacts sets what the stick is, all in one size, and returns the height that
// it takes.
func stickFacts(f *geom.Frame, g scene.Sticks, s *draw.Sheet, field block.Field) float64 {
	t, u := g.First(), f.Units
	p := page.Pen{S: s, X: field.X0, Y: field.Y1, W: field.W()}
	name := t.ID
	if len(g.Timbers) == 1 && t.Mark != "" {
		name = "no. " + t.Mark + "  " + t.ID
	} else if len(g.Timbers) > 1 {
		name = fmt.Sprintf("%d x %s", len(g.Timbers), t.Role)
	}
	p.Line(block.Fit(name, p.W, page.Big*0.8, true), page.Big*0.8, true)
	green, _ := t.Weight()
	trim := trimOf(u, t)
	pairs := [][2]string{
		{"wood", t.Wood.Name},
		{"nominal", u.PlainJoint(min(t.Section[0], t.Section[1])) + " x " + u.PlainJoint(max(t.Section[0], t.Section[1]))},
		{"finished", u.FormatJoint(t.Length)},
		{"rough", u.Format(t.Length + 2*trim)},
		{"as cut", "about " + weightWords(u, green)},
		{"balance", "about " + balanceWords(u, t) + " from 0"},
	}
	last := "0: squared round, " + u.FormatJoint(trim) + " or more off the end"
	said := []string{last}
	for _, x := range pairs {
		said = append(said, x[1])
	}
	p.Together("stick", said...)
	for _, x := range pairs {
		p.Pair(x[0], x[1], 0.3)
	}
	p.Para(last)
	return field.Y1 - p.Y
}

// weightWords writes a mass in kilograms in the reader's unit.
func weightWords(u measure.Units, kg float64) string {
	const pound = 0.45359237 // kg, exact (1959 agreement)
	if u == measure.Metric {
		return fmt.Sprintf("%.0f kg", kg)
	}
	return fmt.Sprintf("%.0f lb", kg/pound)
}

// balanceWords writes the balance point to the nearest 1/2 in or 10 mm: green
// wood is nowhere as even as that.
func balanceWords(u measure.Units, t *geom.Timber) string {
	step := 12.7
	if u == measure.Metric {
		step = 10
	}
	return u.Format(math.Round(t.Net.Centroid().X/step) * step)
}

// endCamera looks at an end of a timber in its own axes with face 1 on top.
func endCamera(last bool) view.Camera {
	out := vec.V{X: -1}
	if last {
		out = vec.V{X: 1}
	}
	up := vec.V{Y: -1}
	return view.Camera{Right: up.Cross(out), Up: up, Toward: out}
}

// endScale returns the scale of the end views in a band of the given height.
func endScale(f *geom.Frame, t *geom.Timber, high float64) float64 {
	y, z := t.BlankSize()
	for _, n := range stickScales(f.Units) {
		if y/n <= high-20 && z/n <= 38 {
			return 1 / n
		}
	}
	return 1 / 32.0
}

// endViews draws both ends with the numbers of the faces round them and a dot
// at the reference arris.
func endViews(f *geom.Frame, t *geom.Timber, s *draw.Sheet, field block.Field, k float64) {
	y, z := t.BlankSize()
	part := view.Part{Owner: t.ID, Body: t.Net}
	for i, name := range []string{"start end", "other end"} {
		c := endCamera(i == 1)
		mid := vec.At(field.X0+field.W()*(0.25+0.5*float64(i)), field.Y0+6+y*k/2)
		o := mid.Sub(c.Project(vec.V{Y: y / 2, Z: z / 2}).Mul(k))
		s.Add(view.Render(c, []view.Part{part}, view.Options{Scale: k, At: o})...)
		a := s.Circle(draw.Part, o, 1)
		a.Filled, a.Mark = true, "reference arris"
		h := s.Text(vec.At(mid.X, mid.Y+y*k/2+5.6), dim.Small, name)
		h.Anchor, h.Bold = draw.Middle, true
		for n := 1; n <= 4; n++ {
			d := c.Project(t.IdealPlane(n).N)
			q := mid.Add(vec.At(d.X*(z*k/2+2.6), d.Y*(y*k/2+2.6)))
			x := s.Text(vec.At(q.X, q.Y-dim.Small/2), dim.Small, fmt.Sprint(n))
			x.Anchor = draw.Middle
		}
	}
}

// cutTable is the table of a stick's cuts, about to be set.
type cutTable struct {
	f     *geom.Frame
	g     scene.Sticks
	grid  *page.Table
	rows  []cutRow
	lines []string // about the sticks cut alike
	// beside says that what the stick is and its ends stand at the right of the
	// table, on a sheet as wide as that, and not in a band over it.
	beside bool
	wide   float64 // of the table
	facts  float64 // height of what the stick is
}

// cutRow is a row of the table and the words of the stage that it begins.
type cutRow struct {
	feature *feature
	cells   []string
	stage   string  // "" where it begins none
	high    float64 // the words of the stage counted in
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

// served sets blocks of the lines about the sticks that are cut alike; the
// first block holds the heading and two lines.
func (w *cutTable) served(p page.Pen, from, to int) {
	first, last, more := from+1, min(to+1, len(w.lines)), ", continued"
	if from == 0 {
		p.Y -= 3
		first, more = 0, ""
	}
	p.Head("Sticks cut alike, with the marks of their joints" + more)
	for _, line := range w.lines[first:last] {
		p.Line(line, dim.Small, false)
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

// letter is a joint of the drawn stick with the word that stands for it: its
// mark, or a letter where several sticks bear different marks.
type letter struct {
	joint *geom.Joint
	word  string
}

// letters returns the joints of the drawn stick along it.
func letters(f *geom.Frame, g scene.Sticks) []letter {
	var out []letter
	for i, j := range along(f, g.First()) {
		l := letter{j, j.Mark}
		if len(g.Timbers) > 1 {
			l.word = string(rune('a' + i%26))
			if i >= 26 {
				l.word += fmt.Sprint(i / 26)
			}
		}
		out = append(out, l)
	}
	return out
}

// along returns the joints of a timber by the places and faces of what they
// take from it.
func along(f *geom.Frame, t *geom.Timber) []*geom.Joint {
	js := append([]*geom.Joint(nil), f.JointsOf(t)...)
	at := map[string]vec.V{}
	for _, j := range js {
		var pts []vec.V
		for _, c := range t.Cuts {
			if c.Joint == j.ID {
				pts = append(pts, vec.Middle(c.Solid.V))
			}
		}
		if len(pts) > 0 {
			at[j.ID] = vec.Middle(pts)
		} else {
			at[j.ID] = t.Place.In(j.Axes.O)
		}
	}
	sort.SliceStable(js, func(i, k int) bool { return at[js[i].ID].Before(at[js[k].ID]) })
	return js
}

// servedLines says which sticks are cut alike, with the marks of their joints,
// wrapped to a width; none for a single stick.
func servedLines(f *geom.Frame, g scene.Sticks, width float64) []string {
	if len(g.Timbers) < 2 {
		return nil
	}
	words := letters(f, g)
	var out []string
	for _, t := range g.Timbers {
		var ms []string
		for i, j := range along(f, t) {
			if i < len(words) {
				ms = append(ms, words[i].word+" "+j.Mark)
			}
		}
		out = append(out, font.Wrap(fmt.Sprintf("no. %s %s: %s", t.Mark, t.ID, strings.Join(ms, ", ")), width, dim.Small)...)
	}
	return out
}
