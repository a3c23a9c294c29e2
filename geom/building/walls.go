package building

import (
	"cmp"
	"slices"

	"pegwright/geom/scheme"
	"pegwright/geom/spec"
	"pegwright/geom/vec"
)

// wall is one of the four walls: its own axis runs along it from its first
// post, and out is its outside.
type wall struct {
	name   string
	dir    vec.V
	out    vec.V
	origin vec.V
	bt     *bent // of a gable wall
}

// walls are the four walls: the eave walls, then the gables.
func (p *plan) walls() []wall {
	first, last := p.bents[0], p.bents[len(p.bents)-1]
	return []wall{
		{name: "south", dir: east, out: south},
		{name: "north", dir: east, out: north, origin: vec.V{Y: p.span}},
		{name: "west", dir: north, out: west, bt: first},
		{name: "east", dir: north, out: east, origin: vec.V{X: last.x}, bt: last},
	}
}

func (w wall) gable() bool { return w.bt != nil }

// wallNamed is the wall of that name.
func (p *plan) wallNamed(name string) wall {
	for _, w := range p.walls() {
		if w.name == name {
			return w
		}
	}
	return p.walls()[0]
}

// sillOf and headOf are the level sticks at the foot and head of a wall.
func (p *plan) sillOf(w wall) *scheme.Stick {
	if w.gable() {
		return p.cross[w.bt.n]
	}
	return p.sills[w.name]
}

// headOf is the level stick over the posts of a wall.
func (p *plan) headOf(w wall) *scheme.Stick {
	if w.gable() {
		return w.bt.tie
	}
	return p.plates[w.name]
}

// mainPosts are the frame posts of a wall, in order along it.
func (p *plan) mainPosts(w wall) []vertical {
	var r []vertical
	for _, v := range p.pos[w.name] {
		if v.st.Timber.Role == "post" {
			r = append(r, v)
		}
	}
	slices.SortStableFunc(r, byPlace)
	return r
}

func byPlace(a, b vertical) int { return cmp.Compare(a.lo, b.lo) }

// headUnder is the height of the underside of a wall's head above the datum.
func (p *plan) headUnder(w wall) float64 {
	head := p.headOf(w)
	return head.High(up) - head.Timber.Ideal[head.DepthAxis()]
}

// has reports whether a list of words, empty for all, holds one.
func has(list []spec.Text, word string) bool {
	if len(list) == 0 {
		return true
	}
	for _, t := range list {
		if t.S == word {
			return true
		}
	}
	return false
}
