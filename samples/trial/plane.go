package trial

import (
	"math"
	"testing"

	"pegwright/geom"
	"pegwright/geom/vec"
)

const inch = 25.4 // mm, exactly

// Near compares two lengths in millimetres, and fails the test where they are
// more than tol apart.
func Near(t testing.TB, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s is %.4f mm (%.4f in), want %.4f mm (%.4f in)", what, got, got/inch, want, want/inch)
	}
}

// Plane is a plane of the frame: the points p with N·p = D. It is reckoned here
// without the program's own planes.
type Plane struct {
	N vec.V
	D float64
}

// Height is how far a point lies outside the plane, along its normal, mm.
func (p Plane) Height(v vec.V) float64 { return p.N.Dot(v) - p.D }

// Common returns the point common to three planes (Cramer's rule).
func Common(a, b, c Plane) vec.V {
	det := a.N.Dot(b.N.Cross(c.N))
	v := b.N.Cross(c.N).Mul(a.D).Add(c.N.Cross(a.N).Mul(b.D)).Add(a.N.Cross(b.N).Mul(c.D))
	return v.Mul(1 / det)
}

// FacePlane returns face n of a timber in the frame, by the convention that
// faces 1 and 2 are y = 0 and z = 0 and 3 and 4 lie opposite at the given
// section.
func FacePlane(tm *geom.Timber, n int, section [2]float64) Plane {
	out := [4]vec.V{{Y: -1}, {Z: -1}, {Y: 1}, {Z: 1}}[n-1]
	at := vec.V{}
	if n == 3 {
		at.Y = section[0]
	}
	if n == 4 {
		at.Z = section[1]
	}
	w := tm.Place.OutDir(out)
	return Plane{w, w.Dot(tm.Place.Out(at))}
}

// WordFace returns the number of the face with the given word, and ends the
// test where the timber has none.
func WordFace(t testing.TB, tm *geom.Timber, word string) int {
	t.Helper()
	for i, w := range tm.FaceNames {
		if w == word {
			return i + 1
		}
	}
	t.Fatalf("%s has no face %q, only %q", tm.ID, word, tm.FaceNames)
	return 0
}

// CutPlane returns the plane, in the frame, of the first face with the role
// that the joint left on the timber, and ends the test where there is none.
func CutPlane(t testing.TB, tm *geom.Timber, joint, role string) Plane {
	t.Helper()
	for _, c := range tm.Cuts {
		if c.Joint != joint {
			continue
		}
		for _, f := range c.Solid.Faces {
			if f.Role == role {
				n := tm.Place.OutDir(f.Plane.N)
				return Plane{n, n.Dot(tm.Place.Out(c.Solid.V[f.Loop[0]]))}
			}
		}
	}
	t.Fatalf("%s has no %s of %s", tm.ID, role, joint)
	return Plane{}
}
