package hide

import (
	"math"
	"math/rand"
	"testing"

	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// Where an answer for a whole oval is sure, the rays of the oracle agree at
// every point of it: ovals drawn on faces, as the rims of bores are, and ovals
// that hang in the air.
func TestOvalsAgreeWithRays(t *testing.T) {
	rng := rand.New(rand.NewSource(7))
	asked, sure, tested, hidden := 0, 0, 0, 0
	for range 20 {
		cells := append(cutBody(rng), moved(cutBody(rng), vec.Placement{
			X: vec.V{Y: 1}, Y: vec.V{X: -1}, Z: vec.V{Z: 1}, O: vec.V{X: 200, Y: 100}})...)
		for _, w := range views {
			w = w.Unit()
			s := NewScene(w)
			s.AddCells(1, cells)
			for _, o := range randomOvals(rng, cells, w) {
				h, ok := s.Oval(1, o.c, o.u, o.v)
				if asked++; !ok {
					continue
				}
				sure++
				for range 10 {
					p := o.at(2 * math.Pi * rng.Float64())
					if want := stopped(p.Sub(w.Mul(before)), w.Neg(), cells); want != h {
						t.Fatalf("view %v, oval %v at %v: hidden %v, oracle %v", w, o, p, h, want)
					}
					if tested++; h {
						hidden++
					}
				}
			}
		}
	}
	atLeast(t, tested, hidden, 20000)
	if sure < asked/2 {
		t.Errorf("sure of %d ovals in %d: the check says little", sure, asked)
	}
}

// randomOvals returns an oval on each face that is not seen edge-on, and one off
// it.
func randomOvals(rng *rand.Rand, cells []solid.Convex, w vec.V) (ovals []oval) {
	for _, c := range cells {
		for _, f := range c.Faces {
			if math.Abs(f.Plane.N.Dot(w)) < 1e-3 {
				continue
			}
			mid := c.V[f.Loop[0]].Lerp(c.V[f.Loop[2]], 0.2+0.6*rng.Float64())
			u := c.V[f.Loop[1]].Sub(c.V[f.Loop[0]]).Unit()
			v := f.Plane.N.Cross(u)
			r := 2 + 12*rng.Float64()
			ovals = append(ovals, oval{mid, u.Mul(r), v.Mul(r)},
				oval{mid.Add(f.Plane.N.Mul(60 * rng.NormFloat64())), u.Mul(r), v.Mul(2 * r)})
		}
	}
	return ovals
}

func (o oval) at(t float64) vec.V {
	return o.c.Add(o.u.Mul(math.Cos(t))).Add(o.v.Mul(math.Sin(t)))
}

// A pane before half of an oval leaves it unsure, one before all of it hides it,
// and one of glass hides it from its own alone.
func TestOvalBehindPanes(t *testing.T) {
	pane := func(y float64) []solid.Convex { return []solid.Convex{box(-50, y, 50, 50, 50, 60)} }
	type answer struct{ hidden, sure bool }
	for _, c := range []struct {
		name  string
		y     float64
		ghost bool
		owner int
		want  answer
	}{
		{"all", -50, false, 1, answer{true, true}},
		{"half", 0, false, 1, answer{false, false}},
		{"beside", 11, false, 1, answer{false, true}},
		{"glass of its own", -50, true, 2, answer{true, true}},
		{"glass", -50, true, 1, answer{false, true}},
	} {
		s := NewScene(vec.V{Z: -1})
		if c.ghost {
			s.AddGhost(2, pane(c.y))
		} else {
			s.AddCells(2, pane(c.y))
		}
		h, ok := s.Oval(c.owner, vec.V{}, vec.V{X: 10}, vec.V{Y: 10})
		if got := (answer{h, ok}); got != c.want {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}
