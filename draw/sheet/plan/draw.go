package plan

import (
	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/naming"
	"pegwright/draw/scene"
	"pegwright/draw/setout"
	"pegwright/geom/vec"
)

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
	for _, fig := range p.cut() {
		for _, h := range fig.Scaled(p.k, o).Hatch(45, 1.4) {
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
	right := p.ringsFrom(box, o) + setout.RingRoom - setout.RingRadius
	for _, l := range p.side {
		y := o.Y + l.At*p.k
		c := vec.At(right, y)
		s.Line(draw.Centre, vec.At(box.Min.X-2, y), vec.At(c.X-setout.RingRadius, y))
		setout.Ring(s, c, l.Name).Halo = true
	}
}

// besideRing is how near to the foot of a view a ring at its right meets the figures
// of the first row of dimensions, paper mm.
const besideRing = 10.0

// ringsFrom returns from where on the rings at the right stand: past the figures
// that the lowest would meet.
func (p *surveyPage) ringsFrom(box draw.Box, o vec.P) float64 {
	x, _ := p.requests()
	for _, l := range p.side {
		if len(x) > 0 && o.Y+l.At*p.k < box.Min.Y+besideRing {
			_, hi := dim.Reach(dim.Below, x)
			return max(box.Max.X, o.X+hi)
		}
	}
	return box.Max.X
}
