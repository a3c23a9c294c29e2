package view

import (
	"fmt"
	"math"
	"math/rand"
	"reflect"
	"testing"

	"pegwright/draw"
	"pegwright/geom/vec"
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s = %v, want %v", what, got, want)
	}
}

func cameras() map[string]Camera {
	return map[string]Camera{"front": Front(), "back": Back(), "left": Left(), "right": Right(), "top": Top(),
		"bottom": Look(vec.V{Z: 1}, vec.V{Y: -1}), "isometric": Isometric(), "from the south-east": IsometricFrom(1, -1),
		"slanted": Axonometric(-70, 20)}
}

func TestCamerasAreRightHandedAndUnit(t *testing.T) {
	for name, c := range cameras() {
		near(t, name+" right", c.Right.Len(), 1, 1e-15)
		near(t, name+" up", c.Up.Len(), 1, 1e-15)
		near(t, name+" handedness", c.Right.Cross(c.Up).Dist(c.Toward), 0, 1e-15)
	}
}

// ISO 5456-3, isometric axonometry: x and y at 30° to the horizontal, z
// upright, the three scales equal; for a true projection each is √(2/3) and
// the view falls at asin(1/√3) = 35.2644° to the horizontal (geometry).
func TestIsometricAfterISO5456(t *testing.T) {
	c := Isometric()
	for _, k := range []struct {
		name    string
		axis    vec.V
		degrees float64
	}{{"x", at(1, 0, 0), 30}, {"y", at(0, 1, 0), 150}, {"z", at(0, 0, 1), 90}} {
		p := c.Project(k.axis)
		near(t, k.name+" angle", math.Atan2(p.Y, p.X)*180/math.Pi, k.degrees, 1e-9)
		near(t, k.name+" scale", p.Len(), math.Sqrt(2.0/3), 1e-12)
	}
	near(t, "tilt", math.Asin(c.Toward.Z)*180/math.Pi, 35.264389682754654, 1e-9)
	near(t, "same by angles", Axonometric(225, 35.264389682754654).Toward.Dist(c.Toward), 0, 1e-12)
}

// An elevation seen from the south: east is right, up is up; from the east:
// north is right; a plan: north is up.
func TestElevationsReadAsTheyAreSeen(t *testing.T) {
	p := at(1, 10, 100)
	for name, want := range map[string]vec.P{"front": {X: 1, Y: 100}, "back": {X: -1, Y: 100},
		"right": {X: 10, Y: 100}, "left": {X: -10, Y: 100}, "top": {X: 1, Y: 10}, "bottom": {X: 1, Y: -10}} {
		if got := cameras()[name].Project(p); got.Dist(want) > 1e-12 {
			t.Errorf("%s: %v, want %v", name, got, want)
		}
	}
}

// wallOf returns a wall of n x n flush blocks of the given size.
func wallOf(n int, size float64) []Part {
	var parts []Part
	for i := range n {
		for k := range n {
			x, z := float64(i)*size, float64(k)*size
			parts = append(parts, CellsPart(fmt.Sprint(i, k), box(x, 0, z, x+size, size, z+size)))
		}
	}
	return parts
}

func paths(items []draw.Item, class draw.Class) []*draw.Path {
	var out []*draw.Path
	for _, it := range items {
		if p, ok := it.(*draw.Path); ok && p.Class == class {
			out = append(out, p)
		}
	}
	return out
}

func length(ps []*draw.Path) float64 {
	l := 0.0
	for _, p := range ps {
		for i := range p.Pts[1:] {
			l += p.Pts[i].Dist(p.Pts[i+1])
		}
		if p.Closed {
			l += p.Pts[0].Dist(p.Pts[len(p.Pts)-1])
		}
	}
	return l
}

// Counting by hand: n x n flush blocks show n+1 lines each way over the whole
// width, each once, and nothing hidden, for every hidden line lies behind a
// visible one.
func TestFlushWallDrawnOnce(t *testing.T) {
	const n, size, scale = 4, 50.0, 0.1
	for _, hidden := range []bool{false, true} {
		items := Render(Front(), wallOf(n, size), Options{Scale: scale, ShowHidden: hidden})
		near(t, "length", length(paths(items, draw.Part)), 2*(n+1)*n*size*scale, 1e-9)
		if h := paths(items, draw.Hidden); len(h) != 0 {
			t.Errorf("%d hidden lines", len(h))
		}
	}
}

// A box in isometric view shows nine edges of √(2/3) of their length; the
// other three are hidden. (Geometry of a convex box.)
func TestBoxInIsometric(t *testing.T) {
	items := Render(Isometric(), []Part{CellsPart("a", box(0, 0, 0, 30, 40, 50))}, Options{ShowHidden: true, At: vec.P{X: 7}})
	k := math.Sqrt(2.0 / 3)
	near(t, "visible", length(paths(items, draw.Part)), 3*(30+40+50)*k, 1e-9)
	near(t, "hidden", length(paths(items, draw.Hidden)), (30+40+50)*k, 1e-9)
	near(t, "left end", draw.ItemBounds(items[0]).With(ends(items)...).Min.X, 7-40*math.Sqrt(0.5), 1e-9)
}

func ends(items []draw.Item) []vec.P {
	var out []vec.P
	for _, it := range items {
		b := draw.ItemBounds(it)
		out = append(out, b.Min, b.Max)
	}
	return out
}

func TestEarlierPartOwnsSharedLines(t *testing.T) {
	parts := []Part{CellsPart("new", box(0, 0, 0, 10, 10, 10)), CellsPart("old", box(10, 0, 0, 20, 10, 10))}
	parts[1].Class = draw.Phantom
	items := Render(Front(), parts, Options{})
	near(t, "new", length(paths(items, draw.Part)), 40, 1e-9)
	near(t, "old", length(paths(items, draw.Phantom)), 30, 1e-9)
}

func TestGhostHidesNothing(t *testing.T) {
	g := CellsPart("ghost", box(-10, -20, -10, 30, -10, 30))
	g.Ghost = true
	items := Render(Front(), []Part{CellsPart("a", box(0, 0, 0, 20, 20, 20)), g}, Options{ShowHidden: true})
	near(t, "part", length(paths(items, draw.Part)), 80, 1e-9)
	near(t, "ghost", length(paths(items, draw.Phantom)), 160, 1e-9)
}

func TestShiftMovesEverything(t *testing.T) {
	p := post()
	moved := p
	moved.Shift = at(300, 20, -50)
	a := Render(IsometricFrom(1, -1), []Part{p}, Options{ShowHidden: true})
	cam := IsometricFrom(1, -1)
	b := Render(cam, []Part{moved}, Options{ShowHidden: true, At: cam.Project(moved.Shift).Mul(-1)})
	if len(a) != len(b) {
		t.Fatalf("%d items, shifted %d", len(a), len(b))
	}
	for i := range a {
		p, q := draw.ItemBounds(a[i]), draw.ItemBounds(b[i])
		if p.Min.Dist(q.Min) > 1e-6 || p.Max.Dist(q.Max) > 1e-6 || a[i].Head().Class != b[i].Head().Class {
			t.Errorf("item %d: %v, shifted %v", i, p, q)
		}
	}
}

func TestRenderIsTheSameEachTime(t *testing.T) {
	draw1 := func() []draw.Item {
		p := PegPart("peg", at(101, -20, 650), at(101, 200, 650), 25.4, 14, 70)
		return Render(Isometric(), []Part{post(), tie(), p}, Options{ShowHidden: true})
	}
	want := draw1()
	for range 5 {
		if !reflect.DeepEqual(want, draw1()) {
			t.Fatal("two renderings differ")
		}
	}
}

// Closed form: an octagon of width w across flats has the area
// 2(√2−1)w²; a frustum of similar ends A and B the volume
// h(A + B + √(AB))/3 (Heron).
func TestPegVolumeAndShape(t *testing.T) {
	oct := func(w float64) float64 { return 2 * (math.Sqrt2 - 1) * w * w }
	rng := rand.New(rand.NewSource(1))
	for range 20 {
		from := at(rng.Float64()*100, rng.Float64()*100, rng.Float64()*100)
		dir := at(rng.NormFloat64(), rng.NormFloat64(), rng.NormFloat64()).Unit()
		p := PegPart("p", from, from.Add(dir.Mul(200)), 25, 10, 60)
		near(t, "shank", p.Cells[0].Volume(), 140*oct(25), 1e-6)
		near(t, "lead", p.Cells[1].Volume(), 60*(oct(25)+oct(10)+math.Sqrt(oct(25)*oct(10)))/3, 1e-6)
		if len(p.Edges) != 8*5 { // three rings and two sets of long edges
			t.Errorf("%d edges", len(p.Edges))
		}
		for _, c := range p.Cells {
			for _, f := range c.Faces {
				for _, v := range f.Loop {
					near(t, "corner off its face", f.Plane.Height(c.V[v]), 0, 1e-9)
				}
				if f.Plane.Height(c.Centroid()) > -1 {
					t.Error("a face looks inward")
				}
			}
		}
	}
}
