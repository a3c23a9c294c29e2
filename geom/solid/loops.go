package solid

import (
	"math"
	"slices"

	"pegwright/geom/vec"
)

// tracer joins the directed edges of one flat after another into loops.
type tracer struct {
	v    []vec.V
	n    vec.V // where the flat faces
	rims []rim
	from lists // the edges that leave a point
	used []bool
	walk []int32   // the points of one walk round
	path []int32   // those of them that are in no loop yet
	at   []int32   // per point: where it stands in path, counted from 1; 0 for nowhere
	room []vec.V   // for the points of all loops
	all  [][]vec.V // the loops of the flat
}

// newTracer returns a tracer of loops through points v, for so many rims.
func newTracer(v []vec.V, rims int) *tracer {
	return &tracer{v: v, at: make([]int32, len(v)), room: make([]vec.V, 0, rims)}
}

// trace returns the loops of rims, which all lie on one flat that faces n:
// outer loops counter-clockwise seen against n, holes clockwise. No loop
// visits a point twice; pieces that touch at a point are loops of their own.
// Points inside a straight run are left out. The list of loops, not the loops,
// is good until the next call.
func (t *tracer) trace(rims []rim, n vec.V) [][]vec.V {
	t.n, t.rims, t.all = n, rims, t.all[:0]
	t.from.fill(len(t.v), len(rims), func(i int) int32 { return rims[i].a })
	t.used = slices.Grow(t.used[:0], len(rims))[:len(rims)]
	clear(t.used)
	for i := range rims {
		if !t.used[i] {
			t.follow(i)
			t.untangle()
		}
	}
	for _, r := range rims {
		t.from.empty(r.a)
	}
	return t.all
}

// follow walks from edge i until no edge goes on.
func (t *tracer) follow(i int) {
	t.walk = t.walk[:0]
	for i >= 0 {
		t.used[i] = true
		t.walk = append(t.walk, t.rims[i].a)
		i = t.next(i)
	}
}

// next returns the free edge after edge i, or -1: of several, the one that
// bounds the same wedge of the polygon at their point.
func (t *tracer) next(i int) int {
	at := t.rims[i].b
	first := t.from.first[at]
	if first > 0 && t.from.next[first-1] == 0 { // the only one
		if t.used[first-1] {
			return -1
		}
		return int(first - 1)
	}
	best, least := -1, math.Inf(1)
	back := t.v[t.rims[i].a].Sub(t.v[at])
	for k := first; k > 0; k = t.from.next[k-1] {
		if t.used[k-1] {
			continue
		}
		on := t.v[t.rims[k-1].b].Sub(t.v[at])
		if a := turn(on, back, t.n); a < least {
			best, least = int(k-1), a
		}
	}
	return best
}

// untangle splits the walk into loops that visit no point twice.
func (t *tracer) untangle() {
	t.path = t.path[:0]
	for _, v := range t.walk {
		if i := t.at[v]; i > 0 {
			t.loop(int(i - 1))
		}
		t.path = append(t.path, v)
		t.at[v] = int32(len(t.path))
	}
	t.loop(0)
}

// loop takes the path from its i-th point on as a loop.
func (t *tracer) loop(i int) {
	from := len(t.room)
	for _, v := range t.path[i:] {
		t.room = append(t.room, t.v[v])
		t.at[v] = 0
	}
	t.path = t.path[:i]
	l := straightened(t.room[from:])
	if t.room = t.room[:from+len(l)]; len(l) >= 3 {
		t.all = append(t.all, slices.Clip(l))
	}
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

// straightened returns a loop without the points that lie on the straight line
// between their neighbours. It changes the loop.
func straightened(loop []vec.V) []vec.V {
	for i := 0; i < len(loop) && len(loop) >= 3; {
		a, b, c := loop[(i+len(loop)-1)%len(loop)], loop[i], loop[(i+1)%len(loop)]
		ac := c.Sub(a)
		l := ac.Len()
		if l <= near || (ac.Cross(b.Sub(a)).Len() <= near*l && b.Sub(a).Dot(c.Sub(b)) > 0) {
			loop = slices.Delete(loop, i, i+1)
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
