package draw

import (
	"math"

	"pegwright/geom/vec"
)

// Bounds returns the box of all items, line widths apart. Text counts with its
// anchor and its height only: the model has no font (draw/font has).
func (s *Sheet) Bounds() Box {
	b := NoBox()
	for _, it := range s.Items {
		if o := ItemBounds(it); !o.Empty() {
			b = b.With(o.Min, o.Max)
		}
	}
	return b
}

// ItemBounds returns the box of one item, as Bounds does for a sheet.
func ItemBounds(it Item) Box {
	switch t := it.(type) {
	case *Path: // nearly all items are, and most have no holes
		b := NoBox().With(t.Pts...)
		for _, h := range t.Holes {
			b = b.With(h...)
		}
		return b
	case *Circle:
		r := vec.P{X: t.R, Y: t.R}
		return Box{t.C.Sub(r), t.C.Add(r)}
	}
	return NoBox().With(extremes(it)...)
}

// extremes returns points whose box is the box of an item that is neither a path
// nor a whole circle.
func extremes(it Item) []vec.P {
	switch t := it.(type) {
	case *Arc:
		return t.Ellipse().extremes()
	case *Ellipse:
		return t.extremes()
	case *Text:
		up := vec.P{X: -math.Sin(t.Rot), Y: math.Cos(t.Rot)}.Mul(t.Height)
		return []vec.P{t.At, t.At.Add(up)}
	}
	return nil
}

// Ellipse returns the arc as a part of an ellipse with equal half axes.
func (a *Arc) Ellipse() *Ellipse {
	e := &Ellipse{Meta: a.Meta, C: a.C, RX: a.R, RY: a.R, From: a.From, To: a.To}
	if a.From == a.To {
		e.To = a.From + 1e-12
	}
	return e
}

// At returns the point of the ellipse at parameter t, radians.
func (e *Ellipse) At(t float64) vec.P {
	u := vec.P{X: math.Cos(e.Rot), Y: math.Sin(e.Rot)}
	return e.C.Add(u.Mul(e.RX * math.Cos(t))).Add(u.Left().Mul(e.RY * math.Sin(t)))
}

// Span returns the parameters at which the ellipse begins and ends, radians,
// the second larger than the first by at most a full turn; whole reports a full
// ellipse.
func (e *Ellipse) Span() (from, to float64, whole bool) {
	const turn = 2 * math.Pi
	if e.From == e.To {
		return e.From, e.From + turn, true
	}
	d := math.Mod(e.To-e.From, turn)
	if d < 0 {
		d += turn
	}
	if d == 0 || e.To-e.From >= turn {
		return e.From, e.From + turn, true
	}
	return e.From, e.From + d, false
}

// extremes returns the ends of the span and the points within it where the
// tangent runs along an axis of the paper.
func (e *Ellipse) extremes() []vec.P {
	from, to, _ := e.Span()
	pts := []vec.P{e.At(from), e.At(to)}
	sin, cos := math.Sincos(e.Rot)
	tx := math.Atan2(-e.RY*sin, e.RX*cos)
	ty := math.Atan2(e.RY*cos, e.RX*sin)
	for _, t := range []float64{tx, tx + math.Pi, ty, ty + math.Pi} {
		t = from + math.Mod(t-from, 2*math.Pi)
		if t < from {
			t += 2 * math.Pi
		}
		if t <= to {
			pts = append(pts, e.At(t))
		}
	}
	return pts
}
