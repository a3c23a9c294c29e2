package solid

import (
	"math"
	"slices"
	"sort"

	"pegwright/geom/vec"
)

// near is the distance (mm) under which two computed points are one: a point
// is the meeting of three planes, and each may have moved it by Snap.
const near = 3 * Snap

// patch is one convex polygon on one side of a plane: flat is 2*plane, +1 when
// it faces against the plane's normal; its loop runs counter-clockwise seen
// from where it faces.
type patch struct {
	flat int
	loop []int
}

// mesh holds patches over shared points and the chains into which the points
// split their edges.
type mesh struct {
	v       []vec.V
	bucket  map[uint64]int // the newest point in a bucket
	older   []int          // the point in a bucket before each, -1 for none
	patches []patch
	chain   map[uint64]span // edge -> points from one end to the other, the lesser first
	chains  []int
}

// span is a stretch of mesh.chains.
type span struct{ from, to int }

func newMesh() *mesh { return &mesh{bucket: map[uint64]int{}} }

// gridStep is the width (mm) of the buckets that points are looked up in. Its
// walls keep off the round numbers that real timbers are full of.
const gridStep, gridShift = 0.01, 0.00382

// point returns the index of the point at p, a new one unless one is near.
func (m *mesh) point(p vec.V) int {
	var lo, hi [3]int64
	for i, x := range [3]float64{p.X, p.Y, p.Z} {
		lo[i] = int64(math.Floor((x + gridShift - near) / gridStep))
		hi[i] = int64(math.Floor((x + gridShift + near) / gridStep))
	}
	for x := lo[0]; x <= hi[0]; x++ {
		for y := lo[1]; y <= hi[1]; y++ {
			for z := lo[2]; z <= hi[2]; z++ {
				i, ok := m.bucket[bucketOf(x, y, z)]
				for ; ok && i >= 0; i = m.older[i] {
					if m.v[i].Dist(p) <= near {
						return i
					}
				}
			}
		}
	}
	var own [3]int64
	for i, x := range [3]float64{p.X, p.Y, p.Z} {
		own[i] = int64(math.Floor((x + gridShift) / gridStep))
	}
	k := bucketOf(own[0], own[1], own[2])
	before, ok := m.bucket[k]
	if !ok {
		before = -1
	}
	m.bucket[k], m.older = len(m.v), append(m.older, before)
	m.v = append(m.v, p)
	return len(m.v) - 1
}

// bucketOf mixes the three numbers of a bucket into one, which a map finds sooner.
// Buckets may share it: whoever looks there compares the points.
func bucketOf(x, y, z int64) uint64 {
	return uint64(x)*0x9e3779b97f4a7c15 ^ uint64(y)*0xc2b2ae3d27d4eb4f ^ uint64(z)*0x165667b19e3779f9
}

// add puts a convex polygon into the mesh; one that shrinks to a line when its
// near points become one is left out.
func (m *mesh) add(flat int, pts []vec.V, loop []int) {
	out := make([]int, 0, len(loop))
	for _, i := range loop {
		if v := m.point(pts[i]); len(out) == 0 || out[len(out)-1] != v {
			out = append(out, v)
		}
	}
	for len(out) > 1 && out[0] == out[len(out)-1] {
		out = out[:len(out)-1]
	}
	if len(out) >= 3 {
		m.patches = append(m.patches, patch{flat, out})
	}
}

// split finds, for every edge of every patch, all points that lie on it.
func (m *mesh) split() {
	axis := m.longAxis()
	order := make([]int, len(m.v))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(a, b int) int {
		if d := axis(m.v[a]) - axis(m.v[b]); d != 0 {
			return sign(d)
		}
		return a - b
	})
	m.chain, m.chains = make(map[uint64]span, 2*len(m.v)), m.chains[:0]
	for _, p := range m.patches {
		for i, a := range p.loop {
			b := p.loop[(i+1)%len(p.loop)]
			if k := edgeKey(a, b); m.chain[k].to == 0 {
				m.chain[k] = m.pointsOn(lesserFirst(a, b), order, axis)
			}
		}
	}
}

// pointsOn chains the points on edge k from its first end to its second.
func (m *mesh) pointsOn(k [2]int, order []int, axis func(vec.V) float64) span {
	a, b := m.v[k[0]], m.v[k[1]]
	d := b.Sub(a)
	l := d.Len()
	d = d.Mul(1 / l)
	lo, hi := min(axis(a), axis(b))-near, max(axis(a), axis(b))+near
	first := sort.Search(len(order), func(i int) bool { return axis(m.v[order[i]]) >= lo })
	type hit struct {
		t float64
		v int
	}
	var room [16]hit
	hits := room[:0]
	for _, v := range order[first:] {
		p := m.v[v]
		if axis(p) > hi {
			break
		}
		r := p.Sub(a)
		t := r.Dot(d)
		if t > 0 && t < l && v != k[0] && v != k[1] && r.Sub(d.Mul(t)).Len() <= near {
			hits = append(hits, hit{t, v})
		}
	}
	slices.SortFunc(hits, func(x, y hit) int { return sign(x.t - y.t) })
	from := len(m.chains)
	m.chains = append(m.chains, k[0])
	for _, h := range hits {
		m.chains = append(m.chains, h.v)
	}
	m.chains = append(m.chains, k[1])
	return span{from, len(m.chains)}
}

// longAxis returns the coordinate in which the points spread most.
func (m *mesh) longAxis() func(vec.V) float64 {
	lo, hi := Convex{V: m.v}.Bounds()
	d := hi.Sub(lo)
	switch {
	case d.X >= d.Y && d.X >= d.Z:
		return func(p vec.V) float64 { return p.X }
	case d.Y >= d.Z:
		return func(p vec.V) float64 { return p.Y }
	}
	return func(p vec.V) float64 { return p.Z }
}

// steps calls do with every short edge of a loop, in the loop's direction.
func (m *mesh) steps(loop []int, do func(a, b int)) {
	for i, a := range loop {
		b := loop[(i+1)%len(loop)]
		at := m.chain[edgeKey(a, b)]
		chain := m.chains[at.from:at.to]
		if a < b {
			for j := 1; j < len(chain); j++ {
				do(chain[j-1], chain[j])
			}
			continue
		}
		for j := len(chain) - 1; j > 0; j-- {
			do(chain[j], chain[j-1])
		}
	}
}

// edgeKey is one number for the edge between two points, whichever comes first.
func edgeKey(a, b int) uint64 { return uint64(min(a, b))<<32 | uint64(max(a, b)) }

func lesserFirst(a, b int) [2]int { return [2]int{min(a, b), max(a, b)} }

func sign(x float64) int {
	switch {
	case x < 0:
		return -1
	case x > 0:
		return 1
	}
	return 0
}
