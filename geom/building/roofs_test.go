package building_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pegwright/geom"
	"pegwright/geom/vec"
	"pegwright/samples/trial"
)

// roofed is a hut 10 ft wide under the roof that the keys describe.
func roofed(keys, more string) string {
	return strings.Replace(trial.Hut("", more), "shape: gable, pitch: 9 in 12", keys, 1)
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
	f := trial.Frame(t, "test.yaml", roofed("shape: gable, pitch: 9 in 12, ridge: beam", ""))
	cross := 5.5 / 3 / 0.6 // on the plate
	// Wood of 0.55 in between a seat and the bridle's slot: the slot's floor
	// leaves the underside at twice the pitch (sin 0.96, cos 0.28).
	back := 0.55 / 0.96 * 0.8
	seat := 5.5/2 - back // on the ridge, shorter than a third of the rafter allows
	top := 96 + (60-back-cross)*0.75
	ridge := f.Timber("ridge")
	trial.Near(t, "ridge top", ridge.Place.O.Z, top*inch, 1e-6)
	trial.Near(t, "ridge centred", ridge.Place.O.Y, (60-2.75)*inch, 1e-6)
	for _, side := range []string{"south", "north"} {
		id := "rafter-2-" + side
		trial.Near(t, "seat of "+id+" on the ridge", seatArea(f, id, id+"-on-ridge"), seat*4*inch*inch, 1e-3)
		trial.Near(t, "seat of "+id+" on the plate", seatArea(f, id, id+"-on-plate-"+side), cross*4*inch*inch, 1e-3)
	}
	// King post: from the tie's top to the ridge's underside, and its tenons.
	king := f.Timber("king-post-1")
	tie, under := (96-6-6)*inch, (top-7.5)*inch
	trial.Near(t, "king post", king.Length, under-tie+(3+4)*inch, 1e-6)
	trial.Near(t, "king post in the middle", king.Place.Out(vec.V{Y: king.Ideal[0] / 2, Z: king.Ideal[1] / 2}).Y, 60*inch, 1e-6)
}

// Ties of a roof that thrusts hold tension; where a ridge or two plates of
// different heights carry the rafters they only locate.
func TestTensionByStructure(t *testing.T) {
	for _, c := range []struct {
		roof string
		want bool
	}{{"shape: gable, pitch: 9 in 12", true}, {"shape: gable, pitch: 9 in 12, ridge: beam", false}, {"shape: shed, pitch: 4 in 12", false}} {
		f := trial.Frame(t, "test.yaml", roofed(c.roof, ""))
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
		f := trial.Frame(t, "test.yaml", roofed(c.roof, ""))
		sin := c.rise / math.Hypot(c.rise, 12)
		low, high := f.Timber("plate-"+c.low), f.Timber("plate-"+c.high)
		trial.Near(t, "low plate", low.Place.O.Z, 96*inch, 1e-6)
		trial.Near(t, "high plate", high.Place.O.Z, (96+(120-5.5)*c.rise/12)*inch, 1e-6)
		cross := math.Min(5.5/3/sin, 5.5-1)
		r := f.Timber("rafter-2")
		trial.Near(t, "rafter", r.Length, (120+2*9)*math.Hypot(1, c.rise/12)*inch, 1e-6)
		for _, p := range []string{c.low, c.high} {
			trial.Near(t, "seat on the plate "+p, seatArea(f, "rafter-2", "rafter-2-on-plate-"+p), cross*4*inch*inch, 1e-3)
			post := f.Timber("post-1-" + p)
			trial.Near(t, "post under it", post.Length, f.Timber("plate-"+p).Place.O.Z-5.5*inch+3*inch, 1e-6)
		}
	}
}

// hall is a stout frame, 20 ft by 12 ft, for trusses.
const hall = `frame: Hall
units: in
sections: {post: 8 x 8, tie: 8 x 10, plate: 8 x 8, king post: 8 x 8, ridge: 6 x 8, principal rafter: 6 x 8, strut: 4 x 5, queen post: 6 x 6, purlin: 4 x 6}
building:
  span: 20'
  bays: [12']
  eave: 9'
  roof: {shape: gable, pitch: 9 in 12, %s}
`

// arrisLength is the length of a stick's reference arris from plane a to plane b.
func arrisLength(f *geom.Frame, id string, a, b trial.Plane) float64 {
	tm := f.Timber(id)
	at := func(p trial.Plane) vec.V {
		o, d := tm.Place.O, tm.Place.X
		return o.Add(d.Mul(-p.Height(o) / p.N.Dot(d)))
	}
	return at(a).Dist(at(b))
}

// A principal rafter's reference arris runs from the tie's top to the king
// post's side: by Pythagoras the hypotenuse of 3, 4, 5 over the level way
// between them. The strut is square to it, and as long as the foot of the
// perpendicular from its place on the king post says.
func TestKingPostTruss(t *testing.T) {
	f := trial.Frame(t, "test.yaml", fmt.Sprintf(hall, "truss: king post, heel: 10"))
	// Level way: half the span less post 7-1/2, heel 10, half the king post 3-3/4.
	run := (120 - 7.5 - 10 - 3.75) * inch
	tieTop := f.Timber("tie-1").Place.O.Z
	king := f.Timber("king-post-1")
	side := trial.Plane{N: vec.V{Y: 1}, D: king.Place.Out(vec.V{}).Y}
	trial.Near(t, "king post's south side", side.D, (120-3.75)*inch, 1e-6)
	trial.Near(t, "principal", arrisLength(f, "principal-1-south", trial.Plane{N: vec.V{Z: 1}, D: tieTop}, side), run*5/4, 1e-6)
	// Strut: from 6 in above the tie on the king post's side to the underside,
	// square to it. Perpendicular from (run, 6 in) to a line through (0, 0) of
	// slope 3/4, less the rafter's 7-1/2 in.
	strut := (run*3-6*inch*4)/5 - 7.5*inch
	got := f.Timber("strut-1-south")
	if c := got.Place.X.Dot(f.Timber("principal-1-south").Place.X); math.Abs(c) > 1e-12 {
		t.Errorf("the strut is not square to the principal: cosine %g", c)
	}
	shoulder, nose := f.Joint("strut-1-south-into-principal-1-south").Bearing, (120-3.75)*inch
	foot := vec.V{Y: nose, Z: tieTop + 6*inch}
	trial.Near(t, "strut", math.Abs(shoulder.Height(foot)), strut, 1e-6)
	// Only the king posts' feet are pulled; their pegs are at full strength in oak.
	for _, j := range f.Joints {
		if want := j.Of.Role == "king post" && j.Into.Role == "tie"; j.Tension != want {
			t.Errorf("%s holds tension: %v", j.ID, j.Tension)
		}
	}
}

// Purlins of a queen post truss lie in rows no farther apart than asked, their
// tops in the plane of the principals' tops, and reach 2 in into each side.
func TestPurlins(t *testing.T) {
	for _, spacing := range []float64{24, 36, 48} {
		f := trial.Frame(t, "test.yaml", fmt.Sprintf(hall, fmt.Sprintf("truss: queen posts, purlin spacing: %g", spacing)))
		principal := f.Timber("principal-1-south")
		top := trial.FacePlane(principal, trial.WordFace(t, principal, "top"), principal.Ideal)
		var rows []float64
		for i := 1; ; i++ {
			p := f.Timber(fmt.Sprintf("purlin-%d-1-south", i))
			if p == nil {
				break
			}
			trial.Near(t, p.ID+" in the plane of the tops", top.Height(p.Place.O), 0, 1e-6)
			trial.Near(t, p.ID+" between the principals' inner sides and into them", p.Length, (144-2*5.5+2*2)*inch, 1e-6)
			rows = append(rows, principal.Place.In(p.Place.O).X)
		}
		if len(rows) < 2 {
			t.Fatalf("%d rows of purlins", len(rows))
		}
		for i := 1; i < len(rows); i++ {
			// A row that is moved past a queen post leaves a wider gap on one side.
			if gap := rows[i] - rows[i-1]; gap <= 5*inch || gap > (spacing+18)*inch {
				t.Errorf("spacing %g: rows %d and %d are %g in apart", spacing, i, i+1, gap/inch)
			}
		}
	}
}

// A tie over the plates lies 1 in down on them and runs past them by the heel.
func TestTiesOverPlates(t *testing.T) {
	f := trial.Frame(t, "test.yaml", fmt.Sprintf(hall, "truss: queen posts, heel: 11"))
	tie, principal := f.Timber("tie-1"), f.Timber("principal-1-south")
	trial.Near(t, "tie's ideal underside", tie.Place.O.Z-9.5*inch, (108-1)*inch, 1e-6)
	top := trial.FacePlane(principal, trial.WordFace(t, principal, "top"), principal.Ideal)
	at := vec.V{Z: tie.Place.O.Z}
	nose := -top.Height(at) / top.N.Y
	trial.Near(t, "heel", nose-tie.Place.O.Y, 11*inch, 1e-6)
	// The principal's middle comes down on the plate's: half of 7-1/2 less half
	// of 7-1/2 over sin, but not more than 6 in outside.
	trial.Near(t, "nose", nose, math.Max((7.5-7.5/0.6)/2, -6)*inch, 1e-6)
}

// Over a collar the rafters are as far apart as the pitch leaves them.
func TestCollars(t *testing.T) {
	f := trial.Frame(t, "test.yaml", roofed("shape: gable, pitch: 12 in 12, collars: {height: 1', on: every second pair}", ""))
	n := 0
	for _, tm := range f.Timbers {
		if tm.Role != "collar" {
			continue
		}
		n++
		trial.Near(t, tm.ID+" underside", tm.Place.O.Z-5.5*inch, (96+12)*inch, 1e-6)
		trial.Near(t, tm.ID+" in the middle", 2*tm.Place.O.Y+tm.Length, 120*inch, 1e-6)
	}
	if n != 3 {
		t.Errorf("%d collars on 5 pairs, one on every second", n)
	}
	for _, j := range f.Joints {
		if j.Of.Role == "collar" && (!j.Tension || j.Kind != "Half-dovetail lap") {
			t.Errorf("%s: %s, holds tension: %v", j.ID, j.Kind, j.Tension)
		}
	}
}

// A lean-to's plate lies below its ledger by span times pitch, and its rafters
// sit alike on both.
func TestLeanTo(t *testing.T) {
	f := trial.Frame(t, "test.yaml", strings.Replace(fmt.Sprintf(hall, "ridge: beam"), "eave: 9'", "eave: 9'\n  lean-tos:\n    - {wall: south, span: 6', pitch: 4 in 12, height: 80}", 1))
	trial.Near(t, "ledger", f.Timber("lean-to-ledger-1-south").Place.O.Z, 80*inch, 1e-6)
	plate := f.Timber("lean-to-plate-south")
	trial.Near(t, "plate", plate.Place.O.Z, (80-72.0/3)*inch, 1e-6)
	trial.Near(t, "plate's outside", plate.Place.O.Y, -72*inch, 1e-6)
	sin := 1 / math.Sqrt(10)
	cross := math.Min(5.5/3/sin, 5.5-1) // 1 in is left behind the seat on the ledger, the narrower of the two
	for _, on := range []string{"lean-to-plate-south", "lean-to-ledger-1-south"} {
		trial.Near(t, "seat on "+on, seatArea(f, "lean-to-rafter-2-south", "lean-to-rafter-2-south-on-"+on), cross*4*inch*inch, 1e-3)
	}
}
