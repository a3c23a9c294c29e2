package scene

import (
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

// FlushWords says how a peg is finished that is sawn off where another timber
// will stand.
func FlushWords(p *geom.Peg) string {
	faces := "both faces"
	if p.Exit == 0 {
		faces = "the entry face"
	}
	return "drive, then saw flush on " + faces + " before the next timber stands there"
}
