package view

import (
	"math"
	"math/rand"
	"testing"

	"pegwright/draw"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// plank is 200 x 50 x 100 with one bore square through y.
func plank() Part {
	return Part{Owner: "plank", Body: solid.NewBody(box(0, 0, 0, 200, 50, 100)),
		Bores: []Bore{{From: at(60, -8, 40), To: at(60, 58, 40), Diameter: 20}}}
}

func TestRimSeenSquareIsTheTrueCircle(t *testing.T) {
	items := Render(Front(), []Part{plank()}, Options{Scale: 0.5, ShowHidden: true, At: vec.P{X: 1, Y: 2}})
	var circles []*draw.Circle
	for _, it := range items {
		switch c := it.(type) {
		case *draw.Circle:
			circles = append(circles, c)
		case *draw.Arc, *draw.Ellipse:
			t.Errorf("a %T beside the circle", it)
		}
	}
	if len(circles) != 1 || circles[0].Class != draw.Part { // the far rim lies behind it
		t.Fatalf("circles: %v", circles)
	}
	near(t, "centre", circles[0].C.Dist(vec.P{X: 31, Y: 22}), 0, 1e-9)
	near(t, "radius", circles[0].R, 5, 1e-9)
}

// From above the bore is two dashed lines 20 apart over the whole depth.
func TestBoreWallIsTwoDashedLines(t *testing.T) {
	h := paths(Render(Top(), []Part{plank()}, Options{ShowHidden: true}), draw.Hidden)
	if len(h) != 2 {
		t.Fatalf("%d hidden lines, want 2", len(h))
	}
	near(t, "length", length(h), 100, 1e-9)
	near(t, "apart", math.Abs(h[0].Pts[0].X-h[1].Pts[0].X), 20, 1e-9)
	if n := len(paths(Render(Top(), []Part{plank()}, Options{}), draw.Hidden)); n != 0 {
		t.Errorf("%d hidden lines where none were asked for", n)
	}
}

// In isometric view a circle on a face along the axes is an ellipse with half
// axes r and r/√3 (ISO 5456-3; geometry: the normal is tilted by asin(1/√3)).
func TestRimInIsometric(t *testing.T) {
	n := 0
	for _, it := range Render(Isometric(), []Part{plank()}, Options{}) {
		if e, ok := it.(*draw.Ellipse); ok {
			n++
			near(t, "long half axis", e.RX, 10, 1e-9)
			near(t, "short half axis", e.RY, 10/math.Sqrt(3), 1e-9)
			near(t, "centre", e.C.Dist(Isometric().Project(at(60, 0, 40))), 0, 1e-9)
			if e.From != e.To {
				t.Errorf("the rim is not whole: %v to %v", e.From, e.To)
			}
		}
	}
	if n != 1 {
		t.Errorf("%d rims seen, want 1", n)
	}
}

// A slanted bore: every point of the rim lies on the face, at one radius from
// the axis, and on the ellipse that is drawn.
func TestSlantedRimLiesOnFaceAndCylinder(t *testing.T) {
	b := Bore{From: at(60, -20, 30), To: at(90, 70, 60), Diameter: 20}
	a, _ := axisOf(b)
	pl := solid.PlaneAt(at(0, 0, 0), at(0, -1, 0))
	e, ok := rimOn(b, pl)
	if !ok {
		t.Fatal("no rim")
	}
	r := &renderer{cam: Axonometric(-60, 25), o: Options{Scale: 0.3}}
	m := r.onPaper(0, seen, e, turn{0.3, 2.1})
	for i := range 50 {
		x := 0.3 + 1.8*float64(i)/49
		p := e.at(x)
		near(t, "off the face", pl.Height(p), 0, 1e-9)
		near(t, "radius", p.Sub(b.From).Cross(a).Len(), 10, 1e-9)
		q := r.o.paper(r.cam, p).Sub(m.C)
		u := vec.P{X: math.Cos(m.Rot), Y: math.Sin(m.Rot)}
		near(t, "off the ellipse", math.Pow(u.Dot(q)/m.RX, 2)+math.Pow(u.Cross(q)/m.RY, 2), 1, 1e-9)
		// and within the span that is drawn
		s := math.Atan2(u.Cross(q)/m.RY, u.Dot(q)/m.RX)
		k := math.Mod(s-m.From+1e-9+2*full, full)
		if k > m.To-m.From+2e-9 {
			t.Errorf("angle %v outside %v to %v", s, m.From, m.To)
		}
	}
	near(t, "span", m.To-m.From, 1.8, 1e-9)
}

// A bore whose axis lies on an edge of the face: half the circle is there. One
// that meets a corner at 90°: a quarter.
func TestRimIsDividedByTheFace(t *testing.T) {
	for _, k := range []struct {
		x, z, want float64
	}{{100, 0, 0.5}, {0, 0, 0.25}, {100, 5, 2.0 / 3}, {100, 50, 1}, {100, 200, 0}} {
		b := Bore{From: at(k.x, -8, k.z), To: at(k.x, 58, k.z), Diameter: 20}
		p := plank()
		got := 0.0
		for _, f := range p.Body.Boundary() {
			if f.Plane.N.Y < -0.5 {
				e, _ := rimOn(b, f.Plane)
				for _, x := range rimIn(b, e, f) {
					got += (x.to - x.from) / full
				}
			}
		}
		near(t, "share of the circle", got, k.want, 1e-9)
	}
}

// A blind bore has no rim on the far face.
func TestBlindBoreHasOneRim(t *testing.T) {
	p := plank()
	p.Bores[0].To.Y = 30
	n := 0
	for _, cam := range []Camera{Front(), Back()} {
		for _, it := range Render(cam, []Part{p}, Options{}) {
			if _, ok := it.(*draw.Circle); ok {
				n++
			}
		}
	}
	if n != 1 {
		t.Errorf("%d rims, want 1", n)
	}
}

// Brute force: points of the rim, rays to the viewer against the cells of a
// second body in front. Points near an end of a drawn span are left out (a
// chord lies up to 0.005 mm from the rim).
func TestHiddenRimsAgreeWithRays(t *testing.T) {
	rng := rand.New(rand.NewSource(9))
	tested, hidden := 0, 0
	for range 40 {
		lo := at(40+40*rng.Float64(), -60, 20+40*rng.Float64())
		cover := box(lo.X, lo.Y, lo.Z, lo.X+40*rng.Float64()+1, -30, lo.Z+40*rng.Float64()+1)
		cam := Axonometric(-90+20*rng.Float64(), 20*rng.Float64())
		items := Render(cam, []Part{plank(), CellsPart("cover", cover)}, Options{})
		for i := range 100 {
			x := full * float64(i) / 100
			p := at(60+10*math.Cos(x), 0, 40+10*math.Sin(x))
			q := cam.Project(p)
			drawn, clear := onArcs(items, q)
			if !clear {
				continue
			}
			tested++
			covered := rayMeets(cover, p, cam.Toward)
			if covered {
				hidden++
			}
			if drawn == covered {
				t.Fatalf("point %v: drawn %v, covered %v", p, drawn, covered)
			}
		}
	}
	if tested < 2500 || hidden < 300 {
		t.Errorf("only %d points, %d hidden", tested, hidden)
	}
}

// onArcs reports whether q lies on a drawn rim, and whether it is clear of the
// rims' ends.
func onArcs(items []draw.Item, q vec.P) (on, clear bool) {
	clear = true
	for _, it := range items {
		e, ok := it.(*draw.Ellipse)
		if !ok {
			continue
		}
		from, to, whole := e.Span()
		if !whole && (e.At(from).Dist(q) < 0.3 || e.At(to).Dist(q) < 0.3) {
			clear = false
		}
		for i := range 2001 {
			if e.At(from+(to-from)*float64(i)/2000).Dist(q) < 0.05 {
				on = true
				break
			}
		}
	}
	return
}

// rayMeets reports whether the ray from p along d meets the inside of c.
func rayMeets(c solid.Convex, p, d vec.V) bool {
	lo, hi := 0.0, math.Inf(1)
	for _, f := range c.Faces {
		h, k := f.Plane.Height(p), f.Plane.N.Dot(d)
		switch {
		case math.Abs(k) < 1e-12:
			if h >= 0 {
				return false
			}
		case k > 0:
			hi = min(hi, -h/k)
		default:
			lo = max(lo, -h/k)
		}
	}
	return hi > lo
}

// A peg driven through the bore looks from outside like a stub that ends on
// the face.
func TestDrivenPegMeetsTheFace(t *testing.T) {
	for _, cam := range []Camera{Front(), Isometric(), Axonometric(-50, 30)} {
		driven := Render(cam, []Part{plank(), PegPart("peg", at(60, -25, 40), at(60, 40, 40), 20, 10, 10)}, Options{})
		stub := Render(cam, []Part{plank(), PegPart("peg", at(60, -25, 40), at(60, 0, 40), 20, 10, 0)}, Options{})
		l := length(paths(stub, draw.Part))
		near(t, "lines", length(paths(driven, draw.Part)), l, 1e-6)
		if l < 300 {
			t.Errorf("only %v mm of lines", l)
		}
	}
}

// A bore at 45° that begins on the face itself: its flat end cuts the rim in
// half. (The rim is an ellipse about the place where the axis meets the face.)
func TestRimEndsWhereTheBoreDoes(t *testing.T) {
	p := plank()
	b := Bore{From: at(60, 0, 40), To: at(100, 40, 40), Diameter: 20}
	got := 0.0
	for _, f := range p.Body.Boundary() {
		if f.Plane.N.Y < -0.5 {
			e, _ := rimOn(b, f.Plane)
			for _, x := range rimIn(b, e, f) {
				got += (x.to - x.from) / full
			}
		}
	}
	near(t, "share of the rim", got, 0.5, 1e-9)
}

// A cover before the right half of a bore leaves the left half of the circle,
// counter-clockwise from the top to the foot; seen from behind, the right.
func TestHalfCoveredRim(t *testing.T) {
	parts := []Part{plank(), CellsPart("a", box(60, -20, 0, 120, -10, 90)), CellsPart("b", box(60, 60, 0, 120, 70, 90))}
	for cam, want := range map[Camera][2]float64{Front(): {90, 270}, Back(): {-90, 90}} {
		n := 0
		for _, it := range Render(cam, parts, Options{}) {
			if a, ok := it.(*draw.Arc); ok {
				n++
				near(t, "from", math.Remainder(a.From*180/math.Pi-want[0], 360), 0, 1e-6)
				near(t, "to", math.Remainder(a.To*180/math.Pi-want[1], 360), 0, 1e-6)
			}
		}
		if n != 1 {
			t.Errorf("%d arcs, want 1", n)
		}
	}
}
