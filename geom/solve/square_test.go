package solve_test

import (
	"fmt"
	"math"
	"testing"

	"pegwright/geom"
	"pegwright/geom/vec"
	"pegwright/samples/trial"
)

// The brace table stamped on a framing square: legs and length in inches, as
// printed there to two decimals (from memory; each is √(a² + b²)).
var braceTable = []struct{ rise, run, long float64 }{
	{36, 36, 50.91}, {24, 24, 33.94}, {30, 30, 42.43}, {48, 48, 67.88}, {60, 60, 84.85},
	{18, 24, 30.00}, {27, 27, 38.18}, {33, 33, 46.67}, {39, 39, 55.15}, {42, 42, 59.40}, {45, 45, 63.64}, {54, 54, 76.37},
}

func kneeOf(rise, run float64, housing string) string {
	return fmt.Sprintf(`frame: Knee
units: in
layout: {brace: {%s}}
timbers:
  post: {role: post, section: 8 x 8, from: [0, 0, 0], to: [0, 0, 12'], faces: [south, west]}
  beam: {role: beam, section: 8 x 8, from: [0, -1', 12'], to: [0, 12', 12'], faces: [top, west]}
  brace: {role: brace, section: 3 x 5, between: [post, beam], legs: %g x %g, toward: north}
joints:
  - {kind: mortise and tenon, of: post, end: end, into: beam}
`, housing, rise, run)
}

// The brace is measured on the stick itself: along the arris where its outer
// edge meets its reference side, from the one nose cut to the other.
func TestBraceTableOfTheFramingSquare(t *testing.T) {
	for _, housing := range []string{"housing: 0", "housing: 1/2", "housing: 1"} {
		for _, c := range braceTable {
			t.Run(fmt.Sprintf("%g by %g %s", c.rise, c.run, housing), func(t *testing.T) {
				f := trial.Frame(t, "test.yaml", kneeOf(c.rise, c.run, housing))
				post, beam, brace := f.Timber("post"), f.Timber("beam"), f.Timber("brace")
				outer := trial.FacePlane(brace, trial.WordFace(t, brace, "outer edge"), brace.Section)
				side := trial.FacePlane(brace, trial.WordFace(t, brace, "bent side"), brace.Section)
				low := trial.Common(outer, side, trial.CutPlane(t, brace, "brace-into-post", geom.RoleNose))
				high := trial.Common(outer, side, trial.CutPlane(t, brace, "brace-into-beam", geom.RoleNose))
				trial.Near(t, "nose to nose", low.Dist(high), c.long*inch, 0.005*inch)
				trial.Near(t, "nose to nose, exactly", low.Dist(high), math.Hypot(c.rise, c.run)*inch, 1e-6)
				// Legs, measured on the ideal faces: 8 in less 1/2 in.
				postFace, beamFace := trial.Plane{N: vec.V{Y: 1}, D: 7.5 * inch}, trial.Plane{N: vec.V{Z: 1}, D: (144 - 7.5) * inch}
				trial.Near(t, "leg on the post", -beamFace.Height(low), c.rise*inch, 1e-6)
				trial.Near(t, "leg on the beam", postFace.Height(high), c.run*inch, 1e-6)
				// The nose line of the mortise is the same line on the receiver.
				for _, side := range []struct {
					on    *geom.Timber
					joint string
					at    vec.V
				}{{post, "brace-into-post", low}, {beam, "brace-into-beam", high}} {
					trial.Near(t, "nose line to mortise end in "+side.on.ID, trial.CutPlane(t, side.on, side.joint, geom.RoleNose).Height(side.at), 0, 1e-6)
				}
			})
		}
	}
}

// A housing deepens the joint and leaves the table's length alone: it adds
// its depth beyond the ideal face, square to it, at each end.
func TestHousingAddsBeyondTheIdealFace(t *testing.T) {
	plain, housed := trial.Frame(t, "test.yaml", kneeOf(36, 36, "housing: 0")), trial.Frame(t, "test.yaml", kneeOf(36, 36, "housing: 1/2"))
	for _, id := range []string{"brace-into-post", "brace-into-beam"} {
		a, b := plain.Joint(id).Bearing, housed.Joint(id).Bearing
		trial.Near(t, "bearing plane of "+id, a.D-b.D, inch/2, 1e-9)
	}
	// The tip lies in the plane of the nose cut, square to the face. At 45
	// degrees a step of 1/2 in square to the face is 1/2·cos 45° along the
	// brace, at each end.
	trial.Near(t, "length gained", housed.Timber("brace").Length-plain.Timber("brace").Length, 2*0.5*math.Cos(math.Pi/4)*inch, 1e-6)
}

// The rafter table stamped on a framing square: length per foot of run in
// inches for a rise in inches (from memory; each is √(12² + r²)).
var rafterTable = []struct{ rise, long float64 }{
	{9, 15.00}, {12, 16.97}, {8, 14.42}, {6, 13.42}, {5, 13.00}, {10, 15.62}, {4, 12.65}, {7, 13.89}, {11, 16.28},
}

// The top line of the solved rafter, from the plane of the plate's outer face
// to the plane of the ridge, is measured on the net stick and divided by the
// feet of run.
func TestRafterTableOfTheFramingSquare(t *testing.T) {
	for _, seat := range []string{"step-lap", "birdsmouth"} {
		for _, c := range rafterTable {
			for _, feet := range []float64{8, 12, 15} {
				src := fmt.Sprintf("frame: Roof\nunits: in\nbuilding: {span: %g', bays: [10'], eave: 8', roof: {shape: gable, pitch: %g in 12, seat: %s}}\n", feet, c.rise, seat)
				f := trial.Frame(t, "test.yaml", src)
				for _, id := range []string{"rafter-1-south", "rafter-1-north"} {
					tm := f.Timber(id)
					what := fmt.Sprintf("%s, %g in 12, span %g ft, per foot of run", id, c.rise, feet)
					per := topLine(t, tm, feet*12*inch) / (feet / 2)
					trial.Near(t, what, per, c.long*inch, 0.0051*inch)
					trial.Near(t, what+", exactly", per, math.Hypot(12, c.rise)*inch, 1e-6)
				}
			}
		}
	}
}

// topLine measures a rafter from the plane of its wall to its tip, along its
// top, and holds the tip to the middle of the span.
func topLine(t *testing.T, tm *geom.Timber, span float64) float64 {
	t.Helper()
	top := trial.FacePlane(tm, trial.WordFace(t, tm, "top"), tm.Section)
	tip, tail := vec.V{Z: -1e9}, vec.V{Z: 1e9}
	for _, v := range corners(tm) {
		if math.Abs(top.Height(v)) > 1e-6 {
			continue
		}
		if v.Z > tip.Z {
			tip = v
		}
		if v.Z < tail.Z {
			tail = v
		}
	}
	trial.Near(t, tm.ID+": tip across the span", tip.Y, span/2, 1e-6)
	wall := 0.0
	if tail.Y > span/2 {
		wall = span
	}
	d := tip.Sub(tail)
	k := (wall - tail.Y) / d.Y
	at := tail.Add(d.Mul(k))
	at.X, tip.X = 0, 0
	return at.Dist(tip)
}

const bentOf = `frame: Bent
units: in
timbers:
  left: {role: post, section: 6 x 6, from: [0, 0, 0], to: [0, 0, 8'], faces: [south, west]}
  right: {role: post, section: 6 x 6, from: [0, 96, 0], to: [0, 96, 8'], faces: [north, west]}
  tie: {role: tie, section: 6 x 6, from: [0, 0, 7'], to: [0, 96, 7'], faces: [top, west]}
%s
joints:
  - {kind: mortise and tenon, of: tie, end: start, into: left}
  - {kind: mortise and tenon, of: tie, end: end, into: right}
`

// Square rule, worked by hand: in 6 in sticks lies a 5-1/2 in timber. 96 in out
// to out less twice 5-1/2 is 85 in from shoulder to shoulder, whatever the
// sticks measure; a stick of 6-1/8 is housed 5/8, one of 5-15/16 is housed
// 7/16.
func TestSquareRule(t *testing.T) {
	const measured = `measured:
  left: {foot: 6 1/8 x 6 1/8, top: 6 1/8 x 6 1/8}
  right: {foot: 5 15/16 x 5 15/16, top: 5 15/16 x 5 15/16}
`
	for _, c := range []struct {
		name, measured string
		left, right    float64
	}{
		{"nominal", "", 0.5, 0.5},
		{"measured", measured, 0.625, 0.4375},
	} {
		t.Run(c.name, func(t *testing.T) {
			f := trial.Frame(t, "test.yaml", fmt.Sprintf(bentOf, c.measured))
			tie := f.Timber("tie")
			a := trial.CutPlane(t, tie, "tie-into-left", geom.RoleShoulder)
			b := trial.CutPlane(t, tie, "tie-into-right", geom.RoleShoulder)
			trial.Near(t, "shoulder to shoulder", math.Abs(b.D*b.N.Y-a.D*a.N.Y), 85*inch, 1e-6)
			trial.Near(t, "finished length", tie.Length, (85+4+4)*inch, 1e-6)
			for id, want := range map[string]float64{"left": c.left, "right": c.right} {
				j := f.Joint("tie-into-" + id)
				trial.Near(t, "let in "+id, j.LetIn, want*inch, 1e-6)
				// The same depth on the wood: from the stick's inside face to the housing's floor.
				post := f.Timber(id)
				floor := trial.CutPlane(t, post, j.ID, geom.RoleBearing)
				inside, most := trial.Plane{N: floor.N.Mul(-1)}, math.Inf(-1)
				for _, v := range post.Blank.V {
					most = max(most, inside.N.Dot(post.Place.Out(v)))
				}
				deep := math.Abs(most - inside.N.Dot(floor.N.Mul(floor.D)))
				trial.Near(t, "housing of "+id, deep, want*inch, 1e-6)
			}
		})
	}
}

// Holes and bearing planes do not move when a stick is measured.
func TestMeasuringMovesNoHole(t *testing.T) {
	plain := trial.Frame(t, "test.yaml", fmt.Sprintf(bentOf, ""))
	other := trial.Frame(t, "test.yaml", fmt.Sprintf(bentOf, "measured: {left: {foot: 6 1/4 x 6 1/8, top: 5 7/8 x 6}}\n"))
	for i, j := range plain.Joints {
		k := other.Joints[i]
		if j.Bearing != k.Bearing {
			t.Errorf("%s: bearing plane moved", j.ID)
		}
		for n, p := range j.Pegs {
			trial.Near(t, p.ID+" mortise hole", p.Mortise.Dist(k.Pegs[n].Mortise), 0, 1e-9)
			trial.Near(t, p.ID+" tenon hole", p.Tenon.Dist(k.Pegs[n].Tenon), 0, 1e-9)
		}
	}
}

// The two figures of a section and of a measured size are written in the same
// order, whichever way the stick is turned.
func TestMeasuredIsWrittenLikeTheSection(t *testing.T) {
	for _, faces := range []string{"south, west", "north, west", "south, east", "north, east", "west, south", "east, north"} {
		for _, c := range []struct{ role, from, to string }{{"post", "0, 0, 0", "0, 0, 8'"}} {
			src := fmt.Sprintf("frame: One\nunits: in\ntimbers:\n  stick: {role: %s, section: 6 x 8, from: [%s], to: [%s], faces: [%s]}\nmeasured:\n  stick: {foot: 6 1/8 x 8 1/4}\n",
				c.role, c.from, c.to, faces)
			f := trial.Frame(t, "test.yaml", src)
			if len(f.Notes) > 0 {
				t.Errorf("faces %s: %s", faces, f.Notes[0].Text)
			}
			_, hi := f.Timber("stick").Blank.Bounds()
			sec := f.Timber("stick").Section
			want := map[float64]float64{6 * inch: 6.125 * inch, 8 * inch: 8.25 * inch}
			trial.Near(t, "faces "+faces+": measured along y", hi.Y, want[sec[0]], 1e-9)
			trial.Near(t, "faces "+faces+": measured along z", hi.Z, want[sec[1]], 1e-9)
		}
	}
}

// A deep strut has two pegs where nothing is written, a brace and a slight one
// has one (common practice, no source).
func TestDeepStrutsHaveTwoPegs(t *testing.T) {
	for _, c := range []struct {
		role, section string
		pegs          int
	}{{"strut", "4 x 8", 2}, {"strut", "4 x 6", 1}, {"brace", "4 x 8", 1}} {
		src := trial.TwoSticks + "  slope: {role: " + c.role + ", section: " + c.section + ", from: [1, 6, 20], to: [1, 66, 80], faces: [top, west]}\njoints:\n  - {kind: brace mortise and tenon, of: slope, end: start, into: post}\n"
		f := trial.Frame(t, "test.yaml", src)
		if got := len(f.Joints[0].Pegs); got != c.pegs {
			t.Errorf("%s %s: %d pegs, want %d", c.role, c.section, got, c.pegs)
		}
	}
}
