package solve_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pegwright/geom"
	"pegwright/geom/vec"
)

// roofed is a hut 10 ft wide under the roof that the keys describe.
func roofed(keys, more string) string {
	return strings.Replace(fmt.Sprintf(hut, "", more), "shape: gable, pitch: 9 in 12", keys, 1)
}

// seatArea is the area of the level faces that a joint leaves on a timber,
// square millimetres, by the shoelace formula on the net stick.
func seatArea(f *geom.Frame, timber, joint string) float64 {
	sum := 0.0
	for _, p := range f.Timber(timber).NetInFrame().Boundary() {
		for _, g := range p.Tags {
			if g.Joint != joint || g.Role != geom.RoleSeat {
				continue
			}
			for i, a := range p.Outer {
				b := p.Outer[(i+1)%len(p.Outer)]
				sum += (a.X*b.Y - b.X*a.Y) / 2
			}
			break
		}
	}
	return math.Abs(sum)
}

// The ridge's height follows from the pitch alone: a rafter whose underside
// crosses the plate's top a third of its depth (square to it) inside the outer
// face rises 9 in 12 to the ridge and crosses its top just short of the middle. Worked by
// hand: ideal rafter 5-1/2 in deep, ideal ridge 5-1/2 in wide, span 10 ft, eave
// 8 ft.
func TestRidgeHeight(t *testing.T) {
	f := solved(t, roofed("shape: gable, pitch: 9 in 12, ridge: beam", ""))
	cross := 5.5 / 3 / 0.6 // on the plate
	// Wood of 0.55 in between a seat and the bridle's slot: the slot's floor
	// leaves the underside at twice the pitch (sin 0.96, cos 0.28).
	back := 0.55 / 0.96 * 0.8
	seat := 5.5/2 - back // on the ridge, shorter than a third of the rafter allows
	top := 96 + (60-back-cross)*0.75
	ridge := f.Timber("ridge")
	near(t, "ridge top", ridge.Place.O.Z, top*inch, 1e-6)
	near(t, "ridge centred", ridge.Place.O.Y, (60-2.75)*inch, 1e-6)
	for _, side := range []string{"south", "north"} {
		id := "rafter-2-" + side
		near(t, "seat of "+id+" on the ridge", seatArea(f, id, id+"-on-ridge"), seat*4*inch*inch, 1e-3)
		near(t, "seat of "+id+" on the plate", seatArea(f, id, id+"-on-plate-"+side), cross*4*inch*inch, 1e-3)
	}
	// King post: from the tie's top to the ridge's underside, and its tenons.
	king := f.Timber("king-post-1")
	tie, under := (96-6-6)*inch, (top-7.5)*inch
	near(t, "king post", king.Length, under-tie+(3+4)*inch, 1e-6)
	near(t, "king post in the middle", king.Place.Out(vec.V{Y: king.Ideal[0] / 2, Z: king.Ideal[1] / 2}).Y, 60*inch, 1e-6)
}

// Ties of a roof that thrusts hold tension; where a ridge or two plates of
// different heights carry the rafters they only locate.
func TestTensionByStructure(t *testing.T) {
	for _, c := range []struct {
		roof string
		want bool
	}{{"shape: gable, pitch: 9 in 12", true}, {"shape: gable, pitch: 9 in 12, ridge: beam", false}, {"shape: shed, pitch: 4 in 12", false}} {
		f := solved(t, roofed(c.roof, ""))
		for _, j := range f.Joints {
			if want := c.want && j.Of.Role == "tie"; j.Tension != want {
				t.Errorf("%s: %s holds tension: %v", c.roof, j.ID, j.Tension)
			}
		}
	}
}

// Over a shed roof the rafter meets both plates alike: the high plate stands
// above the low one by the pitch times the way between the arrises that the
// heels lie against, and rafters are as long as Pythagoras says.
func TestShedRoof(t *testing.T) {
	for _, c := range []struct {
		roof      string
		low, high string
		rise      float64
	}{
		{"shape: shed, pitch: 4 in 12, overhang: 9", "south", "north", 4},
		{"shape: shed, pitch: 5 in 12, overhang: 9, high wall: south", "north", "south", 5},
	} {
		f := solved(t, roofed(c.roof, ""))
		sin := c.rise / math.Hypot(c.rise, 12)
		low, high := f.Timber("plate-"+c.low), f.Timber("plate-"+c.high)
		near(t, "low plate", low.Place.O.Z, 96*inch, 1e-6)
		near(t, "high plate", high.Place.O.Z, (96+(120-5.5)*c.rise/12)*inch, 1e-6)
		cross := math.Min(5.5/3/sin, 5.5-1)
		r := f.Timber("rafter-2")
		near(t, "rafter", r.Length, (120+2*9)*math.Hypot(1, c.rise/12)*inch, 1e-6)
		for _, p := range []string{c.low, c.high} {
			near(t, "seat on the plate "+p, seatArea(f, "rafter-2", "rafter-2-on-plate-"+p), cross*4*inch*inch, 1e-3)
			post := f.Timber("post-1-" + p)
			near(t, "post under it", post.Length, f.Timber("plate-"+p).Place.O.Z-5.5*inch+3*inch, 1e-6)
		}
	}
}
