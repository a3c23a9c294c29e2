package assembly

import (
	"slices"

	"pegwright/geom/vec"
)

// flow holds the standing timbers under moves along one direction: an arrow
// runs from each to those that it would run into, and the timbers are divided
// into the strongly connected sets of those arrows. As timbers go, sets fall
// apart and arrows vanish, and never the other way round, so that only the sets
// that lost a timber or an arrow are looked at again.
type flow struct {
	p      *planner
	d      vec.V
	into   map[int][]int // what each timber runs into, bodies
	behind map[int][]int // timbers that run into each
	of     map[int]*knot // the set of each standing timber
	ends   map[int]*knot // sets that no arrow leaves, by their first timber
}

// knot is a strongly connected set, in frame order.
type knot struct {
	members []int
	open    bool // an arrow leaves it
	// blocked holds bodies that kept it from going when it was last tried, by mode.
	blocked [2][]int
}

func (p *planner) newFlow(here []int, d vec.V) *flow {
	f := &flow{p: p, d: d, into: map[int][]int{}, behind: map[int][]int{}, of: map[int]*knot{}, ends: map[int]*knot{}}
	way := d.Mul(shortest)
	for _, i := range here {
		f.into[i] = p.s.hit(i, vec.V{}, way)
		for _, k := range f.arrows(i) {
			f.behind[k] = append(f.behind[k], i)
		}
	}
	f.divide(here)
	return f
}

// arrows returns the standing timbers that timber i would run into. A wedge or
// key stands for both its timbers.
func (f *flow) arrows(i int) []int {
	var r []int
	for _, k := range f.into[i] {
		b := f.p.s.bodies[k]
		switch {
		case !f.p.stands(k):
		case b.a == b.b:
			r = append(r, b.a)
		case b.a != i && b.b != i: // its own wedges are drawn before it moves
			r = append(r, b.a, b.b)
		}
	}
	return r
}

// without looks again at the sets that lost a timber, or an arrow to one.
func (f *flow) without(gone []int) {
	var old []*knot
	add := func(i int) {
		if k := f.of[i]; k != nil && !slices.Contains(old, k) {
			old = append(old, k)
		}
	}
	for _, i := range gone {
		add(i)
		for _, b := range f.behind[i] {
			add(b)
		}
	}
	for _, k := range old {
		if !k.open {
			delete(f.ends, k.members[0])
		}
	}
	for _, i := range gone {
		delete(f.of, i)
	}
	for _, k := range old {
		if left := f.p.present(k.members); len(left) > 0 {
			f.divide(left)
		}
	}
}

// divide finds the strongly connected sets of timbers that no other timber is
// connected with.
func (f *flow) divide(among []int) {
	t := tarjan{f: f, in: make(map[int]bool, len(among)), at: map[int]int{}, low: map[int]int{}, done: map[int]bool{}}
	for _, i := range among {
		t.in[i] = true
	}
	for _, i := range among {
		if _, ok := t.at[i]; !ok {
			t.visit(i)
		}
	}
	for _, set := range t.sets {
		slices.Sort(set)
		k := &knot{members: set}
		for _, i := range set {
			f.of[i] = k
		}
		k.open = f.leaves(k)
		if !k.open {
			f.ends[set[0]] = k
		}
	}
}

// leaves reports whether an arrow leaves the set.
func (f *flow) leaves(k *knot) bool {
	for _, i := range k.members {
		for _, o := range f.arrows(i) {
			if _, in := slices.BinarySearch(k.members, o); !in {
				return true
			}
		}
	}
	return false
}

// closed returns the sets that no arrow leaves, by their first timbers.
func (f *flow) closed() []*knot {
	r := make([]*knot, 0, len(f.ends))
	for _, k := range f.ends {
		r = append(r, k)
	}
	slices.SortFunc(r, func(a, b *knot) int { return a.members[0] - b.members[0] })
	return r
}

// tarjan finds strongly connected sets (Tarjan's algorithm).
type tarjan struct {
	f       *flow
	in      map[int]bool // the timbers looked at
	at, low map[int]int
	stack   []int
	done    map[int]bool
	sets    [][]int
}

func (t *tarjan) visit(i int) {
	t.at[i] = len(t.at)
	t.low[i] = t.at[i]
	t.stack = append(t.stack, i)
	for _, k := range t.f.arrows(i) {
		if !t.in[k] {
			continue
		}
		if _, seen := t.at[k]; !seen {
			t.visit(k)
			t.low[i] = min(t.low[i], t.low[k])
		} else if !t.done[k] {
			t.low[i] = min(t.low[i], t.at[k])
		}
	}
	if t.low[i] != t.at[i] {
		return
	}
	k := slices.Index(t.stack, i)
	set := slices.Clone(t.stack[k:])
	t.stack = t.stack[:k]
	for _, m := range set {
		t.done[m] = true
	}
	t.sets = append(t.sets, set)
}
