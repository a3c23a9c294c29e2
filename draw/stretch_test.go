package draw

import (
	"math"
	"testing"

	"pegwright/geom/vec"
)

// A stretched sheet against its points: for every item, points of the shape as
// it was, moved one by one, lie on the shape as it is. The equation of an
// ellipse is the textbook one.
func TestStretch(t *testing.T) {
	about, kx, ky := vec.P{X: 100, Y: 140}, 1.004, 0.993
	move := func(p vec.P) vec.P {
		return vec.P{X: about.X + kx*(p.X-about.X), Y: about.Y + ky*(p.Y-about.Y)}
	}
	for _, e := range []Ellipse{
		{C: vec.P{X: 30, Y: 40}, RX: 9, RY: 4, Rot: 0.6, From: 0.3, To: 2},
		{C: vec.P{X: 30, Y: 40}, RX: 4, RY: 9, Rot: -2.1, From: 1, To: 0.5},
		{C: vec.P{X: 130, Y: 40}, RX: 7, RY: 7, Rot: 1},
		{C: vec.P{X: 130, Y: 240}, RX: 7, RY: 3, From: 2, To: 6},
	} {
		was := e
		s := NewSheet("k", "i", "t", 200, 280)
		s.Add(&e)
		s.Stretch(about, kx, ky)
		from, to, _ := was.Span()
		gotFrom, gotTo, _ := e.Span()
		for i := range 21 {
			k := float64(i) / 20
			want := move(was.At(from + (to-from)*k))
			if d := want.Dist(e.At(gotFrom + (gotTo-gotFrom)*k)); d > 1e-9 {
				t.Fatalf("%v: point %d is %v mm off", was, i, d)
			}
		}
	}
	s := NewSheet("k", "i", "t", 200, 280)
	line := s.Poly(Part, false, vec.P{X: 1, Y: 2}, vec.P{X: 3, Y: 4})
	s.Circle(Part, vec.P{X: 10, Y: 20}, 5)
	s.Text(vec.P{X: 7, Y: 8}, 3.5, "x")
	s.Stretch(about, kx, ky)
	if line.Pts[1].Dist(move(vec.P{X: 3, Y: 4})) > 1e-12 {
		t.Errorf("line: %v", line.Pts)
	}
	e := s.Items[1].(*Ellipse)
	if math.Abs(e.RX-5*kx) > 1e-12 || math.Abs(e.RY-5*ky) > 1e-12 || e.C.Dist(move(vec.P{X: 10, Y: 20})) > 1e-12 {
		t.Errorf("circle: %+v", e)
	}
	if x := s.Items[2].(*Text); x.Height != 3.5 || x.At.Dist(move(vec.P{X: 7, Y: 8})) > 1e-12 {
		t.Errorf("text: %+v", x)
	}
}

// Widths of rolls, by arithmetic at 25.4 mm an inch.
func TestRolls(t *testing.T) {
	for name, want := range map[string]float64{"roll 24 in": 609.6, "Roll-36-in": 914.4, "roll 610 mm": 610} {
		if p, ok := RollNamed(name); !ok || math.Abs(p.W-want) > 1e-9 {
			t.Errorf("%s: %v %v", name, p, ok)
		}
	}
	if _, ok := RollNamed("letter"); ok {
		t.Error("letter paper is no roll")
	}
}
