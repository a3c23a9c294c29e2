package view

import (
	"math"
	"sort"

	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// Figure is what a plane cuts of one part, on paper.
type Figure struct {
	Owner string // of the part
	// Loops bound the wood, even-odd: outer loops and holes.
	Loops [][]vec.P
	// Voids are convex pieces that bores take out of it; they may reach out
	// of the wood and overlap each other.
	Voids [][]vec.P
	// Torn are the sides of the loops at which the timber is broken off.
	Torn [][2]vec.P
}

// Section cuts the parts by a plane and returns their figures as cam sees
// them, in the order of the parts; parts that are not cut have none. For a
// section in true shape cam looks straight at the plane.
func Section(parts []Part, pl solid.Plane, cam Camera, o Options) []Figure {
	var out []Figure
	for i := range parts {
		p := &parts[i]
		var loops [][]vec.V
		if p.Body != nil {
			back := vec.Identity
			back.O = p.Shift.Neg()
			loops = p.Body.Section(pl.Moved(back))
			for k := range loops {
				loops[k] = shifted(loops[k], p.Shift)
			}
		} else {
			loops = cellLoops(p.Placed(), pl)
		}
		if len(loops) == 0 {
			continue
		}
		f := Figure{Owner: p.Owner}
		for _, l := range loops {
			f.Loops = append(f.Loops, onPaper(l, cam, o))
		}
		if p.Body != nil {
			f.Torn = torn(p, loops, cam, o)
		}
		for _, b := range p.bores() {
			if v := boreFigure(b, pl); len(v) > 0 {
				f.Voids = append(f.Voids, onPaper(v, cam, o))
			}
		}
		out = append(out, f)
	}
	return out
}

// torn returns the sides of the loops that lie on planes at which the part's
// body is broken off, on paper.
func torn(p *Part, loops [][]vec.V, cam Camera, o Options) [][2]vec.P {
	planes := p.Body.CutPlanes(breakJoint)
	var out [][2]vec.P
	for _, l := range loops {
		for i, a := range l {
			b := l[(i+1)%len(l)]
			for _, pl := range planes {
				ha, hb := pl.Height(a.Sub(p.Shift)), pl.Height(b.Sub(p.Shift))
				if max(math.Abs(ha), math.Abs(hb)) < 4*solid.Snap {
					out = append(out, [2]vec.P{o.paper(cam, a), o.paper(cam, b)})
					break
				}
			}
		}
	}
	return out
}

func shifted(l []vec.V, by vec.V) []vec.V {
	out := make([]vec.V, len(l))
	for i, p := range l {
		out[i] = p.Add(by)
	}
	return out
}

func onPaper(l []vec.V, cam Camera, o Options) []vec.P {
	out := make([]vec.P, len(l))
	for i, p := range l {
		out[i] = o.paper(cam, p)
	}
	return out
}

// roundness is how many sides stand for the cylinder of a bore that is cut
// across: a chord lies within 1/1600 of the radius of the circle.
const roundness = 88

// boreFigure returns what the plane cuts of a bore: a rectangle, exact, where
// the plane runs along it; else a polygon inside the true ellipse, ended where
// the bore ends.
func boreFigure(b Bore, pl solid.Plane) []vec.V {
	a, _ := axisOf(b)
	r := b.Diameter / 2
	h := pl.Height(b.From)
	if math.Abs(a.Dot(pl.N)) < 1e-9 {
		if math.Abs(h) >= r {
			return nil
		}
		off := pl.N.Mul(-h)
		half := a.Cross(pl.N).Unit().Mul(math.Sqrt(r*r - h*h))
		from, to := b.From.Add(off), b.To.Add(off)
		return []vec.V{from.Sub(half), to.Sub(half), to.Add(half), from.Add(half)}
	}
	u, v := around(a)
	var near, far []vec.V
	for i := range roundness {
		s, k := math.Sincos(full * float64(i) / roundness)
		d := u.Mul(r * k).Add(v.Mul(r * s))
		near, far = append(near, b.From.Add(d)), append(far, b.To.Add(d))
	}
	loops := cellLoops([]solid.Convex{frustum(near, far)}, pl)
	if len(loops) == 0 {
		return nil
	}
	return loops[0]
}

// cellLoops returns what a plane cuts of convex cells that share no volume,
// seams between cells cancelled. Where the plane lies on a face, the cells
// behind it count.
func cellLoops(cells []solid.Convex, pl solid.Plane) [][]vec.V {
	var pts []vec.V
	index := func(p vec.V) int {
		for i, q := range pts {
			if p.Dist(q) <= 2*solid.Snap {
				return i
			}
		}
		pts = append(pts, p)
		return len(pts) - 1
	}
	edges := map[[2]int]int{}
	for _, c := range cells {
		c = c.Clip(pl, "")
		for _, f := range c.Faces {
			if f.Plane.N.Dot(pl.N) < 1-1e-12 || math.Abs(pl.Height(c.V[f.Loop[0]])) > solid.Snap {
				continue
			}
			for k, a := range f.Loop {
				i, j := index(c.V[a]), index(c.V[f.Loop[(k+1)%len(f.Loop)]])
				if edges[[2]int{j, i}] > 0 {
					edges[[2]int{j, i}]--
				} else if i != j {
					edges[[2]int{i, j}]++
				}
			}
		}
	}
	return chained(edges, pts)
}

// chained walks directed edges into loops, in the order of the points.
func chained(edges map[[2]int]int, pts []vec.V) [][]vec.V {
	next := make([][]int, len(pts))
	for e, n := range edges {
		if n > 0 {
			next[e[0]] = append(next[e[0]], e[1])
		}
	}
	for _, n := range next {
		sort.Ints(n)
	}
	var out [][]vec.V
	for i := range next {
		for len(next[i]) > 0 {
			var loop []vec.V
			for at := i; len(next[at]) > 0; {
				loop = append(loop, pts[at])
				to := next[at][0]
				next[at] = next[at][1:]
				at = to
			}
			out = append(out, loop)
		}
	}
	return out
}
