package check

import (
	"fmt"
	"math"

	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// void is a mortise, slot or notch of a timber, in its own axes.
type void struct {
	joint string
	name  string
	c     solid.Convex
}

// voids proves that the voids of one timber keep clear of each other.
func (p *proof) voids(t *geom.Timber) {
	var vs []void
	for _, c := range t.Cuts {
		if c.Name == "mortise" || c.Name == "slot" || c.Name == "notch" {
			vs = append(vs, void{c.Joint, c.Name, solid.Common(c.Solid, t.Blank)})
		}
	}
	for i, a := range vs {
		for _, b := range vs[i+1:] {
			if a.joint != b.joint && solid.Common(a.c, b.c).Thickness() > Thick {
				p.clash(t, a.joint, b.joint, fmt.Sprintf("the %s of %s and the %s of %s run into each other in %s", a.name, a.joint, b.name, b.joint, t.ID),
					"stagger the two along the timber, or make them shallower")
			}
		}
	}
	for i, b := range t.Bores {
		for _, v := range vs {
			if v.joint == b.Joint {
				continue
			}
			p.boreVoid(t, b, v)
		}
		for _, c := range t.Bores[i+1:] {
			p.boreBore(t, b, c)
		}
	}
}

func (p *proof) clash(t *geom.Timber, a, b, text, mend string) {
	f := finding.Finding{Timbers: []string{t.ID}, Joints: []string{a, b}, Text: text, Mend: mend}
	if j := p.f.Joint(a); j != nil {
		f.At = j.At
	}
	if j := p.f.Joint(b); j != nil {
		f.Also = []finding.Pos{j.At}
	}
	p.add(finding.Stop, "voids", f)
}

func (p *proof) boreVoid(t *geom.Timber, b geom.Bore, v void) {
	r := b.Diameter/2 + Web
	near := vec.V{X: r, Y: r, Z: r}
	lo, hi := solid.Convex{V: []vec.V{b.From, b.To}}.Bounds()
	if apart(cellBox(solid.Box(lo.Sub(near), hi.Add(near))), cellBox(v.c)) {
		return
	}
	shared := func(grow float64) bool {
		h := solid.Bore{From: b.From, To: b.To, Diameter: b.Diameter + 2*grow}
		return solid.Common(h.Prism(), v.c).Thickness() > Thick
	}
	switch {
	case shared(0):
		p.clash(t, b.Joint, v.joint, fmt.Sprintf("the bore of %s runs into the %s of %s in %s", b.Peg, v.name, v.joint, t.ID),
			"move the hole along, or stagger the two joints")
	case shared(Web / 2):
		p.add(finding.Warn, "voids", finding.Finding{Timbers: []string{t.ID}, Joints: []string{b.Joint, v.joint}, At: p.f.Joint(b.Joint).At,
			Text: fmt.Sprintf("the bore of %s leaves less than %s of wood to the %s of %s in %s", b.Peg, p.show(Web/2), v.name, v.joint, t.ID),
			Mend: "move the hole along, or stagger the two joints"})
	}
}

func (p *proof) boreBore(t *geom.Timber, b, c geom.Bore) {
	d := gap(b.From, b.To, c.From, c.To) - (b.Diameter+c.Diameter)/2
	switch {
	case d < Thick:
		p.clash(t, b.Joint, c.Joint, fmt.Sprintf("the bores of %s and %s cross in %s", b.Peg, c.Peg, t.ID), "move one hole along by two diameters")
	case d < Web/2 && b.Joint != c.Joint:
		p.add(finding.Warn, "voids", finding.Finding{Timbers: []string{t.ID}, Joints: []string{b.Joint, c.Joint}, At: p.f.Joint(b.Joint).At,
			Text: fmt.Sprintf("only %s of wood is left between the bores of %s and %s in %s", p.show(d), b.Peg, c.Peg, t.ID),
			Mend: "move one hole along"})
	}
}

// gap returns the least distance between the segments a–b and c–d.
func gap(a, b, c, d vec.V) float64 {
	u, v, w := b.Sub(a), d.Sub(c), a.Sub(c)
	uu, uv, vv, uw, vw := u.Dot(u), u.Dot(v), v.Dot(v), u.Dot(w), v.Dot(w)
	best := math.Inf(1)
	try := func(s, t float64) {
		s, t = min(max(s, 0), 1), min(max(t, 0), 1)
		best = min(best, a.Add(u.Mul(s)).Dist(c.Add(v.Mul(t))))
	}
	if den := uu*vv - uv*uv; den > 1e-9 {
		try((uv*vw-vv*uw)/den, (uu*vw-uv*uw)/den)
	}
	for _, s := range []float64{0, 1} {
		try(s, (vw+s*uv)/vv)
	}
	for _, t := range []float64{0, 1} {
		try((t*uv-uw)/uu, t)
	}
	return best
}
