package templates

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"pegwright/geom/vec"
)

// same is how far two templates may differ and be printed as one, mm.
const same = 0.01

// signature is what makes a template: its words, and all its places.
type signature struct {
	text  string
	place []float64
}

func (s *signature) points(pts ...vec.P) {
	for _, p := range pts {
		s.place = append(s.place, p.X, p.Y)
	}
}

// signature returns the template's words and places, but for the words that may
// differ among the joints that it serves: where the start end lies, and what
// role the enterer has. Mirrored templates have other places.
func (p plan) signature() signature {
	var s signature
	var b strings.Builder
	fmt.Fprint(&b, p.kind, "|", p.v.arris(), "|", p.v.sign(), "|", p.housed)
	for _, h := range p.holes {
		fmt.Fprint(&b, "|", h.n, h.shadow, h.peg.Words, h.peg.Exit == 0, h.peg.Flush)
		s.points(h.c)
		s.place = append(s.place, h.bore, h.peg.B, h.peg.Relish)
	}
	for _, q := range p.shapes {
		fmt.Fprint(&b, "|", called(q.name, p.joint, anyEnterer), len(q.pts))
		s.points(q.pts...)
	}
	for _, g := range p.guides {
		fmt.Fprint(&b, "|", called(g.name, p.joint, anyEnterer))
		s.points(g.a, g.b)
	}
	for _, q := range p.strokes {
		fmt.Fprint(&b, "|", q.class)
		s.points(q.a, q.b)
	}
	for _, w := range p.windows {
		fmt.Fprint(&b, "|", len(w))
		s.points(w...)
	}
	if p.part.of > 0 {
		fmt.Fprint(&b, "|", p.part.n, p.part.of)
		s.place = append(s.place, p.part.from)
	}
	if p.kind == "flap" { // what the words say of the bearing
		s.place = append(s.place, p.joint.LetIn, flare(p.joint))
	}
	if p.kind == "through" { // what the words say of the receiver
		fmt.Fprint(&b, "|", p.joint.Into.Role)
		s.place = append(s.place, p.deep())
	}
	s.text = b.String()
	return s
}

// alike reports whether two templates may be printed as one.
func (s signature) alike(t signature) bool {
	if s.text != t.text || len(s.place) != len(t.place) {
		return false
	}
	for i, x := range s.place {
		if !(math.Abs(x-t.place[i]) <= same) {
			return false
		}
	}
	return true
}

// join has the template serve one joint more: its lines get names that hold for
// both.
func (p *plan) join(q plan) {
	p.serves = append(p.serves, q)
	if enterer(p.joint) == enterer(q.joint) {
		return
	}
	p.guides, p.shapes = slices.Clone(p.guides), slices.Clone(p.shapes)
	for i := range p.guides {
		p.guides[i].name = called(p.guides[i].name, p.joint, anyEnterer)
	}
	for i := range p.shapes {
		p.shapes[i].name = called(p.shapes[i].name, p.joint, anyEnterer)
	}
}

// gather puts alike templates together, in the order of the first of each.
func gather(plans []plan) []plan {
	var out []plan
	var signs []signature
next:
	for _, p := range plans {
		sign := p.signature()
		for i := range out {
			if signs[i].alike(sign) {
				out[i].join(p)
				continue next
			}
		}
		p.serves = []plan{p}
		out, signs = append(out, p), append(signs, sign)
	}
	return out
}
