package solve

import (
	"fmt"
	"math"

	"pegwright/geom"
	"pegwright/geom/spec"
	"pegwright/geom/vec"
)

// ridgeSeat is how deep the rafters' undersides lie below the ridge's top
// arrises, square to the rafters. Each seat stops short of the ridge's middle,
// so that wood is left between it and the slot of the bridle above, whose
// floor stands at twice the pitch to the underside.
func (p *plan) ridgeSeat() float64 {
	_, depth := p.s.idealSize("rafter")
	width, _ := p.s.idealSize("ridge")
	return p.seatDepth(depth, width/2-1.1*p.s.std.web/(2*p.sin))
}

// ridgeTop is the height of the ridge: the rafters' undersides, carried up
// from their seats on the plates, lie ridgeSeat below its arrises.
func (p *plan) ridgeTop() float64 {
	width, _ := p.s.idealSize("ridge")
	deep, _ := p.plateSeat()
	return p.eave + (p.ridgeSeat()-deep)/p.cos + (p.span-width)/2*p.sin/p.cos
}

// layRidge sets a ridge beam on king posts that stand on the ties. Its ideal
// section is centred in the span.
func (p *plan) layRidge() {
	s := p.s
	w, d := s.size("ridge")
	iw, id := s.idealSize("ridge")
	past := p.b.Roof.GableOverhang.Or(s.std.pastGable)
	top := p.ridgeTop()
	if top-id-p.tieTop < 3*inch {
		s.fault(p.b.Roof.Ridge.At, p.b.Roof.Ridge.S, fmt.Sprintf("the ridge beam would lie %s above the ties: there is no room for king posts", s.f.Units.Format(top-id-p.tieTop)),
			"make the pitch steeper, the ridge shallower, or the ties lower")
		return
	}
	l := line{at: vec.V{Y: (p.span - iw) / 2, Z: top}, dir: east, out1: up, out2: south, size1: d, size2: w,
		name1: "top", name2: "south side", name3: "underside", name4: "north side"}
	p.ridge = s.add("ridge", "ridge", p.b.Roof.At, l, -past, p.length+past, spec.TimberSettings{})
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
	a, b := s.size("king post")
	ia, _ := s.idealSize("king post")
	rw, _ := s.idealSize("ridge")
	l := line{at: vec.V{X: bt.x, Y: (p.span - ia) / 2, Z: p.tieTop}, dir: up, out1: south, out2: bt.out, size1: a, size2: b,
		name1: "south side", name2: bt.word, name3: "north side", name4: p.inside(bt)}
	st := s.add(fmt.Sprintf("king-post-%d", bt.n), "king post", p.b.Roof.At, l, 0, head-p.tieTop, spec.TimberSettings{})
	st.t.Bent = bt.n
	bt.king = st
	foot := spec.JointSettings{TenonLength: set(s.footTenon(bt.tie)), Along: centred()}
	if p.truss() == "king post" {
		foot = s.hanging(bt.tie)
	}
	s.joinEnd("mortise and tenon", bt.tie, st, geom.Start, foot, p.b.Roof.At).tension = p.truss() == "king post"
	own := spec.JointSettings{TenonLength: set(s.topTenon(p.ridge)), Along: centred(), Thickness: set(s.std.thin), FromReference: set((rw - s.std.thin) / 2)}
	if p.gable(bt) != "" {
		holdAt(&own, bt, s.std.hold)
	}
	s.joinEnd("mortise and tenon", p.ridge, st, geom.Finish, own, p.b.Roof.At).flush = true
}

// footTenon is the length of a tenon that stands on a tie: 3 in, and 4 in
// where tie and bore are large.
func (s *solver) footTenon(tie *stick) float64 {
	if min(tie.t.Section[0], tie.t.Section[1]) < 6.5*inch {
		return s.std.shallow
	}
	return s.std.tenon
}

// onRidge seats a rafter on the ridge. Its weight and the pegs at the peak
// hold it there.
func (p *plan) onRidge(st *stick) {
	q := &pact{id: st.t.ID + "-on-ridge", kind: "birdsmouth seat", r: p.ridge, e: st, at: p.b.Roof.At,
		own: spec.JointSettings{Pegs: count(0), Drawbore: spec.Drawbore{Mode: spec.DrawNone, Set: true}, SeatDepth: set(p.ridgeSeat())}}
	p.s.pacts = append(p.s.pacts, q)
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
			p.s.fault(set.At, "ridge", "there is no ridge beam for these braces to hold", "write ridge: beam under roof, or leave ridge out of the list")
			continue
		}
		legs := set.Legs
		if !legs.Set {
			legs = spec.Section{A: p.s.std.legs, B: p.s.std.legs, At: set.At}
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
	w, _ := s.size("brace")
	kingA, _ := s.idealSize("king post")
	ridgeA, _ := s.idealSize("ridge")
	off := (kingA - w) / 2
	lay := func(by float64) string {
		legs := spec.Section{A: k.legs.A - by, B: k.legs.B - by, At: k.legs.At}
		return s.attempt(s.std.web, func() {
			n := len(s.pacts)
			s.braceBetween(k.id, k.post, k.head, k.h, legs, &off, spec.TimberSettings{})
			for i, q := range s.pacts[n:] {
				q.own.Thickness = set(s.std.thin)
				q.own.FromReference = set(([]float64{kingA, ridgeA}[i] - s.std.thin) / 2)
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
