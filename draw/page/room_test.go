package page

import (
	"math/rand/v2"
	"testing"

	"pegwright/draw"
	"pegwright/geom/vec"
)

// A segment has a point in a box if an end of it lies there or it crosses one of
// the box's diagonals (a box is convex, and every line through it meets both or
// leaves them at a corner). In whole numbers, where all of this is exact.
func TestCrosses(t *testing.T) {
	side := func(a, b, p vec.P) int {
		d := (b.X-a.X)*(p.Y-a.Y) - (b.Y-a.Y)*(p.X-a.X)
		switch {
		case d > 0:
			return 1
		case d < 0:
			return -1
		}
		return 0
	}
	meet := func(a, b, c, d vec.P) bool {
		return side(a, b, c)*side(a, b, d) <= 0 && side(c, d, a)*side(c, d, b) <= 0 &&
			draw.NoBox().With(a, b).Min.X <= max(c.X, d.X) && draw.NoBox().With(c, d).Min.X <= max(a.X, b.X) &&
			draw.NoBox().With(a, b).Min.Y <= max(c.Y, d.Y) && draw.NoBox().With(c, d).Min.Y <= max(a.Y, b.Y)
	}
	in := func(p vec.P, b draw.Box) bool {
		return b.Min.X <= p.X && p.X <= b.Max.X && b.Min.Y <= p.Y && p.Y <= b.Max.Y
	}
	r := rand.New(rand.NewPCG(3, 5))
	point := func() vec.P { return vec.At(float64(r.IntN(9)), float64(r.IntN(9))) }
	met := 0
	for range 200_000 {
		a, b := point(), point()
		box := draw.NoBox().With(point(), point())
		left, right := vec.At(box.Min.X, box.Max.Y), vec.At(box.Max.X, box.Min.Y)
		want := in(a, box) || in(b, box) || meet(a, b, box.Min, box.Max) || meet(a, b, left, right)
		if want {
			met++
		}
		if got := Crosses(a, b, box); got != want {
			t.Fatalf("%v to %v and %v: %v, want %v", a, b, box, got, want)
		}
	}
	if met < 50_000 || met > 150_000 {
		t.Errorf("%d of 200,000 segments meet their box", met)
	}
}
