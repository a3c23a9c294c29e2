package templates

import (
	"math"

	"pegwright/draw"
	"pegwright/geom"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// flapPlan lays out the face that the enterer comes in through: the outline of
// the bearing, where its shoulder lands, and the mouth of the mortise, on the
// same line J and the same arris as the scribed layout. It reports false for a
// joint that has no mortise in that face, such as a lap.
func flapPlan(j *geom.Joint) (plan, bool) {
	if j.Broad || j.Entered == 0 || j.Mortise.Empty() {
		return plan{}, false
	}
	main := mainLine(j)
	p := plan{kind: "flap", joint: j, v: view{t: j.Into, face: j.Entered, x0: main.X}}
	mouth, haunch := mouths(j)
	bearing := shoulders(j)
	if len(mouth) < 3 || len(bearing) < 3 || j.Bearing.N.Dot(j.Axes.W) < 1-1e-9 {
		return plan{}, false
	}
	p.shapes = []shape{
		{"mouth of the mortise", p.inWood(mouth), draw.Part, mark("outline:mouth", j, nil)},
		{"bearing of the " + role(j, j.Of.ID), p.inWood(bearing), draw.Part, mark("outline:bearing", j, nil)},
	}
	if len(haunch) > 2 {
		p.shapes = append(p.shapes, shape{"haunch, shallower", p.inWood(haunch), draw.Dimension, mark("outline:haunch", j, nil)})
	}
	register := guide{name: "lay on " + p.v.arris() + " (fold here)", class: draw.Register, mark: mark("line:register", j, nil),
		a: vec.P{X: -far}, b: vec.P{X: far}, below: p.v.sign() > 0}
	p.guides = append(p.guides, register)
	p.crossLines(main)
	p.flapDims()
	p.flapRoom()
	return p, len(p.shapes[0].pts) > 2 && len(p.shapes[1].pts) > 2 && !p.openEnded()
}

// openEnded reports whether the mouth runs out at an end of the receiver, as
// the slot of a bridle does: there is no outline to see then.
func (p *plan) openEnded() bool {
	b := draw.NoBox().With(p.shapes[0].pts...)
	return b.Min.X+p.v.x0 < 1e-3 || b.Max.X+p.v.x0 > p.v.t.Length-1e-3
}

// flare returns how much farther the sloped side of a housed pocket reaches along
// the receiver on its face than on the bearing, where the outlines are true, mm.
func flare(j *geom.Joint) float64 {
	long := func(pl solid.Plane) float64 {
		lo, hi := math.Inf(1), math.Inf(-1)
		for _, v := range lid(j.Mortise, pl) {
			lo, hi = min(lo, v.Dot(j.Axes.U)), max(hi, v.Dot(j.Axes.U))
		}
		return hi - lo
	}
	return long(j.Into.BlankPlane(j.Entered).Moved(j.Into.Place)) - long(j.Bearing)
}

// mouths returns the corners of the mouth of the mortise, frame axes, and those
// of the part of it that is only deep enough for a haunch, if there is one.
func mouths(j *geom.Joint) (whole, haunch []vec.V) {
	whole = lid(j.Mortise, j.Bearing)
	lo, hi := j.Mortise.Extent(j.Axes.U)
	for _, c := range j.Into.Cuts {
		if c.Joint != j.ID || c.Name != "mortise" {
			continue
		}
		s := c.Solid.Moved(j.Into.Place)
		if a, b := s.Extent(j.Axes.U); a > hi-1e-3 || b < lo+1e-3 {
			haunch = lid(s, j.Bearing)
			whole = append(whole, haunch...)
		}
	}
	return whole, haunch
}

// lid returns the corners of a convex volume's figure in a plane.
func lid(c solid.Convex, pl solid.Plane) []vec.V {
	var out []vec.V
	for _, v := range c.Clip(pl, "").V {
		if math.Abs(pl.Height(v)) < 1e-6 {
			out = append(out, v)
		}
	}
	return out
}

// shoulders returns the corners of the enterer's shoulder, frame axes.
func shoulders(j *geom.Joint) []vec.V {
	var out []vec.V
	if j.Of.Net == nil {
		return nil
	}
	for _, q := range j.Of.Net.Boundary() {
		pl := q.Plane.Moved(j.Of.Place)
		if pl.N.Dot(j.Bearing.N) > -1+1e-9 || math.Abs(pl.D+j.Bearing.D) > 1e-3 {
			continue
		}
		for _, t := range q.Tags {
			if t.Joint == j.ID {
				for _, v := range q.Outer {
					out = append(out, j.Of.Place.Out(v))
				}
				break
			}
		}
	}
	return out
}

// inWood carries points (frame axes) onto the view, cuts their hull at the
// receiver's blank, and returns it.
func (p *plan) inWood(pts []vec.V) []vec.P {
	on := make([]vec.P, len(pts))
	for i, q := range pts {
		on[i] = p.v.from(q)
	}
	far := p.v.local(vec.V{X: p.v.t.Length, Y: p.v.t.Section[0], Z: p.v.t.Section[1]})
	near := p.v.local(vec.V{})
	return hull(clipArea(draw.NoBox().With(near, far), hull(on)))
}

// crossLines adds the lines that the joint scribes across the receiver, the
// main one as line J.
func (p *plan) crossLines(main geom.Line) {
	for _, l := range p.joint.Lines {
		x := l.X - p.v.x0
		g := guide{name: role(p.joint, l.Name), class: draw.Dimension, mark: mark("line:other", p.joint, nil), below: x > 0}
		if l == main {
			g.name, g.class, g.mark = p.lineName(g.name), draw.Part, mark("line:joint", p.joint, nil)
		}
		g.a, g.b = vec.P{X: x, Y: -far}, vec.P{X: x, Y: far}
		p.guides = append(p.guides, g)
	}
}

// flapDims asks for the place and the size of the mouth.
func (p *plan) flapDims() {
	b := draw.NoBox().With(p.shapes[0].pts...)
	s := p.v.sign()
	near, last := b.Min.Y, b.Max.Y
	if s < 0 {
		near, last = last, near
	}
	x := b.Min.X + 0.35*b.W() // off the middle, where the seam of two tiles runs
	// Across: from the arris to the cheek nearest to it, and the width of the mouth.
	p.once(map[string]bool{}, "off", dimension{a: vec.P{X: x}, b: vec.P{X: x, Y: near}})
	p.once(map[string]bool{}, "wide", dimension{a: vec.P{X: x, Y: near}, b: vec.P{X: x, Y: last}})
	// Along: from line J to the end of the mouth that is nearest to it, and its length.
	start, end := b.Min.X, b.Max.X
	if math.Abs(end) < math.Abs(start) {
		start, end = end, start
	}
	edge := math.Abs(last) + 9
	dim := func(x0, x1 float64) dimension {
		return dimension{a: vec.P{X: x0, Y: last}, b: vec.P{X: x1, Y: last}, off: offToward(vec.P{X: x0}, vec.P{X: x1}, vec.P{Y: s}, edge-math.Abs(last))}
	}
	p.once(map[string]bool{}, "from", dim(0, start))
	p.once(map[string]bool{}, "long", dim(start, end))
	if len(p.shapes) > 2 {
		h := draw.NoBox().With(p.shapes[2].pts...)
		d := dim(h.Min.X, h.Max.X)
		d.off += math.Copysign(9, d.off)
		d.word = "haunch "
		p.once(map[string]bool{}, "haunch", d)
	}
}

// flapRoom says what must show: the mouth, line J and the register arris. The
// bearing should, and may run off the paper: its sides are straight.
func (p *plan) flapRoom() {
	s := p.v.sign()
	p.need = append(p.need, p.shapes[0].pts...)
	p.need = append(p.need, vec.P{X: -3}, vec.P{X: 3}, vec.P{Y: -s * 7})
	for _, sh := range p.shapes {
		p.most = append(p.most, sh.pts...)
	}
	p.most = append(p.most, p.need...)
	b := draw.NoBox().With(p.shapes[0].pts...)
	p.most = append(p.most, vec.P{Y: s * (max(math.Abs(b.Min.Y), math.Abs(b.Max.Y)) + 20)}, vec.P{X: -8, Y: -s * 9}, vec.P{X: 8})
	g := grown(draw.NoBox().With(p.most...), 3)
	p.want = append(append(p.want, p.most...), g.Min, g.Max)
}
