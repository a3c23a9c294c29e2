package timber

import (
	"math"

	"pegwright/draw"
	"pegwright/draw/dim"
	"pegwright/draw/font"
	"pegwright/draw/page"
	"pegwright/geom/vec"
)

// marks sets the joiner's mark beside every joint on the face that it enters,
// or on face 1 of the timber that enters, and the word beside every exit, in
// plain wood.
func (p *facePage) marks(r faceRow) {
	for _, m := range p.jointMarks() {
		if m.face == r.n {
			p.inWood(r, m.word, 3.5, true, m.from, m.to, m.mid, m.joint)
		}
	}
	for _, f := range p.feats {
		if f.bore != nil && f.bore.Exit == r.n {
			q := piercing(p.t.BlankPlane(r.n), *f.bore)
			d := f.bore.Diameter / 2
			p.inWood(r, "exit", dim.Small, false, q.X-d, q.X+d, offArris(r.n, q), f.bore.Peg)
		}
	}
}

// jointMark is a joiner's mark with the stretch that it stands beside.
type jointMark struct {
	word, joint   string
	face          int
	from, to, mid float64
}

// jointMarks returns the mark of every joint of the drawn timber; sticks that
// are alike bear different ones, so their sheet has letters that the table
// explains.
func (p *facePage) jointMarks() []jointMark {
	var out []jointMark
	for _, l := range letters(p.f, p.g) {
		face := 1
		if l.joint.Into == p.t && l.joint.Entered >= 1 {
			face = l.joint.Entered
		}
		lo, hi := math.Inf(1), math.Inf(-1)
		mid := p.across[face] / 2
		for _, f := range p.feats {
			if f.joint == l.joint {
				lo, hi = min(lo, f.from), max(hi, f.to)
			}
		}
		if lo > hi {
			continue
		}
		out = append(out, jointMark{l.word, l.joint.ID, face, lo, hi, mid})
	}
	return out
}

// inWood sets a word in plain wood as near as can be to a stretch of a face,
// where it meets no line, circle or word.
func (p *facePage) inWood(r faceRow, word string, h float64, bold bool, from, to, mid float64, owner string) {
	a, shown := p.x(from)
	b, also := p.x(to)
	if !shown && !also {
		return
	}
	if !shown {
		a = b
	}
	if !also {
		b = a
	}
	t := &draw.Text{Meta: draw.Meta{Class: draw.TextClass, Owner: owner, Mark: "in wood"}, S: word, Height: h, Bold: bold, Halo: true}
	place, ok := p.spot(r, t, a, b, p.y(r, mid), false)
	if !ok {
		place, ok = p.spot(r, t, a, b, p.y(r, mid), true)
	}
	if ok {
		t.At = place
		p.s.Add(t)
	}
}

// spot returns the place nearest to the stretch from a to b on a strip, at the
// height y, where a word meets nothing. Where loose is set it may stand in wood
// that is cut lower and cover thin lines.
func (p *facePage) spot(r faceRow, t *draw.Text, a, b, y float64, loose bool) (vec.P, bool) {
	box := font.Turned(t)
	best, far := vec.P{}, math.Inf(1)
	mid := vec.At((a+b)/2, y)
	bottom := p.bottom(r)
	near := p.about(r, a-45-box.W(), b+45+box.W(), loose)
	for dx := 1.0; dx < 40 && far > dx; dx++ {
		for _, x := range []float64{b + dx, a - dx - box.W(), mid.X - box.W()/2 + dx - 1, mid.X - box.W()/2 - dx + 1} {
			if !p.drawn(x+box.Min.X-0.4, x+box.Max.X+0.4) {
				continue
			}
			for i := range 13 {
				low := bottom + 0.5 - box.Min.Y + (r.top-bottom-box.H()-1)*float64(i)/12
				q := vec.At(x, low)
				around := draw.Box{Min: q.Add(box.Min).Sub(vec.At(0.4, 0.3)), Max: q.Add(box.Max).Add(vec.At(0.4, 0.3))}
				d := around.Mid().Sub(mid)
				if d := math.Hypot(d.X, d.Y/2); d < far && near.clear(around) && (loose || p.plainWood(r, around)) {
					best, far = q, d
				}
			}
		}
	}
	return best, !math.IsInf(far, 1)
}

// about returns the items of the sheet that a word on a strip between two paper
// x may not meet.
func (p *facePage) about(r faceRow, from, to float64, loose bool) *obstacles {
	room := draw.Box{Min: vec.At(from, p.bottom(r)), Max: vec.At(to, r.top)}
	wide := draw.PenFor(draw.Part, p.s.Step).Width
	out := &obstacles{}
	for i, o := range p.standing() {
		if !o.Hits(room) {
			continue
		}
		it := p.s.Items[i]
		if _, line := it.(*draw.Path); loose && line && it.Head().PenAt(p.s.Step).Width < wide {
			continue
		}
		out.all = append(out.all, o)
	}
	return out
}

// obstacles are what a word may not meet.
type obstacles struct {
	all []page.Obstacle
	met int // the one that was met last, and may be met next
}

// clear reports whether a box meets none of them.
func (o *obstacles) clear(b draw.Box) bool {
	if o.met < len(o.all) && o.all[o.met].Hits(b) {
		return false
	}
	for i, x := range o.all {
		if x.Hits(b) {
			o.met = i
			return false
		}
	}
	return true
}

// standing returns all items of the sheet as obstacles. The sheet only grows.
func (p *facePage) standing() []page.Obstacle {
	for _, it := range p.s.Items[len(p.stood):] {
		p.stood = append(p.stood, page.ObstacleOf(it))
	}
	return p.stood
}

// plainWood reports whether the wood under a box on a strip is left as it was:
// its corners and its middle, just under the face.
func (p *facePage) plainWood(r faceRow, b draw.Box) bool {
	size := p.across[r.n]
	pl := p.t.BlankPlane(r.n)
	for _, q := range []vec.P{b.Mid(), b.Min, b.Max, vec.At(b.Min.X, b.Max.Y), vec.At(b.Max.X, b.Min.Y)} {
		along, ok := p.st.along(q.X-p.x0, p.k)
		off := (r.top - q.Y) / p.k
		if r.n == 1 || r.n == 4 {
			off = size - off
		}
		v := vec.V{X: along, Y: off}
		if r.n%2 == 1 {
			v = vec.V{X: along, Z: off}
		}
		v = v.Sub(pl.N.Mul(pl.Height(v) + 0.5))
		if !ok || !p.t.Net.Contains(v, 0.01) {
			return false
		}
	}
	return true
}

// drawn reports whether one piece of the stick is drawn from one paper x to another.
func (p *facePage) drawn(from, to float64) bool {
	for _, s := range p.st.pieces {
		if from >= p.x0+s.x && to <= p.x0+s.x+s.Long()*p.k {
			return true
		}
	}
	return false
}
