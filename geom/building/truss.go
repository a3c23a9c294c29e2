package building

import (
	"fmt"

	"pegwright/geom"
	"pegwright/geom/peg"
	"pegwright/geom/scheme"
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
func (p *plan) heel() float64 { return p.b.Roof.Heel.Or(p.std.heel) }

// principal plans a principal rafter of a bent on its tie: its top rises along
// the pitch from nose, which is measured from the wall's outside, and its
// reference side is flush with the bent's face.
func (p *plan) principal(bt *bent, wall string, in vec.V, nose, run float64) *scheme.Stick {
	s := p.s
	l := p.pitched("principal rafter", in, bt.out)
	l.Name2, l.Name4 = bt.word, p.inside(bt)
	l.At = vec.V{X: bt.x, Y: p.wallY(wall), Z: p.tieTop}.Add(in.Mul(nose))
	st := s.Add(fmt.Sprintf("principal-%d-%s", bt.n, wall), "principal rafter", p.b.Roof.At, l, 0, run/p.cos, spec.TimberSettings{})
	st.Timber.Bent = bt.n
	s.Join("brace mortise and tenon", bt.tie, st, geom.Start, p.trussTenon(), p.b.Roof.At)
	return st
}

// trussTenon is the tenon of a truss's slender members, which push and do not
// pull: it only keeps them in their place.
func (p *plan) trussTenon() spec.JointSettings {
	s := p.s
	return spec.JointSettings{TenonLength: spec.LengthOf(p.std.shallow), Thickness: spec.LengthOf(s.Std.Thin), Bore: spec.LengthOf(s.Std.SmallBore), OffShoulder: spec.LengthOf(s.Std.OffShoulder)}
}

// layKingTruss sets principal rafters from each tie to its king post, and
// struts from the king post's foot to the principals, square to them. The
// principals hold up the king post, and the king post the ridge and the tie.
func (p *plan) layKingTruss() {
	s := p.s
	postA, _ := s.IdealSize("post")
	kingA, _ := s.IdealSize("king post")
	nose := postA + p.heel()
	run := p.span/2 - kingA/2 - nose
	top := p.tieTop + run*p.sin/p.cos // where the principal meets the king post
	_, ridgeDepth := s.IdealSize("ridge")
	under := p.ridgeTop() - ridgeDepth
	if run < 2*p.heel() || top < p.tieTop+18*inch {
		s.Fault(p.b.Roof.Truss.At, p.b.Roof.Truss.S, fmt.Sprintf("the principal rafters would rise %s on %s: there is no room for a truss", s.Frame.Units.Format(top-p.tieTop), s.Frame.Units.Format(run)),
			"widen the span, make the pitch steeper, or leave the truss out")
		return
	}
	if top > under-p.std.relish {
		s.Fault(p.b.Roof.Truss.At, p.b.Roof.Truss.S, fmt.Sprintf("the principal rafters would meet the king posts %s below the ridge, where %s of wood is the least above them",
			s.Frame.Units.Format(under-top), s.Frame.Units.Format(p.std.relish)), "give a larger heel, or lower the ties")
		return
	}
	for _, bt := range p.bents {
		if bt.king == nil {
			continue
		}
		for _, sd := range sides {
			st := p.principal(bt, sd.wall, sd.out.Neg(), nose, run)
			own := p.trussTenon()
			own.TenonLength = spec.LengthOf(min(own.TenonLength.MM, (kingA-s.Std.Web)/2-s.Std.Deeper))
			s.Join("brace mortise and tenon", bt.king, st, geom.Finish, own, p.b.Roof.At)
			p.strut(bt, st, sd.wall, sd.out.Neg(), own)
		}
	}
}

// strut sets a strut from the king post's foot to a principal, square to it.
func (p *plan) strut(bt *bent, principal *scheme.Stick, wall string, in vec.V, foot spec.JointSettings) {
	s := p.s
	w, d := s.Size("strut")
	kingA, _ := s.IdealSize("king post")
	_, depth := s.IdealSize("principal rafter")
	rise := in.Mul(p.cos).Add(up.Mul(p.sin))
	dir := up.Mul(p.cos).Sub(in.Mul(p.sin))
	from := vec.V{X: bt.x, Y: p.span / 2, Z: p.tieTop + p.std.strutUp}.Sub(in.Mul(kingA / 2))
	long := dir.Dot(principal.Timber.Place.O.Sub(from)) - depth
	if long < 12*inch {
		s.Note(p.b.Roof.At, fmt.Sprintf("no struts in bent %d: they would be %s long", bt.n, s.Frame.Units.Format(long)), "raise the roof to get struts")
		return
	}
	lay := s.Std.OffRef + s.Std.Thin/2 - w/2
	l := scheme.Line{At: from.Sub(bt.out.Mul(lay)), Dir: dir, Out1: bt.out, Out2: rise.Neg(), Size1: w, Size2: d,
		Name1: bt.word, Name2: "lower edge", Name3: p.inside(bt), Name4: "upper edge"}
	st := s.Add(fmt.Sprintf("strut-%d-%s", bt.n, wall), "strut", p.b.Roof.At, l, 0, long, spec.TimberSettings{})
	st.Timber.Bent = bt.n
	s.Join("brace mortise and tenon", bt.king, st, geom.Start, foot, p.b.Roof.At)
	head := p.trussTenon()
	head.Along = spec.Centred()
	s.Join("mortise and tenon", principal, st, geom.Finish, head, p.b.Roof.At)
}

// hanging is the tenon on which a king post holds up its tie. Its holes stand
// as far from edge and end as tests ask for full strength, as far as the tie
// has room.
func (p *plan) hanging(tie *scheme.Stick) spec.JointSettings {
	s := p.s
	bore := s.Std.SmallBore
	_, edge := peg.Least(peg.Edge, bore, tie.Timber.Wood)
	_, end := peg.Least(peg.End, bore, tie.Timber.Wood)
	off := max(edge, s.Std.OffShoulder)
	room := tie.Timber.Ideal[tie.DepthAxis()] - s.Std.Deeper - 2*s.Std.Web
	own := spec.JointSettings{TenonLength: spec.LengthOf(min(off+end, room)), Bore: spec.LengthOf(bore), OffShoulder: spec.LengthOf(min(off, room-2*bore)), Along: spec.Centred()}
	if tie.Timber.Wood.Hard {
		own.Pegs = spec.NumberOf(2)
	}
	return own
}
