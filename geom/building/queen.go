package building

import (
	"fmt"
	"math"

	"pegwright/geom"
	"pegwright/geom/scheme"
	"pegwright/geom/spec"
	"pegwright/geom/vec"
)

// layQueenTruss sets, on each tie, a pair of principal rafters that meet in a
// bridle, two queen posts under them and a straining beam between the queen
// posts; purlins dropped into the principals carry the roof boards.
func (p *plan) layQueenTruss() {
	s := p.s
	nose := p.footNose()
	w, _ := s.Size("principal rafter")
	_, depth := s.IdealSize("principal rafter")
	queen, _ := s.IdealSize("queen post")
	at := p.span * p.std.queenAt // middle of the queen post, from the wall's outside
	head := p.principalUnder(at-queen/2, nose, depth)
	if head-p.tieTop < 24*inch {
		s.Fault(p.b.Roof.Truss.At, p.b.Roof.Truss.S, fmt.Sprintf("queen posts would be %s high", s.Frame.Units.Format(head-p.tieTop)), "widen the span, make the pitch steeper, or leave the truss out")
		return
	}
	for _, bt := range p.bents {
		var pair, queens [2]*scheme.Stick
		for i, sd := range sides {
			pair[i] = p.principal(bt, sd.wall, sd.out.Neg(), nose, p.span/2-nose)
			bt.principal[sd.wall] = pair[i]
			queens[i] = p.queenPost(bt, sd.wall, sd.out, at-queen/2, head, pair[i])
		}
		s.Pacts = append(s.Pacts, p.peak(pair[0], pair[1], w))
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
func (p *plan) queenPost(bt *bent, wall string, out vec.V, y, head float64, principal *scheme.Stick) *scheme.Stick {
	s := p.s
	a, b := s.Size("queen post")
	l := scheme.Line{At: vec.V{X: bt.x, Y: p.wallY(wall), Z: p.tieTop}.Sub(out.Mul(y)), Dir: up, Out1: out, Out2: bt.out, Size1: a, Size2: b,
		Name1: wall + " side", Name2: bt.word, Name3: "inner side", Name4: p.inside(bt)}
	st := s.Add(fmt.Sprintf("queen-post-%d-%s", bt.n, wall), "queen post", p.b.Roof.At, l, 0, head-p.tieTop, spec.TimberSettings{})
	st.Timber.Bent = bt.n
	foot := p.trussTenon()
	foot.Along = spec.Centred()
	s.Join("mortise and tenon", bt.tie, st, geom.Start, foot, p.b.Roof.At)
	s.Join("brace mortise and tenon", principal, st, geom.Finish, p.trussTenon(), p.b.Roof.At)
	return st
}

// strainingBeam keeps the heads of two queen posts apart.
func (p *plan) strainingBeam(bt *bent, queens [2]*scheme.Stick, head float64) {
	s := p.s
	w, d := s.Size("straining beam")
	l := scheme.Line{At: vec.V{X: bt.x, Z: head - p.std.stagger}, Dir: north, Out1: up, Out2: bt.out, Size1: d, Size2: w,
		Name1: "top", Name2: bt.word, Name3: "underside", Name4: p.inside(bt)}
	st := s.Add(fmt.Sprintf("straining-beam-%d", bt.n), "straining beam", p.b.Roof.At, l, 0, p.span, spec.TimberSettings{})
	st.Timber.Bent = bt.n
	s.Join("mortise and tenon", queens[0], st, geom.Start, p.trussTenon(), p.b.Roof.At)
	s.Join("mortise and tenon", queens[1], st, geom.Finish, p.trussTenon(), p.b.Roof.At)
}

// layPurlins drops rows of purlins into the principals' tops, bay by bay, the
// lowest near the feet and the highest near the peak. A row that would come
// over the head of a queen post is moved up past it.
func (p *plan) layPurlins(nose, queenFace float64) {
	s := p.s
	_, high := s.Size("purlin")
	iw, _ := s.IdealSize("purlin")
	_, depth := s.IdealSize("principal rafter")
	queen, _ := s.IdealSize("queen post")
	slope := (p.span/2 - nose) / p.cos
	// The lowest clears the tie, the highest the bridle, whose floor crosses the
	// principal's top where its fellow's underside does.
	twice := 2 * math.Asin(p.sin)
	low, high := iw+(high*p.cos+p.std.stagger)/p.sin, slope-depth/math.Sin(twice)-max(depth/math.Tan(twice), 0)-p.std.stagger
	most := p.b.Roof.PurlinSpacing.Or(p.std.purlinSpacing)
	n := max(int(math.Ceil((high-low)/most-1e-9)), 1)
	// The queen post's mortise as seen square to the slope, with wood round it.
	q0 := (queenFace-nose)/p.cos - depth*p.sin/p.cos - p.std.stagger
	q1 := q0 + queen/p.cos + 2*p.std.stagger
	for row := range n + 1 {
		at := low + (high-low)*float64(row)/float64(n)
		if at > q0 && at-iw < q1 {
			s.Note(p.b.Roof.At, fmt.Sprintf("row %d of the purlins is set %s up the slope instead of %s, clear of the queen posts' heads", row+1, s.Frame.Units.Format(q1+iw), s.Frame.Units.Format(at)),
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
	w, d := s.Size("purlin")
	rise := in.Mul(p.cos).Add(up.Mul(p.sin))
	a, b := p.bents[bay], p.bents[bay+1]
	l := scheme.Line{At: vec.V{Y: p.wallY(wall), Z: p.tieTop}.Add(in.Mul(nose)).Add(rise.Mul(at)), Dir: east,
		Out1: up.Mul(p.cos).Sub(in.Mul(p.sin)), Out2: rise, Size1: d, Size2: w,
		Name1: "top", Name2: "upper side", Name3: "underside", Name4: "lower side"}
	st := s.Add(fmt.Sprintf("purlin-%d-%d-%s", row, bay+1, wall), "purlin", p.b.Roof.At, l, a.x, b.x, spec.TimberSettings{})
	st.Timber.Bay = bay + 1
	s.Join("drop-in pocket", a.principal[wall], st, geom.Start, spec.JointSettings{}, p.b.Roof.At)
	s.Join("drop-in pocket", b.principal[wall], st, geom.Finish, spec.JointSettings{}, p.b.Roof.At)
}
