// Package check proves a solved frame and reports what it finds: whether the
// timbers fit without sharing wood, whether each tenon lies inside its mortise
// and its own timber, whether each hole is in a good place and clear of other
// voids, and whether each stick is still one sound stick.
package check

import (
	"fmt"

	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/peg"
	"pegwright/geom/solid"
)

// Thick is the thickness, in millimetres, above which shared volume counts.
const Thick = 1e-3

// Web is the least wood between a void and another, or a void and the far
// face, that passes without a word: 1/2 in (common practice, no source).
const Web = 12.0

type proof struct {
	f    *geom.Frame
	list []finding.Finding

	bodies []*solid.Body // net timbers in frame axes
	boxes  []box
}

// Check runs every proof over a frame. The findings are sorted: stops first.
func Check(f *geom.Frame) []finding.Finding {
	p := &proof{f: f, list: append([]finding.Finding(nil), f.Notes...)}
	for _, t := range f.Timbers {
		b := t.NetInFrame()
		p.bodies, p.boxes = append(p.bodies, b), append(p.boxes, boundsOf(b))
	}
	p.overlaps()
	for _, j := range f.Joints {
		p.tenon(j)
		p.pegs(j)
	}
	for _, t := range f.Timbers {
		p.stick(t)
		p.voids(t)
	}
	p.strength()
	finding.Sort(p.list)
	return p.list
}

func (p *proof) add(s finding.Severity, rule string, f finding.Finding) {
	f.Severity, f.Rule = s, rule
	p.list = append(p.list, f)
}

func (p *proof) show(mm float64) string { return p.f.Units.FormatJoint(mm) }

// overlaps clips the cells of every neighbouring pair of timbers against each
// other in frame axes.
func (p *proof) overlaps() {
	bodies, boxes := p.bodies, p.boxes
	for i, a := range p.f.Timbers {
		for k := i + 1; k < len(p.f.Timbers); k++ {
			if apart(boxes[i], boxes[k]) {
				continue
			}
			if t := Shared(bodies[i], bodies[k]); t > Thick {
				b := p.f.Timbers[k]
				p.add(finding.Stop, "overlap", finding.Finding{Timbers: []string{a.ID, b.ID}, Joints: p.between(a, b), At: a.At,
					Also: []finding.Pos{b.At},
					Text: fmt.Sprintf("%s and %s would fill the same space, %s thick", a.ID, b.ID, p.show(t)),
					Mend: "join the two, move one of them, or shorten what runs into the other"})
			}
		}
	}
}

func (p *proof) between(a, b *geom.Timber) []string {
	var r []string
	for _, j := range p.f.Joints {
		if j.Into == a && j.Of == b || j.Into == b && j.Of == a {
			r = append(r, j.ID)
		}
	}
	return r
}

// Shared returns the greatest thickness of wood that two bodies (in the same
// axes) share, in millimetres.
func Shared(a, b *solid.Body) float64 {
	if apart(boundsOf(a), boundsOf(b)) {
		return 0
	}
	most := 0.0
	cb := b.Cells()
	boxes := make([]box, len(cb))
	for i, d := range cb {
		boxes[i] = cellBox(d)
	}
	for _, c := range a.Cells() {
		bc := cellBox(c)
		for i, d := range cb {
			if !apart(bc, boxes[i]) {
				most = max(most, solid.Common(c, d).Thickness())
			}
		}
	}
	return most
}

type box struct{ lo, hi [3]float64 }

func cellBox(c solid.Convex) box {
	lo, hi := c.Bounds()
	return box{[3]float64{lo.X, lo.Y, lo.Z}, [3]float64{hi.X, hi.Y, hi.Z}}
}

func boundsOf(b *solid.Body) box {
	lo, hi := b.Bounds()
	return box{[3]float64{lo.X, lo.Y, lo.Z}, [3]float64{hi.X, hi.Y, hi.Z}}
}

func apart(a, b box) bool {
	for i := range 3 {
		if a.lo[i] > b.hi[i]-Thick || b.lo[i] > a.hi[i]-Thick {
			return true
		}
	}
	return false
}

// tenon proves that a tenon lies inside its mortise and inside its own timber,
// and that the mortise leaves wood round itself.
func (p *proof) tenon(j *geom.Joint) {
	if j.Tenon.Empty() {
		return
	}
	about := finding.Finding{Timbers: []string{j.Of.ID, j.Into.ID}, Joints: []string{j.ID}, At: j.At}
	for _, v := range j.Tenon.V {
		if !j.Mortise.Contains(v, Thick) {
			f := about
			f.Text = fmt.Sprintf("the tenon of %s does not lie inside its mortise in %s", j.Of.ID, j.Into.ID)
			f.Mend = "make the mortise as long and deep as the tenon"
			p.add(finding.Stop, "tenon", f)
			break
		}
	}
	for _, face := range j.Of.Blank.Moved(j.Of.Place).Faces {
		_, hi := j.Tenon.Extent(face.Plane.N)
		if out := hi - face.Plane.D; out > Thick {
			f := about
			f.Text = fmt.Sprintf("the tenon of %s into %s would lie %s outside its own timber, beyond %s", j.Of.ID, j.Into.ID, p.show(out), faceWord(j.Of, face.Role))
			f.Mend = "lay the tenon nearer or farther from the reference face, make it thinner, or move the timber sideways"
			p.add(finding.Stop, "tenon", f)
			break
		}
	}
	p.around(j, about)
}

func faceWord(t *geom.Timber, role string) string {
	var n int
	if _, err := fmt.Sscanf(role, "face %d", &n); err == nil && n >= 1 && n <= 4 {
		return "face " + t.FaceTitle(n)
	}
	return "its " + role
}

// around proves the wood that a mortise leaves in its receiver.
func (p *proof) around(j *geom.Joint, about finding.Finding) {
	for _, c := range j.Into.Cuts {
		if c.Joint != j.ID || c.Name != "mortise" {
			continue
		}
		for n := 1; n <= 4; n++ {
			if n == j.Entered {
				continue
			}
			pl := j.Into.BlankPlane(n)
			_, hi := c.Solid.Extent(pl.N)
			left := pl.D - hi
			f := about
			switch {
			case left < -9 && n == geom.Opposite(j.Entered) && !standsOut(j, pl):
				// A through mortise leaves by the far face.
			case left < Thick:
				f.Text = fmt.Sprintf("the mortise for %s breaks out of %s at face %s", j.Of.ID, j.Into.ID, j.Into.FaceTitle(n))
				f.Mend = "shorten the tenon, or lay the mortise farther from that face"
				p.add(finding.Stop, "stick", f)
			case left < Web:
				f.Text = fmt.Sprintf("the mortise for %s leaves %s of wood at face %s of %s", j.Of.ID, p.show(left), j.Into.FaceTitle(n), j.Into.ID)
				f.Mend = "shorten the tenon, or lay the mortise farther from that face"
				p.add(finding.Warn, "stick", f)
			}
		}
	}
}

// standsOut reports whether the tenon runs out of the receiver's face pl
// (receiver's axes).
func standsOut(j *geom.Joint, pl solid.Plane) bool {
	out := pl.Moved(j.Into.Place)
	_, hi := j.Tenon.Extent(out.N)
	return hi-out.D > Thick
}

// pegs holds every peg's holes against its window and its offset against what
// the wood takes.
func (p *proof) pegs(j *geom.Joint) {
	for _, g := range j.Pegs {
		about := finding.Finding{Timbers: []string{j.Of.ID, j.Into.ID}, Joints: []string{j.ID}, At: j.At}
		if len(g.Window.Margins) > 0 {
			m := g.Window.Margins[0]
			for _, x := range g.Window.Margins {
				if x.Grade < m.Grade {
					m = x
				}
			}
			about.Text = p.hole(g, m)
			about.Mend = "move the hole, make the bore smaller, or leave more wood behind it"
			switch m.Grade {
			case peg.Breaks:
				p.add(finding.Stop, "peg window", about)
			case peg.Short:
				p.add(finding.Warn, "peg window", about)
			}
		}
		p.offset(j, g)
		p.reachable(j, g)
	}
}

// hole says how a hole stands to the boundary that it is too near to.
func (p *proof) hole(g geom.Peg, m peg.Margin) string {
	where := fmt.Sprintf("the %s of %s", m.Rule.Name, m.Rule.Timber)
	if m.Distance < 0 {
		return fmt.Sprintf("the centre of the hole of %s lies %s beyond %s", g.ID, p.show(-m.Distance), where)
	}
	return fmt.Sprintf("the hole of %s is %s from %s: %.2g times its bore, where %.2g is the least",
		g.ID, p.show(m.Distance), where, m.Distance/g.Bore, m.Least/g.Bore)
}

func (p *proof) offset(j *geom.Joint, g geom.Peg) {
	f := finding.Finding{Timbers: []string{j.Of.ID, j.Into.ID}, Joints: []string{j.ID}, At: j.At}
	usual, most := peg.Caps(g.Bore, j.Into.Wood.Hard)
	switch {
	case g.Offset < 0:
		f.Text = fmt.Sprintf("the offset of %s is %s: the peg would push the joint open", g.ID, p.show(g.Offset))
		f.Mend = "give a positive drawbore: the tenon hole lies nearer the shoulder"
		p.add(finding.Stop, "drawbore", f)
	case peg.Judge(g.Offset, g.Bore, j.Into.Wood.Hard) == peg.Refused:
		f.Text = fmt.Sprintf("an offset of %s is more than the %s that a %s bore in %s takes", p.show(g.Offset), p.show(most), p.show(g.Bore), j.Into.Wood.Name)
		f.Mend = fmt.Sprintf("draw it %s or less", p.show(usual))
		p.add(finding.Stop, "drawbore", f)
	case peg.Judge(g.Offset, g.Bore, j.Into.Wood.Hard) == peg.Large:
		f.Text = fmt.Sprintf("an offset of %s is large for a %s bore (usual: up to %s)", p.show(g.Offset), p.show(g.Bore), p.show(usual))
		f.Mend = "use a supple riven peg with a long lead, or a smaller offset"
		p.add(finding.Warn, "drawbore", f)
	}
}

// stick proves that a timber is one sound piece.
func (p *proof) stick(t *geom.Timber) {
	f := finding.Finding{Timbers: []string{t.ID}, At: t.At}
	if n := len(t.Net.Pieces()); n != 1 {
		f.Text = fmt.Sprintf("%s would fall into %d pieces", t.ID, n)
		f.Mend = "move its joints apart or make them shallower"
		p.add(finding.Stop, "stick", f)
		return
	}
	if err := t.Net.Valid(); err != nil {
		f.Text = fmt.Sprintf("%s hangs together along an edge only: %v", t.ID, err)
		f.Mend = "move its joints apart or make them shallower"
		p.add(finding.Stop, "stick", f)
	}
}

// strength gathers the joints whose holes are workable but too near an edge or
// end for the peg to fail before the wood.
func (p *proof) strength() {
	var locate, hold []string
	for _, j := range p.f.Joints {
		for _, g := range j.Pegs {
			if g.Window.Grade == peg.Strong {
				continue
			}
			if j.Tension {
				hold = append(hold, j.ID)
			} else {
				locate = append(locate, j.ID)
			}
			break
		}
	}
	mend := "use thicker timbers or longer tenons where an engineer asks for a capacity; no reference value is printed for these joints"
	if len(hold) > 0 {
		p.add(finding.Warn, "full strength", finding.Finding{Joints: hold,
			Text: fmt.Sprintf("the pegs of %s that may have to hold tension lie nearer to an end or edge than tests ask for full strength", counted(len(hold), "joint")), Mend: mend})
	}
	if len(locate) > 0 {
		p.add(finding.Note, "full strength", finding.Finding{Joints: locate,
			Text: fmt.Sprintf("the pegs of %s hold their joint together but lie nearer to an end or edge than tests ask for full strength", counted(len(locate), "joint")), Mend: mend})
	}
}

func counted(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}
