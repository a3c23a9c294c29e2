package assembly

import (
	"slices"

	"pegwright/geom"
	"pegwright/geom/finding"
)

// planner takes a frame apart.
type planner struct {
	s      *scene
	bent   []int           // the bent that a timber is raised with, 0 for none
	line   []int           // the bent in whose line it stands, 0 for none
	pair   []int           // by timber, the first of those it is paired with across the building, or -1
	bentAt map[int]float64 // x of each bent
	side   []where         // by timber
	lying  bool            // a sub-assembly lies flat
	// pegless: joints may close though a peg cannot be driven then.
	pegless bool
	queues  [2]*queue // of units, by mode
	flows   []*flow   // of what stands, once asked for
	since   []int     // timbers gone since the flows were brought up to date
	left    int       // how many timbers stand
	finds   []finding.Finding
}

// where a timber is while a set of timbers is tried.
type where uint8

const (
	gone   where = iota // already taken away, or not in this sub-assembly
	stays               // part of what stands
	leaves              // part of the set that is tried
)

// leaving is one set of timbers taken away.
type leaving struct {
	unit    *unit
	members []int
	exit    exit
}

// Plan returns the order of assembly of a solved frame and what stands against
// it: timbers that are trapped ("assembly"), pegs that cannot be driven and pegs
// that must be sawn before a neighbour goes in ("peg reach"). Where timbers are
// trapped the steps are those that could be found, the last ones of the order.
// The frame is not changed.
func Plan(f *geom.Frame) ([]geom.Step, []finding.Finding) {
	p := &planner{s: newScene(f), side: make([]where, len(f.Timbers))}
	all := make([]int, len(f.Timbers))
	for i := range all {
		all[i] = i
		p.side[i] = stays
	}
	gone := p.takeApart(p.units(), all)
	slices.Reverse(gone)
	w := &writer{p: p, placed: make([]bool, len(f.Timbers)), at: map[string]int{}}
	for i := range all {
		w.placed[i] = p.side[i] == stays // trapped: as if it stood
	}
	w.write(gone)
	return w.steps, append(p.finds, w.reach()...)
}

// takeApart removes the timbers of all, by units in a crew's order as far as
// they can go, and returns what left in the order in which it left.
func (p *planner) takeApart(units []*unit, all []int) []leaving {
	p.left = len(all)
	p.queues = [2]*queue{newQueue(len(units)), newQueue(len(units))}
	var r []leaving
	for p.left > 0 {
		l, ok := p.any(units, all)
		if !ok { // some peg can never be driven: leave pegs out of it
			p.pegless = true
			l, ok = p.any(units, all)
			p.pegless = false
		}
		if !ok {
			l, ok = p.tooLong(units)
		}
		if !ok {
			p.trapped(all)
			break
		}
		r = append(r, l)
		p.take(l.members)
	}
	return r
}

// take removes timbers, and wakes the units that waited for them.
func (p *planner) take(members []int) {
	p.left -= len(members)
	p.since = append(p.since, members...)
	for _, i := range members {
		p.side[i] = gone
		for _, q := range p.queues {
			q.gone(i)
		}
	}
}

// mode tells whether pegs count: 0, or not: 1.
func (p *planner) mode() int {
	if p.pegless {
		return 1
	}
	return 0
}

// any returns what a crew would take away next, or else the least set that can go.
func (p *planner) any(units []*unit, all []int) (leaving, bool) {
	if l, ok := p.next(units); ok {
		return l, true
	}
	return p.component(all)
}

// next returns the first unit, and failing that the first part of one that no
// longer hangs together, that can leave. A unit that could not is tried again
// only when something that stood in its way has gone.
func (p *planner) next(units []*unit) (leaving, bool) {
	q := p.queues[p.mode()]
	for len(q.ready) > 0 {
		k := q.pop()
		if len(q.blocked[k]) > 0 && !slices.ContainsFunc(q.blocked[k], func(i int) bool { return !p.stands(i) }) {
			continue // woken for what stood in its way before that
		}
		l, blocked, ok := p.tryUnit(units[k])
		q.blocked[k] = blocked
		if ok {
			q.push(k) // until nothing of it is left
			return l, true
		}
		for _, i := range blocked {
			b := p.s.bodies[i]
			q.wait(k, b.a)
			if b.b != b.a {
				q.wait(k, b.b)
			}
		}
	}
	return leaving{}, false
}

// tryUnit returns the first part of a unit that can leave, or the bodies that
// stood in the way of its parts.
func (p *planner) tryUnit(u *unit) (leaving, []int, bool) {
	m := p.present(u.members)
	if len(m) == 0 {
		return leaving{}, nil, false
	}
	parts := p.s.parts(m)
	u.apart = u.apart || len(parts) > 1
	var blocked []int
	for _, part := range parts {
		as := u
		if u.apart {
			as = &unit{name: p.s.called(part), members: part, rank: u.rank}
		}
		e, by, ok := p.wayOut(part, as.bent > 0)
		if ok {
			return p.withHangers(leaving{unit: as, members: part, exit: e}), nil, true
		}
		blocked = append(blocked, by...)
	}
	return leaving{}, blocked, false
}

// withHangers adds to a set the timbers that hang on it alone, such as a wall
// brace that only the bent holds, where all of them can leave together.
func (p *planner) withHangers(l leaving) leaving {
	if p.lying {
		return l
	}
	var more []int
	for _, i := range l.members {
		for _, j := range p.s.joints[i] {
			k := p.s.other(j, i)
			if p.side[k] == stays && !slices.Contains(l.members, k) && !slices.Contains(more, k) && p.hangs(k, l.members) {
				more = append(more, k)
			}
		}
	}
	if len(more) == 0 {
		return l
	}
	set := append(slices.Clone(l.members), more...)
	slices.Sort(set)
	if e, _, ok := p.wayOut(set, l.unit.bent > 0); ok {
		u := l.unit
		if u.bent == 0 {
			u = &unit{name: p.s.called(set), members: set, rank: u.rank}
		}
		return leaving{unit: u, members: set, exit: e}
	}
	return l
}

// hangs reports whether timber k is held by nothing that stands but the set,
// and does not stand by itself.
func (p *planner) hangs(k int, set []int) bool {
	t := p.s.f.Timbers[k]
	if plumb(t) || isSill(t) || p.s.bodies[k].box.lo.Z < p.s.lowest+1 {
		return false
	}
	for _, j := range p.s.joints[k] {
		if o := p.s.other(j, k); p.side[o] == stays && !slices.Contains(set, o) {
			return false
		}
	}
	return true
}

func (p *planner) present(members []int) []int {
	var r []int
	for _, i := range members {
		if p.side[i] == stays {
			r = append(r, i)
		}
	}
	return r
}

// stands reports whether body i, a timber or a piece, is part of what stands.
func (p *planner) stands(i int) bool {
	b := p.s.bodies[i]
	return p.side[b.a] == stays && p.side[b.b] == stays
}
