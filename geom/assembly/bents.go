package assembly

import (
	"cmp"
	"slices"
)

// findBents numbers the timbers of each bent and pairs the roof timbers that
// are joined to each other across the building.
func (p *planner) findBents() {
	ts := p.s.f.Timbers
	p.bent, p.pair = make([]int, len(ts)), make([]int, len(ts))
	last := 0
	for i, t := range ts {
		p.pair[i] = -1
		if !isSill(t) {
			p.bent[i] = t.Bent
		}
		last = max(last, t.Bent)
	}
	if last == 0 {
		p.guessBents()
	}
	for i, t := range ts {
		switch {
		case p.bent[i] > 0 || isSill(t) || !crosswise(t):
		case t.Wall == "west" && last > 0:
			p.bent[i] = 1
		case t.Wall == "east" && last > 0:
			p.bent[i] = last
		}
	}
	p.line = slices.Clone(p.bent)
	p.splitBents()
	roof := func(i int) bool {
		return p.bent[i] == 0 && crosswise(ts[i]) && !plumb(ts[i]) && !isSill(ts[i]) && p.role(i) == rankRoof
	}
	comp := p.components(roof)
	copy(p.pair, comp)
	p.bentAt = map[int]float64{}
	for i, t := range ts {
		if n := p.line[i]; n > 0 && plumb(t) {
			p.bentAt[n] = t.Place.O.X
		}
	}
}

// guessBents finds bents where nothing names them: plumb timbers in one plane
// across the building that hang together through timbers of that plane.
func (p *planner) guessBents() {
	ts := p.s.f.Timbers
	comp := p.components(func(i int) bool { return crosswise(ts[i]) && !isSill(ts[i]) })
	type group struct {
		id, plumb int
		x         float64
	}
	var gs []group
	for i, t := range ts {
		if comp[i] < 0 || !plumb(t) {
			continue
		}
		k := slices.IndexFunc(gs, func(g group) bool { return g.id == comp[i] })
		if k < 0 {
			k = len(gs)
			gs = append(gs, group{id: comp[i], x: middle(t).X})
		}
		gs[k].plumb++
	}
	slices.SortStableFunc(gs, func(a, b group) int { return cmp.Compare(a.x, b.x) })
	n := 0
	for _, g := range gs {
		if g.plumb < 2 {
			continue
		}
		n++
		for i := range ts {
			if comp[i] == g.id {
				p.bent[i] = n
			}
		}
	}
}

// splitBents takes out of a bent what does not hang together with its posts
// without the rest of the frame, such as a truss that stands on the plates. Where
// its posts do not hang together either there is nothing to raise as one.
func (p *planner) splitBents() {
	ts := p.s.f.Timbers
	comp := p.components(func(i int) bool { return p.bent[i] > 0 })
	stands := map[int]int{} // by bent: the one component with posts, -1 for several
	for i, t := range ts {
		if comp[i] < 0 || !plumb(t) || t.Role == "king post" || t.Role == "queen post" {
			continue
		}
		if c, ok := stands[p.bent[i]]; ok && c != comp[i] {
			stands[p.bent[i]] = -1
		} else {
			stands[p.bent[i]] = comp[i]
		}
	}
	for i := range ts {
		if c, ok := stands[p.bent[i]]; comp[i] >= 0 && (!ok || c != comp[i]) {
			p.bent[i] = 0
		}
	}
}

// components numbers the timbers that satisfy in by the least index of the
// timbers that they are joined to through such timbers of the same bent; -1
// for the others.
func (p *planner) components(in func(int) bool) []int {
	r := make([]int, len(p.s.f.Timbers))
	for i := range r {
		r[i] = -1
	}
	for i := range r {
		if !in(i) || r[i] >= 0 {
			continue
		}
		r[i] = i
		for stack := []int{i}; len(stack) > 0; {
			a := stack[len(stack)-1]
			stack = stack[:len(stack)-1]
			for _, j := range p.s.joints[a] {
				b := p.s.other(j, a)
				if in(b) && r[b] < 0 && p.bent[a] == p.bent[b] {
					r[b] = i
					stack = append(stack, b)
				}
			}
		}
	}
	return r
}
