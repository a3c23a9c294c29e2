package sheet

import (
	"fmt"
	"math"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/font"
	"pegwright/draw/view"
	"pegwright/geom"
	"pegwright/geom/measure"
	"pegwright/geom/vec"
)

// Sizes about a plan or elevation, paper mm.
const (
	bubble     = 3.4 // radius of the ring round a grid line's name
	bubbleRoom = 2*bubble + 4
	overLane   = 6.0 // leaders between view and lane
)

// moreNames ends the title of a survey that is drawn again for further names.
const moreNames = ", more names"

// surveyScales are the scales at which buildings are customarily drawn.
func surveyScales(u measure.Units) []float64 {
	if u == measure.Metric {
		return []float64{5, 10, 20, 25, 30, 40, 50, 75, 100, 200, 500, 1000}
	}
	return []float64{8, 12, 16, 24, 32, 48, 64, 96, 128, 192, 384, 768}
}

// sheets draws the survey. Where its lanes cannot hold the names of all
// timbers, the same view follows with the rest.
func (v *survey) sheets(f *geom.Frame) []*draw.Sheet {
	p := &surveyPage{survey: v, f: f}
	if !p.measure() {
		return nil
	}
	var out []*draw.Sheet
	left := p.targets()
	for n := 0; n == 0 || len(left) > 0 || p.told < len(p.levels); n++ {
		id, title := v.id, v.title
		if n > 0 {
			id, title = fmt.Sprintf("%s-%d", v.id, n+1), v.title+moreNames
		}
		t := block.TitleFor(f, title, v.shows, p.scale)
		if v.note != "" {
			t.Note = v.note + "; " + t.Note
		}
		s, field := fresh(f, v.kind, id, t)
		left = p.draw(s, field, left)
		out = append(out, s)
	}
	return out
}

// surveyPage is a survey at its scale.
type surveyPage struct {
	*survey
	f     *geom.Frame
	k     float64
	scale string
	parts []view.Part
	box   draw.Box   // of what is seen, at full size
	wide  [2]float64 // of the words in the left and the right lane
	notes []string
	items []draw.Item // at the scale, about the frame's origin
	told  int         // heights that stand on a sheet already
}

// measure settles what is seen and the scale, and reports whether there is
// anything.
func (p *surveyPage) measure() bool {
	p.parts = sawn(p.whole, p.cuts...)
	p.box = draw.NoBox()
	for _, part := range p.parts {
		for _, c := range part.Body.Cells() {
			for _, q := range c.V {
				p.box = p.box.With(p.cam.Project(q))
			}
		}
	}
	if p.box.Empty() {
		return false
	}
	for _, t := range p.named {
		w := font.Measure(t.ID, p.lettering(), false)
		p.wide[0], p.wide[1] = max(p.wide[0], w), max(p.wide[1], w)
	}
	for _, l := range p.levels {
		p.wide[1] = max(p.wide[1], font.Measure(p.levelText(l), p.lettering(), false))
	}
	p.notes = p.squareNotes()
	_, field := fresh(p.f, p.kind, "", block.TitleFor(p.f, "", "", ""))
	for _, n := range surveyScales(p.f.Units) {
		p.k, p.scale = 1/n, scaleName(n)
		if room := p.room(field); p.box.W()*p.k <= room.W() && p.box.H()*p.k <= room.H() {
			break
		}
	}
	p.items = view.Render(p.cam, p.parts, view.Options{Scale: p.k})
	return true
}

// lettering is the height of the words in the lanes.
func (p *surveyPage) lettering() float64 {
	h := small
	for _, l := range p.levels {
		h = max(h, dim.Legible(p.levelText(l), small))
	}
	return h
}

func (p *surveyPage) levelText(l level) string {
	z, _ := datum(p.f)
	return p.f.Units.Plain(l.z-z) + "  " + l.what
}

// requests returns the dimensions along x and y at the scale, about the
// frame's origin.
func (p *surveyPage) requests() (x, y []dim.Request) {
	said := map[string]bool{}
	add := func(out []dim.Request, d stretchOf, across bool) []dim.Request {
		key := fmt.Sprintf("%v %.1f %.1f", across, d.from, d.to)
		if said[key] || d.to-d.from < 1 {
			return out
		}
		said[key] = true
		r := dim.Request{Text: p.f.Units.Plain(d.to - d.from)}
		if d.n > 1 {
			r.Text = fmt.Sprintf("%d x %s", d.n, p.f.Units.Plain((d.to-d.from)/float64(d.n)))
		}
		if across {
			r.From, r.To = at(d.from, p.box.Min.Y).Mul(p.k), at(d.to, p.box.Min.Y).Mul(p.k)
		} else {
			r.From, r.To = at(p.box.Min.X, d.from).Mul(p.k), at(p.box.Min.X, d.to).Mul(p.k)
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
	r.X0 += p.wide[0] + overLane + dim.Depth(dim.LeftOf, y)
	r.X1 -= p.wide[1] + overLane
	if len(p.side) > 0 {
		r.X1 -= bubbleRoom
	}
	if len(p.grid) > 0 {
		r.Y1 -= bubbleRoom
	}
	if lo, hi := dim.Reach(dim.Below, x); len(x) > 0 {
		r.X0 += max(0, p.box.Min.X*p.k-lo)
		r.X1 -= max(0, hi-p.box.Max.X*p.k)
	}
	r.Y0 += dim.Depth(dim.Below, x) + p.noteHeight() + 2
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
		out = append(out, fmt.Sprintf("%d. %s to %s: %s", i+1, d.nameA, d.nameB, p.f.Units.Format(d.long())))
	}
	return out
}

func (p *surveyPage) noteHeight() float64 {
	if len(p.notes) == 0 {
		return 0
	}
	return text*pitch + math.Ceil(float64(len(p.notes))/float64(p.noteColumns()))*text*pitch
}

// noteColumns is how many notes stand side by side: two where all are short.
func (p *surveyPage) noteColumns() int {
	_, field := fresh(p.f, p.kind, "", block.TitleFor(p.f, "", "", ""))
	for _, n := range p.notes {
		if font.Measure(n, dim.Legible(n, small), false) > field.W()/2-4 {
			return 1
		}
	}
	return 2
}

// draw draws one sheet with as many names as its lanes hold, and returns the
// names that are left.
func (p *surveyPage) draw(s *draw.Sheet, field block.Field, names []dim.Label) []dim.Label {
	room := p.room(field)
	o := room.Mid().Sub(p.box.Mid().Mul(p.k))
	o.Y = room.Y1 - p.box.Max.Y*p.k - (room.H()-p.box.H()*p.k)*0.35
	p.hatch(s, o)
	s.Add(scaled(p.items, 1, o)...)
	box := draw.Box{Min: o.Add(p.box.Min.Mul(p.k)), Max: o.Add(p.box.Max.Mul(p.k))}
	p.gridLines(s, box, o)
	p.tape(s, o)
	left := p.lanes(s, field, room, o, names)
	x, y := p.requests()
	dim.Stack(s, dim.Below, box.Min.Y, moved(x, o))
	dim.Stack(s, dim.LeftOf, box.Min.X, moved(y, o))
	p.slopes(s, box)
	p.foot(s, field)
	p.links(s, o)
	return left
}

// links leads from the joints of the timbers that are named to their sheets.
func (p *surveyPage) links(s *draw.Sheet, o vec.P) {
	named := map[string]bool{}
	for _, t := range p.named {
		named[t.ID] = true
	}
	linkJoints(s, p.f, func(id string) bool { return named[id] }, func(v vec.V) vec.P { return o.Add(p.cam.Project(v).Mul(p.k)) })
}

// hatch hatches what the plane before the view cuts.
func (p *surveyPage) hatch(s *draw.Sheet, o vec.P) {
	if len(p.cuts) == 0 {
		return
	}
	rest := sawn(p.whole, p.cuts[1:]...)
	for _, fig := range view.Section(rest, p.cuts[0], p.cam, view.Options{Scale: p.k, At: o}) {
		for _, h := range fig.Hatch(45, 1.4) {
			s.Add(h)
		}
	}
}

// gridLines draws the grid lines with their names in rings, over the view and
// at its right.
func (p *surveyPage) gridLines(s *draw.Sheet, box draw.Box, o vec.P) {
	ring := func(c vec.P, name string) {
		s.Circle(draw.Dimension, c, bubble)
		t := s.Text(at(c.X, c.Y-small/2), small, name)
		t.Anchor, t.Bold, t.Halo = draw.Middle, true, true
	}
	for _, l := range p.grid {
		x := o.X + l.at*p.k
		c := at(x, box.Max.Y+bubbleRoom-bubble)
		s.Line(draw.Centre, at(x, box.Min.Y-2), at(x, c.Y-bubble))
		ring(c, l.name)
	}
	for _, l := range p.side {
		y := o.Y + l.at*p.k
		c := at(box.Max.X+bubbleRoom-bubble, y)
		s.Line(draw.Centre, at(box.Min.X-2, y), at(c.X-bubble, y))
		ring(c, l.name)
	}
}

// tape draws the diagonals, thin and dashed, with dots at their ends.
func (p *surveyPage) tape(s *draw.Sheet, o vec.P) {
	for _, d := range p.diagonals {
		a, b := o.Add(p.cam.Project(d.a).Mul(p.k)), o.Add(p.cam.Project(d.b).Mul(p.k))
		s.Line(draw.Trace, a, b).Mark = "diagonal"
		dim.Dot(s, a)
		dim.Dot(s, b)
	}
}

// foot sets the diagonals' names and lengths in two columns.
func (p *surveyPage) foot(s *draw.Sheet, field block.Field) {
	if len(p.notes) == 0 {
		return
	}
	y := field.Y0 + p.noteHeight() - text
	h := s.Text(at(field.X0, y), small, "Check square with a tape from arris to arris, at the lines named; each reads as given here.")
	h.Bold = true
	cols := p.noteColumns()
	w := field.W()/float64(cols) - 3
	for i, n := range p.notes {
		size := dim.Legible(n, small)
		n = block.Fit(n, w, size, false)
		s.Text(at(field.X0+float64(i%cols)*(w+6), y-float64(i/cols+1)*text*pitch), size, n).Mark = "diagonal"
	}
}

// slopes draws the slope triangle of the roof in a free corner over it.
func (p *surveyPage) slopes(s *draw.Sheet, box draw.Box) {
	if !p.slope {
		return
	}
	for _, long := range []float64{14, 11, 8, 6} {
		for _, t := range p.f.Timbers {
			d := p.cam.Project(t.Place.X)
			if t.Role == "rafter" && d.Y > 0.05 && d.Len() > 0.999 && p.triangle(s, box, d, long) {
				return
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
	r, way := at(box.Min.X+2, box.Max.Y-1), 1.0
	if d.X < 0 {
		r, way = at(box.Max.X-2, box.Max.Y-1), -1
	}
	low, high := r.Sub(at(0, long*k)), r.Add(at(way*long, 0))
	wide := font.Measure(rise, small, false) + 2
	room := draw.NoBox().With(r, low, high, r.Sub(at(way*wide, 0)), r.Add(at(0, small+2)))
	if p.crowded(s, room) {
		return false
	}
	s.Poly(draw.Dimension, true, r, low, high).Mark = "slope"
	t := s.Text(at((r.X+high.X)/2, r.Y+1), small, run)
	t.Anchor, t.Halo = draw.Middle, true
	u := s.Text(at(r.X-way*1, (r.Y+low.Y)/2-small/2), small, rise)
	u.Anchor, u.Halo = draw.End, true
	if way < 0 {
		u.Anchor = draw.Start
	}
	return true
}

// crowded reports whether a part's line or a word stands in a box.
func (p *surveyPage) crowded(s *draw.Sheet, b draw.Box) bool {
	for _, it := range s.Items {
		if c := it.Head().Class; (c == draw.Part || c == draw.TextClass) && it.Head().Layer == "" && hits(it, b) {
			return true
		}
	}
	return false
}

// targets returns the labels of the timbers that show, each at a point in its
// wood, about the frame's origin.
func (p *surveyPage) targets() []dim.Label {
	best := map[string][2]vec.P{}
	for _, it := range p.items {
		l, ok := it.(*draw.Path)
		if !ok || len(l.Pts) != 2 {
			continue
		}
		if b := best[l.Owner]; l.Pts[0].Dist(l.Pts[1]) > b[0].Dist(b[1])+1e-6 {
			best[l.Owner] = [2]vec.P{l.Pts[0], l.Pts[1]}
		}
	}
	var out []dim.Label
	for _, t := range p.named {
		b, ok := best[t.ID]
		if !ok || b[0].Dist(b[1]) < 1 {
			continue
		}
		q := b[0].Lerp(b[1], 0.5)
		mid := p.cam.Project(t.Place.Out(vec.V{X: t.Length / 2, Y: t.Ideal[0] / 2, Z: t.Ideal[1] / 2})).Mul(p.k)
		n := b[1].Sub(b[0]).Unit().Left()
		off := mid.Sub(q).Dot(n)
		q = q.Add(n.Mul(math.Copysign(min(math.Abs(off)*0.6, 1.2), off)))
		out = append(out, dim.Label{Text: t.ID, At: q, Owner: t.ID})
	}
	return out
}

// lanes sets names and heights in the lanes left and right and returns the names
// that found no room. The heights stand at the right on every sheet, or are shared out among
// the sheets where one lane cannot hold them all.
func (p *surveyPage) lanes(s *draw.Sheet, field, room block.Field, o vec.P, names []dim.Label) []dim.Label {
	h := p.lettering()
	low := field.Y0 + p.noteHeight() + 1
	most := max(int((field.Y1-low)/(h*1.75)), 1)
	levels := p.levels
	if len(levels) > most {
		levels = levels[p.told:min(p.told+most, len(levels))]
	}
	p.told += len(levels)
	var sides [2][]dim.Label
	for _, l := range levels {
		q := o.Add(p.cam.Project(l.at).Mul(p.k))
		sides[1] = append(sides[1], dim.Label{Text: p.levelText(l), At: q})
	}
	fit := max(0, min(len(names), 2*most-len(sides[1])))
	here, left := names[:fit], names[fit:]
	mid := o.X + p.box.Mid().X*p.k
	nearer := 0
	for _, l := range here {
		if l.At.X+o.X < mid {
			nearer++
		}
	}
	nearer = max(min(nearer, most), len(here)+len(sides[1])-most)
	for i, l := range byPlace(here) {
		l.At = l.At.Add(o)
		side := 1
		if i < nearer {
			side = 0
		}
		sides[side] = append(sides[side], l)
	}
	dim.Lane(s, field.X0+p.wide[0]+1, false, sides[0], h, low, field.Y1)
	dim.Lane(s, field.X1-p.wide[1]-1, true, sides[1], h, low, field.Y1)
	return left
}

// byPlace returns labels from left to right.
func byPlace(list []dim.Label) []dim.Label {
	out := append([]dim.Label(nil), list...)
	for i := range out {
		for k := i; k > 0 && out[k].At.X < out[k-1].At.X-1e-6; k-- {
			out[k], out[k-1] = out[k-1], out[k]
		}
	}
	return out
}
