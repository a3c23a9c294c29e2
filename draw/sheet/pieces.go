package sheet

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

// smallName names the i-th of a joint's pegs and then its pieces, as labels of its
// exploded view do.
func smallName(j *geom.Joint, i int) string {
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

// driven says which pieces are driven into the closed joint, and which way.
func driven(g Group) string {
	j, t := g.First(), ""
	for i, p := range j.Pieces {
		if len(p.Moves) == 0 {
			continue
		}
		t += " Drive " + smallName(j, len(j.Pegs)+i)
		if len(g.Joints) == 1 {
			t += " " + towards(p.Moves[len(p.Moves)-1].Direction)
		}
		t += "."
	}
	return t
}

// wholeFrame takes a picture of the frame's timbers with its wedges and keys.
// Only the timbers have names in it.
func wholeFrame(f *geom.Frame, c view.Camera, timbers []view.Part) picture {
	parts := timbers[:len(timbers):len(timbers)]
	for _, j := range f.Joints {
		if !has(timbers, j.Of.ID) || !has(timbers, j.Into.ID) {
			continue
		}
		for _, p := range j.Pieces {
			parts = append(parts, view.CellsPart(p.ID, p.Solid))
		}
	}
	pic := takePicture(c, parts, f.Paper.Hidden)
	pic.order = pic.order[:len(timbers)]
	return pic
}
