package draw

import (
	"math"

	"pegwright/geom/vec"
)

// Scaled returns copies of straight and curved items, scaled by k about the origin
// and then moved by so many mm; k is above zero. Pens and patterns keep their
// sizes. Lettering is left out.
func Scaled(items []Item, k float64, move vec.P) []Item {
	to := func(p vec.P) vec.P { return move.Add(p.Mul(k)) }
	var out []Item
	for _, it := range items {
		switch t := it.(type) {
		case *Path:
			c := *t
			c.Pts, c.Holes = carried(t.Pts, to), nil
			for _, h := range t.Holes {
				c.Holes = append(c.Holes, carried(h, to))
			}
			out = append(out, &c)
		case *Circle:
			c := *t
			c.C, c.R = to(t.C), t.R*math.Abs(k)
			out = append(out, &c)
		case *Arc:
			c := *t
			c.C, c.R = to(t.C), t.R*math.Abs(k)
			out = append(out, &c)
		case *Ellipse:
			c := *t
			c.C, c.RX, c.RY = to(t.C), t.RX*k, t.RY*k
			out = append(out, &c)
		}
	}
	return out
}

// carried returns points where a map takes them.
func carried(pts []vec.P, to func(vec.P) vec.P) []vec.P {
	out := make([]vec.P, len(pts))
	for i, p := range pts {
		out[i] = to(p)
	}
	return out
}
