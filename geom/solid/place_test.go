package solid

import (
	"math/rand/v2"
	"slices"
	"testing"

	"pegwright/geom/vec"
)

// What is carried from another place is what is found of a blank and cuts that
// were carried there before any wood was taken: same edges in the same order,
// each the same way round, same polygons and same tags.
func TestCarried(t *testing.T) {
	for seed := range uint64(100) {
		rnd := rand.New(rand.NewPCG(seed, 11))
		n := [3]int{3 + rnd.IntN(6), 2 + rnd.IntN(4), 2 + rnd.IntN(4)}
		one, two := randomPlace(rnd), randomPlace(rnd)
		b, there := NewBody(Box(vec.V{}, gridPoint(n))), NewBody(Box(vec.V{}, gridPoint(n)).Moved(one).Moved(two))
		for range 6 {
			c := randomCut(rnd, n, 0)
			b.Subtract(c, "j")
			there.Subtract(c.Moved(one).Moved(two), "j")
		}
		m := b.Moved(one).Moved(two)
		if !slices.EqualFunc(m.Edges(), there.Edges(), sameEdge) {
			t.Errorf("seed %d: the edges differ", seed)
		}
		if !slices.EqualFunc(m.Boundary(), there.Boundary(), samePolygon) {
			t.Errorf("seed %d: the polygons differ", seed)
		}
	}
}

// A body that was carried and is cut afterwards, and the one it was carried from
// when that is cut, forget what no longer holds.
func TestCarriedThenCut(t *testing.T) {
	rnd := rand.New(rand.NewPCG(1, 12))
	place := randomPlace(rnd)
	p := samplePost()
	had := len(p.Edges())
	m, c := p.Moved(place), p.Clone()
	saw := block(at(1200, -10, -10), at(1210, 200, 200))
	p.Subtract(saw, "saw")
	if n := len(m.Edges()); n != had {
		t.Errorf("%d edges of the body carried before the saw, want %d", n, had)
	}
	if n := len(c.Edges()); n != had {
		t.Errorf("%d edges of the clone, want %d", n, had)
	}
	m.Subtract(saw.Moved(place), "saw")
	sawn := p.Moved(place)
	if !slices.EqualFunc(m.Edges(), sawn.Edges(), sameEdge) || len(m.Edges()) <= had {
		t.Errorf("%d edges of the body sawn there, %d of the one sawn before, %d of the whole one", len(m.Edges()), len(sawn.Edges()), had)
	}
}

const alike = 1e-6 // mm

func sameEdge(p, q Edge) bool {
	return p.A.Dist(q.A) < alike && p.B.Dist(q.B) < alike && p.Inner == q.Inner && p.Tags == q.Tags &&
		samePlane(p.Planes[0], q.Planes[0]) && samePlane(p.Planes[1], q.Planes[1])
}

func samePlane(p, q Plane) bool {
	return p.N.Dist(q.N) < 1e-9 && max(p.D-q.D, q.D-p.D) < alike
}

func samePolygon(p, q Polygon) bool {
	return samePlane(p.Plane, q.Plane) && slices.Equal(p.Tags, q.Tags) && sameLoop(p.Outer, q.Outer) &&
		slices.EqualFunc(p.Holes, q.Holes, sameLoop)
}

func sameLoop(p, q []vec.V) bool {
	return slices.EqualFunc(p, q, func(a, b vec.V) bool { return a.Dist(b) < alike })
}
