package building

import (
	"fmt"

	"pegwright/geom"
	"pegwright/geom/scheme"
	"pegwright/geom/spec"
	"pegwright/geom/vec"
)

// collared reports whether pair k of the rafters has a collar.
func (p *plan) collared(k int) bool {
	c := p.b.Roof.Collars
	return c.Set && (c.On.Or("every pair") == "every pair" || k%2 == 1)
}

// lowCollars reports whether every pair has a collar in the lowest third of
// the roof, which holds its feet together as a tie does (common practice, no
// source).
func (p *plan) lowCollars() bool {
	c := p.b.Roof.Collars
	_, d := p.s.IdealSize("collar")
	return c.Set && c.On.Or("every pair") == "every pair" && c.Height.MM+d/2 <= p.span/2*p.sin/p.cos/3
}

// readyCollars checks that the collars lie between the plates and the peak.
func (p *plan) readyCollars() {
	c := p.b.Roof.Collars
	if !c.Set {
		return
	}
	s := p.s
	_, d := s.Size("collar")
	rise := p.span / 2 * p.sin / p.cos
	switch {
	case p.truss() == "queen posts":
		s.Fault(c.At, "collars", "there are no pairs of common rafters to tie", "leave the key out")
	case c.Height.MM < p.std.stagger:
		s.Fault(c.Height.At, c.Height.Src, fmt.Sprintf("the collars would lie closer than %s above the plates", s.Frame.Units.Format(p.std.stagger)), "set them higher, or write ties: over plates")
	case c.Height.MM+d > 0.8*rise:
		s.Fault(c.Height.At, c.Height.Src, fmt.Sprintf("the collars would lie too near the peak, which stands %s above the plates", s.Frame.Units.Format(rise)), "set them in the lower half of the roof")
	}
}

// collar lays a collar between a pair of rafters, flush with their reference
// sides, on half-dovetail laps.
func (p *plan) collar(k int, x float64, side vec.V, pair [2]*scheme.Stick) {
	s := p.s
	w, d := s.Size("collar")
	_, deep := s.IdealSize("collar")
	at := p.b.Roof.Collars.At
	word, other := "west side", "east side"
	if side.X > 0 {
		word, other = other, word
	}
	l := scheme.Line{At: vec.V{X: x, Z: p.eave + p.b.Roof.Collars.Height.MM + deep}, Dir: north, Out1: up, Out2: side, Size1: d, Size2: w,
		Name1: "top", Name2: word, Name3: "underside", Name4: other}
	st := s.Add(fmt.Sprintf("collar-%d", k), "collar", at, l, 0, p.span, spec.TimberSettings{})
	for i, end := range []geom.End{geom.Start, geom.Finish} {
		s.Join("half-dovetail lap", pair[i], st, end, spec.JointSettings{Pegs: spec.NumberOf(1)}, at).Tension = !p.ridged()
	}
}
