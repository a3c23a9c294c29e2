package building

import (
	"fmt"
	"math"

	"pegwright/geom"
	"pegwright/geom/scheme"
	"pegwright/geom/spec"
	"pegwright/geom/vec"
)

// layTies lays a tie between the posts of each bent, below the plates, or over the
// plates.
func (p *plan) layTies() {
	if p.overPlates() {
		p.layTiesOver()
		return
	}
	s := p.s
	w, d := s.Size("tie")
	_, plateDepth := s.Size("plate")
	p.tieTop = p.b.TieHeight.Or(p.eave - plateDepth - p.std.tieDown)
	for _, bt := range p.bents {
		l := scheme.Line{At: vec.V{X: bt.x, Z: p.tieTop}, Dir: north, Out1: up, Out2: bt.out, Size1: d, Size2: w,
			Name1: "top", Name2: bt.word, Name3: "underside", Name4: p.inside(bt)}
		at := p.b.At
		if p.b.TieHeight.Set {
			at = p.b.TieHeight.At
		}
		st := s.Add(fmt.Sprintf("tie-%d", bt.n), "tie", at, l, 0, p.span, spec.TimberSettings{})
		st.Timber.Bent = bt.n
		bt.tie = st
		own := spec.JointSettings{}
		s.Join("mortise and tenon", bt.post["south"], st, geom.Start, own, at).Tension = p.thrusts()
		s.Join("mortise and tenon", bt.post["north"], st, geom.Finish, own, at).Tension = p.thrusts()
	}
}

// layTiesOver lays the ties over the plates, let down on them by a notch in
// each, so that the ties hold the plates together at their own level.
func (p *plan) layTiesOver() {
	s := p.s
	if p.b.TieHeight.Set {
		s.Fault(p.b.TieHeight.At, p.b.TieHeight.Src, "ties over the plates have no height of their own", "leave tie height out, or write ties: dropped")
	}
	w, d := s.Size("tie")
	_, deep := s.IdealSize("tie")
	p.tieTop = p.eave - p.std.cog + deep
	past := p.tiePast()
	for _, bt := range p.bents {
		l := scheme.Line{At: vec.V{X: bt.x, Z: p.tieTop}, Dir: north, Out1: up, Out2: bt.out, Size1: d, Size2: w,
			Name1: "top", Name2: bt.word, Name3: "underside", Name4: p.inside(bt)}
		st := s.Add(fmt.Sprintf("tie-%d", bt.n), "tie", p.b.At, l, -past, p.span+past, spec.TimberSettings{})
		st.Timber.Bent = bt.n
		bt.tie = st
		for _, sd := range sides {
			plate := p.plates[sd.wall]
			s.Pacts = append(s.Pacts, &scheme.Pact{ID: st.Timber.ID + "-on-" + plate.Timber.ID, Kind: "cross lap", R: plate, E: st, End: geom.Mid, At: p.b.At,
				Own: spec.JointSettings{Pegs: spec.NumberOf(0)}, Tension: p.thrusts()})
		}
	}
}

// tiePast is how far a tie over the plates runs past their outside: wood
// behind its notch, and behind a principal rafter's foot.
func (p *plan) tiePast() float64 {
	if p.truss() == "queen posts" {
		return max(p.heel()-p.footNose(), p.std.relish)
	}
	return p.std.relish
}

// footNose is where a principal rafter's top meets a tie over the plates, from
// the wall's outside: its middle line comes down on the plate's.
func (p *plan) footNose() float64 {
	width, _ := p.s.IdealSize("plate")
	_, depth := p.s.IdealSize("principal rafter")
	return max((width-depth/p.sin)/2, -p.std.relish)
}

// stationsBetween are the places of the rafters where ties lie over the
// plates: from beside one tie to beside the next at even spacing.
func (p *plan) stationsBetween(each func(k int, x float64, side vec.V)) {
	w, _ := p.s.Size("rafter")
	tie, _ := p.s.Size("tie")
	k := 0
	for i := 0; i+1 < len(p.bents); i++ {
		// Some wood is left in the plate between a tie's notch and a rafter's.
		from, to := p.bents[i].x+tie+p.s.Std.Web, p.bents[i+1].x-w-p.s.Std.Web
		if p.bents[i+1].last() {
			to -= tie
		}
		n := max(int(math.Ceil((to-from)/p.b.Roof.RafterSpacing.Or(p.std.rafterSpacing)-1e-9)), 1)
		for j := range n + 1 {
			k++
			each(k, from+(to-from)*float64(j)/float64(n), west)
		}
	}
}
