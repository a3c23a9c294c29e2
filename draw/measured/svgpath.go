package measured

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"pegwright/geom/vec"
)

// then returns the matrix that applies n first and m second.
func (m affine) then(n affine) affine {
	return affine{
		m.a*n.a + m.c*n.b, m.b*n.a + m.d*n.b,
		m.a*n.c + m.c*n.d, m.b*n.c + m.d*n.d,
		m.a*n.e + m.c*n.f + m.e, m.b*n.e + m.d*n.f + m.f,
	}
}

// transform reads translate(x y) and rotate(degrees), in any number.
func transform(s string) (affine, error) {
	m := affine{a: 1, d: 1}
	for s = strings.TrimSpace(s); s != ""; s = strings.TrimSpace(s) {
		word, rest, ok := strings.Cut(s, "(")
		args, tail, ok2 := strings.Cut(rest, ")")
		if !ok || !ok2 {
			return m, fmt.Errorf("transform %q", s)
		}
		v, err := numbers(args, -1)
		switch {
		case err != nil:
			return m, err
		case word == "translate" && len(v) == 2:
			m = m.then(affine{1, 0, 0, 1, v[0], v[1]})
		case word == "rotate" && len(v) == 1:
			sin, cos := math.Sincos(v[0] * math.Pi / 180)
			m = m.then(affine{cos, sin, -sin, cos, 0, 0})
		default:
			return m, fmt.Errorf("transform %q", s)
		}
		s = tail
	}
	return m, nil
}

// numbers reads numbers parted by spaces or commas; n < 0 takes any number.
func numbers(s string, n int) ([]float64, error) {
	words := strings.FieldsFunc(s, func(c rune) bool { return c == ' ' || c == ',' })
	if n >= 0 && len(words) != n {
		return nil, fmt.Errorf("%q: want %d numbers", s, n)
	}
	out := make([]float64, len(words))
	for i, w := range words {
		v, err := strconv.ParseFloat(w, 64)
		if err != nil {
			return nil, err
		}
		out[i] = v
	}
	return out, nil
}

// path reads a path of the commands M, L, H, V, A and Z, all absolute.
func (r *svgReader) path(s state) error {
	p := Path{Keys: s.keys()}
	var err error
	if p.Stroke, err = s.stroke(); err != nil {
		return err
	}
	var at, start vec.P // in the element's own axes
	for _, c := range commands(s.attrs["d"]) {
		v, err := numbers(c[1:], -1)
		if err != nil {
			return err
		}
		switch {
		case c[0] == 'Z' && len(v) == 0:
			p.Closed, at = true, start
		case (c[0] == 'M' || c[0] == 'L') && len(v) == 2:
			at = vec.P{X: v[0], Y: v[1]}
			if c[0] == 'M' {
				start = at
			}
			p.Segs = append(p.Segs, Seg{Op: c[0], P: r.paper(s, at.X, at.Y)})
		case (c[0] == 'H' || c[0] == 'V') && len(v) == 1:
			if c[0] == 'H' {
				at.X = v[0]
			} else {
				at.Y = v[0]
			}
			p.Segs = append(p.Segs, Seg{Op: 'L', P: r.paper(s, at.X, at.Y)})
		case c[0] == 'A' && len(v) == 7:
			to := vec.P{X: v[5], Y: v[6]}
			for _, q := range arc(at, to, v[0], v[1], v[2]*math.Pi/180, v[3] != 0, v[4] != 0) {
				p.Segs = append(p.Segs, Seg{Op: 'C', C1: r.paper(s, q[0].X, q[0].Y), C2: r.paper(s, q[1].X, q[1].Y), P: r.paper(s, q[2].X, q[2].Y)})
			}
			at = to
		default:
			return fmt.Errorf("path command %q is not one of ours", c)
		}
	}
	r.page.sort(p)
	return nil
}

// commands parts path data before every letter.
func commands(d string) []string {
	var out []string
	for _, c := range d {
		if c >= 'A' && c <= 'Z' || c >= 'a' && c <= 'z' || len(out) == 0 {
			out = append(out, "")
		}
		out[len(out)-1] += string(c)
	}
	return out
}

// arc turns an elliptical arc into Bézier curves of an eighth of a turn at
// most, from end points to centre as in SVG 1.1, appendix F.6.5 and F.6.6.
func arc(from, to vec.P, rx, ry, phi float64, large, sweep bool) [][3]vec.P {
	if from == to || rx == 0 || ry == 0 {
		return nil
	}
	sin, cos := math.Sincos(phi)
	h := from.Sub(to).Mul(0.5)
	x, y := cos*h.X+sin*h.Y, -sin*h.X+cos*h.Y
	if l := x*x/(rx*rx) + y*y/(ry*ry); l > 1 {
		rx, ry = rx*math.Sqrt(l), ry*math.Sqrt(l)
	}
	k := math.Sqrt(math.Max(0, (rx*rx*ry*ry-rx*rx*y*y-ry*ry*x*x)/(rx*rx*y*y+ry*ry*x*x)))
	if large == sweep {
		k = -k
	}
	cx, cy := k*rx*y/ry, -k*ry*x/rx
	a := math.Atan2((y-cy)/ry, (x-cx)/rx)
	turn := math.Atan2((-y-cy)/ry, (-x-cx)/rx) - a
	if sweep && turn < 0 {
		turn += 2 * math.Pi
	}
	if !sweep && turn > 0 {
		turn -= 2 * math.Pi
	}
	mid := from.Lerp(to, 0.5).Add(vec.P{X: cos*cx - sin*cy, Y: sin*cx + cos*cy})
	place := func(u, v float64) vec.P {
		return vec.P{X: cos*rx*u - sin*ry*v, Y: sin*rx*u + cos*ry*v}
	}
	n := max(1, int(math.Ceil(math.Abs(turn)/(math.Pi/4)-1e-9)))
	step := turn / float64(n)
	reach := 4.0 / 3 * math.Tan(step/4)
	out := make([][3]vec.P, n)
	for i := range n {
		s0, c0 := math.Sincos(a + float64(i)*step)
		s1, c1 := math.Sincos(a + float64(i+1)*step)
		out[i] = [3]vec.P{mid.Add(place(c0-reach*s0, s0+reach*c0)), mid.Add(place(c1+reach*s1, s1-reach*c1)), mid.Add(place(c1, s1))}
	}
	out[n-1][2] = to // as written, so that a path that is closed there ends without a line
	return out
}
