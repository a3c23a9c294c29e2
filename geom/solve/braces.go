package solve

import (
	"fmt"

	"pegwright/geom"
	"pegwright/geom/solid"
	"pegwright/geom/spec"
	"pegwright/geom/vec"
)

// layBraces sets corner braces under the ties (bents) and the plates (walls).
func (p *plan) layBraces() {
	b := p.b.Braces
	if !b.Set || b.No {
		return
	}
	legs := b.Legs
	if !legs.Set {
		legs = spec.Section{A: p.s.std.legs, B: p.s.std.legs, At: b.At}
	}
	if has(b.In, "bents") {
		for _, bt := range p.bents {
			for _, sd := range sides {
				p.brace(fmt.Sprintf("brace-%d-%s", bt.n, sd.wall), bt.post[sd.wall], bt.tie, sd.out.Neg(), legs, p.gable(bt))
			}
		}
	}
	if has(b.In, "walls") {
		for _, sd := range sides {
			for i := 0; i+1 < len(p.bents); i++ {
				p.brace(fmt.Sprintf("brace-%s-%da", sd.wall, i+1), p.bents[i].post[sd.wall], p.plates[sd.wall], east, legs, sd.wall)
				p.brace(fmt.Sprintf("brace-%s-%db", sd.wall, i+1), p.bents[i+1].post[sd.wall], p.plates[sd.wall], west, legs, sd.wall)
			}
		}
	}
}

// brace plans one corner brace from a post out along h under a level stick,
// unless the post of an opening stands in its way.
func (p *plan) brace(id string, post, head *stick, h vec.V, legs spec.Section, wallName string) {
	s := p.s
	face := post.t.IdealPlane(post.t.FaceToward(h)).Moved(post.t.Place)
	if wallName != "" {
		w := p.wallNamed(wallName)
		along := h.Dot(w.dir)
		from := (face.D*face.N.Dot(h)*1 - w.origin.Dot(h)) * along
		lo, hi := from, from+along*(legs.B+s.std.stagger)
		if lo > hi {
			lo, hi = hi, lo
		}
		for _, v := range p.pos[wallName] {
			if v.st != post && v.hi > lo && v.lo < hi && v.st.t.Role != "post" {
				s.note(legs.At, fmt.Sprintf("no brace %s: %s stands within its legs", id, v.st.t.ID), "give shorter legs, or move the opening", v.st.t.ID)
				return
			}
		}
	}
	st := s.braceBetween(id, post, head, h, legs, nil, spec.TimberSettings{})
	if st == nil {
		return
	}
	st.t.Bent, st.t.Bay, st.t.Wall = head.t.Bent, 0, head.t.Wall
}

// corner is where a brace stands: the ideal faces of its two receivers meet at
// a point of their reference side, and the legs run from there.
type corner struct {
	at   vec.V // where the ideal faces meet, on the reference side
	h    vec.V // along the level receiver, away from the plumb one
	vert vec.V // from the brace toward the level receiver: up or down
	side vec.V // outward from the reference side of the brace's plane
}

// cornerOf finds the corner between a plumb and a level stick.
func (s *solver) cornerOf(post, head *stick, h vec.V) corner {
	pt, ht := post.t, head.t
	c := corner{h: h, vert: up}
	if s.headBelow(post, head) {
		c.vert = down
	}
	across := vec.V{X: -1}
	if h.X != 0 {
		across = vec.V{Y: -1}
	}
	side := pt.IdealPlane(1).Moved(pt.Place)
	if side.N.Cross(across).Len() > 1e-6 {
		side = pt.IdealPlane(2).Moved(pt.Place)
	}
	c.side = side.N
	c.at = solid.Meet(pt.IdealPlane(pt.FaceToward(h)).Moved(pt.Place), ht.IdealPlane(ht.FaceToward(c.vert.Neg())).Moved(ht.Place), side)
	return c
}

// braceBetween plans a brace between a plumb and a level stick: legs.A along
// the post from the level stick's ideal face, legs.B along that from the
// post's. The brace is centred on its tenon unless off says where its
// reference side lies.
func (s *solver) braceBetween(id string, post, head *stick, h vec.V, legs spec.Section, off *float64, own spec.TimberSettings) *stick {
	c := s.cornerOf(post, head, h)
	lo, hi := c.at.Sub(c.vert.Mul(legs.A)), c.at.Add(h.Mul(legs.B))
	first, second := post, head
	if c.vert.Z < 0 {
		lo, hi, first, second = hi, lo, head, post
	}
	w, d := s.size("brace")
	if own.Section.Set {
		w, d = own.Section.A, own.Section.B
	}
	set := s.settle1(&pact{kind: "brace mortise and tenon", r: post, e: &stick{t: &geom.Timber{Role: "brace", Section: [2]float64{w, d}}}})
	lay := set.FromRef + set.Thickness/2 - w/2
	if off != nil {
		lay = *off
	}
	dir := hi.Sub(lo).Unit()
	in := c.at.Sub(lo)
	inward := in.Sub(dir.Mul(in.Dot(dir))).Unit()
	name := "bent side"
	if h.X != 0 {
		name = "outside"
	}
	l := line{at: lo.Sub(c.side.Mul(lay)), dir: dir, out1: c.side, out2: inward.Neg(), size1: w, size2: d,
		name1: name, name2: "outer edge", name3: "far side", name4: "inner edge"}
	st := s.add(id, "brace", legs.At, l, 0, hi.Dist(lo), own)
	s.joinEnd("brace mortise and tenon", first, st, geom.Start, s.braceTenon(first, dir), legs.At)
	s.joinEnd("brace mortise and tenon", second, st, geom.Finish, s.braceTenon(second, dir), legs.At)
	return st
}

// braceTenon is shorter in an interior post, where another brace's tenon may
// come from the other side.
func (s *solver) braceTenon(r *stick, dir vec.V) spec.JointSettings {
	n := r.t.FaceToward(dir)
	between := r.t.Ideal[0]
	if n == 2 || n == 4 {
		between = r.t.Ideal[1]
	}
	own := spec.JointSettings{TenonLength: set(min(s.std.braceTenon, between-s.std.deeper-2*s.std.web))}
	if r.t.Role == "post" && r.t.Bent > 1 && r.t.Bent <= len(s.d.Building.Bays) && dir.X != 0 {
		own.TenonLength = set(min(own.TenonLength.MM, (between-s.std.web)/2-s.std.deeper))
	}
	return own
}

// headBelow reports whether the brace goes down from the level stick.
func (s *solver) headBelow(post, head *stick) bool {
	low := post.t.Place.O.Z
	return head.t.Role == "sill" || head.t.Role == "cross sill" || head.t.Place.O.Z < low+300 && post.hi > 1200
}
