package scene

import (
	"fmt"

	"pegwright/draw/view"
	"pegwright/geom"
	"pegwright/geom/vec"
)

// pieceParts returns the wedges and keys of a joint, each drawn back along the
// way it is driven and a gap more, with a line to its seat.
func pieceParts(j *geom.Joint, gap float64, line func(a, b vec.V)) []view.Part {
	var out []view.Part
	for _, p := range j.Pieces {
		part := view.CellsPart(p.ID, p.Solid)
		part.Shift = pulled(p, gap)
		c := p.Solid.Centroid()
		line(c.Add(part.Shift), c)
		out = append(out, part)
	}
	return out
}

// pulled is how far a piece is carried for the exploded view.
func pulled(p geom.Piece, gap float64) vec.V {
	var out vec.V
	for i, m := range p.Moves {
		d := m.Distance
		if i == 0 {
			d += gap
		}
		out = out.Sub(m.Direction.Mul(d))
	}
	return out
}

// SmallName names the i-th of a joint's pegs and then its pieces, as labels of its
// exploded view do.
func SmallName(j *geom.Joint, i int) string {
	numbered := func(word string, i, of int) string {
		if of > 1 {
			return fmt.Sprintf("%s %d", word, i+1)
		}
		return word
	}
	if i < len(j.Pegs) {
		return numbered("peg", i, len(j.Pegs))
	}
	i -= len(j.Pegs)
	return numbered(j.Pieces[i].Kind, i, len(j.Pieces))
}

// Driven says which pieces are driven into the closed joint, and which way.
func Driven(g Group) string {
	j, t := g.First(), ""
	for i, p := range j.Pieces {
		if len(p.Moves) == 0 {
			continue
		}
		t += " Drive " + SmallName(j, len(j.Pegs)+i)
		if len(g.Joints) == 1 {
			t += " " + Towards(p.Moves[len(p.Moves)-1].Direction)
		}
		t += "."
	}
	return t
}

// Towards names a frame direction in words.
func Towards(d vec.V) string {
	names := []struct {
		d vec.V
		s string
	}{{vec.V{X: 1}, "east"}, {vec.V{X: -1}, "west"}, {vec.V{Y: 1}, "north"}, {vec.V{Y: -1}, "south"}, {vec.V{Z: 1}, "straight up"}, {vec.V{Z: -1}, "straight down"}}
	for _, n := range names {
		if d.Dot(n.d) > 1-1e-6 {
			return n.s
		}
	}
	if d.Z > 0 {
		return "up, along its own axis,"
	}
	return "down, along its own axis,"
}

// FlushWords says how a peg is finished that is sawn off where another timber
// will stand.
func FlushWords(p *geom.Peg) string {
	faces := "both faces"
	if p.Exit == 0 {
		faces = "the entry face"
	}
	return "drive, then saw flush on " + faces + " before the next timber stands there"
}
