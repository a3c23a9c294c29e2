package building

import (
	"fmt"

	"pegwright/geom"
	"pegwright/geom/scheme"
	"pegwright/geom/spec"
	"pegwright/geom/vec"
)

// layPairs sets the rafters of a gable roof in pairs that meet in a bridle.
func (p *plan) layPairs() {
	if p.overPlates() {
		p.stationsBetween(p.rafterPair)
		return
	}
	p.stations(p.rafterPair)
}

// rafterPair sets pair k with its reference sides at x, looking along side, and its
// collar where it has one.
func (p *plan) rafterPair(k int, x float64, side vec.V) {
	s := p.s
	w, _ := s.Size("rafter")
	deep, rise := p.plateSeat()
	var pair [2]*scheme.Stick
	for i, sd := range sides {
		l := p.pitched("rafter", sd.out.Neg(), side)
		l.At = vec.V{X: x, Y: p.wallY(sd.wall), Z: p.eave + rise}
		st := s.Add(fmt.Sprintf("rafter-%d-%s", k, sd.wall), "rafter", p.b.Roof.At, l, 0, p.span/2/p.cos, spec.TimberSettings{})
		p.tail(st)
		pair[i] = st
		p.seat(st, p.plates[sd.wall], deep)
		if p.ridge != nil {
			p.onRidge(st)
		}
	}
	s.Pacts = append(s.Pacts, p.peak(pair[0], pair[1], w))
	if p.collared(k) {
		p.collar(k, x, side, pair)
	}
}

// peak plans the bridle in which two sloping sticks of width w meet.
func (p *plan) peak(r, e *scheme.Stick, w float64) *scheme.Pact {
	slot, cheek := p.s.Std.Fork(w)
	return &scheme.Pact{ID: e.Timber.ID + "-to-" + r.Timber.ID, Kind: "bridle", R: r, E: e, End: geom.Finish, REnd: geom.Finish, At: p.b.Roof.At,
		Own: spec.JointSettings{Thickness: spec.LengthOf(slot), FromReference: spec.LengthOf(cheek), Pegs: spec.NumberOf(1), Drawbore: spec.Undrawn(), Bore: spec.LengthOf(p.s.Std.SmallBore)}}
}
