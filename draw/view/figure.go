package view

import (
	"sort"

	"pegwright/draw"
	"pegwright/geom/vec"
)

// Scaled returns the figure k times as large about the paper's origin, which
// comes to lie at at.
func (f Figure) Scaled(k float64, at vec.P) Figure {
	place := func(p vec.P) vec.P { return at.Add(p.Mul(k)) }
	out := Figure{Owner: f.Owner, Loops: placed(f.Loops, place), Voids: placed(f.Voids, place)}
	for _, s := range f.Torn {
		out.Torn = append(out.Torn, [2]vec.P{place(s[0]), place(s[1])})
	}
	return out
}

func placed(loops [][]vec.P, place func(vec.P) vec.P) [][]vec.P {
	out := make([][]vec.P, len(loops))
	for i, l := range loops {
		out[i] = make([]vec.P, len(l))
		for k, p := range l {
			out[i][k] = place(p)
		}
	}
	return out
}

// Hatch returns hatching of the figure: see the function Hatch. Bores stay
// free.
func (f Figure) Hatch(angle, spacing float64) []*draw.Path {
	return hatch(f.Owner, f.Loops, f.Voids, angle, spacing)
}

// Outline returns the border of the cut wood, bores opened, as lines of class
// draw.Part (closed where nothing divides a loop) and break lines where the
// timber is broken off.
func (f Figure) Outline() []draw.Item {
	var out []draw.Item
	put := func(l []vec.P, keep func(vec.P) bool, others [][]vec.P) {
		pieces, whole := border(l, keep, others)
		for _, p := range pieces {
			out = append(out, &draw.Path{Meta: draw.Meta{Class: draw.Part, Owner: f.Owner}, Pts: p, Closed: whole})
		}
	}
	for _, l := range f.Loops {
		put(l, func(p vec.P) bool { return !insideAny(p, f.Voids) && !f.isTorn(p) }, f.Voids)
	}
	for i, v := range f.Voids {
		rest := append(append([][]vec.P(nil), f.Voids[:i]...), f.Voids[i+1:]...)
		put(v, func(p vec.P) bool { return inside(p, f.Loops) && !insideAny(p, rest) },
			append(append([][]vec.P(nil), f.Loops...), rest...))
	}
	for _, s := range f.Torn {
		out = append(out, &draw.Path{Meta: draw.Meta{Class: Break, Owner: f.Owner}, Pts: Zigzag(s[0], s[1])})
	}
	return out
}

// isTorn reports whether p lies on a side at which the timber is broken off.
func (f Figure) isTorn(p vec.P) bool {
	for _, s := range f.Torn {
		d := s[1].Sub(s[0])
		t := p.Sub(s[0]).Dot(d) / d.Dot(d)
		if t > 0 && t < 1 && s[0].Lerp(s[1], t).Dist(p) < same {
			return true
		}
	}
	return false
}

// border returns the chains of the loop's sides where keep holds, divided
// where the other loops cross it, and whether that is the whole loop; then the
// one chain is the loop itself.
func border(l []vec.P, keep func(vec.P) bool, others [][]vec.P) (chains [][]vec.P, whole bool) {
	whole = true
	for i, a := range l {
		b := l[(i+1)%len(l)]
		at := []float64{0, 1}
		for _, o := range others {
			at = append(at, crossings(a, b, o)...)
		}
		sort.Float64s(at)
		for k := 0; k+1 < len(at); k++ {
			if at[k+1]-at[k] < 1e-9 {
				continue
			}
			if !keep(a.Lerp(b, (at[k]+at[k+1])/2)) {
				whole = false
				continue
			}
			p, q := a.Lerp(b, at[k]), a.Lerp(b, at[k+1])
			if n := len(chains); n > 0 && chains[n-1][len(chains[n-1])-1].Dist(p) < same {
				chains[n-1] = append(chains[n-1], q)
				continue
			}
			chains = append(chains, []vec.P{p, q})
		}
	}
	if whole {
		return [][]vec.P{l}, true
	}
	if n := len(chains); n > 1 && chains[n-1][len(chains[n-1])-1].Dist(chains[0][0]) < same {
		chains[0] = append(chains[n-1], chains[0][1:]...)
		chains = chains[:n-1]
	}
	return chains, whole
}

// crossings returns where the loop crosses the segment from a to b, as
// fractions of its length.
func crossings(a, b vec.P, loop []vec.P) []float64 {
	var out []float64
	d := b.Sub(a)
	for i, p := range loop {
		q := loop[(i+1)%len(loop)]
		hp, hq := d.Cross(p.Sub(a)), d.Cross(q.Sub(a))
		if (hp <= 0) == (hq <= 0) {
			continue
		}
		x := p.Lerp(q, hp/(hp-hq))
		if t := x.Sub(a).Dot(d) / d.Dot(d); t > 0 && t < 1 {
			out = append(out, t)
		}
	}
	return out
}

// inside reports whether p lies in the loops, even-odd.
func inside(p vec.P, loops [][]vec.P) bool {
	in := false
	for _, l := range loops {
		for i, a := range l {
			b := l[(i+1)%len(l)]
			if (a.Y <= p.Y) != (b.Y <= p.Y) && a.X+(b.X-a.X)*((p.Y-a.Y)/(b.Y-a.Y)) > p.X {
				in = !in
			}
		}
	}
	return in
}

// insideAny reports whether p lies in any of the loops.
func insideAny(p vec.P, loops [][]vec.P) bool {
	for i := range loops {
		if inside(p, loops[i:i+1]) {
			return true
		}
	}
	return false
}
