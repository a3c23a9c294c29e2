package joint

import (
	"math"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/page"
	"pegwright/geom"
	"pegwright/geom/vec"
)

// apart is the picture of the two holes of a drawn peg at full size, as far apart
// as they are bored, with the offset as a dimension.
type apart struct {
	f   *geom.Frame
	j   *geom.Joint
	peg geom.Peg
}

// Room of the picture for the centre lines above the holes, and for the dimension
// and its arrowheads below them; the width of the words beside it. Paper mm.
const (
	apartAbove = 4.0
	apartBelow = 10.0
	apartWords = 62.0
)

// apartOf returns the picture for the first drawn peg of a joint, if there is
// one.
func apartOf(f *geom.Frame, j *geom.Joint) (a apart, ok bool) {
	for _, g := range j.Pegs {
		if g.Offset > 0 {
			return apart{f, j, g}, true
		}
	}
	return apart{}, false
}

// off is where the tenon's hole lies from the mortise's.
func (a apart) off() vec.P { return a.j.Flat(a.peg.Tenon).Sub(a.j.Flat(a.peg.Mortise)) }

// high is the height of the picture.
func (a apart) high() float64 {
	return apartAbove + a.peg.Bore + math.Abs(a.off().Y) + apartBelow
}

// words sets what the picture is.
func (a apart) words(p *page.Pen) {
	p.Head("The draw, full size")
	p.Para("Tenon hole set " + a.peg.Words + ".")
}

// under sets words and picture at a pen in a column, and reports whether the
// column has room for them.
func (a apart) under(p *page.Pen, field block.Field) bool {
	head := dim.Text*page.Pitch + p.ParaHeight("Tenon hole set "+a.peg.Words+".") + 2
	if p.Y-head-a.high() < field.Y0 {
		return false
	}
	a.words(p)
	a.draw(p.S, field.Mid().X-apartBelow/2, p.Y-a.high())
	p.Y -= a.high()
	return true
}

// beside sets the words with the picture at their right at the left of a strip
// that is as high as the picture.
func (a apart) beside(s *draw.Sheet, strip block.Field) {
	p := page.Pen{S: s, X: strip.X0, Y: strip.Y1 - apartAbove, W: apartWords, Letters: figures()}
	a.words(&p)
	a.draw(s, strip.X0+apartWords+8+a.peg.Bore/2, strip.Y0)
}

// draw draws the holes with the middle of the mortise's at x and the foot of the
// picture at y.
func (a apart) draw(s *draw.Sheet, x, y float64) {
	r, e := a.peg.Bore/2, a.off()
	c := vec.At(x, y+apartBelow+r+max(-e.Y, 0))
	w := &window{s: s, j: a.j, k: 1, o: c.Sub(a.j.Flat(a.peg.Mortise))}
	w.hole(a.peg, false)
	dir := e.Unit()
	across := vec.At(dir.Y, -dir.X) // square to the offset, below the holes or at their right
	if across.Y > 1e-9 || math.Abs(across.Y) <= 1e-9 && across.X < 0 {
		across = across.Mul(-1)
	}
	dim.Linear(s, dir, c.Add(across.Mul(r+6)), dim.Request{From: c, To: c.Add(e), Text: a.f.Units.PlainJoint(a.peg.Offset), Owner: a.j.Of.ID})
	s.Line(draw.Centre, c.Add(e).Sub(vec.At(2, 0)), c.Add(e).Add(vec.At(2, 0)))
}
