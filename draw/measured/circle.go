package measured

import (
	"math"

	"pegwright/geom/vec"
)

// asCircle reports whether a path is one full circle made of curves, and which.
// The centre and radius are a least-squares fit (Kåsa: x² + y² = 2ax + 2by + c)
// to eight points of every curve, so they say where the line really runs, not
// where control points were put.
func asCircle(p Path) (Circle, bool) {
	if len(p.Segs) < 3 || p.Segs[0].Op != 'M' {
		return Circle{}, false
	}
	var pts []vec.P
	at := p.Segs[0].P
	for _, s := range p.Segs[1:] {
		if s.Op == 'L' && s.P.Dist(at) < 1e-4 { // a closing line of no length
			continue
		}
		if s.Op != 'C' {
			return Circle{}, false
		}
		for i := range 8 {
			pts = append(pts, bezier(at, s.C1, s.C2, s.P, float64(i)/8))
		}
		at = s.P
	}
	if len(pts) == 0 || at.Dist(p.Segs[0].P) > 1e-3 {
		return Circle{}, false
	}
	c, r := fit(pts)
	off := 0.0
	for _, q := range pts {
		off = math.Max(off, math.Abs(q.Dist(c)-r))
	}
	return Circle{p.Keys, p.Stroke, c, r, off}, off <= 0.002+3e-4*r
}

func bezier(a, b, c, d vec.P, t float64) vec.P {
	u := 1 - t
	return a.Mul(u * u * u).Add(b.Mul(3 * u * u * t)).Add(c.Mul(3 * u * t * t)).Add(d.Mul(t * t * t))
}

// fit returns the circle that fits the points best in the sense of Kåsa.
func fit(pts []vec.P) (vec.P, float64) {
	n := float64(len(pts))
	var m vec.P
	for _, p := range pts {
		m = m.Add(p.Mul(1 / n))
	}
	var xx, xy, yy, xz, yz, zz float64
	for _, p := range pts {
		d := p.Sub(m)
		z := d.Dot(d)
		xx, xy, yy = xx+d.X*d.X, xy+d.X*d.Y, yy+d.Y*d.Y
		xz, yz, zz = xz+d.X*z, yz+d.Y*z, zz+z
	}
	det := 2 * (xx*yy - xy*xy)
	if det == 0 {
		return m, math.Inf(1)
	}
	o := vec.P{X: (xz*yy - yz*xy) / det, Y: (yz*xx - xz*xy) / det}
	return m.Add(o), math.Sqrt(zz/n + o.Dot(o))
}

// sort puts a path where it belongs.
func (p *Page) sort(q Path) {
	if c, ok := asCircle(q); ok {
		p.Circles = append(p.Circles, c)
		return
	}
	p.Paths = append(p.Paths, q)
}
