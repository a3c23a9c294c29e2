package assembly

import (
	"slices"

	"pegwright/geom"
	"pegwright/geom/vec"
)

// exit is a way out: legs in the order in which they are gone, outward.
type exit struct {
	motion geom.Motion
	legs   []geom.Move
	drop   float64
	play   float64
	stub   float64
	bare   bool  // nothing has a tenon in what it stands on
	ground []int // timbers that a rear stands on
}

// wayOut tries the ways in which a set of timbers can leave what stands. When
// there is none it returns bodies such that another try is worth while once one of
// them has gone: for each way one that stood in it, and what the set is joined to.
func (p *planner) wayOut(set []int, bent bool) (exit, []int, bool) {
	for _, i := range set {
		p.side[i] = leaves
	}
	defer func() {
		for _, i := range set {
			p.side[i] = stays
		}
	}()
	closing := p.closing(set)
	if by := p.forbidden(closing); len(by) > 0 {
		return exit{}, by, false
	}
	var blocked []int
	for _, e := range p.exits(set, closing, bent) {
		by := p.inTheWay(set, e)
		if by < 0 {
			return e, nil, true
		}
		blocked = append(blocked, by)
	}
	for _, j := range closing { // without them other ways may be open
		i := p.s.index[j.Into]
		if p.side[i] == leaves {
			i = p.s.index[j.Of]
		}
		blocked = append(blocked, i)
	}
	slices.Sort(blocked)
	return exit{}, slices.Compact(blocked), false
}

// closing returns the joints between the timbers that leave and those that stay.
func (p *planner) closing(set []int) []*geom.Joint {
	var r []*geom.Joint
	for _, i := range set {
		for _, j := range p.s.joints[i] {
			if p.side[p.s.other(j, i)] == stays {
				r = append(r, j)
			}
		}
	}
	return r
}

// inTheWay returns a body that stays and that the set runs into on its way
// out, or -1.
func (p *planner) inTheWay(set []int, e exit) int {
	if i := p.underground(set, e); i >= 0 {
		return i
	}
	from := vec.V{}
	for _, leg := range e.legs {
		way := leg.Direction.Mul(leg.Distance)
		for _, i := range set {
			for _, b := range append([]int{i}, p.carried(i)...) {
				for _, j := range p.s.hit(b, from, way) {
					if p.stands(j) && !slices.Contains(e.ground, j) {
						return j
					}
				}
			}
		}
		from = from.Add(way)
	}
	return -1
}

// underground returns a timber of the set that stands on a pier or on the ground
// and would be moved down, or -1.
func (p *planner) underground(set []int, e exit) int {
	if p.lying || !slices.ContainsFunc(e.legs, func(m geom.Move) bool { return m.Direction.Z < -roundOff }) {
		return -1
	}
	for _, i := range set {
		if p.s.bodies[i].box.lo.Z < p.s.lowest+1 || p.s.onPier(i) {
			return i
		}
	}
	return -1
}

// carried returns the wedges and keys that leave with timber i, each with the
// first of its two timbers.
func (p *planner) carried(i int) []int {
	var r []int
	for _, k := range p.s.pieces[i] {
		if p.side[p.s.bodies[k].a] == leaves && p.side[p.s.bodies[k].b] == leaves {
			r = append(r, k)
		}
	}
	return r
}
