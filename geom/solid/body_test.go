package solid

import (
	"math"
	"testing"

	"pegwright/geom/vec"
)

func at(x, y, z float64) vec.V { return vec.V{X: x, Y: y, Z: z} }

// timber is a blank with the roles that blanks carry, in Box's face order.
func timber(l, w, d float64) Convex {
	c := Box(vec.V{}, at(l, w, d))
	for i, r := range []string{"start", "end", "face 1", "face 3", "face 2", "face 4"} {
		c.Faces[i].Role = r
	}
	return c
}

// block is a box cut whose faces carry roles.
func block(lo, hi vec.V) Convex {
	c := Box(lo, hi)
	for i, r := range []string{"low", "high", "near", "far", "floor", "top"} {
		c.Faces[i].Role = r
	}
	return c
}

// sound fails the test unless the body is valid.
func sound(t *testing.T, b *Body) {
	t.Helper()
	if err := b.Valid(); err != nil {
		t.Fatalf("not valid: %v", err)
	}
}

func approx(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s = %.9g, want %.9g", what, got, want)
	}
}

// euler returns V - E + F - (holes) of the boundary: 2 - 2·genus for one piece
// (Euler–Poincaré). Points in the middle of a merged edge count as splits.
func euler(b *Body) int {
	verts := newMesh(0, 0)
	edges := b.Edges()
	for _, e := range edges {
		verts.point(e.A)
		verts.point(e.B)
	}
	x := len(verts.v) - len(edges)
	for _, e := range edges { // a corner on an edge splits it in two
		d := e.B.Sub(e.A)
		for _, p := range verts.v {
			s := p.Sub(e.A).Dot(d) / d.Dot(d)
			if s > 1e-6 && s < 1-1e-6 && p.Dist(e.A.Lerp(e.B, s)) < 1e-4 {
				x--
			}
		}
	}
	for _, p := range b.Boundary() {
		x += 1 - len(p.Holes)
	}
	return x
}

// surfaceVolume is the volume by the divergence theorem over the boundary
// polygons: a sum over none of the cells.
func surfaceVolume(b *Body) float64 {
	var v float64
	for _, p := range b.Boundary() {
		v += p.Plane.D * p.Area() / 3
	}
	return v
}

// knock is a cut with its joint.
type knock struct {
	joint string
	cut   Convex
}

// cases is the shared table: bodies whose figures follow by hand from the
// sketch in each comment.
var cases = []struct {
	name   string
	blank  Convex
	cuts   []knock
	volume float64
	edges  int // true edges counted on a sketch
	euler  int // 2 - 2·genus
}{
	{"blank", timber(1000, 150, 200), nil, 1000 * 150 * 200, 12, 2},
	// A pocket adds its four mouth edges, four wall edges and four floor edges.
	{"blind mortise", timber(1000, 150, 200), []knock{
		{"m", block(at(400, 50, 100), at(500, 90, 210))}},
		1000*150*200 - 100*40*100, 24, 2},
	// A hole right through: four edges at each mouth, four along its walls.
	{"through mortise", timber(1000, 150, 200), []knock{
		{"m", block(at(400, 50, -10), at(500, 90, 210))}},
		1000*150*200 - 100*40*200, 24, 0},
	// Four shoulder cuts leave a tenon 80 × 60 × 100: a box on a box, 12 + 8 + 4.
	{"tenon", timber(1000, 150, 200), []knock{
		{"t", block(at(-10, -10, -10), at(100, 40, 210))},
		{"t", block(at(-10, 120, -10), at(100, 160, 210))},
		{"t", block(at(-10, -10, -10), at(100, 160, 70))},
		{"t", block(at(-10, -10, 130), at(100, 160, 210))}},
		900*150*200 + 100*80*60, 24, 2},
	// Two shoulder cuts: both cheeks run through to the faces z = 0 and 200.
	// Around a T-shaped prism: 8 + 8 + 8 edges.
	{"two-shoulder tenon", timber(1000, 150, 200), []knock{
		{"t", block(at(-10, -10, -10), at(100, 40, 210))},
		{"t", block(at(-10, 120, -10), at(100, 160, 210))}},
		900*150*200 + 100*80*200, 24, 2},
	// An L: a hexagonal prism, 6 + 6 + 6.
	{"half lap", timber(1000, 150, 200), []knock{
		{"l", block(at(-10, -10, 100), at(300, 160, 210))}},
		1000*150*200 - 300*150*100, 18, 2},
	// Dovetail socket across the top, its mouth eased: what is left is a prism
	// of ten sides, 10 + 10 + 10.
	{"dovetail", timber(1000, 150, 200), []knock{
		{"d", Hexahedron([8]vec.V{at(450, -10, 150), at(550, -10, 150), at(550, 160, 150), at(450, 160, 150),
			at(466, -10, 190), at(534, -10, 190), at(534, 160, 190), at(466, 160, 190)})},
		{"d", Hexahedron([8]vec.V{at(466, -10, 190), at(534, -10, 190), at(534, 160, 190), at(466, 160, 190),
			at(462, -10, 200), at(538, -10, 200), at(538, 160, 200), at(462, 160, 200)})}},
		1000*150*200 - 150*(40*(100+68)/2+10*(68+76)/2), 30, 2},
	// Two pockets one above the other that share a wall plane and a floor: one
	// bigger pocket with nothing between.
	{"shared wall", timber(1000, 150, 200), []knock{
		{"a", block(at(400, 50, 100), at(500, 90, 210))},
		{"a", block(at(500, 50, 100), at(600, 90, 210))}},
		1000*150*200 - 200*40*100, 24, 2},
	// The same, twice over, and once more inside itself.
	{"repeated", timber(1000, 150, 200), []knock{
		{"m", block(at(400, 50, 100), at(500, 90, 210))},
		{"m", block(at(400, 50, 100), at(500, 90, 210))},
		{"m", block(at(420, 60, 120), at(480, 80, 210))}},
		1000*150*200 - 100*40*100, 24, 2},
	// Through mortises from two sides cross with their walls x = 180 and 220
	// flush: four edges at each of four mouths, each tunnel's four wall edges in
	// two runs, and four edges where floor meets wall. Four mouths that meet
	// inside are genus 3.
	{"crossed tunnels", timber(400, 200, 200), []knock{
		{"y", block(at(180, -10, 80), at(220, 210, 120))},
		{"z", block(at(180, 80, -10), at(220, 120, 210))}},
		400*200*200 - 2*40*40*200 + 40*40*40, 12 + 4*4 + 2*8 + 4, -4},
	// Lap from above and lap from below at right angles in a square block: a
	// plus made of a lower bar along x and an upper bar along y. Each bar has 10
	// edges off the middle plane, and two on it that turn over where the bars
	// cross, so in three runs each: 2 × (10 + 6).
	{"crossed bars", timber(60, 60, 20), []knock{
		{"a", block(at(-5, -5, 10), at(20, 65, 25))},
		{"a", block(at(40, -5, 10), at(65, 65, 25))},
		{"b", block(at(-5, -5, -5), at(65, 20, 10))},
		{"b", block(at(-5, 40, -5), at(65, 65, 10))}},
		2 * 60 * 20 * 10, 2 * (10 + 6), 2},
}

func (b *Body) cutAll(t *testing.T, cuts []knock) *Body {
	t.Helper()
	for _, k := range cuts {
		b.Subtract(k.cut, k.joint)
		sound(t, b)
	}
	return b
}

// Closed forms: volumes, edge counts and Euler's number, each by hand.
func TestKnownBodies(t *testing.T) {
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			b := NewBody(c.blank).cutAll(t, c.cuts)
			approx(t, "volume", b.Volume(), c.volume, 1e-6*c.volume)
			approx(t, "volume by surface", surfaceVolume(b), c.volume, 1e-6*c.volume)
			if e := b.Edges(); len(e) != c.edges {
				t.Errorf("%d edges, want %d", len(e), c.edges)
				for _, x := range e {
					t.Log(x.A, x.B, x.Tags, x.Inner)
				}
			}
			if x := euler(b); x != c.euler {
				t.Errorf("Euler's number %d, want %d", x, c.euler)
			}
			if n := len(b.Pieces()); n != 1 {
				t.Errorf("%d pieces, want 1", n)
			}
		})
	}
}
