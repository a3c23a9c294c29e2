package assembly_test

import (
	"math"
	"math/rand"
	"testing"

	"pegwright/geom/assembly"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

func shifted(c solid.Convex, v vec.V) solid.Convex {
	to := vec.Identity
	to.O = v
	return c.Moved(to)
}

// randomCell returns a box cut by a few random planes.
func randomCell(r *rand.Rand, at vec.V) solid.Convex {
	size := func() float64 { return 20 + 60*r.Float64() }
	c := solid.Box(at, at.Add(vec.V{X: size(), Y: size(), Z: size()}))
	mid := c.Centroid()
	for range r.Intn(4) {
		n := vec.V{X: r.NormFloat64(), Y: r.NormFloat64(), Z: r.NormFloat64()}.Unit()
		if r.Intn(3) == 0 { // a plane along an axis gives parallel faces and touching cells
			n = [3]vec.V{{X: 1}, {Y: 1}, {Z: 1}}[r.Intn(3)]
		}
		c = c.Clip(solid.Plane{N: n, D: n.Dot(mid) + 5 + 15*r.Float64()}, "")
	}
	return c
}

// depth returns by how much two convex cells overlap, negative when they are
// apart: the least over the axes that can part two convex polyhedra, their face
// normals and the products of their edges (separating axis theorem). It uses
// corners and edges alone.
func depth(a, b solid.Convex) float64 {
	axes := []vec.V{}
	edges := func(c solid.Convex) []vec.V {
		var r []vec.V
		for _, f := range c.Faces {
			axes = append(axes, f.Plane.N)
			for i, v := range f.Loop {
				r = append(r, c.V[f.Loop[(i+1)%len(f.Loop)]].Sub(c.V[v]))
			}
		}
		return r
	}
	ea, eb := edges(a), edges(b)
	for _, p := range ea {
		for _, q := range eb {
			if n := p.Cross(q); n.Len() > 1e-6*p.Len()*q.Len() {
				axes = append(axes, n.Unit())
			}
		}
	}
	least := math.Inf(1)
	for _, n := range axes {
		la, ha := a.Extent(n)
		lb, hb := b.Extent(n)
		least = min(least, ha-lb, hb-la)
	}
	return least
}

// The sweep test against brute force: the cell is set at many places along its
// way and each is tried against the other by separating axes. Cases within the
// step of the brute force, or within 0.01 mm of touching, are left out.
func TestSweepAgainstSampledPlaces(t *testing.T) {
	r := rand.New(rand.NewSource(7))
	hits, misses := 0, 0
	for n := range 200 {
		a := randomCell(r, vec.V{})
		d := vec.V{X: r.NormFloat64(), Y: r.NormFloat64(), Z: r.NormFloat64()}.Unit()
		if r.Intn(3) == 0 {
			d = [4]vec.V{{X: 1}, {Y: -1}, {Z: 1}, {X: math.Sqrt2 / 2, Z: math.Sqrt2 / 2}}[r.Intn(4)]
		}
		way := d.Mul(250 * r.Float64())
		at := way.Mul(r.Float64())
		b := randomCell(r, at.Add(vec.V{X: 140*r.Float64() - 70, Y: 140*r.Float64() - 70, Z: 140*r.Float64() - 70}))
		if a.Empty() || b.Empty() {
			continue
		}
		const places = 60
		deepest := math.Inf(-1)
		for k := range places + 1 {
			deepest = max(deepest, depth(shifted(a, way.Mul(float64(k)/places)), b))
		}
		got := assembly.Hits(a, way, b)
		switch slack := way.Len() / places; {
		case deepest > 0.01:
			hits++
			if !got {
				t.Errorf("case %d: sampled places overlap by %.3f mm and the sweep misses", n, deepest)
			}
		case deepest < -slack-0.01:
			misses++
			if got {
				t.Errorf("case %d: sampled places stay %.3f mm apart and the sweep hits", n, -deepest)
			}
		}
	}
	if hits < 50 || misses < 20 {
		t.Errorf("only %d hits and %d misses: the cases say too little", hits, misses)
	}
}

// Laws of sliding fits, in closed form: a tenon as thick as its mortise slides
// out along its axis and no other way.
func TestTenonSlidesOutOneWay(t *testing.T) {
	post := solid.NewBody(solid.Box(vec.V{}, vec.V{X: 150, Y: 150, Z: 1000}))
	post.Subtract(solid.Box(vec.V{X: 50, Y: -10, Z: 400}, vec.V{X: 90, Y: 100, Z: 550}), "j")
	tenon := solid.Box(vec.V{X: 50, Y: -60, Z: 400}, vec.V{X: 90, Y: 100, Z: 550})
	hit := func(way vec.V) bool {
		for _, c := range post.Cells() {
			if assembly.Hits(tenon, way, c) {
				return true
			}
		}
		return false
	}
	if hit(vec.V{Y: -300}) {
		t.Error("the tenon does not come out along its axis")
	}
	for _, way := range []vec.V{{Y: 1}, {X: 1}, {X: -1}, {Z: 1}, {Z: -1}, {X: 300}, {Z: 300}, {X: 0.01, Y: -300}} {
		if !hit(way) {
			t.Errorf("the tenon goes through wood along %v", way)
		}
	}
}
