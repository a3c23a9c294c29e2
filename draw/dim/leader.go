package dim

import (
	"pegwright/draw"
	"pegwright/geom/vec"
)

// Label is a text that a leader joins to a point of the drawing.
type Label struct {
	Text  string
	At    vec.P  // the point, paper mm
	Owner string // of the text, "" for none
	Bold  bool
}

// Leader draws a leader from the text's place to a point, with a dot there
// when dot is true and an arrowhead otherwise.
func Leader(s *draw.Sheet, from, to vec.P, dot bool) {
	s.Line(draw.Dimension, from, to)
	if dot {
		Dot(s, to)
		return
	}
	Arrow(s, to, to.Sub(from))
}

// Lane sets labels of a group in an upright lane whose inner edge is
// at x: to the right of it when right is true, else to the left. They stay
// between lo and hi, as near as can be to the height of their points, without
// overlap, and no two leaders cross. It draws nothing and returns false when
// the lane is too short.
func Lane(s *draw.Sheet, x float64, right bool, labels []Label, g Group, lo, hi float64) bool {
	height := g.Height
	wants := make([]Want, len(labels))
	for i, l := range labels {
		wants[i] = Want{l.At.Y, 1.45 * height}
	}
	at, ok := Spread(wants, 0.25*height, lo, hi)
	if !ok {
		return false
	}
	stub := 3.0
	if !right {
		stub = -3
	}
	ports := make([]vec.P, len(labels))
	for i, y := range at {
		ports[i] = vec.P{X: x - stub, Y: y}
	}
	uncross(labels, ports)
	for i, l := range labels {
		port := ports[i]
		t := g.Text(s, vec.P{X: x + stub/4, Y: port.Y - height/2}, l.Text)
		t.Owner, t.Bold = l.Owner, l.Bold
		if !right {
			t.Anchor = draw.End
		}
		s.Poly(draw.Dimension, false, vec.P{X: x, Y: port.Y}, port, l.At).Owner = l.Owner
		Dot(s, l.At).Owner = l.Owner
	}
	return true
}

// uncross swaps the ports of labels whose leaders cross. Every swap makes the
// leaders shorter together, so it ends.
func uncross(labels []Label, ports []vec.P) {
	for again := true; again; {
		again = false
		for i := range labels {
			for j := range i {
				a, b := labels[i].At, labels[j].At
				now := a.Dist(ports[i]) + b.Dist(ports[j])
				then := a.Dist(ports[j]) + b.Dist(ports[i])
				if Cross(a, ports[i], b, ports[j]) && then < now-1e-9 {
					ports[i], ports[j] = ports[j], ports[i]
					again = true
				}
			}
		}
	}
}

// Cross reports whether the segments a-b and c-d share a point inside both.
func Cross(a, b, c, d vec.P) bool {
	s := func(p, q, r vec.P) float64 { return q.Sub(p).Cross(r.Sub(p)) }
	return s(a, b, c)*s(a, b, d) < 0 && s(c, d, a)*s(c, d, b) < 0
}
