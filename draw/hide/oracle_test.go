package hide

import (
	"math"
	"math/rand"
	"testing"

	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// The oracle knows nothing of shadows, contours or intervals. It stands at a
// point of the edge, steps 1e-5 mm to either side in the picture and 1e-3 mm
// toward the viewer, and shoots a ray at the viewer against every cell. A
// point is hidden if both rays are stopped.

const (
	aside  = 1e-5
	before = 1e-3
)

// stopped reports whether the ray from q along d meets the inside of a cell.
func stopped(q, d vec.V, cells []solid.Convex) bool {
	for _, c := range cells {
		near, far := 0.0, math.Inf(1)
		for _, f := range c.Faces {
			h, k := f.Plane.Height(q), f.Plane.N.Dot(d)
			switch {
			case math.Abs(k) < 1e-12:
				if h >= 0 {
					far = -1
				}
			case k > 0:
				far = min(far, -h/k)
			default:
				near = max(near, -h/k)
			}
		}
		if far > near {
			return true
		}
	}
	return false
}

func oracleHidden(p, e, w vec.V, cells []solid.Convex) bool {
	s := e.Cross(w).Unit().Mul(aside)
	q := p.Sub(w.Mul(before))
	return stopped(q.Add(s), w.Neg(), cells) && stopped(q.Sub(s), w.Neg(), cells)
}

// compare checks every edge of every cell at random points, leaving out those
// nearer than clear to an end of a span, and returns how many it tested and
// how many of them were hidden.
func compare(t *testing.T, rng *rand.Rand, cells []solid.Convex, w vec.V, clear float64) (tested, hidden int) {
	t.Helper()
	w = w.Unit()
	s := NewScene(w)
	s.AddCells(1, cells)
	for _, c := range cells {
		for _, f := range c.Faces {
			for k, i := range f.Loop {
				a, b := c.V[i], c.V[f.Loop[(k+1)%len(f.Loop)]]
				spans := s.Visible(a, b)
				checkSpans(t, spans, a, b, w)
				for range 6 {
					x := rng.Float64()
					for _, sp := range spans {
						if x < sp.From+clear/a.Dist(b) || x > sp.To-clear/a.Dist(b) {
							continue
						}
						p := a.Lerp(b, x)
						want := oracleHidden(p, b.Sub(a), w, cells)
						if want != sp.Hidden {
							t.Errorf("view %v, edge %v %v at %v: hidden %v, oracle %v", w, a, b, x, sp.Hidden, want)
							return
						}
						tested++
						if want {
							hidden++
						}
					}
				}
			}
		}
	}
	return
}

// checkSpans checks that spans run from 0 to 1 without gaps and take turns.
func checkSpans(t *testing.T, spans []Span, a, b, w vec.V) {
	t.Helper()
	if b.Sub(a).Cross(w).Len() < shortest {
		if spans != nil {
			t.Errorf("edge seen as a point has spans %v", spans)
		}
		return
	}
	at := 0.0
	for i, s := range spans {
		if s.From != at || s.To <= s.From || i > 0 && s.Hidden == spans[i-1].Hidden {
			t.Fatalf("edge %v %v: spans %v", a, b, spans)
		}
		if l := (s.To - s.From) * a.Dist(b); l < 1.9e-6 {
			t.Errorf("edge %v %v: a sliver of %v mm in %v", a, b, l, spans)
		}
		at = s.To
	}
	if at != 1 {
		t.Fatalf("edge %v %v: spans %v do not end at 1", a, b, spans)
	}
}

// views are the six elevations, true isometric and slanted views.
var views = []vec.V{
	{X: 1}, {X: -1}, {Y: 1}, {Y: -1}, {Z: 1}, {Z: -1},
	{X: 1, Y: 1, Z: -1}, {X: -1, Y: 1, Z: -1}, {X: 2, Y: 3, Z: -1}, {X: 0, Y: 1, Z: -1}, {X: 1, Y: 0.3, Z: 0.2},
}

func randomTurn(rng *rand.Rand) vec.Placement {
	v := func() vec.V {
		return vec.V{X: rng.NormFloat64(), Y: rng.NormFloat64(), Z: rng.NormFloat64()}.Unit()
	}
	x := v()
	z := x.Cross(v()).Unit()
	return vec.Placement{X: x, Y: z.Cross(x), Z: z}
}

// without returns the convex pieces of c outside cut, by peeling one plane of
// the cut after the other.
func without(c, cut solid.Convex) []solid.Convex {
	if solid.Common(c, cut).Empty() {
		return []solid.Convex{c}
	}
	var out []solid.Convex
	for _, f := range cut.Faces {
		if o := c.Clip(f.Plane.Flip(), ""); !o.Empty() {
			out = append(out, o)
		}
		c = c.Clip(f.Plane, "")
	}
	return out
}

// cutBody returns the cells of a random timber with box cuts on a grid of
// whole millimetres, so that cuts are often flush with each other.
func cutBody(rng *rand.Rand) []solid.Convex {
	cells := []solid.Convex{solid.Box(vec.V{}, vec.V{X: 400, Y: 100, Z: 100})}
	for range 1 + rng.Intn(5) {
		at := func(n int) float64 { return float64(rng.Intn(n)) * 25 }
		lo := vec.V{X: at(16), Y: at(4) - 25, Z: at(4) - 25}
		hi := lo.Add(vec.V{X: 25 + at(5), Y: 50 + at(3), Z: 50 + at(3)})
		cut := solid.Box(lo, hi)
		var next []solid.Convex
		for _, c := range cells {
			next = append(next, without(c, cut)...)
		}
		cells = next
	}
	return cells
}

func TestRandomBoxesAgreeWithRays(t *testing.T) {
	rng := rand.New(rand.NewSource(1))
	tested, hidden := 0, 0
	for round := range 12 {
		var cells []solid.Convex
		for range 12 {
			b := solid.Box(vec.V{}, vec.V{X: 20 + 200*rng.Float64(), Y: 20 + 60*rng.Float64(), Z: 20 + 60*rng.Float64()})
			pl := randomTurn(rng)
			pl.O = vec.V{X: 200 * rng.Float64(), Y: 200 * rng.Float64(), Z: 200 * rng.Float64()}
			cells = append(cells, b.Moved(pl))
		}
		n, h := compare(t, rng, cells, views[round%len(views)], 0.05)
		tested, hidden = tested+n, hidden+h
	}
	atLeast(t, tested, hidden, 10000)
}

func TestStackedFlushBoxesAgreeWithRays(t *testing.T) {
	rng := rand.New(rand.NewSource(2))
	tested, hidden := 0, 0
	for range 4 {
		var cells []solid.Convex
		for x := range 4 {
			for y := range 3 {
				for z := range 3 {
					if rng.Intn(4) > 0 { // a block wall with blocks left out, one or two wide
						lo := vec.V{X: float64(x) * 50, Y: float64(y) * 50, Z: float64(z) * 50}
						cells = append(cells, solid.Box(lo, lo.Add(vec.V{X: 50, Y: 50, Z: 50})))
					}
				}
			}
		}
		for _, w := range views {
			n, h := compare(t, rng, cells, w, 0.05)
			tested, hidden = tested+n, hidden+h
		}
	}
	atLeast(t, tested, hidden, 50000)
}

func TestCutBodiesAgreeWithRays(t *testing.T) {
	rng := rand.New(rand.NewSource(3))
	tested, hidden := 0, 0
	for range 12 {
		cells := append(cutBody(rng), moved(cutBody(rng), vec.Placement{
			X: vec.V{Y: 1}, Y: vec.V{X: -1}, Z: vec.V{Z: 1}, O: vec.V{X: 200, Y: 100}})...)
		for _, w := range views {
			n, h := compare(t, rng, cells, w, 0.05)
			tested, hidden = tested+n, hidden+h
		}
	}
	atLeast(t, tested, hidden, 100000)
}

func TestTurnedCutBodiesAgreeWithRays(t *testing.T) {
	rng := rand.New(rand.NewSource(4))
	tested, hidden := 0, 0
	for range 12 {
		pl := randomTurn(rng)
		pl.O = vec.V{X: 9000 * rng.Float64(), Y: 9000 * rng.Float64()}
		cells := moved(cutBody(rng), pl)
		for _, w := range []vec.V{{X: 1}, {Y: 1}, {Y: 1, Z: -0.3}} {
			n, h := compare(t, rng, cells, pl.OutDir(w), 0.05) // flush in a turned frame
			tested, hidden = tested+n, hidden+h
		}
	}
	atLeast(t, tested, hidden, 20000)
}

// Bodies of one shape behind each other, squarely and a little aside: what hides
// an edge may be any of them.
func TestBodiesInRowsAgreeWithRays(t *testing.T) {
	rng := rand.New(rand.NewSource(5))
	tested, hidden := 0, 0
	for range 6 {
		body := cutBody(rng)
		for _, aside := range []vec.V{{}, {Z: 10}, {X: -25, Z: 50}} {
			var cells []solid.Convex
			for k := range 4 {
				pl := vec.Identity
				pl.O = vec.V{Y: 400 * float64(k)}.Add(aside.Mul(float64(k)))
				cells = append(cells, moved(body, pl)...)
			}
			for _, w := range []vec.V{{Y: 1}, {Y: -1}, aside.Add(vec.V{Y: 400})} {
				n, h := compare(t, rng, cells, w, 0.05)
				tested, hidden = tested+n, hidden+h
			}
		}
	}
	atLeast(t, tested, hidden, 100000)
}

func moved(cells []solid.Convex, pl vec.Placement) []solid.Convex {
	out := make([]solid.Convex, len(cells))
	for i, c := range cells {
		out[i] = c.Moved(pl)
	}
	return out
}

func atLeast(t *testing.T, tested, hidden, want int) {
	t.Helper()
	t.Logf("%d points, %d hidden", tested, hidden)
	if tested < want || hidden < tested/5 || hidden > tested*9/10 {
		t.Errorf("only %d points, %d of them hidden: the check says little", tested, hidden)
	}
}
