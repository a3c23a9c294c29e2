package plan

import (
	"fmt"
	"math"
	"strings"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/font"
	"pegwright/draw/naming"
	"pegwright/draw/page"
	"pegwright/draw/scene"
	"pegwright/draw/setout"
	"pegwright/draw/view"
	"pegwright/geom"
	"pegwright/geom/measure"
	"pegwright/geom/vec"
)

// sheets draws the survey on as many sheets as its pages take.
func (v *survey) sheets(f *geom.Frame) []*draw.Sheet {
	var out []*draw.Sheet
	for _, p := range v.pages(f) {
		out = append(out, p.sheets()...)
	}
	return out
}

// pages lays the survey out at the largest customary scale at which it fits, or at
// a smaller one that leaves room for the names of all timbers. Where that would be
// less than the least scale, or there is none such, it is drawn in parts; where it
// has no parts, or none at a larger scale, its page takes further sheets for the
// names that are left.
func (v *survey) pages(f *geom.Frame) []*surveyPage {
	p := &surveyPage{survey: v, f: f}
	if !p.measure() {
		return nil
	}
	k, large := p.k, p.k > v.least(f.Units)-1e-12
	if large && p.onFew() == 1 {
		return []*surveyPage{p}
	}
	if list := v.inParts(f); len(list) > 0 && list[len(list)-1].k > k {
		return list
	}
	if !large {
		p.onFew()
	}
	return []*surveyPage{p}
}

// onFew settles on the scale, or one of the next smaller ones, at which the page
// takes the fewest sheets, and returns how many these are. No timber may be too
// thin for its name there that is not so at the first.
func (p *surveyPage) onFew() int {
	var best surveyPage
	least, shown := 0, p.pointable()
	for range 3 {
		if n := len(p.sheets()); least == 0 || n < least {
			best, least = *p, n
		}
		if least == 1 || least > mostTried || !p.smaller() || p.pointable() < shown {
			break
		}
	}
	*p = best
	return least
}

// mostTried is the number of sheets of one view beyond which no smaller scale is
// tried: it would not bring them down to one.
const mostTried = 4

// sheets draws the survey at its scale, on as many sheets as the names and
// heights take.
func (p *surveyPage) sheets() []*draw.Sheet {
	var out []*draw.Sheet
	p.told = 0
	p.items = draw.Scaled(p.pic.Items, p.k, vec.P{})
	left := p.names()
	for n := 0; n == 0 || len(left) > 0 || p.told < len(p.levels); n++ {
		id, title := p.id, p.title
		if n > 0 {
			id, title = fmt.Sprintf("%s-%d", p.id, n+1), p.title+naming.More
		}
		t := block.TitleFor(p.f, title, p.shows, p.scale)
		t.Note = p.noteOr(t.Note)
		s, field := block.ForFrame(p.f, p.kind, id, t)
		left = p.draw(s, field, left)
		out = append(out, s)
	}
	return out
}

// noteOr returns what is to be said of the view, or another note where that is
// nothing.
func (p *surveyPage) noteOr(other string) string {
	var ws []string
	if p.note != "" {
		ws = append(ws, p.note)
	}
	if _, from := setout.Datum(p.f); len(p.levels) > 0 && from != "" {
		ws = append(ws, "heights "+from)
	}
	if len(ws) == 0 {
		return other
	}
	return strings.Join(ws, "; ")
}

// surveyPage is a survey at its scale.
type surveyPage struct {
	*survey
	f     *geom.Frame
	k     float64
	scale string
	parts []view.Part
	sight *naming.Sight
	box   draw.Box // of what is seen, at full size
	notes []string
	pic   scene.Picture
	items []draw.Item // at the scale
	aside bool        // the diagonals are told at the left, not at the foot
	told  int         // heights that stand on a sheet already
}

// measure settles what is seen and the largest scale at which it fits, and
// reports whether there is anything.
func (p *surveyPage) measure() bool {
	if !p.settle() {
		return false
	}
	p.pic = scene.TakePicture(p.cam, p.parts, p.f.Paper.Hidden)
	p.pic.Items = withoutEnds(p.pic.Items, p.bays)
	return true
}

// settle is measure without the picture.
func (p *surveyPage) settle() bool {
	p.parts = setout.Sawn(p.whole, p.cuts...)
	p.sight = naming.NewSight(p.cam, p.parts)
	p.box = draw.NoBox()
	for _, part := range p.parts {
		b := p.sight.Box(part.Owner)
		p.box = p.box.With(b.Min, b.Max)
	}
	if p.box.Empty() {
		return false
	}
	p.notes = p.squareNotes()
	for p.smaller() && !p.fits() {
	}
	return true
}

// smaller takes the next smaller of the customary scales, the largest to begin
// with, and reports whether there was one.
func (p *surveyPage) smaller() bool {
	for _, n := range setout.Scales(p.f.Units) {
		if p.k == 0 || 1/n < p.k-1e-12 {
			p.k, p.scale = 1/n, page.Scale(n)
			return true
		}
	}
	return false
}

// fits reports whether the view has room at the scale, with the diagonals told at
// the foot or else at the left.
func (p *surveyPage) fits() bool {
	_, field := block.ForFrame(p.f, p.kind, "", block.TitleFor(p.f, "", "", ""))
	for _, p.aside = range []bool{false, true} {
		room := p.room(field)
		if p.box.W()*p.k <= room.W() && p.box.H()*p.k <= room.H() {
			return true
		}
		if len(p.notes) == 0 || p.asideHeight() > field.H() {
			break
		}
	}
	p.aside = false
	return false
}

// requests returns the dimensions along x and y at the scale, about the
// frame's origin.
func (p *surveyPage) requests() (x, y []dim.Request) {
	said := map[string]bool{}
	add := func(out []dim.Request, d setout.Stretch, across bool) []dim.Request {
		key := fmt.Sprintf("%v %.1f %.1f %d", across, d.From, d.To, max(d.N, 1))
		if said[key] || d.To-d.From < 1 {
			return out
		}
		said[key] = true
		r := dim.Request{Text: p.f.Units.Plain(d.To - d.From)}
		if d.N > 1 {
			r.Text = fmt.Sprintf("%d x %s", d.N, p.f.Units.Plain((d.To-d.From)/float64(d.N)))
		}
		if across {
			r.From, r.To = vec.At(d.From, p.box.Min.Y).Mul(p.k), vec.At(d.To, p.box.Min.Y).Mul(p.k)
		} else {
			r.From, r.To = vec.At(p.box.Min.X, d.From).Mul(p.k), vec.At(p.box.Min.X, d.To).Mul(p.k)
		}
		return append(out, r)
	}
	for _, d := range p.across {
		x = add(x, d, true)
	}
	for _, d := range p.up {
		y = add(y, d, false)
	}
	return x, y
}

// room is what a field leaves for the view itself.
func (p *surveyPage) room(field block.Field) block.Field {
	x, y := p.requests()
	r := field
	r.X0 += dim.Depth(dim.LeftOf, y) + 1
	if p.aside {
		r.X0 += asideWidth + asideGap
	}
	r.X1 -= p.levelRoom()
	if len(p.side) > 0 {
		r.X1 -= setout.RingRoom
	}
	if len(p.grid) > 0 || p.bays != nil {
		r.Y1 -= setout.RingRoom
	}
	if lo, hi := dim.Reach(dim.Below, x); len(x) > 0 {
		r.X0 += max(0, p.box.Min.X*p.k-lo)
		r.X1 -= max(0, hi-p.box.Max.X*p.k)
	}
	r.Y0 += dim.Depth(dim.Below, x) + p.noteHeight() + 2
	if len(p.key) > 0 {
		r.Y0 += keyRoom
	}
	if lo, hi := dim.Reach(dim.LeftOf, y); len(y) > 0 {
		r.Y0 += max(0, p.box.Min.Y*p.k-lo)
		r.Y1 -= max(0, hi-p.box.Max.Y*p.k)
	}
	return r
}

// squareNotes names the diagonals and their lengths.
func (p *surveyPage) squareNotes() []string {
	var out []string
	for i, d := range p.diagonals {
		out = append(out, fmt.Sprintf("%d. %s to %s: %s", i+1, d.NameA, d.NameB, p.f.Units.Format(d.Length())))
	}
	return out
}

func (p *surveyPage) noteHeight() float64 {
	if len(p.notes) == 0 || p.aside {
		return 0
	}
	return dim.Text*page.Pitch + math.Ceil(float64(len(p.notes))/float64(p.noteColumns()))*dim.Text*page.Pitch
}

// noteColumns is how many notes stand side by side: two where all are short.
func (p *surveyPage) noteColumns() int {
	_, field := block.ForFrame(p.f, p.kind, "", block.TitleFor(p.f, "", "", ""))
	for _, n := range p.notes {
		if p.noteLetters().Measure(n) > field.W()/2-4 {
			return 1
		}
	}
	return 2
}

// draw draws one sheet with as many names as its lanes hold, and returns the
// names that are left.
func (p *surveyPage) draw(s *draw.Sheet, field block.Field, names []naming.Name) []naming.Name {
	room := p.room(field)
	o := room.Mid().Sub(p.box.Mid().Mul(p.k))
	if o.Y = room.Y1 - p.box.Max.Y*p.k; len(p.key) == 0 {
		o.Y -= (room.H() - p.box.H()*p.k) * 0.35
	}
	p.hatch(s, o)
	s.Add(draw.Scaled(p.items, 1, o)...)
	box := draw.Box{Min: o.Add(p.box.Min.Mul(p.k)), Max: o.Add(p.box.Max.Mul(p.k))}
	p.gridLines(s, box, o)
	p.tape(s, o)
	p.heights(s, field, box, o)
	x, y := p.requests()
	dim.Stack(s, dim.Below, box.Min.Y, dim.Moved(x, o))
	dim.Stack(s, dim.LeftOf, box.Min.X, dim.Moved(y, o))
	p.matchLines(s, box, o)
	if len(p.key) > 0 {
		y := box.Min.Y - dim.Depth(dim.Below, x) - 3
		p.partKey(s, y, o)
		p.setIndex(s, field, y-keyRoom-3)
	}
	p.slopes(s, box)
	p.clearSizes(s, o)
	p.foot(s, field)
	p.links(s, o)
	return p.setNames(s, field, o, names)
}

// links leads from the joints of the timbers that are named to their sheets.
func (p *surveyPage) links(s *draw.Sheet, o vec.P) {
	named := map[string]bool{}
	for _, t := range p.named {
		named[t.ID] = true
	}
	scene.LinkJoints(s, p.f, func(id string) bool { return named[id] }, func(v vec.V) vec.P { return o.Add(p.cam.Project(v).Mul(p.k)) })
}

// hatch hatches what the plane before the view cuts.
func (p *surveyPage) hatch(s *draw.Sheet, o vec.P) {
	if len(p.cuts) == 0 {
		return
	}
	rest := setout.Sawn(p.whole, p.cuts[1:]...)
	for _, fig := range view.Section(rest, p.cuts[0], p.cam, view.Options{Scale: p.k, At: o}) {
		for _, h := range fig.Hatch(45, 1.4) {
			s.Add(h)
		}
	}
}

// gridLines draws the grid lines with their names in rings, over the view and
// at its right.
func (p *surveyPage) gridLines(s *draw.Sheet, box draw.Box, o vec.P) {
	for _, l := range p.grid {
		x := o.X + l.At*p.k
		c := vec.At(x, box.Max.Y+setout.RingRoom-setout.RingRadius)
		s.Line(draw.Centre, vec.At(x, box.Min.Y-2), vec.At(x, c.Y-setout.RingRadius))
		setout.Ring(s, c, l.Name).Halo = true
	}
	for _, l := range p.side {
		y := o.Y + l.At*p.k
		c := vec.At(box.Max.X+setout.RingRoom-setout.RingRadius, y)
		s.Line(draw.Centre, vec.At(box.Min.X-2, y), vec.At(c.X-setout.RingRadius, y))
		setout.Ring(s, c, l.Name).Halo = true
	}
}

// tape draws the diagonals, thin and dashed, with dots at their ends.
func (p *surveyPage) tape(s *draw.Sheet, o vec.P) {
	for _, d := range p.diagonals {
		a, b := o.Add(p.cam.Project(d.A).Mul(p.k)), o.Add(p.cam.Project(d.B).Mul(p.k))
		s.Line(draw.Trace, a, b).Mark = "diagonal"
		dim.Dot(s, a)
		dim.Dot(s, b)
	}
}

// What stands over the diagonals' names and lengths, and the width of the column
// in which they stand beside a view, with the gap to it, paper mm.
const (
	squareHead = "Check square with a tape from arris to arris, at the lines named; each reads as given here."
	asideWidth = 46.0
	asideGap   = 5.0
	asideAir   = 1.5 // over each of them
)

// noteLetters is the group of the diagonals' names and lengths, and of what
// stands over them.
func (p *surveyPage) noteLetters() dim.Group { return dim.Together("square", p.notes...) }

// asideHeight is the height that the diagonals take at the left.
func (p *surveyPage) asideHeight() float64 {
	w := page.Pen{W: asideWidth, Letters: p.noteLetters()}
	y := float64(len(asideHead(&w))) * w.Letters.Height * page.Pitch
	for _, t := range p.notes {
		y += asideAir + w.ParaHeight(t)
	}
	return y
}

// asideHead wraps what stands over the diagonals at the left.
func asideHead(p *page.Pen) []string {
	return font.WrapFace(squareHead, p.W, p.Letters.Height, true)
}

// foot sets the diagonals' names and lengths, at the foot in columns or at the
// left under each other.
func (p *surveyPage) foot(s *draw.Sheet, field block.Field) {
	if len(p.notes) == 0 {
		return
	}
	if p.aside {
		w := page.Pen{S: s, X: field.X0, Y: field.Y1, W: asideWidth, Letters: p.noteLetters()}
		for _, l := range asideHead(&w) {
			w.Set(w.Letters, l).Bold = true
		}
		for _, n := range p.notes {
			w.Skip(asideAir)
			w.Para(n)
		}
		return
	}
	y := field.Y0 + p.noteHeight() - dim.Text
	letters := p.noteLetters()
	letters.Text(s, vec.At(field.X0, y), squareHead).Bold = true
	cols := p.noteColumns()
	w := field.W()/float64(cols) - 3
	for i, n := range p.notes {
		n = block.Fit(n, w, letters.Height, false)
		letters.Text(s, vec.At(field.X0+float64(i%cols)*(w+6), y-float64(i/cols+1)*dim.Text*page.Pitch), n).Mark = "diagonal"
	}
}

// slopes draws the slope triangle of the roof in a free corner over it, at the
// left if it can be: heights stand at the right.
func (p *surveyPage) slopes(s *draw.Sheet, box draw.Box) {
	if !p.slope {
		return
	}
	for _, long := range []float64{14, 11, 8, 6} {
		for _, way := range []float64{1, -1} {
			for _, t := range p.f.Timbers {
				d := p.cam.Project(t.Place.X)
				if t.Role == "rafter" && d.Y > 0.05 && d.X*way > 0 && d.Len() > 0.999 && p.triangle(s, box, d, long) {
					return
				}
			}
		}
	}
}

// triangle draws the slope triangle of a rafter that rises along d over its
// foot, level leg long, and reports whether there was room.
func (p *surveyPage) triangle(s *draw.Sheet, box draw.Box, d vec.P, long float64) bool {
	k := d.Y / math.Abs(d.X)
	run, rise := "12", draw.Number(12*k, 2)
	if p.f.Units == measure.Metric {
		run, rise = "100", draw.Number(100*k, 1)
	}
	long = min(long, 16/k)
	way := math.Copysign(1, d.X)
	for in := 2.0; in < box.W()/2; in += 8 {
		r := vec.At(box.Min.X+in, box.Max.Y-1)
		if way < 0 {
			r.X = box.Max.X - in
		}
		if p.triangleAt(s, r, way, long, long*k, run, rise) {
			return true
		}
	}
	return false
}

// triangleAt draws a slope triangle with its right angle at r, if there is room.
func (p *surveyPage) triangleAt(s *draw.Sheet, r vec.P, way, long, high float64, run, rise string) bool {
	low, end := r.Sub(vec.At(0, high)), r.Add(vec.At(way*long, 0))
	wide := font.Measure(rise, dim.Small, false) + 2
	room := draw.NoBox().With(r, low, end, r.Sub(vec.At(way*wide, 0)), r.Add(vec.At(0, dim.Small+2)))
	if p.crowded(s, room) {
		return false
	}
	s.Poly(draw.Dimension, true, r, low, end).Mark = "slope"
	t := s.Text(vec.At((r.X+end.X)/2, r.Y+1), dim.Small, run)
	t.Anchor, t.Halo = draw.Middle, true
	u := s.Text(vec.At(r.X-way*1, (r.Y+low.Y)/2-dim.Small/2), dim.Small, rise)
	u.Anchor, u.Halo = draw.End, true
	if way < 0 {
		u.Anchor = draw.Start
	}
	return true
}

// crowded reports whether a line of a part, of the grid or of a height, or a word,
// stands in a box.
func (p *surveyPage) crowded(s *draw.Sheet, b draw.Box) bool {
	for _, it := range s.Items {
		h := it.Head()
		if (h.Class == draw.Part || h.Class == draw.Centre || h.Class == draw.TextClass || h.Mark == "level") && h.Layer == "" && page.Hits(it, b) {
			return true
		}
	}
	return false
}

// names returns the names of the timbers that show, each with places in its
// wood, about the frame's origin.
func (p *surveyPage) names() []naming.Name {
	var out []naming.Name
	count := map[string]int{}
	at := map[string]int{}
	for _, t := range p.named {
		spots := p.sight.Spots(t, vec.V{}, p.k)
		if len(spots) == 0 {
			continue
		}
		key := t.ID
		if p.bySize {
			key = t.Role + "|" + scene.SectionWords(p.f.Units, t.Section)
		}
		if count[key]++; count[key] == 1 {
			at[key] = len(out)
			out = append(out, naming.Name{Text: t.ID, Owner: t.ID, Spots: spots})
		} else {
			x := &out[at[key]]
			x.Spots = append(x.Spots, spots...)
		}
		if p.bySize {
			out[at[key]].Text = sizeName(t.Role, count[key], scene.SectionWords(p.f.Units, t.Section))
		}
	}
	return out
}

// pointable counts the timbers of which enough shows for a name to point to.
func (p *surveyPage) pointable() int {
	n := 0
	for _, t := range p.named {
		if len(p.sight.Spots(t, vec.V{}, p.k)) > 0 {
			n++
		}
	}
	return n
}

// sizeName tells how many timbers of a role there are, and their section.
func sizeName(role string, n int, across string) string {
	if n > 1 {
		return fmt.Sprintf("%d %ss %s", n, role, across)
	}
	return role + " " + across
}

// setNames sets names on the sheet, and returns those that are left. A sheet
// that has room for none has them in lanes.
func (p *surveyPage) setNames(s *draw.Sheet, field block.Field, o vec.P, names []naming.Name) []naming.Name {
	field.Y0 += p.noteHeight()
	if p.aside {
		field.X0 += asideWidth + asideGap
	}
	here := make([]naming.Name, len(names))
	for i, x := range names {
		here[i] = naming.Name{Text: x.Text, Owner: x.Owner, Spots: naming.MovedSpots(x.Spots, o)}
	}
	left := naming.Set(s, field, func(q vec.P) string { return p.sight.Owner(q.Sub(o).Mul(1 / p.k)) }, here)
	gone := naming.Without(here, left)
	return naming.Without(names, gone)
}
