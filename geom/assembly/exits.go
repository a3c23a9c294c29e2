package assembly

import (
	"math"
	"slices"

	"pegwright/geom"
	"pegwright/geom/vec"
)

const (
	// shortest is the least way over which a move is swept, mm.
	shortest = 300.0
	// longestStub is the longest foot tenon over which a bent is reared: 3 in
	// (common practice, no source).
	longestStub = 3 * 25.4
	roundOff    = 1e-6
)

var (
	upward    = vec.V{Z: 1}
	east      = vec.V{X: 1}
	west      = vec.V{X: -1}
	north     = vec.V{Y: 1}
	south     = vec.V{Y: -1}
	levelWays = []vec.V{east, west, north, south}
)

// exits lists the ways out worth trying, in the order in which a crew would
// wish for them.
func (p *planner) exits(set []int, closing []*geom.Joint, bent bool) []exit {
	long := shortest
	for _, j := range closing {
		long = max(long, 2*engagement(j))
	}
	// Few lengths, so that what was swept once serves again.
	long = math.Ceil(long/100) * 100
	var r []exit
	straight := func(d vec.V) {
		e := exit{motion: geom.Straight, legs: []geom.Move{{Direction: d, Distance: long}}}
		if !slices.ContainsFunc(r, func(o exit) bool {
			return o.motion == geom.Straight && o.legs[0].Direction.Sub(d).Len() < roundOff
		}) {
			r = append(r, e)
		}
	}
	if bent {
		r = append(r, p.rears(closing, long, []vec.V{east, west}, longestStub)...)
	}
	for _, j := range closing {
		if len(j.Moves) > 1 {
			r = append(r, p.legsOut(j, long))
		}
	}
	ways := p.opening(closing)
	if !p.lying {
		straight(upward)
	}
	for _, d := range ways {
		straight(d)
	}
	if !bent && !p.lying && slices.ContainsFunc(set, func(i int) bool { return plumb(p.s.f.Timbers[i]) }) {
		r = append(r, p.rears(closing, long, p.leaning(ways), longestStub)...)
	}
	for _, d := range levelWays {
		straight(d)
	}
	straight(upward)
	return r
}

// opening returns the directions in which the closing joints open, seen from
// what leaves.
func (p *planner) opening(closing []*geom.Joint) []vec.V {
	var r []vec.V
	for _, j := range closing {
		if len(j.Moves) == 0 {
			continue
		}
		d := p.outOf(j, j.Moves[len(j.Moves)-1].Direction)
		if !slices.ContainsFunc(r, func(o vec.V) bool { return o.Sub(d).Len() < roundOff }) {
			r = append(r, d)
		}
	}
	return r
}

// outOf turns the direction in which the enterer of j closes into the one in
// which the leaving timber opens it.
func (p *planner) outOf(j *geom.Joint, d vec.V) vec.V {
	if p.side[p.s.index[j.Of]] == leaves {
		return d.Neg()
	}
	return d
}

// legsOut returns a joint's own legs the other way round. The outermost leg is
// carried on until the joint is clear.
func (p *planner) legsOut(j *geom.Joint, long float64) exit {
	e := exit{motion: geom.Legs}
	for i := len(j.Moves) - 1; i >= 0; i-- {
		e.legs = append(e.legs, geom.Move{Direction: p.outOf(j, j.Moves[i].Direction), Distance: j.Moves[i].Distance})
	}
	last := &e.legs[len(e.legs)-1]
	last.Distance = max(last.Distance, long)
	return e
}

// leaning keeps the level ways, along which an upright can be leaned.
func (p *planner) leaning(ways []vec.V) []vec.V {
	var r []vec.V
	for _, d := range ways {
		if math.Abs(d.Z) < roundOff {
			r = append(r, d)
		}
	}
	return r
}

// rears returns the ways in which uprights can be leaned back off what they
// stand on. No foot tenon may be longer than most.
func (p *planner) rears(closing []*geom.Joint, long float64, ways []vec.V, most float64) []exit {
	e := exit{motion: geom.Rear, bare: true}
	var feet []*geom.Joint
	for _, j := range closing {
		if !p.isFoot(j) {
			continue
		}
		e.ground = append(e.ground, p.s.index[j.Into])
		e.stub = max(e.stub, stubLength(j))
		e.bare = e.bare && j.Tenon.Empty()
		feet = append(feet, j)
	}
	if e.stub > most+roundOff {
		return nil
	}
	var r []exit
	for _, d := range ways {
		if slices.ContainsFunc(feet, func(j *geom.Joint) bool { return !turns(j, d) }) {
			continue
		}
		o := e
		o.legs = []geom.Move{{Direction: d, Distance: long}}
		o.drop, o.play = arcs(feet, d)
		r = append(r, o)
	}
	return r
}

// isFoot reports whether j stands an upright that leaves on what stays, or the
// foot of a brace beside it on the sill.
func (p *planner) isFoot(j *geom.Joint) bool {
	if p.side[p.s.index[j.Of]] != leaves || !plumb(j.Of) && !isSill(j.Into) || len(j.Moves) != 1 {
		return false
	}
	return j.Moves[0].Direction.Z < -0.99
}

// turns reports whether the foot of j turns up as an upright's does when the
// whole leans along d: a brace has to lie square to the lean.
func turns(j *geom.Joint, d vec.V) bool {
	return plumb(j.Of) || math.Abs(j.Of.Place.X.Dot(d)) < roundOff
}

// stubLength is the length of a joint's tenon along its move, in millimetres;
// the length of the move where it has none.
func stubLength(j *geom.Joint) float64 {
	if j.Tenon.Empty() {
		return j.Moves[0].Distance
	}
	lo, hi := j.Tenon.Extent(j.Moves[0].Direction)
	return hi - lo
}

// arcs returns the most drop of the feet of the uprights, and the most play
// that any tip needs. The tenon of a brace beside them turns about the same
// arrises, and lies nearer to them than the far arris of a post.
func arcs(feet []*geom.Joint, d vec.V) (drop, play float64) {
	pivot := math.Inf(-1)
	for _, j := range feet {
		if !plumb(j.Of) {
			continue
		}
		a, b := arc(width(j.Of, d), stubLength(j))
		drop, play = max(drop, a), max(play, b)
		_, hi := j.Of.Blank.Moved(j.Of.Place).Extent(d)
		pivot = max(pivot, hi)
	}
	for _, j := range feet {
		if plumb(j.Of) || math.IsInf(pivot, -1) || j.Tenon.Empty() {
			continue
		}
		lo, _ := j.Tenon.Extent(d)
		_, b := arc(max(pivot-lo, 0), stubLength(j))
		play = max(play, b)
	}
	return drop, play
}

// width is the size of an upright along the lean.
func width(post *geom.Timber, lean vec.V) float64 {
	if math.Abs(post.Place.Z.Dot(lean)) > 0.7 {
		return post.Section[1]
	}
	return post.Section[0]
}

// arc returns how far the far arris of a foot comes down, and how much play the
// tip of its stub needs, as the post turns up about the near arris of its foot
// from the lean at which the stub just clears what it stands on. With w the
// width of the post along the lean and s the stub, that lean has the tangent
// s/w: the arris comes down w·s/√(w²+s²), and the tip swings √(w²+s²) − w past
// its place. (Plane geometry; the stub is taken to reach the far arris.)
func arc(w, s float64) (drop, play float64) {
	h := math.Hypot(w, s)
	if h == 0 {
		return 0, 0
	}
	return w * s / h, h - w
}

// engagement is how far the timbers of a joint move into each other, in
// millimetres.
func engagement(j *geom.Joint) float64 {
	most := 0.0
	for _, m := range j.Moves {
		most = max(most, m.Distance)
	}
	return most
}
