package dim

import (
	"fmt"
	"math"
	"testing"

	"pegwright/draw"
	"pegwright/geom/vec"
)

// The dimension of an angle after ISO 129-1: the arc is centred where the lines
// meet and ends on both, the arrowheads' tips are its ends and their bases lie on
// it too, and the text stands outside the arc between the lines. What is drawn is
// measured by the law of cosines on the arc's ends, which the code does not use.
func TestAngleIsMeasuredByItsArc(t *testing.T) {
	for deg := 15.0; deg < 180; deg += 7.5 {
		for turn := 0.0; turn < 360; turn += 30 {
			dir := func(d float64) vec.P {
				return vec.At(math.Cos(d*math.Pi/180), math.Sin(d*math.Pi/180))
			}
			apex := vec.At(100, 80)
			a := Angle{Apex: apex, A: dir(turn + deg).Mul(12), B: dir(turn).Mul(30), Text: fmt.Sprintf("%.1f°", deg)}
			s := draw.NewSheet("", "", "", 200, 200)
			r := a.Least(8)
			a.Draw(s, r)
			checkAngle(t, s, a, r, deg)
		}
	}
}

func checkAngle(t *testing.T, s *draw.Sheet, a Angle, r, deg float64) {
	t.Helper()
	var tips []vec.P
	arcs := 0
	for _, it := range s.Items {
		switch x := it.(type) {
		case *draw.Arc:
			arcs++
			if x.C != a.Apex || x.R != r {
				t.Errorf("%v°: arc about %v of radius %v", deg, x.C, x.R)
			}
		case *draw.Path:
			if len(x.Pts) == 3 {
				tips = append(tips, x.Pts[0])
				base := x.Pts[1].Add(x.Pts[2]).Mul(0.5).Sub(a.Apex).Len()
				if math.Abs(base-r) > 0.05 {
					t.Errorf("%v°: the arrowhead's base lies %.3f from the apex, want %.3f", deg, base, r)
				}
			}
		case *draw.Text:
			b := a.Box(r)
			for _, q := range []vec.P{b.Min, b.Max, vec.At(b.Min.X, b.Max.Y), vec.At(b.Max.X, b.Min.Y)} {
				p := q.Sub(a.Apex)
				// between the lines: the angles to both add up to the whole
				sum := apartBy(p, a.A) + apartBy(p, a.B)
				if p.Len() < r || math.Abs(sum-deg) > 1e-6 {
					t.Errorf("%v°: the text's corner %v is not outside the arc between the lines", deg, p)
				}
			}
		}
	}
	if arcs != 1 || len(tips) != 2 {
		t.Fatalf("%v°: %d arcs, %d arrowheads", deg, arcs, len(tips))
	}
	d := tips[0].Sub(tips[1]).Len()
	if got := math.Acos(1-d*d/(2*r*r)) * 180 / math.Pi; math.Abs(got-deg) > 1e-6 {
		t.Errorf("the arrowheads stand %.4f° apart, want %v", got, deg)
	}
}

// apartBy is the angle between two directions, degrees.
func apartBy(p, q vec.P) float64 { return math.Acos(p.Dot(q)/p.Len()/q.Len()) * 180 / math.Pi }
