package check_test

import (
	"math"
	"regexp"
	"strings"
	"testing"

	"pegwright/geom"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
	"pegwright/samples/trial"
)

func TestSamplesMayBeCut(t *testing.T) {
	trial.EachSample(t, func(t *testing.T, f *geom.Frame) {
		if list := proofs(f); len(stops(list)) > 0 {
			t.Errorf("stops:%s", texts(list))
		}
		for _, tm := range f.Timbers {
			if err := tm.Net.Valid(); err != nil {
				t.Errorf("%s: %v", tm.ID, err)
			}
			if n := len(tm.Net.Pieces()); n != 1 {
				t.Errorf("%s is %d pieces", tm.ID, n)
			}
		}
	})
}

// The conventions of placement: right-handed unit axes, the blank's reference
// faces at y = 0 and z = 0, posts from the foot, level sticks from the end
// with the smaller x, then y, sloping ones from the lower end.
func TestPlacement(t *testing.T) {
	trial.EachSample(t, func(t *testing.T, f *geom.Frame) {
		for _, tm := range f.Timbers {
			pl := tm.Place
			if d := pl.X.Cross(pl.Y).Sub(pl.Z).Len(); d > 1e-9 {
				t.Errorf("%s: axes are not right-handed and square: X × Y misses Z by %g", tm.ID, d)
			}
			if d := math.Abs(pl.X.Len()-1) + math.Abs(pl.Y.Len()-1); d > 1e-9 {
				t.Errorf("%s: axes are not unit", tm.ID)
			}
			lo, hi := tm.Blank.Bounds()
			if lo != (vec.V{}) || math.Abs(hi.X-tm.Length) > 1e-6 {
				t.Errorf("%s: blank from %v to %v, length %g", tm.ID, lo, hi, tm.Length)
			}
			x := pl.X
			rises := x.Z > 1e-6 || math.Abs(x.Z) <= 1e-6 && (x.X > 1e-6 || math.Abs(x.X) <= 1e-6 && x.Y > 0)
			if !rises {
				t.Errorf("%s runs the wrong way: %v", tm.ID, x)
			}
			for i, w := range tm.FaceNames {
				if strings.TrimSpace(w) == "" {
					t.Errorf("%s: face %d has no word", tm.ID, i+1)
				}
			}
		}
	})
}

// Words on faces agree with where the faces look.
func TestFaceWordsTellTheTruth(t *testing.T) {
	looks := map[string]vec.V{"top": {Z: 1}, "underside": {Z: -1}, "bottom": {Z: -1}, "north": {Y: 1}, "south": {Y: -1},
		"east": {X: 1}, "west": {X: -1}, "east side": {X: 1}, "west side": {X: -1}}
	trial.EachSample(t, func(t *testing.T, f *geom.Frame) {
		seen := 0
		for _, tm := range f.Timbers {
			for n := 1; n <= 4; n++ {
				want, ok := looks[tm.FaceNames[n-1]]
				if !ok {
					continue
				}
				seen++
				out := [4]vec.V{{Y: -1}, {Z: -1}, {Y: 1}, {Z: 1}}[n-1]
				if got := tm.Place.OutDir(out); got.Dot(want) < 0.3 {
					t.Errorf("%s: face %s looks %v", tm.ID, tm.FaceTitle(n), got)
				}
			}
		}
		if seen == 0 {
			t.Error("no face word was known")
		}
	})
}

func TestIdsAndMarks(t *testing.T) {
	form := regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)
	strokes := regexp.MustCompile(`^C*L?X{0,4}V?I{0,4}$`)
	trial.EachSample(t, func(t *testing.T, f *geom.Frame) {
		seen := map[string]bool{}
		id := func(s string) {
			if seen[s] {
				t.Errorf("%s is used twice", s)
			}
			seen[s] = true
			if len(s) > 60 || !form.MatchString(s) {
				t.Errorf("%q is not a good id", s)
			}
		}
		marks := map[string]bool{}
		for _, tm := range f.Timbers {
			id(tm.ID)
		}
		for _, j := range f.Joints {
			id(j.ID)
			for _, p := range j.Pegs {
				id(p.ID)
			}
			if j.Mark == "" || marks[j.Mark] || !strokes.MatchString(j.Mark) {
				t.Errorf("%s has the mark %q", j.ID, j.Mark)
			}
			marks[j.Mark] = true
		}
	})
}

// A shoulder lands on its bearing plane: every shoulder face of the enterer,
// carried into the frame, lies in it, and so does every housing floor of the
// receiver.
func TestShouldersLieOnTheBearingPlane(t *testing.T) {
	trial.EachSample(t, func(t *testing.T, f *geom.Frame) {
		n := 0
		for _, j := range f.Joints {
			for _, side := range []struct {
				on   *geom.Timber
				role string
			}{{j.Of, geom.RoleShoulder}, {j.Into, geom.RoleBearing}} {
				for _, c := range side.on.Cuts {
					if c.Joint != j.ID {
						continue
					}
					for _, face := range c.Solid.Faces {
						if face.Role != side.role {
							continue
						}
						n++
						off(t, j, side.on, c.Solid, face)
					}
				}
			}
		}
		if n == 0 {
			t.Error("no shoulder was found")
		}
	})
}

func off(t *testing.T, j *geom.Joint, on *geom.Timber, c solid.Convex, face solid.Face) {
	t.Helper()
	for _, i := range face.Loop {
		p := on.Place.Out(c.V[i])
		if h := j.Bearing.N.Dot(p) - j.Bearing.D; math.Abs(h) > 1e-6 {
			t.Errorf("%s: the %s of %s is %g mm off the bearing plane", j.ID, face.Role, on.ID, h)
			return
		}
	}
}
