package solve_test

import (
	"math"
	"os"
	"testing"

	"pegwright/geom"
	"pegwright/geom/vec"
)

const inch = 25.4

// long reports whether all cases are asked for, and not only the few of an
// ordinary run: PEGWRIGHT_LONG is set.
func long() bool { return os.Getenv("PEGWRIGHT_LONG") != "" }

// near compares two lengths in millimetres within tol.
func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s is %.4f mm (%.4f in), want %.4f mm (%.4f in)", what, got, got/inch, want, want/inch)
	}
}

// plane is a plane of the frame: points p with n·p = d.
type plane struct {
	n vec.V
	d float64
}

// cross returns the point common to three planes (Cramer's rule).
func cross(a, b, c plane) vec.V {
	det := a.n.Dot(b.n.Cross(c.n))
	v := b.n.Cross(c.n).Mul(a.d).Add(c.n.Cross(a.n).Mul(b.d)).Add(a.n.Cross(b.n).Mul(c.d))
	return v.Mul(1 / det)
}

// facePlane returns face n of a timber in the frame, by the convention that
// faces 1 and 2 are y = 0 and z = 0 and 3 and 4 lie opposite at the given
// section.
func facePlane(tm *geom.Timber, n int, section [2]float64) plane {
	out := [4]vec.V{{Y: -1}, {Z: -1}, {Y: 1}, {Z: 1}}[n-1]
	at := vec.V{}
	if n == 3 {
		at.Y = section[0]
	}
	if n == 4 {
		at.Z = section[1]
	}
	w := tm.Place.OutDir(out)
	return plane{w, w.Dot(tm.Place.Out(at))}
}

// wordFace returns the number of the face with the given word.
func wordFace(t *testing.T, tm *geom.Timber, word string) int {
	t.Helper()
	for i, w := range tm.FaceNames {
		if w == word {
			return i + 1
		}
	}
	t.Fatalf("%s has no face %q, only %q", tm.ID, word, tm.FaceNames)
	return 0
}

// cutPlane returns the plane, in the frame, of the first face with the role
// that the joint left on the timber.
func cutPlane(t *testing.T, tm *geom.Timber, joint, role string) plane {
	t.Helper()
	for _, c := range tm.Cuts {
		if c.Joint != joint {
			continue
		}
		for _, f := range c.Solid.Faces {
			if f.Role == role {
				n := tm.Place.OutDir(f.Plane.N)
				return plane{n, n.Dot(tm.Place.Out(c.Solid.V[f.Loop[0]]))}
			}
		}
	}
	t.Fatalf("%s has no %s of %s", tm.ID, role, joint)
	return plane{}
}

func height(p plane, v vec.V) float64 { return p.n.Dot(v) - p.d }

// corners returns the corners of a timber's net wood, in the frame.
func corners(tm *geom.Timber) []vec.V {
	var r []vec.V
	for _, c := range tm.Net.Cells() {
		for _, v := range c.V {
			r = append(r, tm.Place.Out(v))
		}
	}
	return r
}
