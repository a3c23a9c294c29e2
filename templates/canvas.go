package templates

import (
	"pegwright/draw"
	"pegwright/geom/vec"
)

// lettering is the least height of text on a template, mm.
const lettering = 3.5

// canvas is the part of a page that shows wood at 1:1. Points given to it are
// in the template's view; it moves them by o and cuts them at win.
type canvas struct {
	s     *draw.Sheet
	win   draw.Box   // on paper
	strip [4]float64 // of the window, past break lines: left, low, right, high
	o     vec.P      // where the view's origin lies on paper
	owner string
	busy  []patch    // taken by lettering and holes
	texts []patch    // of these, the lettering
	rims  []draw.Box // of these, the holes
	// aim, where it is set, returns the leader from lettering.
	aim   func(patch) (from, to vec.P)
	firm  [][2]vec.P // heavy lines of the template, that no lettering may cover
	heavy [][2]vec.P // these, and dimension lines and leaders
	lines [][2]vec.P // on paper; lettering keeps off them where it can
}

func (c *canvas) at(p vec.P) vec.P { return c.o.Add(p) }

// seen returns the part of the view that the window shows.
func (c *canvas) seen() draw.Box {
	return draw.Box{Min: c.win.Min.Sub(c.o), Max: c.win.Max.Sub(c.o)}
}

// ink returns the part of the window that lines are drawn in.
func (c *canvas) ink() draw.Box {
	return draw.Box{Min: c.win.Min.Add(vec.P{X: c.strip[0], Y: c.strip[1]}), Max: c.win.Max.Sub(vec.P{X: c.strip[2], Y: c.strip[3]})}
}

// line draws the part of a line that the window shows. A line cut by the
// window keeps its direction exactly; its ends are not measured.
func (c *canvas) line(m draw.Meta, a, b vec.P) {
	if p, q, ok := clipSegment(c.ink(), c.at(a), c.at(b)); ok {
		m.Owner = c.owner
		c.s.Line(m.Class, p, q).Meta = m
		c.keep(m, p, q)
	}
}

// keep notes a line on paper that lettering is to keep off.
func (c *canvas) keep(m draw.Meta, p, q vec.P) {
	if m.Class != draw.Centre {
		c.lines = append(c.lines, [2]vec.P{p, q})
	}
	if m.Class == draw.Register || m.Class == draw.Part {
		c.heavy = append(c.heavy, [2]vec.P{p, q})
		c.firm = append(c.firm, [2]vec.P{p, q})
	}
}

// led notes a leader on paper.
func (c *canvas) led(p, q vec.P) {
	c.lines = append(c.lines, [2]vec.P{p, q})
	c.heavy = append(c.heavy, [2]vec.P{p, q})
}

// off returns the lines that lettering of a level keeps off.
func (c *canvas) off(level free) [][2]vec.P {
	switch level {
	case ofFirm:
		return c.firm
	case ofHeavy:
		return c.heavy
	case ofAll:
		return c.lines
	}
	return nil
}

// loop draws the sides of a closed outline, as one path where all of it shows.
func (c *canvas) loop(m draw.Meta, pts []vec.P) {
	if len(pts) == 0 {
		return
	}
	b := draw.NoBox()
	for _, p := range pts {
		b = b.With(c.at(p))
	}
	if !within(b, c.ink()) {
		for i, p := range pts {
			c.line(m, p, pts[(i+1)%len(pts)])
		}
		return
	}
	m.Owner = c.owner
	path := &draw.Path{Meta: m, Closed: true, Pts: make([]vec.P, 0, len(pts))}
	for i, p := range pts {
		path.Pts = append(path.Pts, c.at(p))
		c.keep(m, c.at(p), c.at(pts[(i+1)%len(pts)]))
	}
	c.s.Add(path)
}

// tone lays a light tone over a convex area.
func (c *canvas) tone(grey float64, pts []vec.P) {
	on := make([]vec.P, len(pts))
	for i, p := range pts {
		on[i] = c.at(p)
	}
	if area := clipArea(c.ink(), on); len(area) > 2 {
		c.s.Tone(grey, area...)
	}
}

// circle draws a circle that lies wholly in the window, and reports whether.
// Its place is kept free of lettering.
func (c *canvas) circle(m draw.Meta, p vec.P, r float64) bool {
	b := grown(draw.NoBox().With(c.at(p)), r)
	if !within(b, c.win) {
		return false
	}
	m.Owner = c.owner
	c.s.Add(&draw.Circle{Meta: m, C: c.at(p), R: r})
	c.busy, c.rims = append(c.busy, upright(b)), append(c.rims, b)
	return true
}

// head fills an arrowhead with its tip at p, pointing along unit direction d.
func (c *canvas) head(p, d vec.P, length, width float64) {
	tip := c.at(p)
	back := tip.Sub(d.Mul(length))
	side := d.Left().Mul(width / 2)
	pts := []vec.P{tip, back.Add(side), back.Sub(side)}
	if !within(draw.NoBox().With(pts...), c.ink()) {
		return
	}
	c.s.Add(&draw.Path{Meta: draw.Meta{Class: draw.Dimension, Owner: c.owner}, Pts: pts, Closed: true, Filled: true})
}
