package solve

import (
	"fmt"

	"pegwright/geom"
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

func (p *plan) rafterPair(k int, x float64, side vec.V) {
	s := p.s
	w, _ := s.size("rafter")
	deep, rise := p.plateSeat()
	var pair [2]*stick
	for i, sd := range sides {
		l := p.pitched("rafter", sd.out.Neg(), side)
		l.at = vec.V{X: x, Y: p.wallY(sd.wall), Z: p.eave + rise}
		st := s.add(fmt.Sprintf("rafter-%d-%s", k, sd.wall), "rafter", p.b.Roof.At, l, 0, p.span/2/p.cos, spec.TimberSettings{})
		p.tail(st)
		pair[i] = st
		p.seat(st, p.plates[sd.wall], deep)
		if p.ridge != nil {
			p.onRidge(st)
		}
	}
	s.pacts = append(s.pacts, p.peak(pair[0], pair[1], w))
	if p.collared(k) {
		p.collar(k, x, side, pair)
	}
}

// peak plans the bridle in which two sloping sticks of width w meet.
func (p *plan) peak(r, e *stick, w float64) *pact {
	return &pact{id: e.t.ID + "-to-" + r.t.ID, kind: "bridle", r: r, e: e, end: geom.Finish, rEnd: geom.Finish, at: p.b.Roof.At,
		own: spec.JointSettings{Thickness: set(w / 3), FromReference: set(w / 3), Pegs: count(1), Drawbore: spec.Drawbore{Mode: spec.DrawNone, Set: true}, Bore: set(p.s.std.smallBore)}}
}
