// Package check proves a solved frame and reports what it finds: whether the
// timbers fit without sharing wood, whether each tenon lies inside its mortise
// and each shoulder on wood, whether each hole is in a good place, how much wood
// is left between the voids of a stick and beyond them, whether each stick is
// still one sound stick, where scarfs stand, and whether rafters push the walls
// out. Findings of one cause are one finding.
package check

import (
	"fmt"
	"slices"

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

	bodies   []*solid.Body // net timbers in frame axes
	boxes    []box
	index    map[*geom.Timber]int
	timber   map[string]*geom.Timber
	joint    map[string]*geom.Joint
	of       map[*geom.Timber][]*geom.Joint
	surfaces map[*geom.Timber][]solid.Polygon
	broken   map[*geom.Timber]bool // in pieces: what bears on it is not asked
	clash    map[[2]*geom.Timber]*meeting
	inScarf  map[*geom.Joint]bool // stands in a scarf: said once
	ids      map[string]bool      // of timbers, joints and pegs
}

// newProof lays out what all proofs look at.
func newProof(f *geom.Frame) *proof {
	p := &proof{f: f, list: slices.Clone(f.Notes), index: map[*geom.Timber]int{}, timber: map[string]*geom.Timber{},
		joint: map[string]*geom.Joint{}, of: timberIndex(f), surfaces: map[*geom.Timber][]solid.Polygon{}, broken: map[*geom.Timber]bool{},
		clash: map[[2]*geom.Timber]*meeting{}, ids: idsOf(f), inScarf: map[*geom.Joint]bool{}}
	for i, t := range f.Timbers {
		b := t.NetInFrame()
		p.bodies, p.boxes = append(p.bodies, b), append(p.boxes, boundsOf(b))
		p.index[t], p.timber[t.ID] = i, t
	}
	for _, j := range f.Joints {
		p.joint[j.ID] = j
	}
	return p
}

// Check runs every proof over a frame. Findings of one cause are one finding.
// They are sorted: stops first.
func Check(f *geom.Frame) []finding.Finding {
	p := newProof(f)
	p.scarfs()
	p.overlaps()
	p.fitted()
	for _, t := range f.Timbers {
		p.stick(t)
		p.voids(t)
	}
	p.tenonsMeeting()
	for _, j := range f.Joints {
		if !p.broken[j.Into] && !p.broken[j.Of] {
			p.tenon(j)
			if !p.inScarf[j] {
				p.bearing(j)
			}
			p.notches(j)
		}
		p.slip(j)
		p.pegs(j)
	}
	p.cheeks()
	p.thrust()
	p.strength()
	p.drying()
	p.undrawn()
	p.long()
	finding.Sort(p.list)
	p.gather()
	return p.list
}

// add adds a finding.
func (p *proof) add(s finding.Severity, rule string, f finding.Finding) {
	f.Severity, f.Rule = s, rule
	p.list = append(p.list, f)
}

func (p *proof) show(mm float64) string { return p.f.Units.FormatJoint(mm) }

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
		p.grip(j, &g)
	}
}

// hole says how a hole stands to the boundary that it is too near to.
func (p *proof) hole(g geom.Peg, m peg.Margin) string {
	where := fmt.Sprintf("the %s of %s", m.Rule.Name, m.Rule.Timber)
	if m.Distance < 0 {
		return fmt.Sprintf("the centre of the hole of %s lies %s beyond %s", g.ID, p.show(-m.Distance), where)
	}
	return fmt.Sprintf("the hole of %s is %s from %s: %.3g times its bore, where %.2g is the least",
		g.ID, p.show(m.Distance), where, m.Distance/g.Bore, m.Least/g.Bore)
}

// offset holds the offset of a peg against what the wood of the receiver takes.
func (p *proof) offset(j *geom.Joint, g geom.Peg) {
	f := finding.Finding{Timbers: []string{j.Of.ID, j.Into.ID}, Joints: []string{j.ID}, At: j.At}
	if g.OffsetAt.Line > 0 {
		f.At = g.OffsetAt
	}
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
		p.broken[t] = true
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
			Text: fmt.Sprintf("%s may have to hold a pull, and the pegs lie nearer to an end or edge than published tests ask for", counted(len(hold), "joint")), Mend: mend})
	}
	if len(locate) > 0 {
		p.add(finding.Note, "full strength", finding.Finding{Joints: locate,
			Text: fmt.Sprintf("the pegs of %s draw and hold a joint closed, but lie nearer to an end or edge than published tests ask for under a pull", counted(len(locate), "joint")), Mend: mend})
	}
}

// counted writes a number of things.
func counted(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}
