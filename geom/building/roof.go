package building

import (
	"math"

	"pegwright/geom/scheme"
	"pegwright/geom/spec"
	"pegwright/geom/vec"
)

// readyRoof checks what a roof of the asked shape cannot do with.
func (p *plan) readyRoof() {
	r := p.b.Roof
	shed := r.Shape.Or("gable") == "shed"
	refuse := func(t spec.Text, text, mend string) {
		if t.Set {
			p.s.Fault(t.At, t.S, text, mend)
		}
	}
	if shed {
		gable := "leave the key out, or write shape: gable"
		refuse(r.Ridge, "a shed roof has no ridge", gable)
		refuse(r.Truss, "a shed roof has no trusses", gable)
		refuse(p.b.Ties, "the ties of a shed roof lie between its posts", gable)
		if r.Collars.Set {
			p.s.Fault(r.Collars.At, "collars", "a shed roof has no pairs of rafters to tie", gable)
		}
	} else {
		refuse(r.HighWall, "both walls of a gable roof are of one height", "leave the key out, or write shape: shed")
	}
	if r.Ridge.Or("") == "none" && r.Truss.Or("") == "king post" {
		refuse(r.Ridge, "a king post truss carries a ridge beam", "write ridge: beam, or leave the key out")
	}
	if r.Truss.Or("") == "queen posts" {
		refuse(r.Ridge, "the principal rafters of queen post trusses meet without a ridge beam", "leave the key out")
	}
	if p.overPlates() && (p.ridged() || r.Truss.Or("") == "king post") {
		refuse(p.b.Ties, "ties under a ridge beam lie between the posts: over the plates they would meet the rafters", "write ties: dropped, or leave the key out")
	}
	if p.b.Ties.Or("") == "dropped" && r.Truss.Or("") == "queen posts" {
		refuse(p.b.Ties, "the principal rafters of queen post trusses stand on ties over the plates", "leave the key out")
	}
	p.readyCollars()
	if !p.ridged() {
		refuse(r.KingPosts, "there is no ridge beam for king posts to carry", "write ridge: beam, or leave the key out")
	}
}

// slope settles the pitch.
func (p *plan) slope() {
	r := p.b.Roof
	deg := 36.869897645844
	if r.Pitch.Set {
		deg = r.Pitch.Degrees
	}
	p.sin, p.cos = math.Sincos(deg * math.Pi / 180)
	if r.Pitch.Set && r.Pitch.Run > 0 {
		h := math.Hypot(r.Pitch.Rise, r.Pitch.Run)
		p.sin, p.cos = r.Pitch.Rise/h, r.Pitch.Run/h
	}
}

func (p *plan) shed() bool { return p.b.Roof.Set && p.b.Roof.Shape.Or("gable") == "shed" }

// ridged reports whether the rafters bear on a ridge beam.
func (p *plan) ridged() bool {
	usual := "none"
	if p.truss() == "king post" {
		usual = "beam"
	}
	return p.b.Roof.Set && !p.shed() && p.b.Roof.Ridge.Or(usual) == "beam"
}

// thrusts reports whether the rafters push the walls apart, so that the ties
// must hold them together.
func (p *plan) thrusts() bool {
	return p.b.Roof.Set && !p.shed() && !p.ridged() && p.truss() == "none" && !p.lowCollars()
}

// layRoof sets the rafters and what carries them.
func (p *plan) layRoof() {
	switch {
	case !p.b.Roof.Set:
		return
	case p.shed():
		p.layShed()
		return
	case p.truss() == "queen posts":
		p.layQueenTruss()
		return
	case p.ridged():
		p.layRidge()
	}
	if p.truss() == "king post" {
		p.layKingTruss()
	}
	p.layPairs()
}

// stations are the places of the rafters along the building: one at each
// bent, flush with its reference face, and common ones between at even
// spacing.
func (p *plan) stations(each func(k int, x float64, side vec.V)) {
	w, _ := p.s.Size("rafter")
	k := 0
	for i := 0; i+1 < len(p.bents); i++ {
		from, to := p.bents[i].x, p.bents[i+1].x
		if p.bents[i+1].last() {
			to -= w
		}
		n := int(math.Ceil((to-from)/p.b.Roof.RafterSpacing.Or(p.std.rafterSpacing) - 1e-9))
		for j := range n {
			k++
			each(k, from+(to-from)*float64(j)/float64(n), west)
		}
	}
	each(k+1, p.bents[len(p.bents)-1].x, east)
}

// pitched is the line of a sloping stick whose top rises along in, with its
// reference side toward side.
func (p *plan) pitched(role string, in, side vec.V) scheme.Line {
	w, d := p.s.Size(role)
	word, other := "west side", "east side"
	if side.X > 0 {
		word, other = other, word
	}
	return scheme.Line{Dir: in.Mul(p.cos).Add(up.Mul(p.sin)), Out1: up.Mul(p.cos).Sub(in.Mul(p.sin)), Out2: side, Size1: d, Size2: w,
		Name1: "top", Name2: word, Name3: "underside", Name4: other}
}

// seatDepth is how far the rafter's underside lies below the outer top arris
// of what it sits on, square to the rafter: a third of the rafter, less where
// the seat would be longer than room.
func (p *plan) seatDepth(depth, room float64) float64 {
	if v := p.s.Description.Layout.For("rafter").SeatDepth; v.Set {
		return v.MM
	}
	return min(depth/3, room*p.sin)
}

// plateSeat is the seat depth on the plates, and how high the rafters' top
// line stands above a plate's top at its outer face.
func (p *plan) plateSeat() (deep, rise float64) {
	_, depth := p.s.IdealSize("rafter")
	width, _ := p.s.IdealSize("plate")
	deep = p.seatDepth(depth, width-inch)
	return deep, (depth - deep) / p.cos
}

// plateTop is the height of a wall's plate. The high plate of a shed roof is
// set where the same rafter sits on its inner arris as deep as on the low
// plate's outer one.
func (p *plan) plateTop(wall string) float64 {
	if !p.shed() || wall != p.highWall() {
		return p.eave
	}
	width, _ := p.s.IdealSize("plate")
	return p.eave + (p.span-width)*p.sin/p.cos
}

// seat plans the rafter's seat on its plate. Its peg stands 1-1/2 diameters
// off the rafter's reference side, clear of the tenon of a post below, and its
// bore stops above the mortises in the plate's underside.
func (p *plan) seat(st, plate *scheme.Stick, deep float64) {
	s := p.s
	kind := "step-lap seat"
	usual := "step-lap"
	if p.ridged() || p.shed() {
		usual = "birdsmouth"
	}
	if p.b.Roof.Seat.Or(usual) == "birdsmouth" {
		kind = "birdsmouth seat"
	}
	depth := plate.Timber.Ideal[plate.DepthAxis()]
	q := &scheme.Pact{ID: st.Timber.ID + "-on-" + plate.Timber.ID, Kind: kind, R: plate, E: st, At: p.b.Roof.At,
		Own: spec.JointSettings{Pegs: spec.NumberOf(1), Bore: spec.LengthOf(s.Std.SmallBore), Drawbore: spec.Undrawn(), SeatDepth: spec.LengthOf(deep)}}
	bore := s.Settings(q).Bore
	q.PegOff = 1.5 * bore
	// The bore starts on the table, below the plate's top, and its low rim runs
	// deeper than its axis.
	lost := bore / 2 * p.sin
	if kind == "step-lap seat" {
		lost += 0.3 * deep * p.cos * (1 + p.sin*p.sin)
	}
	room := depth - p.topTenon(plate) - s.Std.Deeper - p.std.seatWood - lost
	q.Blind = max(min(room/p.cos, 3*inch), inch)
	s.Pacts = append(s.Pacts, q)
}

// tail gives a rafter its low end: square, or plumb.
func (p *plan) tail(st *scheme.Stick) {
	st.Lo = -p.b.Roof.Overhang.Or(p.std.overhang) / p.cos
	if p.b.Roof.Tail.Or("square") == "plumb" {
		_, d := p.s.Size("rafter")
		st.Lo -= d * p.sin / p.cos
		st.Plumb = true
	}
}
