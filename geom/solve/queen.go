package solve

import (
	"fmt"
	"math"

	"pegwright/geom"
	"pegwright/geom/spec"
	"pegwright/geom/vec"
)

// layQueenTruss sets, on each tie, a pair of principal rafters that meet in a
// bridle, two queen posts under them and a straining beam between the queen
// posts; purlins dropped into the principals carry the roof boards.
func (p *plan) layQueenTruss() {
	s := p.s
	nose := p.footNose()
	w, _ := s.size("principal rafter")
	_, depth := s.idealSize("principal rafter")
	queen, _ := s.idealSize("queen post")
	at := p.span * s.std.queenAt // middle of the queen post, from the wall's outside
	head := p.principalUnder(at-queen/2, nose, depth)
	if head-p.tieTop < 24*inch {
		s.fault(p.b.Roof.Truss.At, p.b.Roof.Truss.S, fmt.Sprintf("queen posts would be %s high", s.f.Units.Format(head-p.tieTop)), "widen the span, make the pitch steeper, or leave the truss out")
		return
	}
	for _, bt := range p.bents {
		var pair, queens [2]*stick
		for i, sd := range sides {
			pair[i] = p.principal(bt, sd.wall, sd.out.Neg(), nose, p.span/2-nose)
			bt.principal[sd.wall] = pair[i]
			queens[i] = p.queenPost(bt, sd.wall, sd.out, at-queen/2, head, pair[i])
		}
		s.pacts = append(s.pacts, p.peak(pair[0], pair[1], w))
		p.strainingBeam(bt, queens, head)
	}
	p.layPurlins(nose, at-queen/2)
}

// principalUnder is the height of the principals' ideal underside at y inside
// the wall's outside.
func (p *plan) principalUnder(y, nose, depth float64) float64 {
	return p.tieTop + (y-nose)*p.sin/p.cos - depth/p.cos
}

// queenPost stands a post on the tie under a principal, its outer face y
// inside the wall's outside.
func (p *plan) queenPost(bt *bent, wall string, out vec.V, y, head float64, principal *stick) *stick {
	s := p.s
	a, b := s.size("queen post")
	l := line{at: vec.V{X: bt.x, Y: p.wallY(wall), Z: p.tieTop}.Sub(out.Mul(y)), dir: up, out1: out, out2: bt.out, size1: a, size2: b,
		name1: wall + " side", name2: bt.word, name3: "inner side", name4: p.inside(bt)}
	st := s.add(fmt.Sprintf("queen-post-%d-%s", bt.n, wall), "queen post", p.b.Roof.At, l, 0, head-p.tieTop, spec.TimberSettings{})
	st.t.Bent = bt.n
	foot := s.trussTenon()
	foot.Along = centred()
	s.joinEnd("mortise and tenon", bt.tie, st, geom.Start, foot, p.b.Roof.At)
	s.joinEnd("brace mortise and tenon", principal, st, geom.Finish, s.trussTenon(), p.b.Roof.At)
	return st
}

// strainingBeam keeps the heads of two queen posts apart.
func (p *plan) strainingBeam(bt *bent, queens [2]*stick, head float64) {
	s := p.s
	w, d := s.size("straining beam")
	l := line{at: vec.V{X: bt.x, Z: head - s.std.stagger}, dir: north, out1: up, out2: bt.out, size1: d, size2: w,
		name1: "top", name2: bt.word, name3: "underside", name4: p.inside(bt)}
	st := s.add(fmt.Sprintf("straining-beam-%d", bt.n), "straining beam", p.b.Roof.At, l, 0, p.span, spec.TimberSettings{})
	st.t.Bent = bt.n
	s.joinEnd("mortise and tenon", queens[0], st, geom.Start, s.trussTenon(), p.b.Roof.At)
	s.joinEnd("mortise and tenon", queens[1], st, geom.Finish, s.trussTenon(), p.b.Roof.At)
}

// layPurlins drops rows of purlins into the principals' tops, bay by bay, the
// lowest near the feet and the highest near the peak. A row that would come
// over the head of a queen post is moved up past it.
func (p *plan) layPurlins(nose, queenFace float64) {
	s := p.s
	_, high := s.size("purlin")
	iw, _ := s.idealSize("purlin")
	_, depth := s.idealSize("principal rafter")
	queen, _ := s.idealSize("queen post")
	slope := (p.span/2 - nose) / p.cos
	// The lowest clears the tie, the highest the bridle, whose floor crosses the
	// principal's top where its fellow's underside does.
	twice := 2 * math.Asin(p.sin)
	low, high := iw+(high*p.cos+s.std.stagger)/p.sin, slope-depth/math.Sin(twice)-max(depth/math.Tan(twice), 0)-s.std.stagger
	most := p.b.Roof.PurlinSpacing.Or(s.std.purlinSpacing)
	n := max(int(math.Ceil((high-low)/most-1e-9)), 1)
	// The queen post's mortise as seen square to the slope, with wood round it.
	q0 := (queenFace-nose)/p.cos - depth*p.sin/p.cos - s.std.stagger
	q1 := q0 + queen/p.cos + 2*s.std.stagger
	for row := range n + 1 {
		at := low + (high-low)*float64(row)/float64(n)
		if at > q0 && at-iw < q1 {
			s.note(p.b.Roof.At, fmt.Sprintf("row %d of the purlins is set %s up the slope instead of %s, clear of the queen posts' heads", row+1, s.f.Units.Format(q1+iw), s.f.Units.Format(at)),
				"give another purlin spacing to choose yourself")
			at = q1 + iw
		}
		for i := 0; i+1 < len(p.bents); i++ {
			for _, sd := range sides {
				p.purlin(row+1, i, sd.wall, sd.out.Neg(), at, nose)
			}
		}
	}
}

// purlin lays one purlin between two bents, its upper edge at up the slope
// from the principals' noses and its top flush with theirs.
func (p *plan) purlin(row, bay int, wall string, in vec.V, at, nose float64) {
	s := p.s
	w, d := s.size("purlin")
	rise := in.Mul(p.cos).Add(up.Mul(p.sin))
	a, b := p.bents[bay], p.bents[bay+1]
	l := line{at: vec.V{Y: p.wallY(wall), Z: p.tieTop}.Add(in.Mul(nose)).Add(rise.Mul(at)), dir: east,
		out1: up.Mul(p.cos).Sub(in.Mul(p.sin)), out2: rise, size1: d, size2: w,
		name1: "top", name2: "upper side", name3: "underside", name4: "lower side"}
	st := s.add(fmt.Sprintf("purlin-%d-%d-%s", row, bay+1, wall), "purlin", p.b.Roof.At, l, a.x, b.x, spec.TimberSettings{})
	st.t.Bay = bay + 1
	s.joinEnd("drop-in pocket", a.principal[wall], st, geom.Start, spec.JointSettings{}, p.b.Roof.At)
	s.joinEnd("drop-in pocket", b.principal[wall], st, geom.Finish, spec.JointSettings{}, p.b.Roof.At)
}
