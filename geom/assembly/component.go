package assembly

import (
	"slices"

	"pegwright/geom"
	"pegwright/geom/vec"
)

// component looks for sets that no unit names: for each direction it takes the
// strongly connected sets from which no arrow leaves (see flow). Such a set can
// go, and it is the least that can. Never the whole, and never more than one
// bent: no crew lowers half a frame. Of the sets that may go it takes the one
// that a crew would put on last.
func (p *planner) component(all []int) (leaving, bool) {
	best, ok := leaving{}, false
	bestRank := 0.0
	for _, f := range p.flowing(all) {
		for _, k := range f.closed() {
			set := k.members
			if len(set) == p.left && len(set) > 1 || p.known(k) || p.bents(set) > 1 {
				continue
			}
			rank := p.rank(set[0])
			for _, i := range set {
				rank = min(rank, p.rank(i))
			}
			if ok && (rank < bestRank || rank == bestRank && len(set) >= len(best.members)) {
				continue
			}
			e, by, out := p.along(set, f.d)
			if !out {
				k.blocked[p.mode()] = by
				continue
			}
			u := &unit{name: p.s.called(set), members: set, rank: rank}
			best, bestRank, ok = leaving{unit: u, members: set, exit: e}, rank, true
		}
	}
	return best, ok
}

// known reports whether all that kept a set from going still stands.
func (p *planner) known(k *knot) bool {
	by := k.blocked[p.mode()]
	return len(by) > 0 && !slices.ContainsFunc(by, func(i int) bool { return !p.stands(i) })
}

// flowing returns the flows of what stands, one for each direction, brought up
// to date.
func (p *planner) flowing(all []int) []*flow {
	if p.flows == nil {
		here := p.present(all)
		for _, d := range p.ways(here) {
			p.flows = append(p.flows, p.newFlow(here, d))
		}
		p.since = nil
	}
	if len(p.since) > 0 {
		for _, f := range p.flows {
			f.without(p.since)
		}
		p.since = nil
	}
	return p.flows
}

// along tries one direction for a set, over the full length that its joints ask,
// and returns what stands against it.
func (p *planner) along(set []int, d vec.V) (exit, []int, bool) {
	for _, i := range set {
		p.side[i] = leaves
	}
	long := shortest
	for _, j := range p.closing(set) {
		long = max(long, 2*engagement(j))
	}
	e := exit{motion: geom.Straight, legs: []geom.Move{{Direction: d, Distance: long}}}
	by := p.forbidden(p.closing(set))
	if len(by) == 0 {
		if i := p.inTheWay(set, e); i >= 0 {
			by = []int{i}
		}
	}
	for _, i := range set {
		p.side[i] = stays
	}
	return e, by, len(by) == 0
}

// bents counts the bents that a set has posts of.
func (p *planner) bents(set []int) int {
	seen := map[int]bool{}
	for _, i := range set {
		if n := p.line[i]; n > 0 && plumb(p.s.f.Timbers[i]) {
			seen[n] = true
		}
	}
	return len(seen)
}

// ways lists the directions of all joints between the timbers here, both ways,
// and the level and plumb ones.
func (p *planner) ways(here []int) []vec.V {
	r := append([]vec.V{upward}, levelWays...)
	add := func(d vec.V) {
		if !slices.ContainsFunc(r, func(o vec.V) bool { return o.Sub(d).Len() < roundOff }) {
			r = append(r, d)
		}
	}
	for _, i := range here {
		for _, j := range p.s.joints[i] {
			for _, m := range j.Moves {
				add(m.Direction)
				add(m.Direction.Neg())
			}
		}
	}
	return r
}
