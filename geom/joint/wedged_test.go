package joint_test

import (
	"math"
	"testing"

	"pegwright/geom"
	"pegwright/geom/joint"
	"pegwright/geom/vec"
)

// wedgedSite is a rail into a post, or the same with the post standing on its
// head, so that its own axis runs down.
func wedgedSite(down bool, reduce float64, set joint.Settings) joint.Site {
	s := square(reduce, set)
	if down {
		s.R.Place = vec.Placement{X: vec.V{Z: -1}, Y: vec.V{X: 1}, Z: vec.V{Y: -1}, O: vec.V{Y: 6 * inch, Z: 96 * inch}}
	}
	return s
}

func wedgedSet(drop float64) joint.Settings {
	set := usual()
	set.TenonLength, set.Drop, set.Taper = 0, drop*inch, 1.0/12
	return set
}

// Volumes worked by hand in inches, planed 6 x 6 sticks, tenon 1-1/2 thick and 6
// long: the mortise is 6 high before the flare, which falls by the drop, with
// the drop and a wedge rising 1 in 12 above.
func TestWedgedVolumes(t *testing.T) {
	for _, drop := range []float64{0.75, 1, 1.5} {
		s := wedgedSite(false, 0, wedgedSet(drop))
		fromR, fromE, res := made(t, "wedged through tenon", s)
		room := drop*6 + 6.0/12*6/2
		same(t, "from the post", fromR, 1.5*(6*6-drop*6/2+room))
		same(t, "from the rail", fromE, 6*6*6-1.5*(6*6-drop*6/2))
		same(t, "wedge", res.Joint.Pieces[0].Solid.Volume()/cubic, 1.5*room)
		same(t, "tenon", res.Joint.Tenon.Volume()/cubic, 1.5*(6*6-drop*6/2))
		same(t, "drop", res.Joint.Moves[1].Distance/inch, drop)
		if d := res.Joint.Moves[1].Direction; d.Z > -1+1e-9 {
			t.Errorf("the second leg goes %v, want down", d)
		}
	}
}

// The usual drop is a sixth of the tenon's length (common practice, no source).
func TestUsualDrop(t *testing.T) {
	_, _, res := made(t, "wedged through tenon", wedgedSite(false, 0, wedgedSet(0)))
	same(t, "drop", res.Joint.Moves[1].Distance/inch, 1)
}

func TestWedgedCloses(t *testing.T) {
	for _, down := range []bool{false, true} {
		for _, reduce := range []float64{0, 0.5} {
			for _, housing := range []float64{0, 0.5} {
				set := wedgedSet(1)
				set.Housing, set.HoldEnd = housing*inch, 0.5*inch
				f := fit(t, "wedged through tenon", wedgedSite(down, reduce, set))
				f.closes(t)
				at := 6 - housing
				if !down {
					at -= reduce // the entered face is not a reference face
				}
				same(t, "height of the bearing plane", f.res.Joint.Bearing.Height(vec.V{Y: at * inch}), 0)
			}
		}
	}
}

// With the wedge in the rail can neither draw out nor lift; without it it lifts
// by the drop and draws, but never draws straight.
func TestWedgedHolds(t *testing.T) {
	f := fit(t, "wedged through tenon", wedgedSite(true, 0, wedgedSet(1)))
	with := append(f.r.Cells(), f.res.Joint.Pieces[0].Solid)
	out, up := vec.V{Y: 10}, vec.V{Z: 10}
	for _, d := range []vec.V{out, up, out.Add(up)} {
		if !locked(f.e.Cells(), with, d) {
			t.Errorf("the wedged tenon moves by %v", d)
		}
	}
	if !locked(f.e.Cells(), f.r.Cells(), out) {
		t.Error("without a wedge the tenon draws straight out")
	}
	if locked(f.e.Cells(), f.r.Cells(), up) {
		t.Error("without a wedge the tenon cannot be lifted")
	}
}

// A wedged tenon slips as a tail does: by similar triangles, and by brute force:
// the tenon is moved out until its flare meets the sole.
func TestWedgedSlip(t *testing.T) {
	// Flare line from 0 at the tip (x = 0) to drop at the shoulder (x = length):
	// lift the tenon by the loss and slide it until a point of it dips below the line.
	for _, c := range []struct{ loss, drop, length float64 }{{0.1, 1, 6}, {0.22, 1, 7}, {0.5, 1.5, 8}} {
		line := func(x float64) float64 { return c.drop * x / c.length }
		moved := 0.0
		for line(moved)-line(0)-c.loss < 0 {
			moved += 1e-4
		}
		slip := joint.Slip(c.loss, 1, c.length/c.drop)
		if math.Abs(moved-slip) > 2e-4 {
			t.Errorf("slip %.4f, by trial %.4f", slip, moved)
		}
	}
}

// The height that a wedged tenon loses: its own at its end and the wedge's.
func TestWedgedLoss(t *testing.T) {
	s := wedgedSite(false, 0, wedgedSet(1))
	loss, drop, length := s.WedgedLoss(0.0366, 0.02)
	same(t, "loss", loss/inch, 6*0.0366+1*0.02)
	same(t, "drop", drop/inch, 1)
	same(t, "length", length/inch, 6)
}

// A peg, where there is one, is bored in line.
func TestWedgedPeg(t *testing.T) {
	for n := range 2 {
		set := wedgedSet(1)
		set.Pegs, set.Offset, set.Centred = n, inch/8, true
		_, _, res := made(t, "wedged through tenon", wedgedSite(false, 0, set))
		if len(res.Joint.Pegs) != n || len(res.Bores) != 2*n {
			t.Fatalf("%d pegs", len(res.Joint.Pegs))
		}
		for _, p := range res.Joint.Pegs {
			if p.Offset != 0 || p.Draw != (vec.V{}) || p.Mortise != p.Tenon {
				t.Errorf("%s is drawn", p.ID)
			}
			// The rail lies 42 to 48 in up: the middle of its shoulder's height, 5 in
			// above an edge raised by 1 in.
			same(t, "height of the hole", p.Mortise.Z/inch, 42+1+2.5)
		}
	}
}

// Shoulders of the square tenon: two cheeks alone, a third and a fourth where
// it is held back; barefaced it has one.
func TestShoulders(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*joint.Settings)
		area   float64 // of all shoulder faces, square inches
	}{
		{"one", func(s *joint.Settings) { s.FromRef = 0 }, 6 * 4.5},
		{"two", func(*joint.Settings) {}, 6 * 4.5},
		{"three", func(s *joint.Settings) { s.HoldEnd = 2 * inch }, 36 - 1.5*4},
		{"four", func(s *joint.Settings) { s.HoldStart, s.HoldEnd = inch, 2*inch }, 36 - 1.5*3},
	} {
		set := usual()
		c.change(&set)
		f := fit(t, "mortise and tenon", square(0, set))
		f.closes(t)
		same(t, c.name, areaOf(f.e, geom.RoleShoulder, nil), c.area)
		cheeks := 0
		for _, p := range f.e.Boundary() {
			if p.Tags[0].Role == geom.RoleCheek {
				cheeks++
			}
		}
		if want := map[bool]int{true: 1, false: 2}[c.name == "one"]; cheeks != want {
			t.Errorf("%s: %d cheeks, want %d", c.name, cheeks, want)
		}
	}
}

// A haunch, worked by hand in inches: held back 2 in with a haunch of 1, the
// post loses 1-1/2 x 2 x 1-1/4 more and the rail 1-1/2 x 2 x 1 less.
func TestHaunchVolumes(t *testing.T) {
	for _, start := range []bool{true, false} {
		plain, haunched := usual(), usual()
		for _, s := range []*joint.Settings{&plain, &haunched} {
			if start {
				s.HoldStart = 2 * inch
			} else {
				s.HoldEnd = 2 * inch
			}
		}
		haunched.Haunch = inch
		r0, e0, _ := made(t, "mortise and tenon", square(0, plain))
		r1, e1, _ := made(t, "mortise and tenon", square(0, haunched))
		same(t, "more from the post", r1-r0, 1.5*2*1.25)
		same(t, "less from the rail", e0-e1, 1.5*2*1)
		f := fit(t, "mortise and tenon", square(0.5, haunched))
		f.closes(t)
	}
}

// A through tenon stands proud by what is asked, and no more.
func TestProud(t *testing.T) {
	for _, proud := range []float64{0, 1.5} {
		set := usual()
		set.Through, set.Proud = true, proud*inch
		f := fit(t, "mortise and tenon", square(0, set))
		f.closes(t)
		lo, _ := f.e.Bounds()
		same(t, "beyond the far face", -lo.Y/inch, proud)
		same(t, "told", f.res.Joint.Proud/inch, proud)
	}
}

// The diminished housing, worked by hand in inches: in the plane of the brace a
// triangle on the footprint 5/sin θ, its depth at the nose; the inner edge is
// met at the face, so nothing is lost there.
func TestDiminishedVolumes(t *testing.T) {
	for _, deg := range []float64{45, 35, 60} {
		for _, end := range []bool{false, true} {
			const h = 0.5
			sin, cos := math.Sincos(deg * math.Pi / 180)
			set := usual()
			set.TenonLength, set.Housing, set.Diminished, set.SquareEnd = 3*inch, h*inch, true, end
			site := func() joint.Site {
				post := stick("post", vec.V{}, vec.V{Z: 1}, vec.V{X: 1}, 120, 6, 6, 0)
				brace := stick("brace", vec.V{X: 1.25, Y: 6, Z: 40}, vec.V{Y: sin, Z: cos}, vec.V{X: 1}, 40, 3, 5, 0)
				return joint.Site{ID: "j", R: post, E: brace, End: geom.Start, Set: set}
			}
			foot := 5 / sin
			deep := h + 3.25
			mortise := foot*deep - cos/sin*deep*deep/2
			if end {
				mortise = foot * deep
			}
			fromR, _, res := made(t, "brace mortise and tenon", site())
			// The triangle lies wholly before the sloped end: the floor runs out
			// faster than the slope comes in.
			housing := foot * h / 2
			same(t, "from the post", fromR, 3*housing+1.5*(mortise-housing))
			if n := res.Joint.Bearing.N; math.Abs(math.Abs(n.Z/n.Y)-h/foot) > 1e-9 {
				t.Errorf("the floor leans %g, want %g either way", n.Z/n.Y, h/foot)
			}
			// The hole lies its distance below the floor where it is, measured square
			// to the face; so does the tenon's below the shoulder.
			p := res.Joint.Pegs[0]
			floor := h * (1 - 2/foot)
			same(t, "floor to hole", (6-p.Mortise.Y/inch)-floor, 1.5)
			// The rule measures to the same free surface, not to the floor at its
			// deepest, under the nose (edge distance: square to the grain, from the edge
			// to the centre of the fastener; NDS 12.5, from memory).
			for _, r := range p.Rules {
				if r.Name == "bearing face" {
					same(t, "by the rule", r.Distance(res.Joint.Flat(p.Mortise))/inch, 1.5)
				}
			}
			same(t, "told", p.A/inch, 1.5)
			same(t, "shoulder to hole, not drawn", p.B/inch, 1.5)
			f := fit(t, "brace mortise and tenon", site())
			f.closes(t)
		}
	}
}
