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
	left := len(all)
	var r []leaving
	for left > 0 {
		l, ok := p.any(units, all)
		if !ok { // some peg can never be driven: leave pegs out of it
			p.pegless = true
			for _, u := range units {
				u.tried = false
			}
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
		for _, i := range l.members {
			p.side[i] = gone
		}
		left -= len(l.members)
	}
	return r
}

// any returns what a crew would take away next, or else the least set that can go.
func (p *planner) any(units []*unit, all []int) (leaving, bool) {
	if l, ok := p.next(units); ok {
		return l, true
	}
	return p.component(all)
}

// next returns the first unit, and failing that the first single timber, that
// can leave. A unit that could not is tried again only when something that
// stood in its way has gone.
func (p *planner) next(units []*unit) (leaving, bool) {
	for _, u := range units {
		if u.tried && !slices.ContainsFunc(u.blocked, func(i int) bool { return !p.stands(i) }) {
			continue
		}
		m := p.present(u.members)
		if len(m) == 0 {
			continue
		}
		u.tried, u.blocked = true, nil
		parts := p.s.parts(m)
		u.apart = u.apart || len(parts) > 1
		for _, part := range parts {
			as := u
			if u.apart {
				as = &unit{name: p.s.called(part), members: part, rank: u.rank}
			}
			e, blocked, ok := p.wayOut(part, as.bent > 0)
			if ok {
				u.tried = false
				return p.withHangers(leaving{unit: as, members: part, exit: e}), true
			}
			u.blocked = append(u.blocked, blocked...)
		}
	}
	return leaving{}, false
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
