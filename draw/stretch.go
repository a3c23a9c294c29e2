package draw

import (
	"math"

	"pegwright/geom/vec"
)

// Stretch moves everything on the sheet away from the point about, or toward
// it: distances along the paper's sides are multiplied by kx and ky, both above
// zero. Circles and arcs become ellipses where kx and ky differ; lettering and
// pens keep their sizes, and the paper keeps its own.
func (s *Sheet) Stretch(about vec.P, kx, ky float64) {
	at := func(p vec.P) vec.P {
		d := p.Sub(about)
		return about.Add(vec.P{X: float64(d.X * kx), Y: float64(d.Y * ky)})
	}
	for i, it := range s.Items {
		switch t := it.(type) {
		case *Path:
			stretched(t.Pts, at)
			for _, h := range t.Holes {
				stretched(h, at)
			}
		case *Text:
			t.At = at(t.At)
		case *Circle:
			s.Items[i] = (&Ellipse{Meta: t.Meta, C: at(t.C), RX: t.R, RY: t.R, Filled: t.Filled, Grey: t.Grey}).stretch(kx, ky)
		case *Arc:
			e := t.Ellipse()
			e.C = at(e.C)
			s.Items[i] = e.stretch(kx, ky)
		case *Ellipse:
			t.C = at(t.C)
			t.stretch(kx, ky)
		}
	}
	for i := range s.Links {
		b := &s.Links[i].Rect
		b.Min, b.Max = at(b.Min), at(b.Max)
	}
}

func stretched(pts []vec.P, at func(vec.P) vec.P) {
	for i, p := range pts {
		pts[i] = at(p)
	}
}

// stretch stretches an ellipse about its own centre. The point at parameter t
// is M (cos t, sin t); the half axes are the singular values of M, found in
// closed form for a matrix of two rows.
func (e *Ellipse) stretch(kx, ky float64) *Ellipse {
	if e.Rot == 0 {
		e.RX, e.RY = float64(e.RX*kx), float64(e.RY*ky)
		return e
	}
	sin, cos := math.Sincos(e.Rot)
	a, b := kx*e.RX*cos, -kx*e.RY*sin
	c, d := ky*e.RX*sin, ky*e.RY*cos
	same, other := math.Hypot((a+d)/2, (c-b)/2), math.Hypot((a-d)/2, (c+b)/2)
	e.RX, e.RY = same+other, same-other
	p, q := math.Atan2((c+b)/2, (a-d)/2), math.Atan2((c-b)/2, (a+d)/2)
	turn := (q - p) / 2
	e.Rot, e.From, e.To = (q+p)/2, e.From+turn, e.To+turn
	return e
}
