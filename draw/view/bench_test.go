package view

import (
	"fmt"
	"testing"

	"pegwright/geom/vec"
)

// BenchmarkFrame draws many posts with their ties and pegs in a grid.
func BenchmarkFrame(b *testing.B) {
	for _, n := range []int{20, 500} { // joints: two timbers and a peg each
		var parts []Part
		for i := range n {
			o := vec.Identity
			o.O = at(float64(i%25)*1500, float64(i/25)*1500, 0)
			for _, p := range []Part{post(), tie()} {
				p.Body = p.Body.Moved(o)
				for k, h := range p.Bores {
					p.Bores[k].From, p.Bores[k].To = o.Out(h.From), o.Out(h.To)
				}
				parts = append(parts, p)
			}
			parts = append(parts, PegPart("peg", o.Out(at(101, -20, 650)), o.Out(at(101, 200, 650)), 25.4, 14, 70))
		}
		for _, hidden := range []bool{false, true} {
			b.Run(fmt.Sprintf("%d-hidden-%v", n, hidden), func(b *testing.B) {
				for b.Loop() {
					Render(Isometric(), parts, Options{Scale: 0.02, ShowHidden: hidden})
				}
			})
		}
	}
}
