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
			c.Pts = make([]vec.P, len(t.Pts))
			for i, p := range t.Pts {
				c.Pts[i] = to(p)
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
