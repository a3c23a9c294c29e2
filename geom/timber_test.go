package geom_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"pegwright/geom"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// turned returns a random right-handed placement.
func turned(r *rand.Rand) vec.Placement {
	v := func() vec.V { return vec.V{X: r.NormFloat64(), Y: r.NormFloat64(), Z: r.NormFloat64()} }
	x := v().Unit()
	y := v()
	y = y.Sub(x.Mul(x.Dot(y))).Unit()
	return vec.Placement{X: x, Y: y, Z: x.Cross(y), O: v().Mul(1000)}
}

func TestJointAxesGoThereAndBack(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 100 {
		pl := turned(r)
		a := geom.Axes{O: pl.O, U: pl.X, V: pl.Y, W: pl.Z}
		u, v, w := r.NormFloat64()*500, r.NormFloat64()*500, r.NormFloat64()*500
		gu, gv, gw := a.Of(a.Point(u, v, w))
		if math.Abs(gu-u)+math.Abs(gv-v)+math.Abs(gw-w) > 1e-9 {
			t.Errorf("%g %g %g came back as %g %g %g", u, v, w, gu, gv, gw)
		}
	}
}

// A blank that tapers from one section to another holds the mean of its
// sections over its length plus the prismatoid's middle term: (A + 4M + B)·L/6.
func TestTaperedBlank(t *testing.T) {
	for _, c := range []struct{ a, b [2]float64 }{
		{[2]float64{150, 150}, [2]float64{150, 150}},
		{[2]float64{155, 151}, [2]float64{152, 149}},
		{[2]float64{140, 210}, [2]float64{160, 190}},
	} {
		b := geom.BlankOf(2400, c.a, c.b)
		mid := (c.a[0] + c.b[0]) / 2 * (c.a[1] + c.b[1]) / 2
		want := (c.a[0]*c.a[1] + 4*mid + c.b[0]*c.b[1]) * 2400 / 6
		if got := b.Volume(); math.Abs(got-want) > 1e-6*want {
			t.Errorf("%v to %v: volume %g, want %g", c.a, c.b, got, want)
		}
		for i, f := range b.Faces {
			if f.Role != [6]string{"start", "end", "face 1", "face 3", "face 2", "face 4"}[i] {
				t.Errorf("face %d is called %q", i, f.Role)
			}
			for _, v := range b.V {
				if h := f.Plane.N.Dot(v) - f.Plane.D; h > 1e-9 {
					t.Errorf("%s is not convex: a corner %g mm in front", f.Role, h)
				}
			}
		}
		if err := solid.NewBody(b).Valid(); err != nil {
			t.Error(err)
		}
	}
}

// Faces are numbered clockwise seen from the start end, that is looking along
// x: 1 to 2 to 3 to 4 is a quarter turn each from -y to -z to +y to +z.
func TestFaceNumbers(t *testing.T) {
	tm := &geom.Timber{Length: 1000, Section: [2]float64{150, 200}, Ideal: [2]float64{140, 190}, Place: vec.Identity}
	tm.Blank = geom.BlankOf(tm.Length, tm.Section, tm.Section)
	out := [4]vec.V{{Y: -1}, {Z: -1}, {Y: 1}, {Z: 1}}
	at := [4]float64{0, 0, 150, 200}
	for n := 1; n <= 4; n++ {
		if p := tm.BlankPlane(n); p.N.Dist(out[n-1]) > 1e-12 || math.Abs(p.D-at[n-1]) > 1e-9 {
			t.Errorf("face %d lies in %v", n, p)
		}
		if p := tm.IdealPlane(n); p.N != out[n-1] || p.D != [4]float64{0, 0, 140, 190}[n-1] {
			t.Errorf("ideal face %d lies in %v", n, p)
		}
		if next := out[n%4]; out[n-1].Cross(next).Dot(vec.V{X: 1}) < 0.5 {
			t.Errorf("face %d to the next does not turn clockwise seen along x", n)
		}
		if o := geom.Opposite(n); out[o-1].Add(out[n-1]).Len() > 1e-12 {
			t.Errorf("face %d is said to be opposite to %d", o, n)
		}
		if geom.IsReference(n) != (n == 1 || n == 2) {
			t.Errorf("face %d: reference %v", n, geom.IsReference(n))
		}
	}
}

// However a timber is turned, the face toward a direction is the one whose
// normal makes the least angle with it.
func TestFaceToward(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for range 200 {
		tm := &geom.Timber{Length: 1000, Section: [2]float64{150, 200}, Ideal: [2]float64{150, 200}, Place: turned(r)}
		d := turned(r).X
		got := tm.FaceToward(d)
		normal := func(n int) vec.V {
			return tm.Place.OutDir([4]vec.V{{Y: -1}, {Z: -1}, {Y: 1}, {Z: 1}}[n-1])
		}
		for n := 1; n <= 4; n++ {
			if normal(n).Dot(d) > normal(got).Dot(d)+1e-9 {
				t.Fatalf("face %d is nearer to %v than face %d", n, d, got)
			}
		}
	}
}

func TestWeight(t *testing.T) {
	// A tenth of a cubic metre of 600 kg/m³ green and 400 kg/m³ dry.
	tm := &geom.Timber{NetVolume: 1e8, Density: 600, DryDensity: 400}
	if green, dry := tm.Weight(); math.Abs(green-60) > 1e-9 || math.Abs(dry-40) > 1e-9 {
		t.Errorf("weighs %g kg green and %g kg dry, want 60 and 40", green, dry)
	}
}

func TestLookups(t *testing.T) {
	a, b, c := &geom.Timber{ID: "a"}, &geom.Timber{ID: "b"}, &geom.Timber{ID: "c"}
	ab, bc := &geom.Joint{ID: "ab", Of: a, Into: b}, &geom.Joint{ID: "bc", Of: b, Into: c}
	f := &geom.Frame{Timbers: []*geom.Timber{a, b, c}, Joints: []*geom.Joint{ab, bc}, Info: []geom.Info{{Name: "place", Text: "here"}}}
	if f.Timber("b") != b || f.Timber("x") != nil || f.Joint("bc") != bc || f.Joint("x") != nil {
		t.Error("a timber or joint is not found by its id")
	}
	if got := f.JointsOf(b); len(got) != 2 || got[0] != ab || got[1] != bc {
		t.Errorf("b has %d joints", len(got))
	}
	if f.InfoText("place") != "here" || f.InfoText("date") != "" {
		t.Error("wrong title-block text")
	}
}
