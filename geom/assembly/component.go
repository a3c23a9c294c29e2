package assembly

import (
	"slices"

	"pegwright/geom"
	"pegwright/geom/vec"
)

// component looks for sets that no unit names: for each direction it draws an
// arrow from every standing timber to those that it would run into, and takes
// the strongly connected sets from which no arrow leaves. Such a set can go,
// and it is the least that can. Never the whole, and never more than one bent:
// no crew lowers half a frame. Of the sets that may go it takes the one that a
// crew would put on last.
func (p *planner) component(all []int) (leaving, bool) {
	here := p.present(all)
	best, ok := leaving{}, false
	bestRank := 0.0
	for _, d := range p.ways(here) {
		for _, set := range p.closed(here, d) {
			if len(set) == len(here) && len(set) > 1 || p.bents(set) > 1 {
				continue
			}
			rank := p.rank(set[0])
			for _, i := range set {
				rank = min(rank, p.rank(i))
			}
			if ok && (rank < bestRank || rank == bestRank && len(set) >= len(best.members)) {
				continue
			}
			e, _, out := p.along(set, d)
			if !out {
				continue
			}
			u := &unit{name: p.s.called(set), members: set, rank: rank}
			best, bestRank, ok = leaving{unit: u, members: set, exit: e}, rank, true
		}
	}
	return best, ok
}

// along tries one direction for a set, over the full length that its joints ask.
func (p *planner) along(set []int, d vec.V) (exit, int, bool) {
	for _, i := range set {
		p.side[i] = leaves
	}
	long := shortest
	for _, j := range p.closing(set) {
		long = max(long, 2*engagement(j))
	}
	e := exit{motion: geom.Straight, legs: []geom.Move{{Direction: d, Distance: long}}}
	by := p.forbidden(p.closing(set))
	if by < 0 {
		by = p.inTheWay(set, e)
	}
	for _, i := range set {
		p.side[i] = stays
	}
	return e, by, by < 0
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

// closed returns the terminal strong components of the timbers here under moves
// along d (Tarjan's algorithm), each in frame order.
func (p *planner) closed(here []int, d vec.V) [][]int {
	t := tarjan{p: p, way: d.Mul(shortest), at: map[int]int{}, low: map[int]int{}, comp: map[int]int{}}
	for _, i := range here {
		if _, ok := t.at[i]; !ok {
			t.visit(i)
		}
	}
	var r [][]int
	for k, set := range t.sets {
		if t.open[k] {
			continue
		}
		slices.Sort(set)
		r = append(r, set)
	}
	slices.SortFunc(r, func(a, b []int) int { return a[0] - b[0] })
	return r
}

// tarjan finds strong components.
type tarjan struct {
	p       *planner
	way     vec.V
	at, low map[int]int
	stack   []int
	comp    map[int]int // component of what is done
	sets    [][]int
	open    []bool // an arrow leaves the component
}

// arrows returns the standing timbers that timber i would run into. A wedge or
// key stands for both its timbers.
func (t *tarjan) arrows(i int) []int {
	var r []int
	for _, k := range t.p.s.hit(i, vec.V{}, t.way) {
		b := t.p.s.bodies[k]
		switch {
		case !t.p.stands(k):
		case b.a == b.b:
			r = append(r, b.a)
		case b.a != i && b.b != i: // its own wedges are drawn before it moves
			r = append(r, b.a, b.b)
		}
	}
	return r
}

func (t *tarjan) visit(i int) {
	t.at[i] = len(t.at)
	t.low[i] = t.at[i]
	t.stack = append(t.stack, i)
	next := t.arrows(i)
	for _, k := range next {
		if _, seen := t.at[k]; !seen {
			t.visit(k)
			t.low[i] = min(t.low[i], t.low[k])
		} else if _, done := t.comp[k]; !done {
			t.low[i] = min(t.low[i], t.at[k])
		}
	}
	if t.low[i] != t.at[i] {
		return
	}
	n := len(t.sets)
	k := slices.Index(t.stack, i)
	set := slices.Clone(t.stack[k:])
	t.stack = t.stack[:k]
	for _, m := range set {
		t.comp[m] = n
	}
	t.sets = append(t.sets, set)
	t.open = append(t.open, t.leavesSet(set, n))
}

func (t *tarjan) leavesSet(set []int, n int) bool {
	for _, m := range set {
		for _, k := range t.arrows(m) {
			if c, done := t.comp[k]; !done || c != n {
				return true
			}
		}
	}
	return false
}
