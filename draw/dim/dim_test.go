package dim

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"pegwright/draw"
	"pegwright/draw/font"
	"pegwright/geom/vec"
)

// Spread against projected gradient steps on the dual (Hildreth's procedure,
// Naval Research Logistics Quarterly 4, 1957), a method of quadratic
// programming that shares nothing with pooling.
func TestSpreadIsLeastSquares(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for trial := range 60 {
		n := 1 + rng.IntN(9)
		wants := make([]Want, n)
		at := 0.0
		total := 0.0
		for i := range wants {
			at += rng.Float64() * 6
			wants[i] = Want{at, 1 + 5*rng.Float64()}
			total += wants[i].Size + 0.5
		}
		lo, hi := -2.0, max(at*rng.Float64(), total)
		got, ok := Spread(wants, 0.5, lo, hi)
		if !ok {
			t.Fatalf("trial %d: a lane that is long enough is refused", trial)
		}
		want := hildreth(wants, 0.5, lo, hi)
		for i := range got {
			if math.Abs(got[i]-want[i]) > 1e-4 {
				t.Fatalf("trial %d label %d: %v, want %v", trial, i, got, want)
			}
		}
	}
}

func hildreth(wants []Want, gap, lo, hi float64) []float64 {
	n := len(wants)
	x := make([]float64, n)
	for i, w := range wants {
		x[i] = w.At
	}
	lambda := make([]float64, n+1)
	for range 200000 {
		worst := 0.0
		for k := range lambda {
			var short, norm float64
			var push func(float64)
			switch k {
			case 0: // x[0] >= lo + size/2
				short, norm = lo+wants[0].Size/2-x[0], 1
				push = func(d float64) { x[0] += d }
			case n: // x[n-1] <= hi - size/2
				short, norm = x[n-1]-hi+wants[n-1].Size/2, 1
				push = func(d float64) { x[n-1] -= d }
			default:
				short, norm = (wants[k-1].Size+wants[k].Size)/2+gap-(x[k]-x[k-1]), 2
				push = func(d float64) { x[k] += d; x[k-1] -= d }
			}
			d := max(short/norm, -lambda[k])
			lambda[k] += d
			push(d)
			worst = max(worst, math.Abs(d))
		}
		if worst < 1e-11 {
			break
		}
	}
	return x
}

func TestSpreadRefusesAFullLane(t *testing.T) {
	if _, ok := Spread([]Want{{1, 5}, {2, 5}}, 1, 0, 10.9); ok {
		t.Error("two labels of 5 and a gap of 1 do not fit into 10.9")
	}
	if _, ok := Spread([]Want{{1, 5}, {2, 5}}, 1, 0, 11); !ok {
		t.Error("two labels of 5 and a gap of 1 fit into 11")
	}
}

func texts(s *draw.Sheet) []*draw.Text {
	var out []*draw.Text
	for _, it := range s.Items {
		if x, ok := it.(*draw.Text); ok {
			out = append(out, x)
		}
	}
	return out
}

func apart(t *testing.T, s *draw.Sheet) {
	t.Helper()
	list := texts(s)
	for i, a := range list {
		for _, b := range list[:i] {
			p, q := font.Turned(a), font.Turned(b)
			if min(p.Max.X, q.Max.X)-max(p.Min.X, q.Min.X) > 0 && min(p.Max.Y, q.Max.Y)-max(p.Min.Y, q.Min.Y) > 0 {
				t.Errorf("%q and %q overlap", a.S, b.S)
			}
		}
	}
}

func TestStackKeepsTextsApart(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 4))
	for _, sd := range []Side{Below, Above, LeftOf, RightOf} {
		for range 40 {
			var reqs []Request
			for i := range 8 {
				a := vec.P{X: rng.Float64() * 60, Y: rng.Float64() * 60}
				b := vec.P{X: rng.Float64() * 60, Y: rng.Float64() * 60}
				reqs = append(reqs, Request{From: a, To: b, Text: fmt.Sprintf(`%d'-%d 1/2"`, i, rng.IntN(12))})
			}
			s := draw.NewSheet("test", "x", "", 300, 300)
			edge := -10.0
			if sd == Above || sd == RightOf {
				edge = 70
			}
			Stack(s, sd, edge, reqs)
			apart(t, s)
			if len(texts(s)) != len(reqs) {
				t.Fatalf("%d texts for %d dimensions", len(texts(s)), len(reqs))
			}
			d := Depth(sd, reqs)
			for _, x := range texts(s) {
				b := font.Turned(x)
				if far := map[Side]float64{Below: edge - b.Min.Y, Above: b.Max.Y - edge, LeftOf: edge - b.Min.X, RightOf: b.Max.X - edge}[sd]; far > d+1e-9 {
					t.Errorf("side %d: text reaches %v, depth said %v", sd, far, d)
				}
			}
		}
	}
}

func TestLaneLeadersDoNotCross(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 6))
	for range 50 {
		var ls []Label
		for i := range 12 {
			ls = append(ls, Label{Text: fmt.Sprintf("post-%d-north", i), At: vec.P{X: rng.Float64() * 80, Y: rng.Float64() * 100}})
		}
		s := draw.NewSheet("test", "x", "", 300, 300)
		if !Lane(s, 100, true, ls, Group{Height: 2.5}, 0, 100) {
			t.Fatal("lane too short")
		}
		apart(t, s)
		var paths []*draw.Path
		for _, it := range s.Items {
			if p, ok := it.(*draw.Path); ok && len(p.Pts) == 3 {
				paths = append(paths, p)
			}
		}
		for i, a := range paths {
			for _, b := range paths[:i] {
				if Cross(a.Pts[1], a.Pts[2], b.Pts[1], b.Pts[2]) {
					t.Fatal("two leaders cross")
				}
			}
		}
	}
}

// ISO 129-1: an arrowhead opens 15° to 30°; the value stands above its line and
// is read from below or from the right.
func TestArrowAndReadingDirection(t *testing.T) {
	if a := 2 * math.Atan2(half, arrow) * 180 / math.Pi; a < 15 || a > 30 {
		t.Errorf("arrowhead opens %v°", a)
	}
	for deg := 0.0; deg < 360; deg += 15 {
		r := deg * math.Pi / 180
		d := vec.P{X: math.Cos(r), Y: math.Sin(r)}
		s := draw.NewSheet("test", "x", "", 300, 300)
		Linear(s, d, d.Left().Mul(20), Request{From: vec.P{}, To: d.Mul(80), Text: `3'-2 1/2"`})
		x := texts(s)[0]
		if g := math.Remainder(x.Rot, 2*math.Pi); g <= -math.Pi/2+1e-9 || g > math.Pi/2+1e-9 {
			t.Errorf("at %v° the text is turned %v°", deg, g*180/math.Pi)
		}
	}
}

// No figure is under 2.5 mm, the least height that the sheets allow, and one
// fraction makes its whole group larger. Heights are steps of ISO 3098.
func TestTogether(t *testing.T) {
	for _, c := range []struct {
		texts []string
		h     float64
	}{
		{nil, 2.5},
		{[]string{"plain 12", "arris 1/2", `12'-0"`}, 2.5},
		{[]string{`6 1/2"`}, 3.5},
		{[]string{"plain 12", `6 1/2"`, "plain"}, 3.5},
	} {
		g := Together("g", c.texts...)
		if g.Height != c.h {
			t.Errorf("%q set at %v, want %v", c.texts, g.Height, c.h)
		}
		s := draw.NewSheet("test", "x", "", 300, 300)
		for _, w := range c.texts {
			x := g.Text(s, vec.P{}, w)
			if x.Group != "g" || x.Height != c.h {
				t.Errorf("%q is set in group %q, %v high", w, x.Group, x.Height)
			}
			for _, r := range font.Layout(x.S, x.Height, false) {
				if r.Height < 2.5-1e-9 {
					t.Errorf("%q has figures of %v mm", w, r.Height)
				}
			}
		}
	}
}
