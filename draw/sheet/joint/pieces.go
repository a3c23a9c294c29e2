package joint

import (
	"fmt"

	"pegwright/draw/scene"
	"pegwright/geom"
	"pegwright/geom/vec"
)

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
func driven(g scene.Group) string {
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

// towards names a frame direction in words.
func towards(d vec.V) string {
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

// wayIn names the direction of a move with a blank after it, where it is the same
// for the whole group.
func wayIn(g scene.Group, i int) string {
	d := towards(g.First().Moves[i].Direction)
	for _, j := range g.Joints[1:] {
		if i >= len(j.Moves) || towards(j.Moves[i].Direction) != d {
			return ""
		}
	}
	return d + " "
}
