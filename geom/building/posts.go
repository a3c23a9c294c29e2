package building

import (
	"fmt"

	"pegwright/geom"
	"pegwright/geom/scheme"
	"pegwright/geom/spec"
	"pegwright/geom/vec"
)

// wallY is the y of the outside of an eave wall.
func (p *plan) wallY(wall string) float64 {
	if wall == "north" {
		return p.span
	}
	return 0
}

// layPosts stands a post at each wall in each bent.
func (p *plan) layPosts() {
	s := p.s
	a, b := s.Size("post")
	for _, bt := range p.bents {
		for _, sd := range sides {
			l := scheme.Line{At: vec.V{X: bt.x, Y: p.wallY(sd.wall)}, Dir: up, Out1: sd.out, Out2: bt.out, Size1: a, Size2: b,
				Name1: "outside", Name2: bt.word, Name3: "inside", Name4: p.inside(bt)}
			st := s.Add(fmt.Sprintf("post-%d-%s", bt.n, sd.wall), "post", p.b.At, l, 0, p.plateTop(sd.wall), spec.TimberSettings{})
			st.Timber.Bent, st.Timber.Wall = bt.n, sd.wall
			bt.post[sd.wall] = st
			p.foot(st, p.sills[sd.wall], func(own *spec.JointSettings) {
				if bt.n == 1 || bt.last() {
					holdAt(own, bt, p.std.hold)
				}
			})
			lo, hi := bt.x, bt.x+b
			if bt.last() {
				lo, hi = bt.x-b, bt.x
			}
			p.pos[sd.wall] = append(p.pos[sd.wall], vertical{st, lo, hi})
			if gable := p.gable(bt); gable != "" {
				lo, hi = 0, a
				if sd.wall == "north" {
					lo, hi = p.span-a, p.span
				}
				p.pos[gable] = append(p.pos[gable], vertical{st, lo, hi})
			}
		}
	}
}

// layPlates lays a plate on the posts of each wall.
func (p *plan) layPlates() {
	s := p.s
	w, d := s.Size("plate")
	past := p.b.Roof.GableOverhang.Or(p.std.pastGable)
	for _, sd := range sides {
		l := scheme.Line{At: vec.V{Y: p.wallY(sd.wall), Z: p.plateTop(sd.wall)}, Dir: east, Out1: up, Out2: sd.out, Size1: d, Size2: w,
			Name1: "top", Name2: "outside", Name3: "underside", Name4: "inside"}
		st := s.Add("plate-"+sd.wall, "plate", p.b.Eave.At, l, -past, p.length+past, spec.TimberSettings{})
		st.Timber.Wall = sd.wall
		p.plates[sd.wall] = st
		for _, bt := range p.bents {
			own := spec.JointSettings{TenonLength: spec.LengthOf(p.topTenon(st)), Along: spec.Centred()}
			if p.gable(bt) != "" {
				holdAt(&own, bt, p.std.hold)
			}
			// The outside gets boarded and a rafter passes close above: sawn flush.
			s.Join("mortise and tenon", st, bt.post[sd.wall], geom.Finish, own, p.b.Eave.At).Flush = true
		}
	}
}

// topTenon is the length of an upright's tenon into a plate: 3 in where the
// plate is 6 in deep, so that wood is left under the rafter seat.
func (p *plan) topTenon(plate *scheme.Stick) float64 {
	if plate.Timber.Section[plate.DepthAxis()] < 6.8*inch {
		return p.std.shallow
	}
	return p.s.Std.Tenon
}
