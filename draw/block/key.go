package block

import (
	"pegwright/draw"
	"pegwright/geom"
	"pegwright/geom/vec"
)

// The isometric directions of ISO 5456-3 on paper: x and y rise to the right
// and to the left at 30°, z is upright, all scales equal.
const (
	cos30 = 0.8660254037844386
	sin30 = 0.5
)

func isometric(p vec.V) vec.P {
	return vec.P{X: float64((p.X - p.Y) * cos30), Y: float64((p.X+p.Y)*sin30) + p.Z}
}

// KeyView draws the frame small in the field, as seen from the south-west and
// above: one line for each timber, those whose id is in dark wide, the others
// fine. Nothing is hidden.
func KeyView(s *draw.Sheet, f Field, fr *geom.Frame, dark map[string]bool) {
	b := draw.NoBox()
	ends := make([][2]vec.P, 0, len(fr.Timbers))
	for _, t := range fr.Timbers {
		mid := vec.V{Y: t.Ideal[0] / 2, Z: t.Ideal[1] / 2}
		a, z := isometric(t.Place.Out(mid)), isometric(t.Place.Out(mid.Add(vec.V{X: t.Length})))
		ends = append(ends, [2]vec.P{a, z})
		b = b.With(a, z)
	}
	if b.Empty() || f.W() <= 2 || f.H() <= 2 {
		return
	}
	k := min((f.W()-2)/max(b.W(), 1), (f.H()-2)/max(b.H(), 1))
	at := func(p vec.P) vec.P { return f.Mid().Add(p.Sub(b.Mid()).Mul(k)) }
	fine, wide := draw.PenFor(draw.Hatch, s.Step), draw.PenFor(draw.Register, s.Step)
	wide.Width *= 1.4
	for _, pass := range []bool{false, true} {
		pen := &fine
		if pass {
			pen = &wide
		}
		for i, t := range fr.Timbers {
			if dark[t.ID] != pass {
				continue
			}
			l := s.Line(draw.Part, at(ends[i][0]), at(ends[i][1]))
			l.Owner, l.Layer, l.Pen = t.ID, "key view", pen
		}
	}
}
