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

// wayIn says what moves and which way, up to the distance, in the i-th move by
// which a joint closes: the receiver where the order of assembly brings that on to
// the enterer. Neither is told where it is not the same for the whole group.
func wayIn(f *geom.Frame, g scene.Group, i int) string {
	first := moving(f, g.First(), i)
	for _, j := range g.Joints[1:] {
		if moving(f, j, i) != first {
			first = [2]string{"Goes in", ""}
			break
		}
	}
	if rears(f, g) {
		first[1] = ""
	}
	words := first[0] + " "
	if i > 0 {
		words = " Then "
	}
	if first[1] != "" {
		words += first[1] + " "
	}
	return words
}

// moving says what moves in the i-th move of a joint, and which way.
func moving(f *geom.Frame, j *geom.Joint, i int) [2]string {
	if i >= len(j.Moves) {
		return [2]string{}
	}
	d := j.Moves[i].Direction
	if s, enters := f.Closing(j); s != nil && !enters {
		return [2]string{"The " + j.Into.Name() + " goes on", towards(d.Neg())}
	}
	return [2]string{"Goes in", towards(d)}
}

// rears reports whether all joints of a group close as uprights are turned up.
func rears(f *geom.Frame, g scene.Group) bool {
	for _, j := range g.Joints {
		if s, _ := f.Closing(j); s == nil || s.Motion != geom.Rear {
			return false
		}
	}
	return true
}

// onto names what the enterer stands on: its id, or where the joints of the group
// differ its role.
func onto(g scene.Group) string {
	j := g.First()
	if len(g.Joints) == 1 {
		return j.Into.ID
	}
	return "the " + j.Into.Name()
}
