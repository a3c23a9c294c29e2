package solid

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"pegwright/geom/vec"
)

// randomCut is a box on the grid, or a box with a corner sloped off through a
// grid point at 45° or along a space diagonal; every corner is off the grid by
// about noise mm.
func randomCut(rnd *rand.Rand, n [3]int, noise float64) Convex {
	off := func() vec.V { return at(rnd.NormFloat64(), rnd.NormFloat64(), rnd.NormFloat64()).Mul(noise) }
	var lo, hi [3]int
	for k := range 3 {
		lo[k] = rnd.IntN(n[k]+1) - 1
		hi[k] = lo[k] + 1 + rnd.IntN(n[k])
	}
	c := block(gridPoint(lo).Add(off()), gridPoint(hi).Add(off()))
	slope := at(float64(rnd.IntN(3)-1), float64(rnd.IntN(3)-1), float64(rnd.IntN(3)-1))
	if rnd.IntN(2) == 0 && slope.Len() > 0 {
		p := gridPoint([3]int{rnd.IntN(n[0] + 1), rnd.IntN(n[1] + 1), rnd.IntN(n[2] + 1)})
		c = c.Clip(PlaneAt(p.Add(off()), slope), "slope")
	}
	return c
}

// Up to a tenth of Snap, noise in the cuts is forgiven: what should be flush
// is, and every body is sound. Far above that, planes that nearly agree are
// planes of their own; then Valid never passes a boundary that does not enclose
// the wood.
func TestNearlyFlush(t *testing.T) {
	for _, noise := range []float64{0, 1e-9, 1e-7, 1e-5, 1e-3} {
		for seed := range uint64(80) {
			rnd := rand.New(rand.NewPCG(seed, 4))
			n := [3]int{3 + rnd.IntN(6), 2 + rnd.IntN(4), 2 + rnd.IntN(4)}
			place := randomPlace(rnd)
			b := NewBody(Box(vec.V{}, gridPoint(n)).Moved(place))
			for i := range 10 {
				b.Subtract(randomCut(rnd, n, noise).Moved(place), "j")
				var flaw *Flaw
				if errors.As(b.Valid(), &flaw) && !flaw.Contact {
					if noise <= Snap/10 {
						t.Errorf("noise %g, seed %d, cut %d: %v", noise, seed, i, flaw)
					}
					break
				}
				back := b.Moved(place.Inverse()) // near the origin, where rounding is least
				if v := b.Volume(); math.Abs(surfaceVolume(back)-v) > 1e-5*v+3 {
					t.Errorf("noise %g, seed %d, cut %d: volume %g, by surface %g", noise, seed, i, v, surfaceVolume(back))
				}
			}
		}
	}
}

// An empty cut takes nothing, and a cut around everything leaves nothing.
func TestNothing(t *testing.T) {
	b := NewBody(timber(100, 50, 50))
	b.Subtract(Convex{}, "none")
	if v := b.Volume(); math.Abs(v-100*50*50) > 1e-6 {
		t.Errorf("volume %g after an empty cut", v)
	}
	b.Subtract(block(at(-1, -1, -1), at(101, 51, 51)), "all")
	sound(t, b)
	if len(b.Cells())+len(b.Edges())+len(b.Boundary())+len(b.Pieces()) != 0 {
		t.Error("something is left of nothing")
	}
	if s := b.Section(PlaneAt(at(50, 0, 0), at(1, 0, 0))); len(s) != 0 {
		t.Errorf("section %v", s)
	}
}

// Two blocks left corner to corner along an edge are a contact.
func TestContact(t *testing.T) {
	b := NewBody(timber(100, 100, 100))
	b.Subtract(block(at(-5, -5, -5), at(50, 50, 105)), "a")
	b.Subtract(block(at(50, 50, -5), at(105, 105, 105)), "b")
	var flaw *Flaw
	if !errors.As(b.Valid(), &flaw) || !flaw.Contact {
		t.Fatalf("Valid: %v, want a contact", b.Valid())
	}
	both := 0
	for _, e := range b.Edges() {
		if e.A.Dist(at(50, 50, 0)) < 1e-6 && e.B.Dist(at(50, 50, 100)) < 1e-6 {
			both++
		}
		if e.Inner {
			t.Errorf("edge %v is an inside corner of two blocks", e)
		}
	}
	if both != 2 {
		t.Errorf("%d edges at the contact, want one of each block", both)
	}
	approx(t, "x of contact", flaw.At.X, 50, 1e-9)
	approx(t, "y of contact", flaw.At.Y, 50, 1e-9)
	if n := len(b.Pieces()); n != 2 {
		t.Errorf("%d pieces, want 2", n)
	}
}

// A neck of 10 × 9.9 mm joins no stick (under 100 mm²); one of 10 × 10.1 does,
// even when a cut has split it in two.
func TestLeastJoin(t *testing.T) {
	for _, c := range []struct {
		high float64
		want int
	}{{9.9, 2}, {10.1, 1}} {
		b := NewBody(timber(300, 100, 100))
		b.Subtract(block(at(150, 10, -5), at(160, 105, 105)), "s")
		b.Subtract(block(at(150, -5, 5), at(160, 105, 5+100-c.high)), "s")
		if n := len(b.Pieces()); n != c.want {
			t.Errorf("neck 10 × %g: %d pieces, want %d", c.high, n, c.want)
		}
	}
}
