package view

import (
	"math"
	"math/rand"
	"testing"

	"pegwright/draw"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

func area(l []vec.P) float64 {
	a := 0.0
	for i, p := range l {
		a += p.Cross(l[(i+1)%len(l)]) / 2
	}
	return a
}

// winding says how often the loop goes round p (angle sum): a different way to
// tell inside from outside than counting crossings.
func winding(p vec.P, l []vec.P) int {
	sum := 0.0
	for i, a := range l {
		a, b := a.Sub(p), l[(i+1)%len(l)].Sub(p)
		sum += math.Atan2(a.Cross(b), a.Dot(b))
	}
	return int(math.Round(sum / (2 * math.Pi)))
}

// squareLoop returns a square loop about c, clockwise for a negative size.
func squareLoop(c vec.P, half float64) []vec.P {
	h := math.Abs(half)
	return []vec.P{c.Add(vec.P{X: -h, Y: -half}), c.Add(vec.P{X: h, Y: -half}), c.Add(vec.P{X: h, Y: half}), c.Add(vec.P{X: -h, Y: half})}
}

// Every hatch line lies inside, its ends on the border, and the sum of lengths
// times the spacing is the area (in the limit of fine spacing).
func TestHatchFillsTheAreaAndNothingElse(t *testing.T) {
	rng := rand.New(rand.NewSource(3))
	for range 30 {
		var star []vec.P
		for i := range 11 {
			s, c := math.Sincos(2 * math.Pi * float64(i) / 11)
			star = append(star, vec.P{X: c, Y: s}.Mul(20+30*rng.Float64()))
		}
		hole := squareLoop(vec.P{}, -8)
		loops := [][]vec.P{star, hole}
		angle, spacing := 180*rng.Float64(), 0.05
		total := 0.0
		for _, h := range Hatch(loops, angle, spacing) {
			a, b := h.Pts[0], h.Pts[1]
			total += a.Dist(b)
			near(t, "direction", math.Remainder(math.Atan2(b.Y-a.Y, b.X-a.X)*180/math.Pi-angle, 180), 0, 1e-3)
			m := a.Lerp(b, 0.01+0.98*rng.Float64())
			if winding(m, star)+winding(m, hole) != 1 {
				t.Fatalf("point %v of a hatch line is outside", m)
			}
			d := b.Sub(a).Unit().Mul(1e-6)
			for _, e := range []vec.P{a.Sub(d), b.Add(d)} {
				if winding(e, star)+winding(e, hole) == 1 {
					t.Fatalf("hatch line ends inside at %v", e)
				}
			}
		}
		near(t, "area", total*spacing, area(star)-256, 5)
	}
}

func TestHatchOfASquareInClosedForm(t *testing.T) {
	got := Hatch([][]vec.P{squareLoop(vec.P{X: 5, Y: 5}, 5)}, 0, 3) // lines at 0 (on the border), 3, 6, 9
	if n := len(got); n < 3 || n > 4 {
		t.Fatalf("%d lines", n)
	}
	for _, h := range got {
		near(t, "length", h.Pts[0].Dist(h.Pts[1]), 10, 1e-12)
		near(t, "place", math.Remainder(h.Pts[0].Y, 3), 0, 1e-12)
	}
	if Hatch([][]vec.P{squareLoop(vec.P{}, 5)}, 45, 0) != nil {
		t.Error("hatch without spacing")
	}
}

// A section of the post along the bore: areas by hand. Post 150 x 150, housing
// 12 deep, mortise 40 wide from x = 40.
func TestSectionAreasInClosedForm(t *testing.T) {
	pl := solid.PlaneAt(at(0, 0, 650), at(0, 0, 1))
	figs := Section([]Part{post()}, pl, Top(), Options{})
	if len(figs) != 1 || len(figs[0].Loops) != 1 || len(figs[0].Voids) != 1 {
		t.Fatalf("figures: %+v", figs)
	}
	near(t, "wood", area(figs[0].Loops[0]), 138*150-98*40, 1e-6)
	near(t, "bore", math.Abs(area(figs[0].Voids[0])), 25.4*166, 1e-6)
	total := 0.0
	for _, h := range figs[0].Hatch(45, 0.02) {
		total += h.Pts[0].Dist(h.Pts[1]) * 0.02
	}
	near(t, "hatched", total, 138*150-98*40-25.4*110, 15)
	// The two cheeks beside the bore and the back of the post: the outline
	// runs round five pieces of wood less what the bore opens.
	want := (138+150+138+150+2*98.0)*1 - 4*25.4 + 4*(150-40)/2.0
	near(t, "outline", length(paths(figs[0].Outline(), draw.Part)), want, 1e-6)
}

// Across the bore the figure has a round hole.
func TestSectionAcrossABore(t *testing.T) {
	pl := solid.PlaneAt(at(0, 20, 0), at(0, -1, 0))
	f := Section([]Part{post()}, pl, Front(), Options{Scale: 0.5})[0]
	r := 12.7 * 0.5
	near(t, "bore", math.Abs(area(f.Voids[0])), math.Pi*r*r, 0.001*math.Pi*r*r)
	near(t, "outline", length(paths(f.Outline(), draw.Part)), (2*(150+1200)+24)*0.5+2*math.Pi*r, 0.02)
}

// A peg cut along its axis is one loop: the seam between shank and lead is
// gone. Width across flats 20, lead 10: a rectangle and a trapezium.
func TestSectionOfAPegIsOneLoop(t *testing.T) {
	p := PegPart("peg", at(0, 0, 0), at(0, 100, 0), 20, 10, 40)
	figs := Section([]Part{p}, solid.PlaneAt(at(0, 0, 0), at(0, 0, 1)), Top(), Options{})
	if len(figs) != 1 || len(figs[0].Loops) != 1 {
		t.Fatalf("figures: %+v", figs)
	}
	near(t, "area", area(figs[0].Loops[0]), 20*60+15*40, 1e-9)
}

// A timber broken off: no edge at the break is an outline, the break lines are
// there, and the rest of the view is unchanged.
func TestBrokenOffTimber(t *testing.T) {
	b := solid.NewBody(box(0, 0, 0, 1000, 100, 100))
	keep := Clipped(b, solid.PlaneAt(at(400, 0, 0), at(1, 0, 0)))
	near(t, "volume kept", keep.Volume(), 400*100*100, 1e-3)
	near(t, "volume before", b.Volume(), 1000*100*100, 1e-3)
	items := Render(Front(), []Part{{Owner: "t", Body: keep}}, Options{ShowHidden: true})
	near(t, "outline", length(paths(items, draw.Part)), 400+400+100, 1e-6)
	br := paths(items, Break)
	if len(br) != 1 || len(br[0].Pts) != 2+4*2 { // 100 mm on paper: two zigzags
		t.Fatalf("break lines: %v", br)
	}
	near(t, "foot of the break", br[0].Pts[0].Dist(vec.P{X: 400}), 0, 1e-9)
	f := Section([]Part{{Owner: "t", Body: keep}}, solid.PlaneAt(at(0, 50, 0), at(0, -1, 0)), Front(), Options{})[0]
	near(t, "section outline", length(paths(f.Outline(), draw.Part)), 900, 1e-6)
	if n := len(paths(f.Outline(), Break)); n != 1 {
		t.Errorf("%d break lines round the section", n)
	}
}

// The section of a shifted part is the shifted section.
func TestSectionOfAShiftedPart(t *testing.T) {
	p := post()
	want := Section([]Part{p}, solid.PlaneAt(at(0, 0, 650), at(0, 0, 1)), Top(), Options{})[0]
	p.Shift = at(30, -20, 400)
	got := Section([]Part{p}, solid.PlaneAt(at(0, 0, 1050), at(0, 0, 1)), Top(), Options{})[0]
	for k, loops := range [][2][][]vec.P{{want.Loops, got.Loops}, {want.Voids, got.Voids}} {
		if len(loops[0]) != len(loops[1]) {
			t.Fatalf("kind %d: %d loops, shifted %d", k, len(loops[0]), len(loops[1]))
		}
		for i, l := range loops[0] {
			for n, q := range l {
				near(t, "shifted corner", loops[1][i][n].Dist(q.Add(vec.P{X: 30, Y: -20})), 0, 1e-9)
			}
		}
	}
}
