package building

import (
	"fmt"

	"pegwright/geom/spec"
	"pegwright/geom/vec"
)

// highWall is the wall that a shed roof's rafters rise to.
func (p *plan) highWall() string { return p.b.Roof.HighWall.Or("north") }

// layShed sets the rafters of a shed roof over both plates.
func (p *plan) layShed() {
	s := p.s
	low, in := "south", north
	if p.highWall() == "south" {
		low, in = "north", south
	}
	deep, rise := p.plateSeat()
	over := p.b.Roof.Overhang.Or(p.std.overhang)
	p.stations(func(k int, x float64, side vec.V) {
		l := p.pitched("rafter", in, side)
		l.At = vec.V{X: x, Y: p.wallY(low), Z: p.eave + rise}
		st := s.Add(fmt.Sprintf("rafter-%d", k), "rafter", p.b.Roof.At, l, 0, (p.span+over)/p.cos, spec.TimberSettings{})
		p.tail(st)
		p.seat(st, p.plates[low], deep)
		p.seat(st, p.plates[p.highWall()], deep)
	})
}
