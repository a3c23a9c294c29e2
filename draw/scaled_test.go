package draw

import (
	"math"
	"testing"

	"pegwright/geom/vec"
)

// area is that of a closed chain of points, by the shoelace formula.
func area(pts []vec.P) float64 {
	sum := 0.0
	for i, p := range pts {
		sum += p.Cross(pts[(i+1)%len(pts)])
	}
	return math.Abs(sum) / 2
}

// Scaled is a similarity: lengths go by k and areas by k squared, holes with them,
// and the origin comes to lie where it is moved to. What it is given stays as it is.
func TestScaledIsASimilarity(t *testing.T) {
	const k = 0.25
	square := func(side float64) []vec.P {
		return []vec.P{{}, vec.At(side, 0), vec.At(side, side), vec.At(0, side)}
	}
	was := []Item{
		&Path{Pts: square(40), Closed: true, Holes: [][]vec.P{square(12)}},
		&Circle{C: vec.At(8, 4), R: 6}, &Arc{C: vec.At(8, 4), R: 6, To: 1}, &Ellipse{C: vec.At(8, 4), RX: 6, RY: 2, Rot: 1},
		&Text{S: "left out"},
	}
	got := Scaled(was, k, vec.At(100, 50))
	if len(got) != 4 {
		t.Fatalf("%d items", len(got))
	}
	p := got[0].(*Path)
	if p.Pts[0] != vec.At(100, 50) || area(p.Pts) != 40*40*k*k || area(p.Holes[0]) != 12*12*k*k {
		t.Errorf("corner %v, area %g, hole %g", p.Pts[0], area(p.Pts), area(p.Holes[0]))
	}
	centre := vec.At(102, 51)
	c, a, e := got[1].(*Circle), got[2].(*Arc), got[3].(*Ellipse)
	if c.C != centre || a.C != centre || e.C != centre || c.R != 1.5 || a.R != 1.5 || e.RX != 1.5 || e.RY != 0.5 || e.Rot != 1 || a.To != 1 {
		t.Errorf("%v, %v, %v", c, a, e)
	}
	if p := was[0].(*Path); area(p.Pts) != 1600 || area(p.Holes[0]) != 144 {
		t.Error("what was given has changed")
	}
}
