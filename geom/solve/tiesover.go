package solve

import (
	"fmt"
	"math"

	"pegwright/geom"
	"pegwright/geom/spec"
	"pegwright/geom/vec"
)

// layTiesOver lays the ties over the plates, let down on them by a notch in
// each, so that the ties hold the plates together at their own level.
func (p *plan) layTiesOver() {
	s := p.s
	if p.b.TieHeight.Set {
		s.fault(p.b.TieHeight.At, p.b.TieHeight.Src, "ties over the plates have no height of their own", "leave tie height out, or write ties: dropped")
	}
	w, d := s.size("tie")
	_, deep := s.idealSize("tie")
	p.tieTop = p.eave - s.std.cog + deep
	past := p.tiePast()
	for _, bt := range p.bents {
		l := line{at: vec.V{X: bt.x, Z: p.tieTop}, dir: north, out1: up, out2: bt.out, size1: d, size2: w,
			name1: "top", name2: bt.word, name3: "underside", name4: p.inside(bt)}
		st := s.add(fmt.Sprintf("tie-%d", bt.n), "tie", p.b.At, l, -past, p.span+past, spec.TimberSettings{})
		st.t.Bent = bt.n
		bt.tie = st
		for _, sd := range sides {
			plate := p.plates[sd.wall]
			s.pacts = append(s.pacts, &pact{id: st.t.ID + "-on-" + plate.t.ID, kind: "cross lap", r: plate, e: st, end: geom.Mid, at: p.b.At,
				own: spec.JointSettings{Pegs: count(0)}, tension: p.thrusts()})
		}
	}
}

// tiePast is how far a tie over the plates runs past their outside: wood
// behind its notch, and behind a principal rafter's foot.
func (p *plan) tiePast() float64 {
	if p.truss() == "queen posts" {
		return max(p.heel()-p.footNose(), p.s.std.relish)
	}
	return p.s.std.relish
}

// footNose is where a principal rafter's top meets a tie over the plates, from
// the wall's outside: its middle line comes down on the plate's.
func (p *plan) footNose() float64 {
	width, _ := p.s.idealSize("plate")
	_, depth := p.s.idealSize("principal rafter")
	return max((width-depth/p.sin)/2, -p.s.std.relish)
}

// stationsBetween are the places of the rafters where ties lie over the
// plates: from beside one tie to beside the next at even spacing.
func (p *plan) stationsBetween(each func(k int, x float64, side vec.V)) {
	w, _ := p.s.size("rafter")
	tie, _ := p.s.size("tie")
	k := 0
	for i := 0; i+1 < len(p.bents); i++ {
		// Some wood is left in the plate between a tie's notch and a rafter's.
		from, to := p.bents[i].x+tie+p.s.std.web, p.bents[i+1].x-w-p.s.std.web
		if p.bents[i+1].last() {
			to -= tie
		}
		n := max(int(math.Ceil((to-from)/p.b.Roof.RafterSpacing.Or(p.s.std.rafterSpacing)-1e-9)), 1)
		for j := range n + 1 {
			k++
			each(k, from+(to-from)*float64(j)/float64(n), west)
		}
	}
}
