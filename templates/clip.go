package templates

import (
	"pegwright/draw"
	"pegwright/geom/vec"
)

// clipSegment returns the part of the segment from a to b inside the box
// (Liang and Barsky); ok is false when there is none.
func clipSegment(box draw.Box, a, b vec.P) (p, q vec.P, ok bool) {
	d := b.Sub(a)
	t0, t1 := slab(0, 1, a.X, d.X, box.Min.X, box.Max.X)
	if t0 < t1 {
		t0, t1 = slab(t0, t1, a.Y, d.Y, box.Min.Y, box.Max.Y)
	}
	if t0 >= t1 {
		return p, q, false
	}
	p, q = a, b
	if t0 > 0 {
		p = a.Lerp(b, t0)
	}
	if t1 < 1 {
		q = a.Lerp(b, t1)
	}
	return p, q, true
}

// slab narrows the stretch t0 to t1 of the way from a place by d along one axis
// to what lies between lo and hi; nothing is left of it where t0 comes out no
// less than t1.
func slab(t0, t1, from, d, lo, hi float64) (float64, float64) {
	switch {
	case d > 0:
		return max(t0, (from-lo)/-d), min(t1, (hi-from)/d)
	case d < 0:
		return max(t0, (hi-from)/d), min(t1, (from-lo)/-d)
	case from < lo || from > hi:
		return 1, 0
	}
	return t0, t1
}

// clipArea returns the part of a convex polygon inside the box.
func clipArea(box draw.Box, poly []vec.P) []vec.P {
	for side := range 4 {
		over := func(p vec.P) float64 {
			return [4]float64{box.Min.X - p.X, p.X - box.Max.X, box.Min.Y - p.Y, p.Y - box.Max.Y}[side]
		}
		var out []vec.P
		for i, p := range poly {
			q := poly[(i+1)%len(poly)]
			f, g := over(p), over(q)
			if f <= 0 {
				out = append(out, p)
			}
			if (f < 0 && g > 0) || (f > 0 && g < 0) {
				out = append(out, p.Lerp(q, f/(f-g)))
			}
		}
		poly = out
	}
	return poly
}

// within reports whether box a lies inside box b.
func within(a, b draw.Box) bool {
	const slack = 1e-9
	return a.Min.X >= b.Min.X-slack && a.Min.Y >= b.Min.Y-slack && a.Max.X <= b.Max.X+slack && a.Max.Y <= b.Max.Y+slack
}

// touch reports whether two boxes share an area.
func touch(a, b draw.Box) bool {
	return min(a.Max.X, b.Max.X)-max(a.Min.X, b.Min.X) > 1e-9 && min(a.Max.Y, b.Max.Y)-max(a.Min.Y, b.Min.Y) > 1e-9
}

// grown returns the box moved out by d on every side.
func grown(b draw.Box, d float64) draw.Box {
	e := vec.P{X: d, Y: d}
	return draw.Box{Min: b.Min.Sub(e), Max: b.Max.Add(e)}
}
