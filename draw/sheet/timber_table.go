package sheet

import (
	"fmt"
	"math"
	"sort"
	"strings"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/font"
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
)

// stickTable returns the sheets with what the stick is, both its ends, and the
// table of its cuts in the order in which they are best made.
func stickTable(f *geom.Frame, g Sticks, feats []feature) []*draw.Sheet {
	t := g.First()
	title := block.TitleFor(f, "Timber, cuts in order", g.shows(), "")
	title.Note = "from: start end; off the arris: from face 1 on the faces 2 and 4, from face 2 on the faces 1 and 3"
	next := func(n int) (*draw.Sheet, block.Field) { return fresh(f, "timber", "timber-"+t.ID, title) }
	_, field := next(0)
	facts, rest := split(field, field.X1-bandEnds-bandKey-4, 6)
	w := &cutTable{f: f, g: cutGrid(f, g, feats), next: next, field: field}
	w.g.fit(field.W())
	lines := servedLines(f, g, field.W())
	if len(lines) > 0 {
		w.tail = 4 + text*pitch + float64(len(lines))*small*pitch
	}
	high := bandHigh
	low := max(bandLow, stickFacts(f, g, draw.NewSheet("", "", "", 1, 1), facts)+1)
	if need := w.height(feats); need > field.H()-high && need <= field.H()-low {
		high = low
	}
	k := endScale(f, t, high)
	title.Scale = "ends " + scaleName(1/k)
	s, _ := next(1)
	facts.Y0, rest.Y0 = field.Y1-high, field.Y1-high
	ends, key := split(rest, rest.X1-bandKey, 4)
	stickFacts(f, g, s, facts)
	endViews(f, t, s, ends, k)
	key.Y0 += 6
	block.KeyView(s, key, f, g.dark())
	w.sheets, w.s = []*draw.Sheet{s}, s
	w.share = w.fill(feats, field.H()-high, field.H())
	w.field.Y1 -= high
	w.draw(feats)
	w.served(lines)
	return w.sheets
}

// stickFacts sets what the stick is, all in one size, and returns the height that
// it takes.
func stickFacts(f *geom.Frame, g Sticks, s *draw.Sheet, field block.Field) float64 {
	t, u := g.First(), f.Units
	p := pen{s: s, x: field.X0, y: field.Y1, w: field.W()}
	name := t.ID
	if len(g.Timbers) == 1 && t.Mark != "" {
		name = "no. " + t.Mark + "  " + t.ID
	} else if len(g.Timbers) > 1 {
		name = fmt.Sprintf("%d x %s", len(g.Timbers), t.Role)
	}
	p.line(block.Fit(name, p.w, big*0.8, true), big*0.8, true)
	green, _ := t.Weight()
	trim := trimOf(u, t)
	pairs := [][2]string{
		{"wood", t.Wood.Name},
		{"nominal", u.PlainJoint(t.Section[0]) + " x " + u.PlainJoint(t.Section[1])},
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
	p.together("stick", said...)
	for _, x := range pairs {
		p.pair(x[0], x[1], 0.3)
	}
	p.para(last)
	return field.Y1 - p.y
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
	y, z := sizeOf(t)
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
	y, z := sizeOf(t)
	part := view.Part{Owner: t.ID, Body: t.Net}
	for i, name := range []string{"start end", "other end"} {
		c := endCamera(i == 1)
		mid := at(field.X0+field.W()*(0.25+0.5*float64(i)), field.Y0+6+y*k/2)
		o := mid.Sub(c.Project(vec.V{Y: y / 2, Z: z / 2}).Mul(k))
		s.Add(view.Render(c, []view.Part{part}, view.Options{Scale: k, At: o})...)
		a := s.Circle(draw.Part, o, 1)
		a.Filled, a.Mark = true, "reference arris"
		h := s.Text(at(mid.X, mid.Y+y*k/2+5.6), small, name)
		h.Anchor, h.Bold = draw.Middle, true
		for n := 1; n <= 4; n++ {
			d := c.Project(t.IdealPlane(n).N)
			q := mid.Add(at(d.X*(z*k/2+2.6), d.Y*(y*k/2+2.6)))
			x := s.Text(at(q.X, q.Y-small/2), small, fmt.Sprint(n))
			x.Anchor = draw.Middle
		}
	}
}

// cutTable sets the rows of the cuts over as many sheets as they take.
type cutTable struct {
	f      *geom.Frame
	g      *grid
	next   func(n int) (*draw.Sheet, block.Field)
	sheets []*draw.Sheet
	s      *draw.Sheet
	field  block.Field
	y      float64
	tail   float64 // height of what stands under the rows
	share  float64 // of the height of every sheet that rows take
}

// cutGrid returns the table of the cuts.
func cutGrid(f *geom.Frame, g Sticks, feats []feature) *grid {
	r := &grid{
		heads:   []string{"no.", "cut", "joint", "face", "from", "to", "off the arris", "below face", "below floor", "bottom off face 1 or 2"},
		numeric: []bool{true, false, false, true, true, true, false, true, true, true},
	}
	words := map[string]string{}
	for _, l := range letters(f, g) {
		words[l.joint.ID] = l.word
	}
	for i := range feats {
		r.rows = append(r.rows, feats[i].row(f.Units, words, len(g.Timbers) == 1))
	}
	r.bevels(f.Units, feats)
	r.settle()
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
func (w *cutTable) stageLine() float64 { return w.g.size()*pitch + 1 }

// height is what the whole table takes under one head.
func (w *cutTable) height(feats []feature) float64 {
	h, stage := w.g.headHeight()+2+w.tail, -1
	for i, row := range w.g.rows {
		h += w.g.height(row)
		if feats[i].stage != stage {
			stage = feats[i].stage
			h += w.stageLine()
		}
	}
	return h
}

// fill returns the share of the sheets' heights that divides the rows evenly
// over the fewest sheets: first is what the first has for them, next the others.
func (w *cutTable) fill(feats []feature, first, next float64) float64 {
	need := w.height(feats)
	n := 1.0
	for first+(n-1)*(next-w.g.headHeight()-2) < need && n < 100 {
		n++
	}
	if n == 1 {
		return 1
	}
	return min(1, need/(first+(n-1)*(next-w.g.headHeight()-2))+0.06)
}

// low is the lower edge of the sheet's rows.
func (w *cutTable) low() float64 { return w.field.Y1 - w.field.H()*w.share }

// draw sets the rows, each stage under its words.
func (w *cutTable) draw(feats []feature) {
	w.y = w.g.head(w.s, w.field)
	stage := -1
	for i, row := range w.g.rows {
		need := w.g.height(row)
		fresh := feats[i].stage != stage
		if fresh {
			need += w.stageLine()
		}
		if w.y-need < w.low() {
			w.page()
			w.y = w.g.head(w.s, w.field)
		}
		if fresh {
			stage = feats[i].stage
			w.y -= 1
			w.g.letters.Text(w.s, at(w.field.X0, w.y-w.g.size()), fmt.Sprintf("%d. %s", nth(feats[:i], stage), stages()[stage])).Bold = true
			w.y -= w.stageLine() - 1
		}
		before := len(w.s.Items)
		w.y = w.g.row(w.s, w.field, w.y, row)
		for _, it := range w.s.Items[before:] {
			it.Head().Mark = fmt.Sprintf("row:%d", feats[i].n)
		}
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

func (w *cutTable) page() {
	w.s, w.field = w.next(len(w.sheets) + 1)
	w.sheets = append(w.sheets, w.s)
	w.y = w.field.Y1
}

// letter is a joint of the drawn stick with the word that stands for it: its
// mark, or a letter where several sticks bear different marks.
type letter struct {
	joint *geom.Joint
	word  string
}

// letters returns the joints of the drawn stick along it.
func letters(f *geom.Frame, g Sticks) []letter {
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
				pts = append(pts, middle(c.Solid.V))
			}
		}
		if len(pts) > 0 {
			at[j.ID] = middle(pts)
		} else {
			at[j.ID] = t.Place.In(j.Axes.O)
		}
	}
	sort.SliceStable(js, func(i, k int) bool { return before(at[js[i].ID], at[js[k].ID]) })
	return js
}

// servedLines says which sticks are cut alike, with the marks of their joints,
// wrapped to a width; none for a single stick.
func servedLines(f *geom.Frame, g Sticks, width float64) []string {
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
		out = append(out, font.Wrap(fmt.Sprintf("no. %s %s: %s", t.Mark, t.ID, strings.Join(ms, ", ")), width, small)...)
	}
	return out
}

// served lists the sticks that are cut alike with the marks of their joints.
func (w *cutTable) served(lines []string) {
	if len(lines) == 0 {
		return
	}
	p := pen{s: w.s, x: w.field.X0, y: w.y - 3, w: w.field.W()}
	if p.y-text*pitch-2*small*pitch < w.field.Y0 {
		w.page()
		p.s, p.y = w.s, w.y
	}
	p.head("Sticks cut alike, with the marks of their joints")
	for _, line := range lines {
		if p.y-small*pitch < w.field.Y0 {
			w.page()
			p.s, p.y = w.s, w.y
		}
		p.line(line, small, false)
	}
}
