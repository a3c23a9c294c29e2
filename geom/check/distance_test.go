package check

import (
	"math"
	"math/rand/v2"
	"testing"

	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

func xyz(x, y, z float64) vec.V { return vec.V{X: x, Y: y, Z: z} }

// Least distances worked by hand.
func TestLeastDistances(t *testing.T) {
	cube := polyhedron(solid.Box(xyz(0, 0, 0), xyz(10, 10, 10)))
	rod := func(from, to vec.V) shape { return cylinder(from, to, 20) }
	along := rod(xyz(-100, 0, 0), xyz(100, 0, 0))
	for _, c := range []struct {
		name string
		a, b shape
		want float64
	}{
		{"corner to corner", cube, polyhedron(solid.Box(xyz(13, 14, 22), xyz(20, 20, 30))), 13}, // 3, 4, 12
		{"face to face", cube, polyhedron(solid.Box(xyz(2, 2, 17), xyz(30, 30, 30))), 7},
		{"within each other", cube, polyhedron(solid.Box(xyz(5, 5, 5), xyz(6, 6, 6))), 0},
		{"rods side by side", along, rod(xyz(0, 26, 0), xyz(50, 26, 0)), 6},
		{"rods across each other", along, rod(xyz(30, -40, 25), xyz(30, 40, 25)), 5},
		{"rods crossing", along, rod(xyz(30, -40, 19), xyz(30, 40, 19)), 0},
		{"rods end to end", along, rod(xyz(108, 0, 0), xyz(200, 0, 0)), 8},
		{"rim to rim", along, rod(xyz(103, 24, 0), xyz(200, 24, 0)), 5}, // 3 along, 24 - 20 across
		{"end over side", along, rod(xyz(0, 0, 21), xyz(0, 0, 90)), 11},
		{"rod over a face", rod(xyz(5, 5, 14), xyz(5, 5, 50)), cube, 4},
		{"rod beside an edge", rod(xyz(-50, 16, 18), xyz(50, 16, 18)), cube, 0}, // 6, 8 from the edge
		{"rod off an edge", rod(xyz(-50, 22, 26), xyz(50, 22, 26)), cube, 10},   // 12, 16 from the edge
	} {
		if got := between(c.a, c.b); math.Abs(got-c.want) > 1e-5 {
			t.Errorf("%s: %g, by hand %g", c.name, got, c.want)
		}
		if got := between(c.b, c.a); math.Abs(got-c.want) > 1e-5 {
			t.Errorf("%s the other way: %g, by hand %g", c.name, got, c.want)
		}
	}
}

// into returns the point of a cylinder nearest to p, in closed form.
func into(s shape, p vec.V) vec.V {
	w := p.Sub(s.from)
	h := w.Dot(s.axis)
	out := w.Sub(s.axis.Mul(h))
	h = min(max(h, 0), s.to.Sub(s.from).Len())
	if l := out.Len(); l > s.r {
		out = out.Mul(s.r / l)
	}
	return s.from.Add(s.axis.Mul(h)).Add(out)
}

func clamp(p, lo, hi vec.V) vec.V {
	return xyz(min(max(p.X, lo.X), hi.X), min(max(p.Y, lo.Y), hi.Y), min(max(p.Z, lo.Z), hi.Z))
}

// Random rods and boxes against projecting to and fro between the two, which
// comes down to their least distance (Cheney and Goldstein, 1959).
func TestDistancesAgainstProjecting(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 4))
	point := func(size float64) vec.V {
		return xyz(size*(2*r.Float64()-1), size*(2*r.Float64()-1), size*(2*r.Float64()-1))
	}
	apartBy := 0
	for i := range 400 {
		from := point(150)
		a := cylinder(from, from.Add(point(120)), 10+20*r.Float64())
		var b shape
		var home func(vec.V) vec.V
		if i%2 == 0 {
			from := point(100)
			b = cylinder(from, from.Add(point(120)), 10+20*r.Float64())
			home = func(p vec.V) vec.V { return into(b, p) }
		} else {
			lo := point(80)
			hi := lo.Add(xyz(5+60*r.Float64(), 5+60*r.Float64(), 5+60*r.Float64()))
			b = polyhedron(solid.Box(lo, hi))
			home = func(p vec.V) vec.V { return clamp(p, lo, hi) }
		}
		p, q := from, from
		for range 3000 {
			q = home(p)
			p = into(a, q)
		}
		want, got := p.Dist(q), between(a, b)
		if want > 1 {
			apartBy++
		}
		// To and fro closes in from above, slowly where the two share a point.
		if got > want+1e-5 || got < want-0.05 {
			t.Errorf("pair %d: %g, by projecting %g", i, got, want)
		}
	}
	if apartBy < 100 {
		t.Errorf("only %d pairs lay apart", apartBy)
	}
}

// Convex loops that share a known area: squares shifted, turned by 45° (a
// regular octagon of side √2-1 times the square's remains, 2(√2-1) of it), and
// apart; whichever way round they are written.
func TestOverlapArea(t *testing.T) {
	square := func(x, y, s float64) []vec.V {
		return []vec.V{xyz(x, y, 3), xyz(x+s, y, 3), xyz(x+s, y+s, 3), xyz(x, y+s, 3)}
	}
	back := func(l []vec.V) []vec.V { return []vec.V{l[3], l[2], l[1], l[0]} }
	h := math.Sqrt2 / 2 * 10
	turned := []vec.V{xyz(5+h, 5, 3), xyz(5, 5+h, 3), xyz(5-h, 5, 3), xyz(5, 5-h, 3)}
	for _, c := range []struct {
		name string
		a, b []vec.V
		want float64
	}{
		{"shifted", square(0, 0, 10), square(7, 4, 10), 18},
		{"within", square(0, 0, 10), square(2, 2, 3), 9},
		{"apart", square(0, 0, 10), square(20, 0, 10), 0},
		{"turned", square(0, 0, 10), turned, 200 * (math.Sqrt2 - 1)},
	} {
		for _, n := range []vec.V{{Z: 1}, {Z: -1}} {
			for _, b := range [][]vec.V{c.b, back(c.b)} {
				if got := overlapArea(c.a, b, n); math.Abs(got-c.want) > 1e-9*max(1, c.want) {
					t.Errorf("%s: %g, want %g", c.name, got, c.want)
				}
			}
		}
	}
}

// Neighbours found by sweeping are those found by asking every pair.
func TestNeighbours(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 5))
	for range 50 {
		var boxes []box
		for range 60 {
			var b box
			for i, wide := range [3]float64{3000, 400, 200} {
				b.lo[i] = r.Float64() * wide
				b.hi[i] = b.lo[i] + r.Float64()*150
			}
			boxes = append(boxes, b)
		}
		var want [][2]int
		for i := range boxes {
			for k := i + 1; k < len(boxes); k++ {
				if !apart(boxes[i], boxes[k]) {
					want = append(want, [2]int{i, k})
				}
			}
		}
		got := neighbours(boxes)
		if len(got) != len(want) || len(want) == 0 {
			t.Fatalf("%d pairs, want %d", len(got), len(want))
		}
		for i := range got {
			if got[i] != want[i] {
				t.Fatalf("pair %d: %v, want %v", i, got[i], want[i])
			}
		}
	}
}
