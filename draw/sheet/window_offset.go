package sheet

import (
	"math"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/page"
	"pegwright/geom"
	"pegwright/geom/vec"
)

// offsetOf draws the two holes of the first drawn peg at full size, as far apart
// as they are bored, with the offset as a dimension: under the windows, where
// the column has room for it.
func offsetOf(p *page.Pen, f *geom.Frame, field block.Field, j *geom.Joint) {
	for _, g := range j.Pegs {
		if g.Offset > 0 {
			holesApart(p, f, field, j, g)
			return
		}
	}
}

func holesApart(p *page.Pen, f *geom.Frame, field block.Field, j *geom.Joint, g geom.Peg) {
	// For the centre lines above, and for the dimension and its arrowheads.
	const above, below = 4.0, 9.0
	r := g.Bore / 2
	m, t := j.Flat(g.Mortise), j.Flat(g.Tenon)
	e := t.Sub(m)
	head := dim.Text*page.Pitch + p.ParaHeight("Tenon hole set "+g.Words+".") + 2
	if need := head + above + 2*r + math.Abs(e.Y) + below; p.Y-need < field.Y0 {
		return
	}
	p.Head("The draw, full size")
	p.Para("Tenon hole set " + g.Words + ".")
	c := vec.At(field.Mid().X-below/2, p.Y-above-r-max(e.Y, 0))
	w := &window{s: p.S, j: j, k: 1, o: c.Sub(m)}
	w.hole(g, false)
	dir := e.Unit()
	across := vec.At(math.Abs(dir.Y), -math.Abs(dir.X)) // to the right, or below
	dim.Linear(p.S, dir, c.Add(across.Mul(r+6)), dim.Request{From: c, To: c.Add(e), Text: f.Units.PlainJoint(g.Offset), Owner: j.Of.ID})
	p.S.Line(draw.Centre, c.Add(e).Sub(vec.At(2, 0)), c.Add(e).Add(vec.At(2, 0)))
	p.Y = c.Y - r - below
}
