package hide

import (
	"fmt"
	"math"
	"math/rand"
	"testing"

	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

func box(x0, y0, z0, x1, y1, z1 float64) solid.Convex {
	return solid.Box(vec.V{X: x0, Y: y0, Z: z0}, vec.V{X: x1, Y: y1, Z: z1})
}

// Closed form: the viewer looks along +y (an elevation, x to the right, z up).
// Each expectation is read off the picture by hand.
func TestSpansInClosedForm(t *testing.T) {
	north := vec.V{Y: 1}
	unit := []solid.Convex{box(0, 0, 0, 100, 100, 100)}
	halves := []solid.Convex{box(0, 0, 0, 50, 100, 100), box(50, 0, 0, 100, 100, 100)}
	cases := []struct {
		name  string
		cells []solid.Convex
		w     vec.V
		a, b  vec.V
		want  []Span
	}{
		{"level line behind a box", unit, north, vec.V{X: -100, Y: 200, Z: 50}, vec.V{X: 300, Y: 200, Z: 50},
			[]Span{{0, 0.25, false}, {0.25, 0.5, true}, {0.5, 1, false}}},
		{"the same before it", unit, north, vec.V{X: -100, Y: -1, Z: 50}, vec.V{X: 300, Y: -1, Z: 50},
			[]Span{{0, 1, false}}},
		{"running through it to behind", unit, north, vec.V{X: 50, Y: -100, Z: 20}, vec.V{X: 50, Y: 300, Z: 60},
			[]Span{{0, 0.25, false}, {0.25, 1, true}}},
		{"on its face", unit, north, vec.V{X: 10, Z: 10}, vec.V{X: 90, Z: 90}, []Span{{0, 1, false}}},
		{"its own back edge on the contour", unit, north, vec.V{Y: 100}, vec.V{X: 100, Y: 100}, []Span{{0, 1, false}}},
		{"its own back edge seen as a point", unit, north, vec.V{}, vec.V{Y: 100}, nil},
		{"a line behind the seam of two boxes", halves, north, vec.V{X: 50, Y: 200, Z: -100}, vec.V{X: 50, Y: 200, Z: 100},
			[]Span{{0, 0.5, false}, {0.5, 1, true}}},
		{"the back edge of the seam", halves, north, vec.V{X: 50, Y: 100}, vec.V{X: 50, Y: 100, Z: 100}, []Span{{0, 1, true}}},
		{"a contour half backed by a taller box", append(halves, box(0, -50, 0, 50, 0, 150)), north,
			vec.V{X: 0, Y: 0, Z: 100}, vec.V{X: 100, Y: 0, Z: 100}, []Span{{0, 0.5, true}, {0.5, 1, false}}},
		// Isometric: looking along (1,1,−1) the box covers a hexagon. The
		// upright line x = y = 200 is met by the shadow of the box where
		// some (s,s,s') of the box lies before it: 200−t = x in 0..100,
		// z+t in 0..100, so t in 100..200 and z in −200..0.
		{"isometric", unit, vec.V{X: 1, Y: 1, Z: -1}, vec.V{X: 200, Y: 200, Z: -300}, vec.V{X: 200, Y: 200, Z: 100},
			[]Span{{0, 0.25, false}, {0.25, 0.75, true}, {0.75, 1, false}}},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			s := NewScene(c.w)
			s.AddCells(0, c.cells)
			wantSpans(t, s.Visible(c.a, c.b), c.want)
			var back []Span // the same edge the other way round
			for i := len(c.want) - 1; i >= 0; i-- {
				back = append(back, Span{1 - c.want[i].To, 1 - c.want[i].From, c.want[i].Hidden})
			}
			wantSpans(t, s.Visible(c.b, c.a), back)
		})
	}
}

func wantSpans(t *testing.T, got, want []Span) {
	t.Helper()
	if len(got) != len(want) {
		t.Fatalf("got %v, want %v", got, want)
	}
	for i, w := range want {
		g := got[i]
		if math.Abs(g.From-w.From) > 1e-12 || math.Abs(g.To-w.To) > 1e-12 || g.Hidden != w.Hidden {
			t.Errorf("got %v, want %v", got, want)
		}
	}
}

func TestGhostsHideOnlyTheirOwn(t *testing.T) {
	s := NewScene(vec.V{Y: 1})
	s.AddGhost(7, []solid.Convex{box(0, 0, 0, 100, 100, 100)})
	a, b := vec.V{X: 10, Y: 200, Z: 50}, vec.V{X: 90, Y: 200, Z: 50}
	wantSpans(t, s.Visible(a, b), []Span{{0, 1, false}})
	wantSpans(t, s.VisibleOf(3, a, b), []Span{{0, 1, false}})
	wantSpans(t, s.VisibleOf(7, a, b), []Span{{0, 1, true}})
}

func TestEmptyScene(t *testing.T) {
	s := NewScene(vec.V{Y: 1})
	wantSpans(t, s.Visible(vec.V{}, vec.V{X: 1}), []Span{{0, 1, false}})
}

// blocks returns n boxes the size of timbers, a third of them flush in a row.
func blocks(n int) []solid.Convex {
	rng := rand.New(rand.NewSource(5))
	var cells []solid.Convex
	size := 600 * math.Cbrt(float64(n))
	for i := range n {
		lo := vec.V{X: rng.Float64() * size, Y: rng.Float64() * size, Z: rng.Float64() * size}
		if i%3 == 0 {
			lo = vec.V{X: float64(i) * 50, Y: 0, Z: 0}
		}
		d := [3]vec.V{{X: 2400, Y: 150, Z: 150}, {X: 150, Y: 2400, Z: 150}, {X: 150, Y: 150, Z: 2400}}[i%3]
		cells = append(cells, solid.Box(lo, lo.Add(d)))
	}
	return cells
}

// BenchmarkBoxes times the twelve edges of each of n boxes in two views. The
// marks: 310 ms is what a general solid kernel takes for 400 boxes on the
// machine where it was measured; 240 ms for 5,000 is our own.
func BenchmarkBoxes(b *testing.B) {
	marks := map[int]float64{400: 310, 5000: 240}
	for _, n := range []int{50, 400, 5000} {
		cells := blocks(n)
		for _, view := range []struct {
			name string
			w    vec.V
		}{{"elevation", vec.V{Y: 1}}, {"isometric", vec.V{X: 1, Y: 1, Z: -1}}} {
			b.Run(fmt.Sprintf("%s-%d", view.name, n), func(b *testing.B) {
				for b.Loop() {
					allEdges(view.w, cells)
				}
				if mark := marks[n]; mark > 0 {
					b.ReportMetric(mark, "mark-ms")
				}
				b.ReportMetric(float64(b.Elapsed().Microseconds())/1e3/float64(b.N), "ms")
			})
		}
	}
}

// allEdges asks for the twelve edges of each box.
func allEdges(w vec.V, cells []solid.Convex) {
	s := NewScene(w)
	s.AddCells(0, cells)
	for _, c := range cells {
		for k := range 4 {
			s.Visible(c.V[k], c.V[(k+1)%4])
			s.Visible(c.V[4+k], c.V[4+(k+1)%4])
			s.Visible(c.V[k], c.V[4+k])
		}
	}
}
