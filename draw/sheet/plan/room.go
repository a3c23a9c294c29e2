package plan

import (
	"fmt"

	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/setout"
	"pegwright/geom/vec"
)

// fits reports whether the view has room at the scale, with the diagonals told at
// the foot or else at the left.
func (p *surveyPage) fits() bool {
	field := block.FieldFor(p.f)
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
		key := fmt.Sprintf("%v %.1f %.1f %d", across, d.From+0, d.To+0, max(d.N, 1))
		if said[key] || d.To-d.From < 1 {
			return out
		}
		said[key] = true
		r := dim.Request{Text: p.f.Units.Plain(d.To - d.From), Name: d.What}
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
