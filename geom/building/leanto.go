package building

import (
	"fmt"
	"math"

	"pegwright/geom"
	"pegwright/geom/spec"
	"pegwright/geom/vec"
)

// leanTo is a lower roof against an eave wall: a ledger tenoned between the
// wall's posts, a plate on posts of its own, and rafters seated on both, so
// that they push nothing outward. Its plan has its own pitch and eave.
type leanTo struct {
	*plan
	ask    spec.LeanTo
	wall   string
	out    vec.V
	ledger float64 // top of the ledger
	tails  float64 // highest place of the ledger for the sake of the tails above
	deep   float64 // of the rafters' seats
}

// layLeanTos lays the lower roofs against the eave walls, one a wall.
func (p *plan) layLeanTos() {
	taken := map[string]bool{}
	for _, ask := range p.b.LeanTos {
		if taken[ask.Wall.S] {
			p.s.Fault(ask.Wall.At, ask.Wall.S, "this wall has a lean-to already", "give one lean-to a wall")
			continue
		}
		taken[ask.Wall.S] = true
		if l := p.leanTo(ask); l.fits() {
			l.layLedgers()
			l.layOuterWall()
		}
	}
}

// leanTo plans a lean-to: its roof is that of a shed with its high side at the wall.
func (p *plan) leanTo(ask spec.LeanTo) *leanTo {
	own := *p
	own.b.Roof = spec.Roof{At: ask.At, Set: true, Shape: spec.Text{S: "shed", Set: true}, Pitch: ask.Pitch, HighWall: spec.Text{S: ask.Wall.S, Set: true},
		Overhang: p.b.Roof.Overhang, RafterSpacing: p.b.Roof.RafterSpacing, GableOverhang: p.b.Roof.GableOverhang, Tail: p.b.Roof.Tail}
	own.slope()
	l := &leanTo{plan: &own, ask: ask, wall: ask.Wall.S, out: south}
	if l.wall == "north" {
		l.out = north
	}
	_, depth := p.s.IdealSize("rafter")
	plate, _ := p.s.IdealSize("plate")
	ledger, _ := p.s.IdealSize("ledger")
	l.deep = own.seatDepth(depth, min(plate, ledger)-inch)
	l.tails = p.underTails(l)
	l.ledger = ask.Height.Or(l.highest())
	own.eave = l.ledger - ask.Span.MM*own.sin/own.cos
	return l
}

// highest is the highest place of the ledger: its rafters' heads pass below
// the feet of the wall's braces, or below its plate, and its tenons enter the
// posts below the ties and the braces of the bents.
func (l *leanTo) highest() float64 {
	s := l.s
	plate := l.plates[l.wall]
	under := plate.Timber.Place.O.Z - plate.Timber.Ideal[plate.DepthAxis()]
	top := min(under-l.std.stagger-l.headRise(), l.tails)
	if tie := l.bents[0].tie; !l.overPlates() {
		top = min(top, l.tieTop-tie.Timber.Section[tie.DepthAxis()]-l.std.stagger)
	}
	for _, p := range s.Pacts {
		t := p.E.Timber
		if t.Role != "brace" || p.End != geom.Start || p.R.Timber.Role != "post" || p.R.Timber.Wall != l.wall {
			continue
		}
		foot := t.Place.O.Z - l.std.stagger
		if t.Wall == l.wall {
			foot -= l.headRise()
		}
		top = min(top, foot)
	}
	return top
}

// underTails is the highest place of a lean-to's ledger where its rafters pass
// below the tails of the rafters above, which are taken to end plumb.
func (p *plan) underTails(l *leanTo) float64 {
	if p.truss() == "queen posts" || p.shed() && l.wall == p.highWall() {
		return math.Inf(1)
	}
	_, d := p.s.Size("rafter")
	_, rise := p.plateSeat()
	out := p.b.Roof.Overhang.Or(l.std.overhang) + d*p.sin
	under := p.plateTop(l.wall) + rise - out*p.sin/p.cos - d/p.cos
	return under + out*l.sin/l.cos - l.headRise() - l.std.stagger
}

// headRise is how far the rafters' heads stand above the ledger's top.
func (l *leanTo) headRise() float64 {
	_, depth := l.s.Size("rafter")
	width, _ := l.s.Size("ledger")
	return depth/l.cos + width*l.sin/l.cos
}

// fits faults a lean-to that has no room.
func (l *leanTo) fits() bool {
	s := l.s
	say := s.Frame.Units.Format
	before := len(s.Faults)
	if h := l.ask.Height; h.Set && h.MM > l.highest()+1e-6 {
		s.Fault(h.At, h.Src, fmt.Sprintf("the rafters' heads would meet the braces, the plate or the rafters above the %s wall", l.wall), "set the ledger at "+say(math.Floor(l.highest()))+" or lower")
	}
	if low := l.eave; low < 48*inch {
		at := l.ask.At
		s.Fault(at, "lean-tos", fmt.Sprintf("the plate of the lean-to would lie %s above the datum", say(low)), "raise the eave, shorten the lean-to's span, or make its pitch flatter")
	}
	_, d := s.Size("ledger")
	for _, st := range s.Order {
		t := st.Timber
		top := t.Place.O.Z
		switch {
		case t.Wall != l.wall:
		case t.Role == "door post" || t.Role == "window post":
			s.Fault(t.At, t.ID, fmt.Sprintf("the ledger of the lean-to on the %s wall would cross the posts of this opening", l.wall), "move the opening to another wall, or describe the lean-to timber by timber")
		case t.Role == "girt" && top > l.ledger-d-l.std.stagger && top-t.Section[st.DepthAxis()] < l.ledger+l.headRise():
			s.Fault(l.ask.At, "lean-tos", fmt.Sprintf("the ledger would lie at %s, where %s is", say(l.ledger), t.ID), "set the ledger or the girts at another height")
		}
	}
	return len(s.Faults) == before
}
