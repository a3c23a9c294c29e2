package joint

import (
	"pegwright/geom"
	"pegwright/geom/solid"
)

// A half-lap scarf with under-squinted butts: the table lies at half the depth
// and each butt leans over it, so that the tips hook under and cannot lift.
// With a key the enterer is laid on and slid home along the table; without one
// it comes in sideways; with square butts and no key it drops straight on.

func cutLapScarf(s Site) Result {
	q := scarfOf(s)
	m := q.d / 2
	over := s.Set.Scarf.Squint * m
	table := q.side(0, 1, 0, m, geom.RoleTable)
	butt := q.side(-m, -over, -q.half, m, geom.RoleButt)
	tip := q.side(-m, -over, q.half, m, geom.RoleButt)
	res := q.cut(s, "Half-lap scarf", table, butt, tip)
	j := &res.Joint
	q.tell(s, j, over-q.half, q.half-over)
	key := s.Set.Scarf.Key
	if key > 0 {
		q.key(s, &res, m, key)
	}
	switch {
	case key > 0 && over > 0:
		j.Moves = []geom.Move{{Direction: q.onto(), Distance: m}, {Direction: q.home(), Distance: over + entry}}
	case over > 0:
		j.Moves = []geom.Move{{Direction: q.a.W.Neg(), Distance: q.wide}}
	default:
		j.Moves = []geom.Move{{Direction: q.onto(), Distance: m}}
	}
	q.pegs(s, &res, over, key > 0)
	q.lapDims(s, j, m, over, key)
	return res
}

// key takes the room of a square key through the middle of the table, half
// from each timber, and adds the key or the pair of wedges that fills it.
func (q scarfShape) key(s Site, res *Result, m, size float64) {
	h := size / 2
	room := []solid.Side{q.side(-1, 0, -h, m, geom.RoleWall), q.side(1, 0, h, m, geom.RoleWall),
		q.side(0, -1, 0, m-h, geom.RoleFloor), q.side(0, 1, 0, m+h, geom.RoleFloor)}
	rc, ec := &carver{t: s.R, id: s.ID}, &carver{t: s.E, id: s.ID}
	rc.take("key room", room...)
	ec.take("key room", room...)
	res.R, res.E = append(res.R, rc.cuts...), append(res.E, ec.cuts...)
	lo, hi := s.R.Blank.Moved(s.R.Place).Extent(q.a.W)
	body := append(room[:4:4], solid.Side{Plane: solid.Plane{N: q.a.W, D: hi}, Role: geom.RoleEnd},
		solid.Side{Plane: solid.Plane{N: q.a.W.Neg(), D: -lo}, Role: geom.RoleEnd})
	around := q.at(0, m)
	drive := func(sign float64) []geom.Move {
		return []geom.Move{{Direction: q.a.W.Mul(sign), Distance: hi - lo}}
	}
	if !s.Set.Scarf.Wedges {
		res.Joint.Pieces = []geom.Piece{{ID: s.ID + "-key", Kind: "key", Solid: frameBlock(around, body...), Moves: drive(-1)}}
		return
	}
	// Folding wedges: parted by a plane that leaves each a quarter of the key
	// at its point and three quarters at its head.
	n := q.a.U.Mul(q.e * (hi - lo)).Add(q.a.W.Mul(-h))
	part := solid.Side{Plane: solid.PlaneAt(around.Sub(q.a.W.Mul(q.wide/2)), n), Role: geom.RoleTable}
	res.Joint.Pieces = []geom.Piece{
		{ID: s.ID + "-wedge-1", Kind: "wedge", Solid: frameBlock(around, append(body[:6:6], part)...), Moves: drive(-1)},
		{ID: s.ID + "-wedge-2", Kind: "wedge", Solid: frameBlock(around, append(body[:6:6], flip(part))...), Moves: drive(1)},
	}
}

func (q scarfShape) lapDims(s Site, j *geom.Joint, m, over, key float64) {
	d := dimmer{j: j, a: q.a}
	along, square := q.a.U, q.a.V
	for _, half := range []struct {
		t    *geom.Timber
		sign float64
		y    float64 // outer side of the wood taken
	}{{s.R, 1, 0}, {s.E, -1, q.d}} {
		d.on(half.t, geom.Cutter)
		butt := half.sign * (over - q.half)
		d.add("butt line to end of scarf", along, q.at(butt, half.y), q.at(half.sign*q.half, half.y))
		if over > 0 { // else the table is as long as the scarf
			d.add("scarf table, butt to end", along, q.at(-q.half, m), q.at(q.half, m))
		}
		d.add("depth of the scarf", square, q.at(butt, half.y), q.at(butt, m))
		d.add("butt undercut at the table", along, q.at(butt, m), q.at(-half.sign*q.half, m))
		outer := q.d - half.y
		d.add("end cut back at the face", along, q.at(half.sign*q.half, outer), q.at(half.sign*(q.half-over), outer))
		d.add("end of scarf to key room", along, q.at(half.sign*q.half, m), q.at(half.sign*key/2, m))
		if key > 0 {
			d.add("key room along", along, q.at(-key/2, m), q.at(key/2, m))
			d.add("key room deep", square, q.at(0, m), q.at(0, m+half.sign*key/2))
		}
	}
	q.boreDims(s, j, &d, over)
}

// boreDims asks for the places of the holes on both timbers, from the butt
// line and from the entered side.
func (q scarfShape) boreDims(s Site, j *geom.Joint, d *dimmer, off float64) {
	for _, p := range j.Pegs {
		u, v, w := q.a.Of(p.Mortise)
		for _, t := range []struct {
			t    *geom.Timber
			from float64
			name string
		}{{s.R, off - q.half, "butt line to hole"}, {s.E, off - q.half, "end of scarf to hole"}} {
			d.on(t.t, geom.Borer)
			at := q.mid + q.e*t.from
			d.add(t.name, q.a.U, q.a.Point(at, v, w), q.a.Point(u, v, w))
			d.add("side face to hole", q.a.W, q.a.Point(u, v, 0), q.a.Point(u, v, w))
		}
	}
}
