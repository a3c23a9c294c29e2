package building

import (
	"fmt"
	"math"

	"pegwright/geom"
	"pegwright/geom/scheme"
	"pegwright/geom/spec"
	"pegwright/geom/vec"
)

// ridgeSeat is how deep the rafters' undersides lie below the ridge's top
// arrises, square to the rafters. Each seat stops short of the ridge's middle,
// so that wood is left between it and the slot of the bridle above, whose
// floor stands at twice the pitch to the underside.
func (p *plan) ridgeSeat() float64 {
	_, depth := p.s.IdealSize("rafter")
	width, _ := p.s.IdealSize("ridge")
	return p.seatDepth(depth, width/2-1.1*p.s.Std.Web/(2*p.sin))
}

// ridgeTop is the height of the ridge: the rafters' undersides, carried up
// from their seats on the plates, lie ridgeSeat below its arrises.
func (p *plan) ridgeTop() float64 {
	width, _ := p.s.IdealSize("ridge")
	deep, _ := p.plateSeat()
	return p.eave + (p.ridgeSeat()-deep)/p.cos + (p.span-width)/2*p.sin/p.cos
}

// layRidge sets a ridge beam on king posts that stand on the ties. Its ideal
// section is centred in the span.
func (p *plan) layRidge() {
	s := p.s
	w, d := s.Size("ridge")
	iw, id := s.IdealSize("ridge")
	past := p.b.Roof.GableOverhang.Or(p.std.pastGable)
	top := p.ridgeTop()
	if top-id-p.tieTop < 3*inch {
		s.Fault(p.b.Roof.Ridge.At, p.b.Roof.Ridge.S, fmt.Sprintf("the ridge beam would lie %s above the ties: there is no room for king posts", s.Frame.Units.Format(top-id-p.tieTop)),
			"make the pitch steeper, the ridge shallower, or the ties lower")
		return
	}
	l := scheme.Line{At: vec.V{Y: (p.span - iw) / 2, Z: top}, Dir: east, Out1: up, Out2: south, Size1: d, Size2: w,
		Name1: "top", Name2: "south side", Name3: "underside", Name4: "north side"}
	p.ridge = s.Add("ridge", "ridge", p.b.Roof.At, l, -past, p.length+past, spec.TimberSettings{})
	for _, bt := range p.bents {
		if p.b.Roof.KingPosts.Or("every bent") == "gables" && p.gable(bt) == "" {
			continue
		}
		p.kingPost(bt, top-id)
	}
}

// kingPost stands a post on a bent's tie, flush with the bent's face, under
// the ridge. Its tenon into the ridge is centred.
func (p *plan) kingPost(bt *bent, head float64) {
	s := p.s
	a, b := s.Size("king post")
	ia, _ := s.IdealSize("king post")
	rw, _ := s.IdealSize("ridge")
	l := scheme.Line{At: vec.V{X: bt.x, Y: (p.span - ia) / 2, Z: p.tieTop}, Dir: up, Out1: south, Out2: bt.out, Size1: a, Size2: b,
		Name1: "south side", Name2: bt.word, Name3: "north side", Name4: p.inside(bt)}
	st := s.Add(fmt.Sprintf("king-post-%d", bt.n), "king post", p.b.Roof.At, l, 0, head-p.tieTop, spec.TimberSettings{})
	st.Timber.Bent = bt.n
	bt.king = st
	foot := spec.JointSettings{TenonLength: spec.LengthOf(p.footTenon(bt.tie)), Along: spec.Centred()}
	if p.truss() == "king post" {
		foot = p.hanging(bt.tie)
	}
	s.Join("mortise and tenon", bt.tie, st, geom.Start, foot, p.b.Roof.At).Tension = p.truss() == "king post"
	own := spec.JointSettings{TenonLength: spec.LengthOf(p.topTenon(p.ridge)), Along: spec.Centred(), Thickness: spec.LengthOf(s.Std.Thin), FromReference: spec.LengthOf((rw - s.Std.Thin) / 2)}
	if p.gable(bt) != "" {
		holdAt(&own, bt, p.std.hold)
	}
	s.Join("mortise and tenon", p.ridge, st, geom.Finish, own, p.b.Roof.At).Flush = true
}

// footTenon is the length of a tenon that stands on a tie: 3 in, and 4 in
// where tie and bore are large.
func (p *plan) footTenon(tie *scheme.Stick) float64 {
	if min(tie.Timber.Section[0], tie.Timber.Section[1]) < 6.5*inch {
		return p.std.shallow
	}
	return p.s.Std.Tenon
}

// onRidge seats a rafter on the ridge. Its weight and the pegs at the peak
// hold it there.
func (p *plan) onRidge(st *scheme.Stick) {
	q := &scheme.Pact{ID: st.Timber.ID + "-on-ridge", Kind: "birdsmouth seat", R: p.ridge, E: st, At: p.b.Roof.At,
		Own: spec.JointSettings{Pegs: spec.NumberOf(0), Drawbore: spec.Undrawn(), SeatDepth: spec.LengthOf(p.ridgeSeat())}}
	p.s.Pacts = append(p.s.Pacts, q)
}

// layRidgeBraces sets the braces that are asked for between king posts and
// ridge, which keep the king posts plumb along the building.
func (p *plan) layRidgeBraces() {
	b := p.b.Braces
	for _, set := range b.Sets {
		if b.No || !names(set.In, "ridge") {
			continue
		}
		if p.ridge == nil {
			p.s.Fault(set.At, "ridge", "there is no ridge beam for these braces to hold", "write ridge: beam under roof, or leave ridge out of the list")
			continue
		}
		legs := set.Legs
		if !legs.Set {
			legs = spec.Section{A: p.std.legs, B: p.std.legs, At: set.At}
		}
		var done []*knee
		for i, bt := range p.bents {
			for k, h := range []vec.V{east, west} {
				if bt.king == nil || h.X > 0 && bt.last() || h.X < 0 && i == 0 {
					continue
				}
				id := fmt.Sprintf("brace-ridge-%d%c", bt.n, 'a'+k)
				done = append(done, &knee{id: id, post: bt.king, head: p.ridge, h: h, legs: legs})
				p.ridgeBrace(done[len(done)-1])
			}
		}
		p.tellBraces(spec.BraceSet{At: set.At, Legs: legs}, done)
	}
}

// ridgeBrace lays one brace from a king post to the ridge, in the middle of
// both, with the legs asked for or the nearest shorter ones that clear what
// stands there.
func (p *plan) ridgeBrace(k *knee) {
	s := p.s
	w, _ := s.Size("brace")
	kingA, _ := s.IdealSize("king post")
	ridgeA, _ := s.IdealSize("ridge")
	off := (kingA - w) / 2
	lay := func(by float64) string {
		legs := spec.Section{A: k.legs.A - by, B: k.legs.B - by, At: k.legs.At}
		return s.Attempt(s.Std.Web, func() {
			n := len(s.Pacts)
			s.Brace(k.id, k.post, k.head, k.h, legs, &off, spec.TimberSettings{})
			for i, q := range s.Pacts[n:] {
				q.Own.Thickness = spec.LengthOf(s.Std.Thin)
				q.Own.FromReference = spec.LengthOf(([]float64{kingA, ridgeA}[i] - s.Std.Thin) / 2)
			}
		})
	}
	for by := 0.0; min(k.legs.A, k.legs.B)-by >= leastLeg || by == 0; by += inch {
		why := lay(by)
		if why == "" {
			k.legs.A, k.legs.B, k.shift = k.legs.A-by, k.legs.B-by, by
			return
		}
		if k.why == "" {
			k.why = why
		}
	}
	k.shift = math.Inf(1)
}

// names reports whether a list holds a word.
func names(list []spec.Text, word string) bool { return len(list) > 0 && has(list, word) }
