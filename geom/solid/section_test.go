package solid

import (
	"math"
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"

	"pegwright/geom/vec"
)

func distinct(hs []float64) []float64 {
	slices.Sort(hs)
	return slices.CompactFunc(hs, func(a, b float64) bool { return math.Abs(b-a) < 1e-6 })
}

// A section across a through mortise is a frame: outer loop counter-clockwise,
// hole clockwise, corners only.
func TestSectionWithHole(t *testing.T) {
	b := NewBody(timber(1000, 150, 200))
	b.Subtract(block(at(400, 50, -10), at(500, 90, 210)), "m")
	n := at(0, 0, 1)
	loops := b.Section(PlaneAt(at(0, 0, 77), n))
	if len(loops) != 2 || len(loops[0]) != 4 || len(loops[1]) != 4 {
		t.Fatalf("loops %v", loops)
	}
	as := []float64{area(loops[0], n), area(loops[1], n)}
	slices.Sort(as)
	approx(t, "hole", as[0], -100*40, 1e-6)
	approx(t, "outer", as[1], 1000*150, 1e-6)
}

// A hexagon cut from a cube of side 1 by its diagonal plane has the area
// 3√3/4 (the regular hexagon of side √2/2).
func TestSectionHexagon(t *testing.T) {
	b := NewBody(timber(100, 100, 100))
	pl := PlaneAt(at(50, 50, 50), at(1, 1, 1))
	loops := b.Section(pl)
	if len(loops) != 1 || len(loops[0]) != 6 {
		t.Fatalf("loops %v", loops)
	}
	approx(t, "area", area(loops[0], pl.N), 100*100*3*math.Sqrt(3)/4, 1e-6)
}

// Two squares that touch at a corner are two loops; a square hole that touches
// the outline at a corner stays a hole of its own.
func TestSectionTouchingCorners(t *testing.T) {
	n := at(0, 0, 1)
	b := NewBody(timber(100, 100, 100))
	b.Subtract(block(at(-5, -5, -5), at(50, 50, 105)), "a")
	b.Subtract(block(at(50, 50, -5), at(105, 105, 105)), "b")
	loops := b.Section(PlaneAt(at(0, 0, 30), n))
	if len(loops) != 2 {
		t.Fatalf("%d loops, want 2", len(loops))
	}
	for _, l := range loops {
		approx(t, "square", area(l, n), 2500, 1e-6)
	}

	b = NewBody(timber(100, 100, 100))
	b.Subtract(block(at(-5, -5, -5), at(30, 30, 105)), "a")
	b.Subtract(block(at(30, 30, -5), at(60, 60, 105)), "b")
	loops = b.Section(PlaneAt(at(0, 0, 30), n))
	if len(loops) != 2 {
		t.Fatalf("%d loops, want outline and hole", len(loops))
	}
	as := []float64{area(loops[0], n), area(loops[1], n)}
	slices.Sort(as)
	approx(t, "hole", as[0], -900, 1e-6)
	approx(t, "outline", as[1], 10000-900, 1e-6)
}

// Tags: every face of a pocket says its role, the blank's faces theirs, and an
// edge carries the tags of both its faces.
func TestTags(t *testing.T) {
	b := NewBody(timber(1000, 150, 200))
	b.Subtract(block(at(400, 50, 100), at(500, 90, 210)), "m")
	seen := map[Tag]int{}
	for _, p := range b.Boundary() {
		if len(p.Tags) != 1 {
			t.Errorf("tags %v", p.Tags)
		}
		seen[p.Tags[0]]++
	}
	want := map[Tag]int{}
	for _, r := range []string{"start", "end", "face 1", "face 2", "face 3", "face 4"} {
		want[Tag{Role: r}] = 1
	}
	for _, r := range []string{"low", "high", "near", "far", "floor"} {
		want[Tag{"m", r}] = 1
	}
	if !reflect.DeepEqual(seen, want) {
		t.Errorf("tags %v, want %v", seen, want)
	}
	mouth, floor, inner := 0, 0, 0
	for _, e := range b.Edges() {
		tags := e.Tags[:]
		if slices.Contains(tags, Tag{Role: "face 4"}) && (tags[0].Joint == "m" || tags[1].Joint == "m") {
			mouth++
		}
		if slices.Contains(tags, Tag{"m", "floor"}) {
			floor++
		}
		if e.Inner {
			inner++
		}
	}
	if mouth != 4 || floor != 4 || inner != 8 {
		t.Errorf("mouth %d, floor %d, inner %d; want 4, 4, 8", mouth, floor, inner)
	}
}

// Two pockets of different joints, floors flush and side by side, leave one
// floor that both share; the long floor edges change joint in the middle.
func TestTagsOfSharedFloor(t *testing.T) {
	for _, swap := range []bool{false, true} {
		cuts := []knock{
			{"a", block(at(400, 50, 100), at(500, 90, 210))},
			{"b", block(at(500, 50, 100), at(600, 90, 210))},
		}
		for _, k := range cuts { // floor first: the wood below stays one cell
			f := k.cut.Faces
			f[0], f[4] = f[4], f[0]
		}
		if swap {
			slices.Reverse(cuts)
		}
		b := NewBody(timber(1000, 150, 200)).cutAll(t, cuts)
		floors := 0
		for _, p := range b.Boundary() {
			if slices.Contains(p.Tags, Tag{"a", "floor"}) && slices.Contains(p.Tags, Tag{"b", "floor"}) {
				floors++
			}
		}
		byJoint := map[string]float64{}
		for _, e := range b.Edges() {
			for _, g := range e.Tags {
				if g.Role == "floor" {
					byJoint[g.Joint] += e.A.Dist(e.B)
				}
			}
		}
		if floors != 1 {
			t.Errorf("%d shared floors, want 1", floors)
		}
		approx(t, "floor edge of a", byJoint["a"], 100+100+40, 1e-3)
		approx(t, "floor edge of b", byJoint["b"], 100+100+40, 1e-3)
	}
}

// A groove around an island with a pocket in it: the face has one hole, the
// island its own.
func TestIslandInHole(t *testing.T) {
	b := NewBody(timber(300, 300, 100)).cutAll(t, []knock{
		{"g", block(at(50, 50, 80), at(250, 70, 110))},
		{"g", block(at(50, 230, 80), at(250, 250, 110))},
		{"g", block(at(50, 50, 80), at(70, 250, 110))},
		{"g", block(at(230, 50, 80), at(250, 250, 110))},
		{"p", block(at(120, 120, 50), at(180, 180, 110))},
	})
	var areas []float64
	for _, p := range b.Boundary() {
		if p.Plane.N.Z > 0 && math.Abs(p.Plane.D-100) < 1e-9 {
			areas = append(areas, p.Area())
			if len(p.Holes) != 1 {
				t.Errorf("%d holes, want 1", len(p.Holes))
			}
		}
	}
	slices.Sort(areas)
	if len(areas) != 2 {
		t.Fatalf("%d pieces of the face, want 2", len(areas))
	}
	approx(t, "island", areas[0], 160*160-60*60, 1e-6)
	approx(t, "around it", areas[1], 300*300-200*200, 1e-6)
}

// The same cuts give the same output, and a cut that takes nothing changes
// nothing.
func TestRepeatable(t *testing.T) {
	post := func() *Body { return samplePost() }
	p, q := post(), post()
	q.Subtract(block(at(100, 200, 0), at(200, 300, 100)), "outside")
	q.Subtract(block(at(100, -50, 0), at(200, 0, 100)), "only touches")
	if !reflect.DeepEqual(p.Edges(), q.Edges()) || !reflect.DeepEqual(p.Boundary(), q.Boundary()) {
		t.Error("output differs")
	}
}

// A body moved and a body cut in place are the same.
func TestMoved(t *testing.T) {
	rnd := rand.New(rand.NewPCG(7, 3))
	place := randomPlace(rnd)
	p := samplePost()
	m := p.Moved(place)
	sound(t, m)
	pe, me := p.Edges(), m.Edges()
	if len(pe) != len(me) {
		t.Fatalf("%d edges moved, %d before", len(me), len(pe))
	}
	for i := range pe {
		a, b := place.Out(pe[i].A), place.Out(pe[i].B)
		if d := min(a.Dist(me[i].A)+b.Dist(me[i].B), a.Dist(me[i].B)+b.Dist(me[i].A)); d > 1e-6 && !hasEdge(me, a, b) {
			t.Errorf("edge %d is %g off", i, d)
		}
	}
	approx(t, "volume", m.Volume(), p.Volume(), 1)
	m.Subtract(block(at(1200, -10, -10), at(1210, 200, 200)).Moved(place), "saw")
	sound(t, m)
	if n := len(m.Pieces()); n != 2 {
		t.Errorf("%d pieces after sawing through, want 2", n)
	}
}

func hasEdge(edges []Edge, a, b vec.V) bool {
	return slices.ContainsFunc(edges, func(e Edge) bool {
		return min(a.Dist(e.A)+b.Dist(e.B), a.Dist(e.B)+b.Dist(e.A)) < 1e-6
	})
}

// samplePost is a post with twenty cuts: foot tenon, four housed pockets with
// slanted seats, and a head tenon.
func samplePost() *Body {
	b := NewBody(timber(2438.4, 152.4, 152.4))
	for _, x := range [2][2]float64{{-10, 76.2}, {2362.2, 2450}} {
		b.Subtract(block(at(x[0], -10, -10), at(x[1], 50.8, 165)), "tenon")
		b.Subtract(block(at(x[0], 88.9, -10), at(x[1], 165, 165)), "tenon")
		b.Subtract(block(at(x[0], -10, -10), at(x[1], 165, 25.4)), "tenon")
		b.Subtract(block(at(x[0], -10, 127), at(x[1], 165, 165)), "tenon")
	}
	for i := range 4 {
		x := 500 + 350*float64(i)
		b.Subtract(block(at(x, -10, -10), at(x+140, 12.7, 165)), "housing")
		b.Subtract(block(at(x, -10, 50.8), at(x+140, 101.6, 88.9)), "pocket")
		b.Subtract(Hexahedron([8]vec.V{at(x+40, 50, 165), at(x+160, 50, 165), at(x+160, 90, 165), at(x+40, 90, 165),
			at(x+40, 50, 110), at(x+100, 50, 110), at(x+100, 90, 110), at(x+40, 90, 110)}), "brace")
	}
	return b
}

func BenchmarkPost(b *testing.B) {
	for b.Loop() {
		p := samplePost()
		if len(p.Edges()) == 0 {
			b.Fatal("no edges")
		}
	}
	b.ReportMetric(float64(len(samplePost().cells)), "cells")
}

func BenchmarkSubtract(b *testing.B) {
	for b.Loop() {
		samplePost()
	}
}
