package assembly

import (
	"cmp"
	"slices"

	"pegwright/geom"
)

// writer turns what was taken apart into steps, first step first.
type writer struct {
	p      *planner
	placed []bool // timbers that stand, or belong to what lies together
	steps  []geom.Step
	at     map[string]int // step in which each joint closes
	made   []made
}

// made keeps for each step what the proof of the pegs needs.
type made struct {
	members []int
	exit    exit
	pool    []int // timbers together after the step; nil where all that stand are
}

// write sets the order: sills and what lies between them, then every bent flat,
// then the raising.
func (w *writer) write(order []leaving) {
	first := 0
	for first < len(order) && len(order[first].members) == 1 && order[first].unit.rank < perBent {
		w.stand(order[first])
		first++
	}
	for _, l := range order[first:] {
		if l.unit.bent > 0 && len(l.members) > 1 {
			w.lay(l)
		}
	}
	for _, l := range order[first:] {
		if l.unit.bent == 0 && len(l.members) > 1 {
			w.lay(l)
		}
		w.stand(l)
	}
}

func (w *writer) allSills(l leaving) bool {
	return !slices.ContainsFunc(l.members, func(i int) bool { return !isSill(w.p.s.f.Timbers[i]) })
}

// lay writes the steps by which the members of a set are joined to each other
// before they are raised: posts last on, on to what they join.
func (w *writer) lay(l leaving) {
	p := w.p
	sub := &planner{s: p.s, bent: p.bent, line: p.line, pair: p.pair, bentAt: p.bentAt, side: make([]where, len(p.side)), lying: true}
	var units []*unit
	for _, i := range l.members {
		sub.side[i] = stays
		t := p.s.f.Timbers[i]
		u := &unit{name: t.ID, members: []int{i}}
		switch {
		case !crosswise(t): // hangs on the bent, square to it
			u.rank = 4
		case plumb(t) && t.Role == "post":
			u.rank = 3
		case plumb(t):
			u.rank = 2
		case t.Role == "brace":
			u.rank = 1
		}
		units = append(units, u)
	}
	slices.SortStableFunc(units, func(a, b *unit) int { return cmp.Compare(b.rank, a.rank) })
	gone := sub.takeApart(units, l.members)
	p.finds = append(p.finds, sub.finds...)
	slices.Reverse(gone)
	here := make([]bool, len(w.placed))
	for i := range sub.side {
		here[i] = sub.side[i] == stays // trapped: as if they were together
	}
	stand := w.placed
	w.placed = here
	for _, part := range gone {
		if len(part.members) > 1 {
			w.lay(part) // a sub-assembly of its own, beside the other
		}
		w.add(part, l.unit.name)
	}
	w.placed = stand
}

// stand writes a step on the standing frame.
func (w *writer) stand(l leaving) { w.add(l, "") }

// add writes one step.
func (w *writer) add(l leaving, group string) {
	p := w.p
	for _, i := range l.members {
		p.side[i] = gone
	}
	s := geom.Step{Name: l.unit.name, Group: group, Move: p.ids(l.members), Motion: l.exit.motion, Drop: l.exit.drop}
	for i := len(l.exit.legs) - 1; i >= 0; i-- {
		leg := l.exit.legs[i]
		s.Legs = append(s.Legs, geom.Move{Direction: leg.Direction.Neg(), Distance: leg.Distance})
	}
	w.close(&s, l.members)
	if group == "" {
		s.Support = w.supported(l, s)
	}
	if len(s.Onto) == 0 && group != "" {
		s.Legs, s.Motion, l.exit = nil, geom.Straight, exit{}
	}
	for _, i := range l.members {
		w.placed[i] = true
	}
	m := made{members: l.members, exit: l.exit}
	if group != "" {
		for i, in := range w.placed {
			if in {
				m.pool = append(m.pool, i)
			}
		}
	}
	s.Text = w.text(l, s)
	w.steps, w.made = append(w.steps, s), append(w.made, m)
}

// close gives a step the joints that close between what moves and what is
// placed, with their pegs and pieces.
func (w *writer) close(s *geom.Step, members []int) {
	p := w.p
	onto := make([]bool, len(w.placed))
	for _, i := range members {
		for _, j := range p.s.joints[i] {
			k := p.s.other(j, i)
			if !w.placed[k] {
				continue
			}
			onto[k] = true
			w.at[j.ID] = len(w.steps)
			s.Joints = append(s.Joints, j.ID)
			for _, g := range j.Pegs {
				s.Pegs = append(s.Pegs, g.ID)
			}
			for _, q := range j.Pieces {
				s.Pieces = append(s.Pieces, q.ID)
			}
		}
	}
	for k, on := range onto {
		if on {
			s.Onto = append(s.Onto, p.s.f.Timbers[k].ID)
		}
	}
}

// supported reports whether a set is put on sills' bearings, piers or the ground.
func (w *writer) supported(l leaving, s geom.Step) bool {
	if len(s.Onto) == 0 || w.allSills(l) {
		return true
	}
	return slices.ContainsFunc(w.p.s.f.Supports, func(x geom.Support) bool { return slices.Contains(s.Move, x.Timber) })
}
