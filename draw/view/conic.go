package view

import (
	"math"
	"sort"

	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// ellipse is a conic in space: the point at angle t is C + U cos t + V sin t.
type ellipse struct{ C, U, V vec.V }

func (e ellipse) at(t float64) vec.V {
	s, k := math.Sincos(t)
	return e.C.Add(e.U.Mul(k)).Add(e.V.Mul(s))
}

// around returns two unit vectors square to the unit vector a and to each
// other, with u × v = a.
func around(a vec.V) (u, v vec.V) {
	u = a.Cross(vec.V{X: 1})
	for _, k := range []vec.V{{Y: 1}, {Z: 1}} {
		if c := a.Cross(k); c.Len() > u.Len()+1e-9 {
			u = c
		}
	}
	u = u.Unit()
	return u, a.Cross(u)
}

// rimOn returns where the bore's cylinder meets the plane, and false where the
// plane runs along the bore or does not meet its axis between the ends.
func rimOn(b Bore, pl solid.Plane) (ellipse, bool) {
	a, length := axisOf(b)
	k := a.Dot(pl.N)
	if math.Abs(k) < 1e-6 {
		return ellipse{}, false
	}
	u, v := around(a)
	r := b.Diameter / 2
	// The point c + U cos t + V sin t of the plane: each radius is moved along
	// the axis until it lies in the plane.
	at := -pl.Height(b.From) / k
	lean := func(d vec.V) vec.V { return d.Sub(a.Mul(d.Dot(pl.N) / k)).Mul(r) }
	e := ellipse{b.From.Add(a.Mul(at)), lean(u), lean(v)}
	low, high := rise(e, a)
	from := b.From.Dot(a)
	if high < from-solid.Snap || low > from+length+solid.Snap {
		return ellipse{}, false
	}
	return e, true
}

// rise returns the least and greatest height of e along a.
func rise(e ellipse, a vec.V) (low, high float64) {
	h, d := e.C.Dot(a), math.Hypot(e.U.Dot(a), e.V.Dot(a))
	return h - d, h + d
}

// turn is a part of an ellipse, from one angle to a greater one, radians.
type turn struct{ from, to float64 }

const full = 2 * math.Pi

// rimIn returns the parts of the rim e (of bore b) that lie inside the flat
// polygon and between the ends of the bore, in closed form: the rim is divided
// where the polygon's sides and the bore's ends cross it.
func rimIn(b Bore, e ellipse, poly solid.Polygon) []turn {
	a, length := axisOf(b)
	u, v := around(a)
	loops := append([][]vec.V{poly.Outer}, poly.Holes...)
	var at []float64
	for _, l := range loops {
		for i, p := range l {
			q := l[(i+1)%len(l)]
			at = append(at, pierce(b, u, v, p, q)...)
		}
	}
	from := b.From.Dot(a)
	at = append(at, heights(e, a, from)...)
	at = append(at, heights(e, a, from+length)...)
	inside := func(t float64) bool {
		p := e.at(t)
		h := p.Dot(a) - from
		return h >= -solid.Snap && h <= length+solid.Snap && within(p, poly.Plane.N, loops)
	}
	return parts(at, inside)
}

// parts divides the full turn at the angles and returns the parts whose middle
// is inside, neighbours joined.
func parts(at []float64, inside func(float64) bool) []turn {
	if len(at) == 0 {
		if inside(0) {
			return []turn{{0, full}}
		}
		return nil
	}
	for i := range at {
		at[i] = math.Mod(math.Mod(at[i], full)+full, full)
	}
	sort.Float64s(at)
	var out []turn
	for i, t := range at {
		n := at[0] + full
		if i+1 < len(at) {
			n = at[i+1]
		}
		if n-t < 1e-9 || !inside((t+n)/2) {
			continue
		}
		if k := len(out); k > 0 && t-out[k-1].to < 1e-9 {
			out[k-1].to = n
			continue
		}
		out = append(out, turn{t, n})
	}
	return out
}

// pierce returns the angles around the bore at which the segment from p to q
// passes through its cylinder.
func pierce(b Bore, u, v, p, q vec.V) []float64 {
	r := b.Diameter / 2
	px, py := p.Sub(b.From).Dot(u), p.Sub(b.From).Dot(v)
	dx, dy := q.Sub(p).Dot(u), q.Sub(p).Dot(v)
	qa, qb, qc := dx*dx+dy*dy, px*dx+py*dy, px*px+py*py-r*r
	disc := qb*qb - qa*qc
	if qa < 1e-18 || disc <= 0 {
		return nil
	}
	var out []float64
	for _, s := range []float64{-1, 1} {
		if t := (-qb + s*math.Sqrt(disc)) / qa; t >= 0 && t <= 1 {
			out = append(out, math.Atan2(py+t*dy, px+t*dx))
		}
	}
	return out
}

// heights returns the angles at which e is at height h along a.
func heights(e ellipse, a vec.V, h float64) []float64 {
	x, y := e.U.Dot(a), e.V.Dot(a)
	d := math.Hypot(x, y)
	k := h - e.C.Dot(a)
	if d < solid.Snap || math.Abs(k) >= d {
		return nil
	}
	mid, half := math.Atan2(y, x), math.Acos(k/d)
	return []float64{mid - half, mid + half}
}

// within reports whether p of the plane with normal n lies inside the loops
// (even-odd rule).
func within(p, n vec.V, loops [][]vec.V) bool {
	u, v := around(n)
	in := false
	for _, l := range loops {
		for i, a := range l {
			b := l[(i+1)%len(l)]
			ax, ay := a.Sub(p).Dot(u), a.Sub(p).Dot(v)
			bx, by := b.Sub(p).Dot(u), b.Sub(p).Dot(v)
			if (ay <= 0) != (by <= 0) && ax+(bx-ax)*(ay/(ay-by)) > 0 {
				in = !in
			}
		}
	}
	return in
}
