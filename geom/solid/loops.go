package solid

import (
	"math"

	"pegwright/geom/vec"
)

// tracer joins the directed edges of one flat into loops.
type tracer struct {
	v    []vec.V
	n    vec.V // where the flat faces
	rims []rim
	out  map[int][]int // point -> edges that leave it
	used []bool
}

// trace returns the loops of rims, which all lie on one flat that faces n:
// outer loops counter-clockwise seen against n, holes clockwise. No loop
// visits a point twice; pieces that touch at a point are loops of their own.
// Points inside a straight run are left out.
func trace(v []vec.V, rims []rim, n vec.V) [][]vec.V {
	t := tracer{v: v, n: n, rims: rims, out: map[int][]int{}, used: make([]bool, len(rims))}
	for i, r := range rims {
		t.out[r.a] = append(t.out[r.a], i)
	}
	var loops [][]vec.V
	for i := range rims {
		if t.used[i] {
			continue
		}
		for _, l := range untangle(t.follow(i)) {
			pts := make([]vec.V, len(l))
			for j, k := range l {
				pts[j] = v[k]
			}
			if pts = straightened(pts); len(pts) >= 3 {
				loops = append(loops, pts)
			}
		}
	}
	return loops
}

// follow walks from edge i until no edge goes on.
func (t *tracer) follow(i int) []int {
	var loop []int
	for i >= 0 {
		t.used[i] = true
		loop = append(loop, t.rims[i].a)
		i = t.next(i)
	}
	return loop
}

// next returns the free edge after edge i, or -1: of several, the one that
// bounds the same wedge of the polygon at their point.
func (t *tracer) next(i int) int {
	at := t.rims[i].b
	best, least := -1, math.Inf(1)
	back := t.v[t.rims[i].a].Sub(t.v[at])
	for _, j := range t.out[at] {
		if t.used[j] {
			continue
		}
		if len(t.out[at]) == 1 {
			return j
		}
		on := t.v[t.rims[j].b].Sub(t.v[at])
		if a := turn(on, back, t.n); a < least {
			best, least = j, a
		}
	}
	return best
}

// turn returns the angle from a round to b, counter-clockwise seen against n,
// in radians over 0 to 2π.
func turn(a, b, n vec.V) float64 {
	x := math.Atan2(a.Cross(b).Dot(n), a.Dot(b))
	if x <= 1e-9 {
		x += 2 * math.Pi
	}
	return x
}

// untangle splits a closed walk into loops that visit no point twice.
func untangle(walk []int) [][]int {
	var loops [][]int
	var path []int
	at := map[int]int{}
	for _, v := range walk {
		if i, ok := at[v]; ok {
			loops = append(loops, append([]int(nil), path[i:]...))
			for _, w := range path[i:] {
				delete(at, w)
			}
			path = path[:i]
		}
		at[v] = len(path)
		path = append(path, v)
	}
	return append(loops, path)
}

// straightened returns a loop without the points that lie on the straight line
// between their neighbours.
func straightened(loop []vec.V) []vec.V {
	for i := 0; i < len(loop) && len(loop) >= 3; {
		a, b, c := loop[(i+len(loop)-1)%len(loop)], loop[i], loop[(i+1)%len(loop)]
		ac := c.Sub(a)
		l := ac.Len()
		if l <= near || (ac.Cross(b.Sub(a)).Len() <= near*l && b.Sub(a).Dot(c.Sub(b)) > 0) {
			loop = append(loop[:i:i], loop[i+1:]...)
			continue
		}
		i++
	}
	return loop
}

// area returns the signed area (mm²) of a loop, positive when it runs
// counter-clockwise seen against n.
func area(loop []vec.V, n vec.V) float64 {
	var s vec.V
	for i := 2; i < len(loop); i++ {
		s = s.Add(loop[i-1].Sub(loop[0]).Cross(loop[i].Sub(loop[0])))
	}
	return s.Dot(n) / 2
}

// encloses reports whether p lies inside a loop of the plane with normal n, by
// the number of edges that a ray from p crosses.
func encloses(loop []vec.V, p, n vec.V) bool {
	x := across(n)
	y := n.Cross(x)
	in := false
	for i, a := range loop {
		b := loop[(i+1)%len(loop)]
		ya, yb := y.Dot(a.Sub(p)), y.Dot(b.Sub(p))
		if (ya > 0) == (yb > 0) {
			continue
		}
		xa, xb := x.Dot(a.Sub(p)), x.Dot(b.Sub(p))
		if xa+float64((xb-xa)*(ya/(ya-yb))) > 0 {
			in = !in
		}
	}
	return in
}

// across returns a unit vector square to n.
func across(n vec.V) vec.V {
	ax, ay, az := math.Abs(n.X), math.Abs(n.Y), math.Abs(n.Z)
	switch {
	case ax <= ay && ax <= az:
		return n.Cross(vec.V{X: 1}).Unit()
	case ay <= az:
		return n.Cross(vec.V{Y: 1}).Unit()
	}
	return n.Cross(vec.V{Z: 1}).Unit()
}
