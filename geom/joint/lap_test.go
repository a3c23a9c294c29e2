package joint_test

import (
	"math"
	"testing"

	"pegwright/geom"
	"pegwright/geom/joint"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
	"pegwright/geom/wood"
)

// crossed returns a 6 x 6 beam along x, 0 to 6 in high, and a stick of the
// given width and depth that crosses it at the given angle with its top flush
// (or its underside, where it is as deep).
func crossed(width, deep, reduce, degrees float64, set joint.Settings) joint.Site {
	beam := stick("beam", vec.V{}, vec.V{X: 1}, vec.V{Y: 1}, 96, 6, 6, reduce)
	a := degrees * math.Pi / 180
	dir := vec.V{X: math.Cos(a), Y: math.Sin(a)}
	left := vec.V{X: dir.Y, Y: -dir.X}.Neg()
	o := vec.V{X: 48, Z: 6 - deep}.Sub(dir.Mul(30))
	return joint.Site{ID: "j", R: beam, E: stick("stick", o, dir, left, 66, width, deep, reduce), End: geom.Mid, REnd: geom.Mid, Set: set}
}

// Volumes of laps, worked by hand in inches: area of the crossing times depth.
func TestCrossLapVolumes(t *testing.T) {
	for _, c := range []struct {
		name         string
		site         joint.Site
		wantR, wantE float64
	}{
		{"half each of a 6 in cube", crossed(6, 6, 0, 90, joint.Settings{}), 108, 108},
		{"4 in wide", crossed(4, 6, 0, 90, joint.Settings{}), 4 * 6 * 3, 6 * 4 * 3},
		{"2 in deep into the beam", crossed(6, 6, 0, 90, joint.Settings{LapDepth: 2 * inch}), 72, 144},
		// A rhombus of 6 by 6 square across its sides has the area 36/sin.
		{"aslant 45 degrees", crossed(6, 6, 0, 45, joint.Settings{}), 108 * math.Sqrt2, 108 * math.Sqrt2},
		{"aslant 30 degrees", crossed(6, 6, 0, 30, joint.Settings{}), 216, 216},
		{"aslant 120 degrees", crossed(4, 6, 0, 120, joint.Settings{}), 72 / math.Sin(math.Pi/3), 72 / math.Sin(math.Pi/3)},
		// Square rule: ideal 5-1/2, its underside true. The notch is 5-1/2 wide,
		// 6 across, 3-1/4 down from the real top; beside it half an inch is housed
		// under the lap. The stick loses 2-3/4 over 5-1/2 and is brought to 5-1/2
		// over 6-1/4 of its length.
		{"square rule", crossed(6, 6, 0.5, 90, joint.Settings{}), 5.5*6*3.25 + 0.5*5.5*2.75, 2.75*5.5*6 + 0.5*6*6.25 - 0.5*2.75*5.5},
	} {
		t.Run(c.name, func(t *testing.T) {
			r, e, res := made(t, "cross lap", c.site)
			same(t, "beam loses", r, c.wantR)
			same(t, "stick loses", e, c.wantE)
			if m := res.Joint.Moves[0].Direction; m.Dist(vec.V{Z: -1}) > 1e-9 {
				t.Errorf("closes along %v, not straight down", m)
			}
		})
	}
}

func TestEndLapVolumes(t *testing.T) {
	half := crossed(4, 6, 0, 90, joint.Settings{})
	half.End = geom.Start
	r, e, res := made(t, "half lap", half)
	same(t, "half lap, beam", r, 4*6*3)
	same(t, "half lap, stick", e, 4*6*3)
	// The stick runs north from the beam's south side.
	if y := res.Joint.Of.Place.O.Y; math.Abs(y) > 1e-9 {
		t.Errorf("the end lies at y = %g, not at the beam's far side", y)
	}
	corner := crossed(6, 6, 0, 90, joint.Settings{})
	corner.End, corner.REnd = geom.Start, geom.Start
	r, e, res = made(t, "corner lap", corner)
	same(t, "corner lap, beam", r, 108)
	same(t, "corner lap, stick", e, 108)
	// The stick lies from x = 42 to 48 in: the beam runs to its outer side.
	if x := res.Joint.Into.Place.O.X; math.Abs(x-42*inch) > 1e-9 {
		t.Errorf("the beam ends at x = %g in, want 42", x/inch)
	}
}

// tail is a half-dovetail lap of a collar, 6 in wide, square on a 6 x 6.
func tail(deep float64, wedge bool, lap float64) joint.Site {
	s := crossed(6, deep, 0, 90, joint.Settings{Flare: 7, Wedge: wedge, LapDepth: lap * inch, Pegs: 1, Bore: 0.75 * inch})
	s.End = geom.Start
	return s
}

// The flare takes a triangle 6 long and 6/7 high from the tail. The wedge is
// 1/4 in thick at the tip and 1 in 12 thicker toward the shoulder, past which
// it stands 1 in proud.
func TestHalfDovetailVolumes(t *testing.T) {
	const tri = 6 * (6.0 / 7) / 2
	for _, c := range []struct {
		name                string
		site                joint.Site
		wantR, wantE, wedge float64
	}{
		{"as deep as the rafter", tail(6, false, 0), 3 * (36 - tri), 3*36 + 3*tri, 0},
		{"2 in collar let in whole", tail(2, false, 0), 2 * (36 - tri), 2 * tri, 0},
		{"3 in collar, 2 in deep", tail(3, false, 2), 2 * (36 - tri), 36 + 2*tri, 0},
		{"wedged", tail(6, true, 0), 3*(36-tri) + 3*6*(0.25+0.75)/2, 3*36 + 3*tri, 3 * 7 * (0.25 + 0.25 + 7.0/12) / 2},
	} {
		t.Run(c.name, func(t *testing.T) {
			r, e, res := made(t, "half-dovetail lap", c.site)
			same(t, "rafter loses", r, c.wantR)
			same(t, "collar loses", e, c.wantE)
			got := 0.0
			for _, p := range res.Joint.Pieces {
				got += p.Solid.Volume() / cubic
			}
			same(t, "wedge", got, c.wedge)
			flareOf(t, res)
		})
	}
}

// flareOf measures the flare on the wood that is left: the angle of the tail's
// one slanted cheek to the collar's length is 1 in 7, and it faces back.
func flareOf(t *testing.T, res joint.Result) {
	t.Helper()
	x := res.Joint.Of.Place.X // from the tip into the collar
	slanted := 0
	for _, f := range res.Joint.Tenon.Faces {
		s := f.Plane.N.Dot(x)
		if f.Role != geom.RoleCheek || math.Abs(s) < 1e-9 {
			continue
		}
		slanted++
		if got := s / math.Sqrt(1-s*s); math.Abs(got-1.0/7) > 1e-9 {
			t.Errorf("the flared cheek rises %.6f in 1 toward the shoulder, by hand 1/7", got)
		}
	}
	if slanted != 1 {
		t.Errorf("%d slanted cheeks, want one", slanted)
	}
}

// A collar 6 in wide of eastern white pine, flare 1 in 7, cut green and dried
// to 12 %: tangential shrinkage 6.1 % of green (Wood Handbook, table 13-4),
// 18/30 of it to 12 %: 6 x 0.0366 x 7 = 1.54 in.
func TestSlipOfAGreenTail(t *testing.T) {
	pine, ok := wood.Lookup("eastern white pine")
	if !ok {
		t.Fatal("no eastern white pine")
	}
	s := pine.Shrinkage(wood.Tangential, 100, 12)
	got := joint.Slip(6, s, 7)
	if math.Abs(got-6*0.061*18/30*7) > 0.005 {
		t.Errorf("slip %.4f in, by hand 1.537", got)
	}
	if joint.Slip(6, -0.01, 7) != 0 {
		t.Error("a tail that swells slips")
	}
	// The same by trying: slide the shrunken tail out of its notch, 6 in run,
	// step by step, till a point of it that is still inside meets the flare. The
	// wood near the shoulder bites before the tip does, so the formula, which
	// reckons at the tip, is the most that a tail slips.
	bites := func(d float64) bool {
		for x := 0.0; x+d <= 6; x += 0.01 {
			if (6-x/7)*(1-s) >= 6-(x+d)/7 {
				return true
			}
		}
		return false
	}
	d := 0.0
	for !bites(d) && d < 3 {
		d += 0.001
	}
	if d > got+0.002 || d < 0.8*got {
		t.Errorf("a tail bites after %.3f in, the formula says %.3f at the most", d, got)
	}
}

// dropped is a 4 x 8 joist that drops into the north side of an 8 x 10 beam,
// tops flush; the beam's top and south side, and the joist's top, are true.
func dropped(reduce float64, set joint.Settings) joint.Site {
	down := vec.V{Z: -1}
	beam := stick("beam", vec.V{}, vec.V{X: 1}, down, 96, 10, 8, reduce)
	joist := stick("joist", vec.V{X: 48, Y: 8}, vec.V{Y: 1}, down, 60, 8, 4, reduce)
	return joint.Site{ID: "j", R: beam, E: joist, End: geom.Start, REnd: geom.Mid, Set: set}
}

func TestPocketVolumes(t *testing.T) {
	two := joint.Settings{Bearing: 2 * inch}
	for _, c := range []struct {
		name         string
		site         joint.Site
		wantR, wantE float64
	}{
		// Three quarters of 8 in deep, 2 in into the side.
		{"planed", dropped(0, two), 4 * 6 * 2, 4 * 2 * 2},
		{"full depth", dropped(0, joint.Settings{Bearing: 1.5 * inch, PocketDepth: 8 * inch}), 4 * 8 * 1.5, 0},
		// Square rule: 3-1/2 x 7-1/2 housed 1/2 in; pocket 5-5/8 deep. The joist is
		// brought to 3-1/2 x 7-1/2 over 2 + 1/2 + 1/8 and its underside cut 1-7/8.
		{"square rule", dropped(0.5, two), 3.5*7.5*0.5 + 3.5*5.625*2, 2.625*(32-3.5*7.5) + 3.5*1.875*2},
	} {
		t.Run(c.name, func(t *testing.T) {
			r, e, res := made(t, "drop-in pocket", c.site)
			same(t, "beam loses", r, c.wantR)
			same(t, "joist loses", e, c.wantE)
			if len(res.Warns) != 0 {
				t.Errorf("warned: %v", res.Warns)
			}
		})
	}
}

// A purlin drops into a sloping rafter square to its upper face: the same
// joint, turned about the purlin's own direction.
func TestPocketInASlopingReceiver(t *testing.T) {
	s := dropped(0.5, joint.Settings{Bearing: 2 * inch})
	turn := func(v vec.V) vec.V { return vec.V{X: 0.8*v.X - 0.6*v.Z, Y: v.Y, Z: 0.6*v.X + 0.8*v.Z} }
	for _, tm := range []*geom.Timber{s.R, s.E} {
		p := &tm.Place
		p.O, p.X, p.Y, p.Z = turn(p.O), turn(p.X), turn(p.Y), turn(p.Z)
	}
	r, e, res := made(t, "drop-in pocket", s)
	same(t, "rafter loses", r, 3.5*7.5*0.5+3.5*5.625*2)
	same(t, "purlin loses", e, 2.625*(32-3.5*7.5)+3.5*1.875*2)
	if m := res.Joint.Moves[0].Direction; m.Dist(vec.V{X: 0.6, Z: -0.8}) > 1e-9 {
		t.Errorf("the purlin goes in along %v, want square to the slope", m)
	}
}

// The notch rule (NDS 4.4.3, from memory): a quarter of the depth on the
// tension side, and at least 1-1/2 in of bearing (common practice).
func TestPocketWarns(t *testing.T) {
	for _, c := range []struct {
		set  joint.Settings
		want int
	}{
		{joint.Settings{Bearing: 2 * inch, PocketDepth: 6 * inch}, 0},
		{joint.Settings{Bearing: 2 * inch, PocketDepth: 5.9 * inch}, 1},
		{joint.Settings{Bearing: 1.4 * inch}, 1},
		{joint.Settings{Bearing: 1 * inch, PocketDepth: 4 * inch}, 2},
	} {
		if _, _, res := made(t, "drop-in pocket", dropped(0, c.set)); len(res.Warns) != c.want {
			t.Errorf("%+v: %d warnings, want %d", c.set, len(res.Warns), c.want)
		}
	}
}

// Closed, the two halves touch over the whole of the crossing (for a dovetail,
// of the tail): wood lies right below and right above the table.
func TestLapsShareTheirTable(t *testing.T) {
	for _, c := range []struct {
		kind string
		site joint.Site
		want float64 // square inches of table
	}{
		{"cross lap", crossed(6, 6, 0, 90, joint.Settings{}), 36},
		{"cross lap", crossed(6, 6, 0.5, 90, joint.Settings{}), 5.5 * 5.5},
		{"half-dovetail lap", tail(6, false, 0), 36 - 6*(6.0/7)/2},
	} {
		_, _, res := made(t, c.kind, c.site)
		table := solid.Plane{}
		for _, f := range res.Joint.Tenon.Faces {
			if f.Role == geom.RoleTable {
				table = f.Plane
			}
		}
		// A skin 1 mm thick on each side of the table is wood of one timber each.
		below := skin(c.site.R, res.R, table, 1)
		above := skin(c.site.E, res.E, table.Flip(), 1)
		both := 0.0
		for _, a := range below {
			for _, b := range above {
				both += solid.Common(a, b.Moved(vec.Placement{X: vec.V{X: 1}, Y: vec.V{Y: 1}, Z: vec.V{Z: 1}, O: table.N.Mul(1)})).Volume()
			}
		}
		same(t, c.kind+", table", both/(inch*inch), c.want)
	}
}

// skin is the wood within deep mm behind the plane facing out of it.
func skin(t *geom.Timber, cuts []geom.Cut, table solid.Plane, deep float64) []solid.Convex {
	b := solid.NewBody(t.Blank)
	for _, c := range cuts {
		b.Subtract(c.Solid, c.Joint)
	}
	var out []solid.Convex
	for _, c := range b.Moved(t.Place).Cells() {
		s := c.Inside(solid.Side{Plane: table.Flip()}, solid.Side{Plane: table.Offset(deep)})
		if !s.Empty() {
			out = append(out, s)
		}
	}
	return out
}
