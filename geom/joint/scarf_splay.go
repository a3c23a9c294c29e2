package joint

import (
	"math"

	"pegwright/geom"
)

// A stop-splayed scarf: the table slopes from one butt to the other and the
// butts stand square to the timber. The enterer comes in across.

func cutSplayedScarf(s Site) Result {
	q := scarfOf(s)
	b := q.buttHeight(s)
	rise := q.d - 2*b
	table := q.side(-rise, 2*q.half, 0, q.d/2, geom.RoleTable)
	butt := q.side(-1, 0, -q.half, 0, geom.RoleButt)
	tip := q.side(-1, 0, q.half, 0, geom.RoleButt)
	res := q.cut(s, "Stop-splayed scarf", table, butt, tip)
	j := &res.Joint
	j.Moves = []geom.Move{{Direction: q.a.W.Neg(), Distance: q.wide}}
	q.tell(s, j, -q.half, q.half)
	q.pegs(s, &res, 0, false)
	d := dimmer{j: j, a: q.a}
	for _, half := range []struct {
		t    *geom.Timber
		sign float64
		y    float64
	}{{s.R, 1, 0}, {s.E, -1, q.d}} {
		d.on(half.t, geom.Cutter)
		x := -half.sign * q.half
		d.add("butt line to end of scarf", q.a.U, q.at(x, half.y), q.at(-x, half.y))
		d.add("height of the butt", q.a.V, q.at(x, half.y), q.at(x, half.y+half.sign*b))
		d.add("height of the end", q.a.V, q.at(-x, q.d-half.y), q.at(-x, q.d-half.y-half.sign*b))
	}
	q.boreDims(s, j, &d, 0)
	return res
}

// buttHeight is the height of the butts: as set, or a quarter of the depth
// within 1-1/2 to 2 in (common practice, no source), never so high that the
// table would not slope.
func (q scarfShape) buttHeight(s Site) float64 {
	b := s.Set.Scarf.Butt
	if b == 0 {
		b = min(max(q.d/4, 1.5*inch), 2*inch)
	}
	return math.Min(b, q.d/2)
}
