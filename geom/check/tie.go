package check

import (
	"math"

	"pegwright/geom"
)

// tie looks for what ties the feet of a pair of rafters together: a level
// timber along their run that is joined to both feet's bearers, or to posts
// under them. It returns the least drop from the bearers' underside to the
// tie's top; 0 for a tie at their level.
func (p *proof) tie(pair []*geom.Timber) (drop float64, tied bool) {
	drop = math.Inf(1)
	south, north := p.footings(pair[0]), p.footings(pair[1])
	for _, t := range p.f.Timbers {
		if !p.spans(t, pair[0]) {
			continue
		}
		if p.joined(t, pair[0]) && p.joined(t, pair[1]) {
			if p.tieOfFeet(t, pair) {
				return 0, true
			}
			continue
		}
		a, okA := p.reaches(t, south)
		b, okB := p.reaches(t, north)
		if okA && okB {
			drop, tied = min(drop, max(a, b)), true
		}
	}
	return drop, tied
}

// tieOfFeet reports whether a timber that both rafters are joined to lies at
// their feet, as the chord of a truss does, and not up the slope as a collar.
func (p *proof) tieOfFeet(t *geom.Timber, pair []*geom.Timber) bool {
	lo, hi := heights(pair[0])
	return mid(t) < lo+(hi-lo)*0.1 || mid(t) < lo
}

// footings returns what a rafter's foot stands on: level timbers square to it,
// and posts that it is joined to itself.
func (p *proof) footings(r *geom.Timber) []*geom.Timber {
	var list []*geom.Timber
	low := math.Inf(1)
	for _, j := range p.of[r] {
		t := other(j, r)
		if plumb(t) || level(t) && across(t.Place.X, run(r)) {
			_, top := heights(t)
			if top < low-50 {
				low, list = top, nil
			}
			if top < low+50 {
				list = append(list, t)
			}
		}
	}
	return list
}

// reaches returns how far the top of a tie lies below the underside of one of
// the footings that it holds, itself or through a post under it.
func (p *proof) reaches(tie *geom.Timber, footings []*geom.Timber) (drop float64, ok bool) {
	drop = math.Inf(1)
	_, top := heights(tie)
	for _, foot := range footings {
		under, _ := heights(foot)
		if plumb(foot) {
			_, under = heights(foot)
		}
		if p.joined(tie, foot) {
			gap := 0.0
			if plumb(foot) {
				gap = max(under-top, 0)
			}
			drop, ok = min(drop, gap), true
			continue
		}
		for _, j := range p.of[foot] {
			if post := other(j, foot); plumb(post) && p.joined(tie, post) && top <= under+50 {
				drop, ok = min(drop, max(under-top, 0)), true
			}
		}
	}
	return drop, ok
}
