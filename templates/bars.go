package templates

import (
	"math"

	"pegwright/draw"
	"pegwright/geom/vec"
)

const (
	barMM   = 100.0
	barIn   = 4 * 25.4
	barRoom = 15.0 // width of a pair of bars with its lettering, mm
)

// bars draws a 100 mm bar and a 4 in bar side by side, with their lower left
// end at p; upright bars rise from p, their lettering to the left and right.
// Dir is "x" or "y". A box of barRoom by 104 mm is taken.
func bars(s *draw.Sheet, p vec.P, dir string) {
	u, n, rot := vec.P{X: 1}, vec.P{Y: 1}, 0.0
	if dir == "y" {
		u, n, rot = vec.P{Y: 1}, vec.P{X: -1}, math.Pi/2
		p = p.Add(vec.P{X: barRoom})
	}
	base := p.Add(n.Mul(6))
	bar(s, base, u, n.Mul(-1), barIn, 25.4, "bar:in:"+dir)
	bar(s, base.Add(n.Mul(3)), u, n, barMM, 10, "bar:mm:"+dir)
	text := func(at vec.P, words string) {
		t := s.Text(at, lettering, words)
		t.Rot, t.Anchor = rot, draw.Middle
	}
	mid := base.Add(u.Mul(barMM / 2))
	text(mid.Sub(n.Mul(5.4)), "4 in: measure it")
	text(mid.Add(n.Mul(5.6)), "100 mm: measure it")
}

// bar draws one ruled bar from p along u, ticks toward n every step mm.
func bar(s *draw.Sheet, p, u, n vec.P, long, step float64, mark string) {
	s.Line(draw.Part, p, p.Add(u.Mul(long))).Mark = mark
	mark += ":tick"
	for i := range int(math.Round(long/step)) + 1 {
		a := p.Add(u.Mul(float64(i) * step))
		tick := 1.0
		if i == 0 || i == int(math.Round(long/step)) {
			tick = 2.2
		}
		s.Line(draw.Part, a, a.Add(n.Mul(tick))).Mark = mark
	}
}
