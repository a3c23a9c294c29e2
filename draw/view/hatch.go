package view

import (
	"math"
	"sort"

	"pegwright/draw"
	"pegwright/geom/vec"
)

// Hatch returns lines at angle (degrees counter-clockwise from the x axis) and
// spacing (millimetres) across the area that the loops bound by the even-odd
// rule, clipped to it exactly. The lines lie on one set for the whole sheet,
// so that areas hatched alike match. Class draw.Hatch; nil where spacing is
// not positive.
func Hatch(loops [][]vec.P, angle, spacing float64) []*draw.Path {
	return hatch("", loops, nil, angle, spacing)
}

// hatch hatches the loops less the voids.
func hatch(owner string, loops, voids [][]vec.P, angle, spacing float64) []*draw.Path {
	if !(spacing > 0) {
		return nil
	}
	s, c := math.Sincos(angle * math.Pi / 180)
	d := vec.P{X: c, Y: s}
	low, high := math.Inf(1), math.Inf(-1)
	for _, l := range loops {
		for _, p := range l {
			low, high = min(low, d.Cross(p)), max(high, d.Cross(p))
		}
	}
	var out []*draw.Path
	for k := math.Ceil(low / spacing); k*spacing < high; k++ {
		h := k * spacing
		ivs := spans(loops, d, h)
		for _, v := range voids {
			for _, cut := range spans([][]vec.P{v}, d, h) {
				ivs = less(ivs, cut)
			}
		}
		for _, iv := range ivs {
			if iv.to-iv.from < same {
				continue
			}
			a, b := d.Mul(iv.from).Add(d.Left().Mul(h)), d.Mul(iv.to).Add(d.Left().Mul(h))
			out = append(out, &draw.Path{Meta: draw.Meta{Class: draw.Hatch, Owner: owner}, Pts: []vec.P{a, b}})
		}
	}
	return out
}

// spans returns the parts of the line along the unit vector d at height h that
// lie in the loops, even-odd.
func spans(loops [][]vec.P, d vec.P, h float64) []turn {
	var at []float64
	for _, l := range loops {
		for i, p := range l {
			q := l[(i+1)%len(l)]
			hp, hq := d.Cross(p)-h, d.Cross(q)-h
			if (hp <= 0) != (hq <= 0) {
				at = append(at, d.Dot(p.Lerp(q, hp/(hp-hq))))
			}
		}
	}
	sort.Float64s(at)
	var out []turn
	for i := 0; i+1 < len(at); i += 2 {
		out = append(out, turn{at[i], at[i+1]})
	}
	return out
}

// less takes an interval out of a list of intervals.
func less(list []turn, cut turn) []turn {
	var out []turn
	for _, t := range list {
		if t.from < cut.from {
			out = append(out, turn{t.from, min(t.to, cut.from)})
		}
		if t.to > cut.to {
			out = append(out, turn{max(t.from, cut.to), t.to})
		}
	}
	return out
}
