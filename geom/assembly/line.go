package assembly

import (
	"pegwright/geom"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// mallet is the least clear line before a peg's head, for the peg and the blow:
// 8 in (common practice, no source).
const mallet = 8 * 25.4

// barrier is a timber of the finished frame that stands in a line which a peg
// needs clear while it is driven.
type barrier struct {
	timber int
	what   string // "head" or "lead"
}

// before returns the timbers that stand before either end of a peg: within the
// peg's own length, at least a mallet's room, before its head; within its lead
// beyond the far face, unless it is driven flush or blind. What shares wood with
// the peg's own timbers is another finding and left out.
func (s *scene) before(j *geom.Joint, g geom.Peg) []barrier {
	if r, ok := s.barriers[g.ID]; ok {
		return r
	}
	dir := g.To.Sub(g.From).Unit()
	r := s.inLine(j, g.Bore, g.From.Sub(dir.Mul(max(g.Length, mallet))), g.From.Sub(dir), "head")
	if !g.Flush && g.Exit != 0 && g.Lead > 2 {
		r = append(r, s.inLine(j, g.Bore, g.To.Add(dir), g.To.Add(dir.Mul(g.Lead)), "lead")...)
	}
	s.barriers[g.ID] = r
	return r
}

func (s *scene) inLine(j *geom.Joint, bore float64, from, to vec.V, what string) []barrier {
	var r []barrier
	prism := solid.Bore{From: from, To: to, Diameter: bore}.Prism()
	a, b := s.index[j.Into], s.index[j.Of]
	for _, i := range s.near(boxOf(prism)) {
		if i >= len(s.f.Timbers) || i == a || i == b || !s.inBody(prism, i) || s.overlap(i, a) || s.overlap(i, b) {
			continue
		}
		r = append(r, barrier{i, what})
	}
	return r
}

// forbidden returns two timbers that still stand and for whose sake the joints
// may not close now, whatever way is clear: one that stands before a peg of a
// joint, or an upright on a sill that leaves (sills are not pushed up under a
// standing frame), and the one at the joint's far side; none where they may.
func (p *planner) forbidden(closing []*geom.Joint) []int {
	for _, j := range closing {
		into, of := p.s.index[j.Into], p.s.index[j.Of]
		if !p.lying && isSill(j.Into) && !isSill(j.Of) && p.side[into] == leaves && p.side[of] == stays {
			return []int{of}
		}
	}
	if p.pegless {
		return nil
	}
	for _, j := range closing {
		for _, i := range p.s.beforePegs(j) {
			if p.side[i] == gone {
				continue
			}
			far := p.s.index[j.Into]
			if p.side[far] == leaves {
				far = p.s.index[j.Of]
			}
			return []int{i, far}
		}
	}
	return nil
}

// beforePegs returns the timbers that stand before any peg of a joint.
func (s *scene) beforePegs(j *geom.Joint) []int {
	r, ok := s.pegged[j]
	if !ok {
		for _, g := range j.Pegs {
			for _, b := range s.before(j, g) {
				r = append(r, b.timber)
			}
		}
		s.pegged[j] = r
	}
	return r
}
