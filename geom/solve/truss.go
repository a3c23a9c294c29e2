package solve

import (
	"fmt"

	"pegwright/geom"
	"pegwright/geom/peg"
	"pegwright/geom/spec"
	"pegwright/geom/vec"
)

// truss is the kind of truss asked for, "none" for none.
func (p *plan) truss() string {
	if !p.b.Roof.Set || p.shed() {
		return "none"
	}
	return p.b.Roof.Truss.Or("none")
}

// overPlates reports whether the ties lie over the plates, notched on them,
// instead of between the posts below.
func (p *plan) overPlates() bool {
	usual := "dropped"
	if p.truss() == "queen posts" {
		usual = "over plates"
	}
	return p.b.Ties.Or(usual) == "over plates"
}

// heel is the wood of a tie behind the foot of a principal rafter: the foot
// shears it off along the grain (common practice, no source).
func (p *plan) heel() float64 { return p.b.Roof.Heel.Or(p.s.std.heel) }

// principal plans a principal rafter of a bent on its tie: its top rises along
// the pitch from nose, which is measured from the wall's outside, and its
// reference side is flush with the bent's face.
func (p *plan) principal(bt *bent, wall string, in vec.V, nose, run float64) *stick {
	s := p.s
	l := p.pitched("principal rafter", in, bt.out)
	l.name2, l.name4 = bt.word, p.inside(bt)
	l.at = vec.V{X: bt.x, Y: p.wallY(wall), Z: p.tieTop}.Add(in.Mul(nose))
	st := s.add(fmt.Sprintf("principal-%d-%s", bt.n, wall), "principal rafter", p.b.Roof.At, l, 0, run/p.cos, spec.TimberSettings{})
	st.t.Bent = bt.n
	s.joinEnd("brace mortise and tenon", bt.tie, st, geom.Start, s.trussTenon(), p.b.Roof.At)
	return st
}

// trussTenon is the tenon of a truss's slender members, which push and do not
// pull: it only keeps them in their place.
func (s *solver) trussTenon() spec.JointSettings {
	return spec.JointSettings{TenonLength: set(s.std.shallow), Thickness: set(s.std.thin), Bore: set(s.std.smallBore), OffShoulder: set(s.std.offShoulder)}
}

// layKingTruss sets principal rafters from each tie to its king post, and
// struts from the king post's foot to the principals, square to them. The
// principals hold up the king post, and the king post the ridge and the tie.
func (p *plan) layKingTruss() {
	s := p.s
	postA, _ := s.idealSize("post")
	kingA, _ := s.idealSize("king post")
	nose := postA + p.heel()
	run := p.span/2 - kingA/2 - nose
	top := p.tieTop + run*p.sin/p.cos // where the principal meets the king post
	_, ridgeDepth := s.idealSize("ridge")
	under := p.ridgeTop() - ridgeDepth
	if run < 2*p.heel() || top < p.tieTop+18*inch {
		s.fault(p.b.Roof.Truss.At, p.b.Roof.Truss.S, fmt.Sprintf("the principal rafters would rise %s on %s: there is no room for a truss", s.f.Units.Format(top-p.tieTop), s.f.Units.Format(run)),
			"widen the span, make the pitch steeper, or leave the truss out")
		return
	}
	if top > under-s.std.relish {
		s.fault(p.b.Roof.Truss.At, p.b.Roof.Truss.S, fmt.Sprintf("the principal rafters would meet the king posts %s below the ridge, where %s of wood is the least above them",
			s.f.Units.Format(under-top), s.f.Units.Format(s.std.relish)), "give a larger heel, or lower the ties")
		return
	}
	for _, bt := range p.bents {
		if bt.king == nil {
			continue
		}
		for _, sd := range sides {
			st := p.principal(bt, sd.wall, sd.out.Neg(), nose, run)
			own := s.trussTenon()
			own.TenonLength = set(min(own.TenonLength.MM, (kingA-s.std.web)/2-s.std.deeper))
			s.joinEnd("brace mortise and tenon", bt.king, st, geom.Finish, own, p.b.Roof.At)
			p.strut(bt, st, sd.wall, sd.out.Neg(), own)
		}
	}
}

// strut sets a strut from the king post's foot to a principal, square to it.
func (p *plan) strut(bt *bent, principal *stick, wall string, in vec.V, foot spec.JointSettings) {
	s := p.s
	w, d := s.size("strut")
	kingA, _ := s.idealSize("king post")
	_, depth := s.idealSize("principal rafter")
	rise := in.Mul(p.cos).Add(up.Mul(p.sin))
	dir := up.Mul(p.cos).Sub(in.Mul(p.sin))
	from := vec.V{X: bt.x, Y: p.span / 2, Z: p.tieTop + s.std.strutUp}.Sub(in.Mul(kingA / 2))
	long := dir.Dot(principal.t.Place.O.Sub(from)) - depth
	if long < 12*inch {
		s.note(p.b.Roof.At, fmt.Sprintf("no struts in bent %d: they would be %s long", bt.n, s.f.Units.Format(long)), "raise the roof to get struts")
		return
	}
	lay := s.std.offRef + s.std.thin/2 - w/2
	l := line{at: from.Sub(bt.out.Mul(lay)), dir: dir, out1: bt.out, out2: rise.Neg(), size1: w, size2: d,
		name1: bt.word, name2: "lower edge", name3: p.inside(bt), name4: "upper edge"}
	st := s.add(fmt.Sprintf("strut-%d-%s", bt.n, wall), "strut", p.b.Roof.At, l, 0, long, spec.TimberSettings{})
	st.t.Bent = bt.n
	s.joinEnd("brace mortise and tenon", bt.king, st, geom.Start, foot, p.b.Roof.At)
	head := s.trussTenon()
	head.Along = centred()
	s.joinEnd("mortise and tenon", principal, st, geom.Finish, head, p.b.Roof.At)
}

// hanging is the tenon on which a king post holds up its tie. Its holes stand
// as far from edge and end as tests ask for full strength, as far as the tie
// has room.
func (s *solver) hanging(tie *stick) spec.JointSettings {
	bore := s.std.smallBore
	_, edge := peg.Least(peg.Edge, bore, tie.t.Wood)
	_, end := peg.Least(peg.End, bore, tie.t.Wood)
	off := max(edge, s.std.offShoulder)
	room := tie.t.Ideal[tie.depthAxis()] - s.std.deeper - 2*s.std.web
	own := spec.JointSettings{TenonLength: set(min(off+end, room)), Bore: set(bore), OffShoulder: set(min(off, room-2*bore)), Along: centred()}
	if tie.t.Wood.Hard {
		own.Pegs = count(2)
	}
	return own
}
