package joint_test

import (
	"math"
	"testing"

	"pegwright/geom"
	"pegwright/geom/joint"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

const (
	inch  = 25.4
	cubic = inch * inch * inch
)

// stick returns a timber of the given section, length and reduction, all in
// inches, along x from o with its reference faces looking along -y and -z.
func stick(id string, o, x, y vec.V, length, a, b, reduce float64) *geom.Timber {
	t := &geom.Timber{ID: id, Length: length * inch, Section: [2]float64{a * inch, b * inch},
		Ideal: [2]float64{(a - reduce) * inch, (b - reduce) * inch},
		Place: vec.Placement{X: x, Y: y, Z: x.Cross(y), O: o.Mul(inch)}}
	t.Blank = geom.BlankOf(t.Length, t.Section, t.Section)
	return t
}

// run moves an end of a timber to the coordinate x along it.
func run(t *geom.Timber, end geom.End, x float64) {
	if math.IsNaN(x) {
		return
	}
	if end == geom.Finish {
		t.Length = x
	} else {
		t.Length -= x
		t.Place.O = t.Place.Out(vec.V{X: x})
	}
	t.Blank = geom.BlankOf(t.Length, t.Section, t.Section)
}

// made reaches and cuts a joint and returns the wood taken from receiver and
// enterer, in cubic inches, bores left out.
func made(t *testing.T, kind string, s joint.Site) (fromR, fromE float64, res joint.Result) {
	t.Helper()
	k, ok := joint.Lookup(kind)
	if !ok {
		t.Fatalf("no kind %q", kind)
	}
	if bad := k.Fits(s); bad != "" {
		t.Fatalf("%s: %s", kind, bad)
	}
	tips := k.Reach(s)
	run(s.E, s.End, tips.E)
	run(s.R, s.REnd, tips.R)
	res = k.Cut(s)
	taken := func(tm *geom.Timber, cuts []geom.Cut) float64 {
		b := solid.NewBody(tm.Blank)
		for _, c := range cuts {
			b.Subtract(c.Solid, c.Joint)
		}
		if err := b.Valid(); err != nil {
			t.Errorf("%s: %v", tm.ID, err)
		}
		return (tm.Blank.Volume() - b.Volume()) / cubic
	}
	return taken(s.R, res.R), taken(s.E, res.E), res
}

func same(t *testing.T, what string, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > 1e-6*math.Max(1, math.Abs(want)) {
		t.Errorf("%s: %.6f cubic inches, by hand %.6f", what, got, want)
	}
}

// usual are the settings of a 1-1/2 in tenon, 2 in off the reference face, 4
// in long, in a mortise 1/4 in deeper.
func usual() joint.Settings {
	return joint.Settings{Thickness: 1.5 * inch, FromRef: 2 * inch, TenonLength: 4 * inch, Deeper: inch / 4,
		Pegs: 1, Bore: inch, OffShoulder: 1.5 * inch, Along: 2 * inch}
}

// square returns a post and a rail that enters its north face.
func square(reduce float64, set joint.Settings) joint.Site {
	post := stick("post", vec.V{}, vec.V{Z: 1}, vec.V{X: 1}, 96, 6, 6, reduce)
	rail := stick("rail", vec.V{Y: 6, Z: 48}, vec.V{Y: 1}, vec.V{X: 1}, 60, 6, 6, reduce)
	return joint.Site{ID: "j", R: post, E: rail, End: geom.Start, Set: set}
}

// Volumes of the square joint, worked by hand in inches. The rail is 6 x 6 and
// its ideal section d x d, d = 6 less the reduction; it enters a 6 x 6 post.
func TestSquareVolumes(t *testing.T) {
	for _, c := range []struct {
		name             string
		reduce           float64
		change           func(*joint.Settings)
		wantR, wantE     float64
		shoulder, length float64 // tip to shoulder, finished length gained
	}{
		// Planed, not housed: the mortise alone; the tenon's waste round 1-1/2 x 6.
		{"blind mortise", 0, func(*joint.Settings) {}, 1.5 * 6 * 4.25, 4 * (36 - 1.5*6), 4, 4},
		// Planed, housed 1/2 in over 6 x 6.
		{"housed", 0, func(s *joint.Settings) { s.Housing = inch / 2 }, 6*6*0.5 + 1.5*6*4.25, 4 * (36 - 1.5*6), 4, 4.5},
		// Square rule: the housing is the reduction, 5-1/2 high, and runs out at the
		// sides over the full 6; the end is brought to 5-1/2 x 5-1/2 over 1/2 + 1/8.
		{"square rule", 0.5, func(*joint.Settings) {}, 5.5*6*0.5 + 1.5*5.5*4.25, 4*(36-1.5*5.5) + 0.625*(36-5.5*5.5), 4, 4.5},
		{"square rule, housed 1/2 below", 0.5, func(s *joint.Settings) { s.Housing = inch / 2 },
			5.5*(6*1-0) + 1.5*5.5*4.25 - 0, 4*(36-1.5*5.5) + 1.125*(36-5.5*5.5), 4, 5},
		// Held back 2 in on one side and 1 in on the other.
		{"held back", 0, func(s *joint.Settings) { s.HoldStart, s.HoldEnd = 2*inch, inch }, 1.5 * 3 * 4.25, 4 * (36 - 1.5*3), 4, 4},
		{"clearance 1/32", 0, func(s *joint.Settings) { s.Clearance = inch / 32 }, (1.5 + 1.0/32) * 6 * 4.25, 4 * (36 - 1.5*6), 4, 4},
		{"through", 0, func(s *joint.Settings) { s.Through = true }, 1.5 * 6 * 6, 6 * (36 - 1.5*6), 6, 6},
		{"through, square rule", 0.5, func(s *joint.Settings) { s.Through = true }, 5.5*6*0.5 + 1.5*5.5*5.5, 5.5*(36-1.5*5.5) + 0.625*(36-5.5*5.5), 5.5, 6},
		{"stub", 0, func(s *joint.Settings) { s.TenonLength, s.Pegs = 1.75*inch, 0 }, 1.5 * 6 * 2, 1.75 * (36 - 1.5*6), 1.75, 1.75},
		// Barefaced: one cheek alone.
		{"barefaced", 0, func(s *joint.Settings) { s.FromRef, s.Thickness = 0, 2*inch }, 2 * 6 * 4.25, 4 * (36 - 2*6), 4, 4},
	} {
		t.Run(c.name, func(t *testing.T) {
			set := usual()
			c.change(&set)
			s := square(c.reduce, set)
			before := s.E.Length
			fromR, fromE, res := made(t, "mortise and tenon", s)
			same(t, "from the receiver", fromR, c.wantR)
			same(t, "from the enterer", fromE, c.wantE)
			same(t, "length gained", (s.E.Length-before)/inch, c.length)
			wide := (6 - c.reduce) * inch
			if set.HoldStart > 0 {
				wide = 3 * inch
			}
			same(t, "the tenon", res.Joint.Tenon.Volume()/cubic, c.shoulder*set.Thickness/inch*wide/inch)
		})
	}
}

// The brace joint, worked by hand in inches: a 3 x 5 brace at the angle θ to a
// 6 x 6 post, both planed, tenon 1-1/2 x 3. In the plane of the brace the
// mortise is bounded by the nose line, the floor and the brace's inner edge,
// which meets the post's face 5/sin θ from the nose and runs toward the nose by
// cot θ for each inch of depth.
func TestBraceVolumes(t *testing.T) {
	for _, deg := range []float64{45, 30, 60, 53.13010235415598} {
		for _, h := range []float64{0, 0.5} {
			sin, cos := math.Sincos(deg * math.Pi / 180)
			set := usual()
			set.TenonLength, set.Housing, set.FromRef = 3*inch, h*inch, 2*inch
			post := stick("post", vec.V{}, vec.V{Z: 1}, vec.V{X: 1}, 120, 6, 6, 0)
			// Away from the post to the north and up; the reference side at x = 1-1/4.
			brace := stick("brace", vec.V{X: 1.25, Y: 6, Z: 40}, vec.V{Y: sin, Z: cos}, vec.V{X: 1}, 40, 3, 5, 0)
			s := joint.Site{ID: "j", R: post, E: brace, End: geom.Start, Set: set}
			fromR, fromE, _ := made(t, "brace mortise and tenon", s)
			// area of the trapezoid between the depths p and q below the face
			area := func(p, q float64) float64 { return 5/sin*(q-p) - cos/sin*(q*q-p*p)/2 }
			same(t, "from the post", fromR, 3*area(0, h)+1.5*area(h, h+3.25))
			// Of the brace stays: the part let in at full width, the tenon, and what
			// stands before the face. The tip lies in the nose plane h + 3 below the
			// face, (h + 3) sin θ before the nose line along the brace; the inner edge
			// meets the face 5 cot θ farther on.
			length := brace.Length / inch
			front := 3 * 5 * (length - (h+3)*sin - 5*cos/sin/2)
			stays := front + 3*area(0, h) + 1.5*area(h, h+3)
			same(t, "from the brace", fromE, 3*5*length-stays)
			// The outer edge, 5 in below the line, met the face 5 cot θ before the start.
			same(t, "length", length, 40+5*cos/sin+(h+3)*sin)
		}
	}
}

// A bridle at the angle φ, worked by hand: sticks w wide and d deep cross in a
// rhombus of area d²/sin φ. The fork runs to the far face of the tongue and
// loses the slot; the tongue keeps its thickness of the rhombus alone.
func TestBridleVolumes(t *testing.T) {
	const w, d, thick = 4.0, 6.0, 4.0 / 3
	for _, deg := range []float64{90, 106.26020470831196, 60} {
		// Two rafters that rise to each other, φ between their lines at the peak.
		rise := (90 - deg/2) * math.Pi / 180
		sin, cos := math.Sincos(rise)
		left := stick("left", vec.V{}, vec.V{Y: cos, Z: sin}, vec.V{X: 1}, 100, w, d, 0)
		right := stick("right", vec.V{X: w, Y: 200 * cos}, vec.V{Y: -cos, Z: sin}, vec.V{X: -1}, 100, w, d, 0)
		set := usual()
		set.Thickness, set.FromRef, set.Bore = thick*inch, thick*inch, 0.75*inch
		s := joint.Site{ID: "j", R: left, E: right, End: geom.Finish, REnd: geom.Finish, Set: set}
		fromR, fromE, _ := made(t, "bridle", s)
		phi := deg * math.Pi / 180
		rhombus := d * d / math.Sin(phi)
		mitre := d * d * math.Abs(math.Cos(phi)/math.Sin(phi)) / 2
		same(t, "from the fork", fromR, w*mitre+thick*rhombus)
		same(t, "from the tongue", fromE, w*mitre+(w-thick)*rhombus)
	}
}

// Rafter seats, worked by hand: the rafter's underside lies D below the
// plate's outer top arris, square to itself, and crosses the plate's top
// D/sin α in from its outer face.
func TestSeatVolumes(t *testing.T) {
	const w, deep = 4.0, 2.0
	for _, deg := range []float64{36.86989764584402, 30, 45} {
		sin, cos := math.Sincos(deg * math.Pi / 180)
		seat := func() joint.Site {
			plate := stick("plate", vec.V{}, vec.V{X: 1}, vec.V{Y: 1}, 60, 6, 6, 0)
			plate.Place.Y, plate.Place.Z = vec.V{Z: -1}, vec.V{Y: 1} // top and outside are the reference faces
			// The rafter's top line passes the outer face (6 - D)/cos α above the plate.
			up := vec.V{Y: cos, Z: sin}
			o := vec.V{X: 20, Z: (6 - deep) / cos}.Add(up.Mul(-20))
			raft := stick("rafter", o, up, vec.V{X: 1}, 100, w, 6, 0)
			set := usual()
			set.Steps, set.BlindDepth = 1, inch
			return joint.Site{ID: "j", R: plate, E: raft, Set: set}
		}
		if got := seat().SeatDepth(); math.Abs(got-deep*inch) > 1e-9 {
			t.Errorf("seat depth %g mm, laid out for %g", got, deep*inch)
		}
		cross := deep / sin
		triangle := cross * cross * sin / cos / 2
		fromR, fromE, _ := made(t, "birdsmouth seat", seat())
		same(t, "birdsmouth, from the plate", fromR, 0)
		same(t, "birdsmouth, from the rafter", fromE, w*triangle)
		// The step: a right triangle whose long side, on the plate's top, leaves two
		// fifths of the crossing, at least 1 in, outside.
		long := cross - math.Max(0.4*cross, 1)
		notch := long * long * sin * cos / 2
		fromR, fromE, _ = made(t, "step-lap seat", seat())
		same(t, "step lap, from the plate", fromR, w*notch)
		same(t, "step lap, from the rafter", fromE, w*(triangle-notch))
	}
}

// A plain bearing squares the end to the face and takes nothing else: from a
// stick at the angle θ a wedge of half its depth times its depth cot θ.
func TestBearingVolumes(t *testing.T) {
	for _, deg := range []float64{90, 60, 45} {
		sin, cos := math.Sincos(deg * math.Pi / 180)
		post := stick("post", vec.V{}, vec.V{Z: 1}, vec.V{X: 1}, 120, 6, 6, 0)
		strut := stick("strut", vec.V{Y: 6, Z: 60}, vec.V{Y: sin, Z: cos}, vec.V{X: 1}, 40, 4, 5, 0)
		s := joint.Site{ID: "j", R: post, E: strut, End: geom.Start, Set: joint.Settings{}}
		fromR, fromE, _ := made(t, "plain bearing", s)
		same(t, "from the post", fromR, 0)
		same(t, "from the strut", fromE, 4*5*5*cos/sin/2)
	}
}
