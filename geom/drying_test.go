package geom

import (
	"math"
	"testing"

	"pegwright/geom/vec"
	"pegwright/geom/wood"
)

// pined is a brace at 45° into a post, both of eastern white pine, its peg
// along z: a 1-1/2 in, p 2 in, offset 1/8 in.
func pined(along bool, brace float64) (*Frame, *Joint) {
	pine, _ := wood.Lookup("eastern white pine")
	const in, c = 25.4, math.Sqrt2 / 2
	post := &Timber{Wood: pine, Moisture: 100, Place: vec.Identity}
	b := &Timber{Wood: pine, Moisture: brace, Section: [2]float64{5 * in, 3 * in},
		Place: vec.Placement{X: vec.V{X: c, Y: c}, Y: vec.V{X: -c, Y: c}, Z: vec.V{Z: 1}}}
	p := Peg{To: vec.V{Z: 100}, A: 1.5 * in, P: 2 * in, Offset: in / 8, Bore: 0.75 * in, PFrom: NoseLine, AlongBrace: along}
	return &Frame{Stock: Stock{Service: 12}}, &Joint{Into: post, Of: b, Pegs: []Peg{p}}
}

// Worked by hand: T/T toward shoulder and nose along the brace +0.098, +0.024
// in, square to the shoulder +0.132, -0.062 in; the toe of a 5 in brace opens by
// 5 x 0.0366 x cos 45° = 0.129 in tangential, 0.045 in radial.
func TestDrawLeftOfABrace(t *testing.T) {
	for along, want := range map[bool][2]float64{true: {0.098, 0.024}, false: {0.132, -0.062}} {
		f, j := pined(along, 100)
		got := f.DrawLeft(j, &j.Pegs[0], 12)[0].Left
		if math.Abs(got.Shoulder/25.4-want[0]) > 1e-3 || math.Abs(got.Nose/25.4-want[1]) > 1e-3 {
			t.Errorf("along %v: %+v in, want %v", along, got, want)
		}
		tangential, radial := f.ToeGap(j, &j.Pegs[0])
		if math.Abs(tangential/25.4-0.129) > 1e-3 || math.Abs(radial/25.4-0.045) > 1e-3 {
			t.Errorf("toe %g and %g in", tangential/25.4, radial/25.4)
		}
	}
}

// The curve runs from fibre saturation (30 %) to service and ends in DrawLeft;
// a square-drawn brace has no draw toward the nose from the first. A dry brace
// (at service) does not move while its green post dries.
func TestDrawCurve(t *testing.T) {
	f, j := pined(true, 100)
	c := f.DrawCurve(j, &j.Pegs[0], 6)
	last := c.Points[len(c.Points)-1]
	if c.Points[0].Moisture != 30 || last.Moisture != 12 || c.Goes || math.Abs(last.Worst/25.4-0.024) > 1e-3 {
		t.Errorf("%+v", c)
	}
	f, j = pined(false, 100)
	if c := f.DrawCurve(j, &j.Pegs[0], 6); !c.Goes || math.Abs(c.Slack-30) > 0.01 {
		t.Errorf("slack at %g, goes %v", c.Slack, c.Goes)
	}
	f, j = pined(true, 12)
	for _, b := range f.DrawLeft(j, &j.Pegs[0], 25) {
		if math.Abs(b.Left.Nose-25.4/8*math.Sqrt2/2) > 1e-9 {
			t.Errorf("a dry brace has moved: %+v", b)
		}
	}
	f.Stock.Service = 30
	if c := f.DrawCurve(j, &j.Pegs[0], 6); len(c.Points) != 0 {
		t.Error("wet service dries")
	}
}
