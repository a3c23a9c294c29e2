package timber

import (
	"math"

	"pegwright/draw"
	"pegwright/draw/dim"
	"pegwright/draw/font"
	"pegwright/draw/page"
	"pegwright/geom/vec"
)

// balance marks the balance point on the line of the running dimension: a solid
// wedge under it, on which the stick would lie in balance, with the word. In a
// length that is broken out it stands beside the break, nearer to where it belongs.
func (p *facePage) balance() {
	x, ok := p.balanceAt()
	if !ok {
		return
	}
	const high, half = 2.4, 1.2
	y := p.low - footLine
	tip := vec.At(x, y-0.4)
	w := p.s.Tone(0, tip, tip.Add(vec.At(half, -high)), tip.Add(vec.At(-half, -high)))
	w.Mark = "balance"
	t := &draw.Text{Meta: draw.Meta{Class: draw.TextClass, Mark: "balance"}, S: "balance", Height: dim.Small, Halo: true}
	if at, ok := p.besides(t, x, y); ok {
		t.At = at
		p.s.Add(t)
	}
}

// besides returns the place over the running line nearest to paper x where a word
// meets nothing.
func (p *facePage) besides(t *draw.Text, x, y float64) (vec.P, bool) {
	wide := font.Measure(t.S, t.Height, t.Bold)
	for _, low := range []float64{y + 0.9, y - 0.4 - dim.Small} {
		for d := 0.0; d < 60; d++ {
			for _, left := range []float64{x + 1.8 + d, x - 1.8 - wide - d} {
				b := draw.Box{Min: vec.At(left-0.3, low-0.2), Max: vec.At(left+wide+0.3, low+dim.Small)}
				if left < p.x0 || left+wide > p.field.X1 || p.meets(b) {
					continue
				}
				return vec.At(left, low), true
			}
		}
	}
	return vec.P{}, false
}

// meets reports whether any item of the sheet lies in a box.
func (p *facePage) meets(b draw.Box) bool {
	for _, it := range p.s.Items {
		if page.Hits(it, b) {
			return true
		}
	}
	return false
}

// balanceAt returns the paper x of the balance point, where the sheet shows the
// length that it lies in.
func (p *facePage) balanceAt() (float64, bool) {
	const clear = 1.8 // off the break lines
	at := p.t.Net.Centroid().X
	first, last := p.st.pieces[0], p.st.pieces[len(p.st.pieces)-1]
	if at < first.From || at > last.To {
		return 0, false
	}
	best, far := 0.0, math.Inf(1)
	for _, s := range p.st.pieces {
		lo, hi := s.From, s.To
		if s.tornStart {
			lo += clear / p.k
		}
		if s.tornLast {
			hi -= clear / p.k
		}
		x := min(max(at, lo), hi)
		if d := math.Abs(x - at); d < far {
			best, far = p.x0+s.x+(x-s.From)*p.k, d
		}
	}
	return best, true
}
