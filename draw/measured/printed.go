package measured

import "pegwright/geom/vec"

// Printed returns the page as it comes out of a printer that is off: distances
// along the paper's sides are multiplied by kx and ky, away from about. Curves
// that are now full circles are circles, and circles that no longer are stay
// among the circles with the middle of their two radii, and Off as large as
// they leave it.
func (p Page) Printed(about vec.P, kx, ky float64) Page {
	at := func(q vec.P) vec.P {
		d := q.Sub(about)
		return about.Add(vec.P{X: d.X * kx, Y: d.Y * ky})
	}
	out := Page{W: p.W, H: p.H}
	for _, c := range p.Circles {
		c.C = at(c.C)
		c.Off += c.R * max(kx-ky, ky-kx) / 2
		c.R *= (kx + ky) / 2
		out.Circles = append(out.Circles, c)
	}
	for _, q := range p.Paths {
		segs := make([]Seg, len(q.Segs))
		for i, s := range q.Segs {
			segs[i] = Seg{Op: s.Op, P: at(s.P), C1: at(s.C1), C2: at(s.C2)}
		}
		q.Segs = segs
		out.sort(q)
	}
	for _, t := range p.Texts {
		q := at(vec.P{X: t.X, Y: t.Y})
		t.X, t.Y = q.X, q.Y
		out.Texts = append(out.Texts, t)
	}
	return out
}
