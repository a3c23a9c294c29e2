package sheet

import (
	"math"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/geom"
)

// offset draws the two holes of the first drawn peg at full size, as far apart
// as they are bored, with the offset as a dimension: under the windows, where
// the column has room for it.
func (p *pen) offset(f *geom.Frame, field block.Field, j *geom.Joint) {
	for _, g := range j.Pegs {
		if g.Offset > 0 {
			p.holesApart(f, field, j, g)
			return
		}
	}
}

func (p *pen) holesApart(f *geom.Frame, field block.Field, j *geom.Joint, g geom.Peg) {
	// For the centre lines above, and for the dimension and its arrowheads.
	const above, below = 4.0, 9.0
	r := g.Bore / 2
	m, t := j.Flat(g.Mortise), j.Flat(g.Tenon)
	e := t.Sub(m)
	head := text*pitch + p.paraHeight("Tenon hole set "+g.Words+".") + 2
	if need := head + above + 2*r + math.Abs(e.Y) + below; p.y-need < field.Y0 {
		return
	}
	p.head("The draw, full size")
	p.para("Tenon hole set " + g.Words + ".")
	c := at(field.Mid().X-below/2, p.y-above-r-max(e.Y, 0))
	w := &window{s: p.s, j: j, k: 1, o: c.Sub(m)}
	w.hole(g, false)
	dir := e.Unit()
	across := at(math.Abs(dir.Y), -math.Abs(dir.X)) // to the right, or below
	dim.Linear(p.s, dir, c.Add(across.Mul(r+6)), dim.Request{From: c, To: c.Add(e), Text: f.Units.PlainJoint(g.Offset), Owner: j.Of.ID})
	p.s.Line(draw.Centre, c.Add(e).Sub(at(2, 0)), c.Add(e).Add(at(2, 0)))
	p.y = c.Y - r - below
}
