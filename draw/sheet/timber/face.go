package timber

import (
	"fmt"
	"math"
	"sort"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/page"
	"pegwright/draw/scene"
	"pegwright/draw/view"
	"pegwright/geom"
	"pegwright/geom/list"
	"pegwright/geom/measure"
	"pegwright/geom/vec"
)

// trimOf returns the length that a timber is ordered longer at each end.
func trimOf(u measure.Units, t *geom.Timber) float64 {
	if t.Trim > 0 {
		return t.Trim
	}
	return list.Trim(u)
}

// faceCamera looks at face n of a timber in its own axes, the start end left.
func faceCamera(t *geom.Timber, n int) view.Camera {
	out := t.IdealPlane(n).N
	return view.Camera{Right: vec.V{X: 1}, Up: out.Cross(vec.V{X: 1}), Toward: out}
}

// renderFaces draws the four faces at full size in the timber's own axes,
// without its bores.
func (v *stickView) renderFaces() {
	local := *v.t
	local.Place = vec.Identity
	part := view.Part{Owner: v.t.ID, Body: v.t.Net}
	for n := 1; n <= 4; n++ {
		c := faceCamera(v.t, n)
		v.items[n] = scene.Register(view.Render(c, []view.Part{part}, view.Options{}), c, &local)
	}
}

// stations returns the places of the running dimension: corners of the mouths
// of all cuts, middles of bores, the places that joints name, and the end.
func (v *stickView) stations() []float64 {
	all := []float64{v.t.Length}
	add := func(x float64) {
		if x > 0.3 && x < v.t.Length-0.3 {
			all = append(all, x)
		}
	}
	for _, f := range v.feats {
		add(f.from)
		add(f.to)
		for _, p := range f.mouth {
			add(p.X)
		}
	}
	for _, j := range v.f.JointsOf(v.t) {
		for _, p := range j.Places {
			if p.On == v.t {
				add(p.X)
			}
		}
	}
	sort.Float64s(all)
	var out []float64
	for _, x := range all {
		if n := len(out); n > 0 && (x-out[n-1] < 0.3 || v.f.Units.PlainJoint(x) == v.f.Units.PlainJoint(out[n-1])) {
			continue
		}
		out = append(out, x)
	}
	return out
}

// facePage is one sheet of faces.
type facePage struct {
	*stickView
	s     *draw.Sheet
	field block.Field
	st    strip
	x0    float64 // left edge of the strips
	low   float64 // lower edge of the lowest face
	rows  []faceRow
	lanes map[int]*lane   // of the faces, by their numbers
	stood []page.Obstacle // the first items of the sheet, see standing
}

// faceRow is the strip of one face: its number and its upper edge.
type faceRow struct {
	n   int
	top float64
}

// x returns the paper x of a place along the timber and whether it is shown.
func (p *facePage) x(along float64) (float64, bool) {
	x, ok := p.st.paper(along, p.k)
	return p.x0 + x, ok
}

// y returns the paper y of a place off the arris on a face: faces 1 and 4 have
// it below, 2 and 3 above.
func (p *facePage) y(r faceRow, off float64) float64 {
	if r.n == 1 || r.n == 4 {
		return r.top - (p.across[r.n]-off)*p.k
	}
	return r.top - off*p.k
}

func (p *facePage) bottom(r faceRow) float64 { return r.top - p.across[r.n]*p.k }

// face draws one strip with what is cut from it.
func (p *facePage) face(r faceRow) {
	for _, it := range p.items[r.n] {
		p.lineOn(r, it)
	}
	p.breaks(r)
	p.words(r)
	p.squared(r)
	for i := range p.feats {
		if f := &p.feats[i]; f.bore != nil {
			p.hole(r, f)
		}
	}
	p.labels(p.lanes[r.n], r)
	p.marks(r)
}

// lineOn draws the pieces of a line of a face that the strip shows.
func (p *facePage) lineOn(r faceRow, it draw.Item) {
	l, ok := it.(*draw.Path)
	if !ok || len(l.Pts) != 2 {
		return
	}
	c := faceCamera(p.t, r.n)
	top := max(c.Up.Dot(vec.V{Y: p.across[2], Z: p.across[1]}), 0)
	a, b := l.Pts[0], l.Pts[1]
	for _, s := range p.st.pieces {
		u, w, ok := clipped(a, b, s.Span)
		if !ok {
			continue
		}
		to := func(q vec.P) vec.P {
			return vec.At(p.x0+s.x+(q.X-s.From)*p.k, r.top-(top-q.Y)*p.k)
		}
		q := *l
		q.Pts = []vec.P{to(u), to(w)}
		p.s.Add(&q)
	}
}

// clipped returns the part of a segment within a span along x.
func clipped(a, b vec.P, s scene.Span) (vec.P, vec.P, bool) {
	if a.X > b.X {
		a, b = b, a
	}
	if b.X < s.From-1e-6 || a.X > s.To+1e-6 {
		return a, b, false
	}
	if b.X-a.X < 1e-9 {
		return a, b, true
	}
	d := b.X - a.X
	u, w := a.Lerp(b, max(0, (s.From-a.X)/d)), a.Lerp(b, min(1, (s.To-a.X)/d))
	return u, w, u.Dist(w) > 1e-6
}

// breaks draws the break lines of a strip.
func (p *facePage) breaks(r faceRow) {
	line := func(x float64) {
		p.s.Add(&draw.Path{Meta: draw.Meta{Class: view.Break, Owner: p.t.ID}, Pts: view.Zigzag(vec.At(x, p.bottom(r)), vec.At(x, r.top))})
	}
	for _, s := range p.st.pieces {
		if s.tornStart {
			line(p.x0 + s.x)
		}
		if s.tornLast {
			line(p.x0 + s.x + s.Long()*p.k)
		}
	}
}

// words sets the number and the word of a face at its left.
func (p *facePage) words(r faceRow) {
	n := p.s.Text(vec.At(p.field.X0, r.top-dim.Text-0.5), dim.Text, fmt.Sprintf("face %d", r.n))
	n.Bold = true
	y := r.top - dim.Text - 1
	for _, l := range page.Wrap(p.g.Word(r.n), faceWords-4, dim.Small) {
		y -= dim.Small * page.Pitch
		p.s.Text(vec.At(p.field.X0, y), dim.Small, l)
	}
}

// squared carries the lines that joints are laid out from round the stick: the
// receiver's main line and square shoulders, thin and dashed.
func (p *facePage) squared(r faceRow) {
	for _, j := range p.f.JointsOf(p.t) {
		if j.Into != p.t {
			continue
		}
		for _, l := range j.Lines {
			if x, ok := p.x(l.X); ok && l.Main && l.X > 1 && l.X < p.t.Length-1 {
				p.s.Line(draw.Trace, vec.At(x, p.bottom(r)), vec.At(x, r.top)).Owner = j.ID
			}
		}
	}
}

// hole draws a bore on the face that it enters: circle and cross-hairs; on the
// one that it leaves: a dashed circle with the word.
func (p *facePage) hole(r faceRow, f *feature) {
	b := f.bore
	if b.Entry != r.n && b.Exit != r.n {
		return
	}
	q := piercing(p.t.BlankPlane(r.n), *b)
	x, ok := p.x(q.X)
	if !ok {
		return
	}
	c, rad := vec.At(x, p.y(r, offArris(r.n, q))), b.Diameter/2*p.k
	if b.Exit == r.n {
		o := p.s.Circle(draw.Hidden, c, rad)
		o.Owner, o.Mark = b.Peg, "exit:"+b.Peg
		return
	}
	o := p.s.Circle(draw.Part, c, rad)
	o.Owner, o.Mark = b.Peg, "entry:"+b.Peg
	for _, d := range []vec.P{vec.At(rad+1.5, 0), vec.At(0, rad+1.5)} {
		p.s.Line(draw.Centre, c.Sub(d), c.Add(d)).Owner = b.Peg
	}
}

// matchLines says along its edges where the sheet joins its neighbours.
func (p *facePage) matchLines() {
	mid := (p.rows[0].top + p.low) / 2
	put := func(x, along float64, words string) {
		t := p.s.Text(vec.At(x, mid), dim.Text, block.Fit(words+" "+p.f.Units.Plain(along), p.rows[0].top-p.low, dim.Text, false))
		t.Rot, t.Anchor = math.Pi/2, draw.Middle
	}
	if p.st.before {
		put(p.x0+sideText-2.2, p.st.match, "match line at")
	}
	if p.st.after {
		put(p.field.X1-1.2, p.st.last, "match line at")
	}
}
