package building

import (
	"fmt"

	"pegwright/geom/scheme"
	"pegwright/geom/vec"
)

// bent is one cross frame: the x of its reference plane and the outward
// direction of its bent face.
type bent struct {
	n         int
	x         float64
	out       vec.V
	word      string // of the bent face
	tie       *scheme.Stick
	king      *scheme.Stick            // king post, where there is one
	principal map[string]*scheme.Stick // by wall, where there is a truss
	post      map[string]*scheme.Stick // by wall
}

// layBents sets the bents one bay apart. The end bents look outward, the inner ones
// toward bent 1.
func (p *plan) layBents() {
	p.length = 0
	for _, l := range p.b.Bays {
		p.length += l.MM
	}
	x := 0.0
	for i := 0; i <= len(p.b.Bays); i++ {
		bt := &bent{n: i + 1, x: x, out: west, word: fmt.Sprintf("toward bent %d", i), post: map[string]*scheme.Stick{}, principal: map[string]*scheme.Stick{}}
		if i == 0 {
			bt.word = "gable side"
		}
		if i == len(p.b.Bays) {
			bt.out, bt.word = east, "gable side"
		} else {
			x += p.b.Bays[i].MM
		}
		p.bents = append(p.bents, bt)
	}
}

// last reports whether the bent's reference face looks east.
func (bt *bent) last() bool { return bt.out.X > 0 }

// inside is the word for the face opposite the bent face.
func (p *plan) inside(bt *bent) string {
	switch {
	case bt.last():
		return fmt.Sprintf("toward bent %d", bt.n-1)
	case bt.n == 1:
		return "toward bent 2"
	}
	return fmt.Sprintf("toward bent %d", bt.n+1)
}

// gable names the gable wall that a bent stands in, or "".
func (p *plan) gable(bt *bent) string {
	switch {
	case bt.n == 1:
		return "west"
	case bt.last():
		return "east"
	}
	return ""
}
