package solid

import (
	"cmp"
	"iter"
	"math"
	"slices"

	"pegwright/geom/vec"
)

// Edge is a true edge of a body: it lies on exactly two planes of the boundary.
// Coplanar seams are not edges.
type Edge struct {
	A, B   vec.V
	Planes [2]Plane // outward
	Tags   [2]Tag
	Inner  bool // an inside corner: wood fills more than half the turn about it
}

// Edges returns the true edges of the body. A straight run on the same two
// planes with the same tags is one edge, from its end with the lesser x (then
// y, then z). The order is that of the planes, then along the line. The caller
// must not change them.
func (b *Body) Edges() []Edge {
	if e := b.found.edges.Load(); e != nil {
		return slices.Clip(*e)
	}
	var e []Edge
	if b.origin != nil {
		e = b.origin.edges()
	} else {
		e = b.trueEdges()
	}
	b.found.edges.Store(&e)
	return slices.Clip(e)
}

// trueEdges finds the edges along the rims of the boundary.
func (b *Body) trueEdges() []Edge {
	f := b.shape()
	from := b.provenance()
	runs := make([]run, 0, len(f.rims)*9/16)
	for pair := range f.pairs(b) {
		runs = from.runs(runs, f, pair)
	}
	order := make([]int32, len(runs))
	for i := range order {
		order[i] = int32(i)
	}
	slices.SortFunc(order, func(i, j int32) int { return cmp.Or(compareRuns(&runs[i], &runs[j]), int(i-j)) })
	n := 0
	for k, i := range order {
		if k == 0 || !follow(&runs[order[k-1]], &runs[i]) {
			n++
		}
	}
	out := make([]Edge, 0, n)
	for k, i := range order {
		r := &runs[i]
		if k > 0 && follow(&runs[order[k-1]], r) {
			out[len(out)-1].B = r.b
			continue
		}
		planes := [2]Plane{b.facing(int(r.flats[0])), b.facing(int(r.flats[1]))}
		out = append(out, Edge{r.a, r.b, planes, r.tags, r.inner})
	}
	return out
}

// run is a piece of an edge with what it is sorted by.
type run struct {
	a, b   vec.V
	lo, hi float64 // along the line
	flats  [2]int32
	inner  bool
	tags   [2]Tag
}

func compareRuns(p, q *run) int {
	if p.flats != q.flats {
		return cmp.Or(int(p.flats[0]-q.flats[0]), int(p.flats[1]-q.flats[1]))
	}
	if p.inner != q.inner {
		if q.inner {
			return -1
		}
		return 1
	}
	return cmp.Compare(p.lo, q.lo)
}

// follow reports whether q goes on where p ends, as the same edge.
func follow(p, q *run) bool {
	return p.flats == q.flats && p.inner == q.inner && math.Abs(q.lo-p.hi) <= near && p.tags == q.tags
}

// pairs yields the rims two by two, as they meet along an edge around wood: the
// first as the edge runs, the second against it.
func (f *form) pairs(b *Body) iter.Seq[[2]rim] {
	return func(yield func([2]rim) bool) {
		var by lists
		by.fill(f.edges, len(f.rims), func(i int) int32 { return f.rims[i].edge })
		var room [8]rim
		for i, r := range f.rims {
			if by.first[r.edge] != int32(i+1) {
				continue
			}
			group := room[:0]
			for k := i + 1; k > 0; k = int(by.next[k-1]) {
				group = append(group, f.rims[k-1])
			}
			for i, r := range group {
				if j := f.mate(b, group, i); j >= 0 && !yield([2]rim{r, group[j]}) {
					return
				}
			}
		}
	}
}

// mate returns which rim of g bounds the same wedge of wood as rim i does,
// when i is the one of the two that runs from the lesser point; else -1.
func (f *form) mate(b *Body, g []rim, i int) int {
	if g[i].a > g[i].b {
		return -1
	}
	if len(g) == 2 && g[1-i].a > g[1-i].b {
		return 1 - i // there is no other
	}
	d := f.v[g[i].b].Sub(f.v[g[i].a]).Unit()
	n := b.facing(g[i].flat).N
	left := n.Cross(d)
	best, least := -1, math.Inf(1)
	for j, r := range g {
		if r.a < r.b {
			continue
		}
		in := d.Cross(b.facing(r.flat).N) // left of r, which runs against d
		if a := turn(in, left, d); a < least {
			best, least = j, a
		}
	}
	return best
}

// runs appends the pieces of one short edge, broken where a tag may change.
func (p *provenance) runs(out []run, f *form, pair [2]rim) []run {
	if pair[0].flat > pair[1].flat {
		pair[0], pair[1] = pair[1], pair[0]
	}
	a, b := f.v[pair[0].a], f.v[pair[0].b]
	var planes [2]Plane
	var in [2]vec.V // into each polygon, square to the edge
	for i, r := range pair {
		planes[i] = p.body.facing(r.flat)
		in[i] = planes[i].N.Cross(f.v[r.b].Sub(f.v[r.a])).Unit()
	}
	r := run{flats: [2]int32{int32(pair[0].flat), int32(pair[1].flat)}, inner: in[0].Dot(planes[1].N) > 0}
	d := lineDir(planes)
	if d.Dot(a) > d.Dot(b) {
		a, b = b, a
	}
	var room [8]float64
	ts := p.breaks(p.breaks(room[:0], pair[0].flat, a, b), pair[1].flat, a, b)
	if len(ts) > 0 {
		slices.Sort(ts)
	}
	last := 0.0
	for _, t := range slices.Compact(append(ts, 1)) {
		r.a, r.b = a.Lerp(b, last), a.Lerp(b, t)
		r.lo, r.hi = d.Dot(r.a), d.Dot(r.b)
		mid := r.a.Lerp(r.b, 0.5)
		for i := range pair {
			r.tags[i] = p.at(pair[i].flat, mid.Add(in[i].Mul(inward)))
		}
		out = append(out, r)
		last = t
	}
	return out
}

// lineDir returns the direction of the line that two planes share, the first
// coordinate that is not 0 positive.
func lineDir(pl [2]Plane) vec.V {
	d := pl[0].N.Cross(pl[1].N).Unit()
	for _, x := range [3]float64{d.X, d.Y, d.Z} {
		if math.Abs(x) > 1e-9 {
			if x < 0 {
				return d.Neg()
			}
			break
		}
	}
	return d
}
