package geom

import (
	"fmt"
	"math"

	"pegwright/geom/finding"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
	"pegwright/geom/wood"
)

// End names an end of a timber, or none for a joint along its length.
type End string

// The ends of a timber.
const (
	Start  End = "start"
	Finish End = "end"
	Mid    End = ""
)

// Timber is one stick: a blank, the cuts and bores taken from it, and its
// place in the frame.
type Timber struct {
	ID, Role, Mark string
	Species        string
	Wood           wood.Wood
	Moisture       float64    // when cut, percent
	Length         float64    // finished length, tenons included
	Section        [2]float64 // nominal size along y and z
	Ideal          [2]float64 // size of the ideal timber along y and z
	Trim           float64    // extra length to order at each end; 0: the usual
	Blank          solid.Convex
	Place          vec.Placement
	FaceNames      [4]string // a word for each face, such as "outside"
	Cuts           []Cut
	Bores          []Bore
	Net            *solid.Body // blank less cuts, timber axes
	At             finding.Pos
	Bent, Bay      int    // 1-based; 0 where it belongs to none
	Wall           string // "north", "south", "east", "west" or ""
	NetVolume      float64
	Density        float64 // kg/m³ as cut
	DryDensity     float64 // kg/m³ in service
}

// Cut is a convex volume that a joint removes from a timber, in timber axes.
// Its faces carry roles; open sides lie 10 mm outside the blank.
type Cut struct {
	Joint string
	Name  string // "mortise", "housing", "cheek", "reduction", …
	Solid solid.Convex
}

// Bore is a cylinder removed from a timber, in timber axes. Ends of through
// bores lie 8 mm outside the blank; a blind bore ends at its bottom centre.
type Bore struct {
	Joint, Peg string
	From, To   vec.V
	Diameter   float64
	Entry      int // face 1 to 4 that the bit enters
	Exit       int // face that it leaves, 0 for a blind bore
}

// The faces of a timber by role, in the order of its blank's faces.
var blankRoles = [6]string{"start", "end", "face 1", "face 3", "face 2", "face 4"}

// BlankOf returns the blank with the given section sizes (along y and z) at
// x = 0 and at x = length. The faces y = 0 and z = 0 are true.
func BlankOf(length float64, start, end [2]float64) solid.Convex {
	c := solid.Hexahedron([8]vec.V{
		{}, {X: length}, {X: length, Y: end[0]}, {Y: start[0]},
		{Z: start[1]}, {X: length, Z: end[1]}, {X: length, Y: end[0], Z: end[1]}, {Y: start[0], Z: start[1]},
	})
	for i := range c.Faces {
		c.Faces[i].Role = blankRoles[i]
	}
	return c
}

// BlankPlane returns the plane of face n (1 to 4) of the blank, outward, in
// timber axes.
func (t *Timber) BlankPlane(n int) solid.Plane {
	return t.Blank.Faces[[5]int{0, 2, 4, 3, 5}[n]].Plane
}

// Name names the timber in a sentence by its role, or as a stick where it has none.
func (t *Timber) Name() string {
	if t.Role == "" {
		return "stick"
	}
	return t.Role
}

// IdealPlane returns the plane of face n (1 to 4) of the ideal timber,
// outward, in timber axes. For a reference face it is the face itself.
func (t *Timber) IdealPlane(n int) solid.Plane {
	switch n {
	case 1:
		return solid.Plane{N: vec.V{Y: -1}}
	case 2:
		return solid.Plane{N: vec.V{Z: -1}}
	case 3:
		return solid.Plane{N: vec.V{Y: 1}, D: t.Ideal[0]}
	}
	return solid.Plane{N: vec.V{Z: 1}, D: t.Ideal[1]}
}

// Across is the ideal size square to face n (1 to 4), mm.
func (t *Timber) Across(n int) float64 { return t.Ideal[(n+1)%2] }

// FaceToward returns the face (1 to 4) whose outward normal is nearest to the
// frame direction d.
func (t *Timber) FaceToward(d vec.V) int {
	best, at := 0, math.Inf(-1)
	for n := 1; n <= 4; n++ {
		if h := t.Place.OutDir(t.IdealPlane(n).N).Dot(d); h > at+1e-9 {
			best, at = n, h
		}
	}
	return best
}

// Opposite returns the face opposite to face n.
func Opposite(n int) int { return (n+1)%4 + 1 }

// IsReference reports whether face n is a reference face.
func IsReference(n int) bool { return n <= 2 }

// FaceTitle returns the number and the word of face n, such as "1 outside".
func (t *Timber) FaceTitle(n int) string {
	return fmt.Sprintf("%d %s", n, t.FaceNames[n-1])
}

// Weight returns the mass of the net timber as cut and in service, in
// kilograms.
func (t *Timber) Weight() (green, dry float64) {
	return t.NetVolume * t.Density / 1e9, t.NetVolume * t.DryDensity / 1e9
}

// NetInFrame returns the net body carried into frame axes. It must not be
// changed: all who ask share it.
func (t *Timber) NetInFrame() *solid.Body { return t.Net.At(t.Place) }

// BlankSize returns the sizes of the blank along y and z, mm: the larger of those at
// its two ends, where these differ.
func (t *Timber) BlankSize() (y, z float64) {
	_, hi := t.Blank.Bounds()
	return hi.Y, hi.Z
}

// WoodAt reports whether a point of the frame lies in the timber's wood, bores left
// out.
func (t *Timber) WoodAt(p vec.V) bool { return t.Net != nil && t.Net.Contains(t.Place.In(p), 0) }
