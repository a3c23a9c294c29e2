package dim

import (
	"math"

	"pegwright/draw"
	"pegwright/draw/font"
	"pegwright/geom/vec"
)

// Angle asks for the dimension of the angle between two lines that meet, less
// than 180°. Where the lines are drawn shorter than the dimension's arc is wide,
// extension lines go on from them.
type Angle struct {
	// Apex is where the lines meet, paper millimetres.
	Apex vec.P
	// A and B run from the apex along the two lines, as far as these are drawn,
	// paper millimetres.
	A, B  vec.P
	Text  string // the figures
	Owner string // owner of the lines, "" for none
}

// legs returns the directions of the two lines, the one first from which the
// other lies counter-clockwise, and the lengths to which they are drawn.
func (a Angle) legs() (from, to vec.P, reach [2]float64) {
	from, to, reach = a.A.Unit(), a.B.Unit(), [2]float64{a.A.Len(), a.B.Len()}
	if from.Left().Dot(to) < 0 {
		from, to, reach[0], reach[1] = to, from, reach[1], reach[0]
	}
	return from, to, reach
}

// Box is where the text stands when the arc has the radius r: outside the arc, on
// the line that halves the angle, read from below.
func (a Angle) Box(r float64) draw.Box {
	from, to, _ := a.legs()
	d := from.Add(to).Unit()
	w, h := font.Measure(a.Text, Text, false), Text
	mid := a.Apex.Add(d.Mul(r + above + math.Abs(d.X)*w/2 + math.Abs(d.Y)*h/2))
	half := vec.At(w/2, h/2)
	return draw.Box{Min: mid.Sub(half), Max: mid.Add(half)}
}

// Least is the least radius, no less than that given, at which the text stands
// clear between the two lines.
func (a Angle) Least(r float64) float64 {
	for ; !a.between(a.Box(r)); r += 0.5 {
	}
	return r
}

// Clear reports whether the text stands clear between the two lines when the arc
// has the radius r.
func (a Angle) Clear(r float64) bool { return a.between(a.Box(r)) }

// between reports whether a box lies between the two lines, a little off both.
func (a Angle) between(b draw.Box) bool {
	from, to, _ := a.legs()
	for _, q := range []vec.P{b.Min, b.Max, vec.At(b.Min.X, b.Max.Y), vec.At(b.Max.X, b.Min.Y)} {
		p := q.Sub(a.Apex)
		if from.Left().Dot(p) < above || to.Left().Dot(p) > -above {
			return false
		}
	}
	return true
}

// Draw draws the dimension with an arc of radius r: an arrowhead at either end,
// from outside where the arc is too short for both (ISO 129-1), and the text.
func (a Angle) Draw(s *draw.Sheet, r float64) {
	from, to, reach := a.legs()
	for i, d := range []vec.P{from, to} {
		if reach[i]+start+beyond < r {
			s.Line(draw.Dimension, a.Apex.Add(d.Mul(reach[i]+start)), a.Apex.Add(d.Mul(r+beyond))).Owner = a.Owner
		}
	}
	lo, hi := math.Atan2(from.Y, from.X), math.Atan2(to.Y, to.X)
	if hi < lo {
		hi += 2 * math.Pi
	}
	out := 1.0 // arrowheads point outward, at the lines
	if head := arrow / r; hi-lo < 2*head+1/r {
		out = -1
		lo, hi = lo-2*head, hi+2*head
	}
	c := &draw.Arc{C: a.Apex, R: r, From: lo, To: hi}
	c.Class, c.Owner = draw.Dimension, a.Owner
	s.Add(c)
	Arrow(s, a.Apex.Add(from.Mul(r)), a.chord(from, r, -out)).Owner = a.Owner
	Arrow(s, a.Apex.Add(to.Mul(r)), a.chord(to, r, out)).Owner = a.Owner
	b := a.Box(r)
	t := s.Text(b.Min, Text, a.Text)
	t.Owner, t.Halo = a.Owner, true
}

// chord is the direction of an arrowhead whose tip lies on the arc at a line and
// whose base lies on the arc too; turn is 1 where it points counter-clockwise.
func (a Angle) chord(line vec.P, r, turn float64) vec.P {
	return line.Left().Mul(turn).Add(line.Mul(arrow / (2 * r)))
}
