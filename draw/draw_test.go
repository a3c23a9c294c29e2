package draw

import (
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"pegwright/geom/vec"
)

// The sizes of ISO 216 and of ANSI/ASME Y14.1 (A and B), US Legal and the
// architectural sizes, as published; inches at 25.4 mm exactly.
func TestPapers(t *testing.T) {
	for _, want := range []Paper{
		{"A4", 210, 297}, {"A3", 297, 420}, {"A2", 420, 594}, {"A1", 594, 841},
		{"letter", 215.9, 279.4}, {"LEGAL", 215.9, 355.6}, {"tabloid", 279.4, 431.8},
		{"arch-c", 457.2, 609.6}, {"Arch D", 609.6, 914.4},
	} {
		got, ok := PaperNamed(want.Name)
		if !ok || math.Abs(got.W-want.W) > 1e-9 || math.Abs(got.H-want.H) > 1e-9 {
			t.Errorf("%s: got %v, want %v by %v", want.Name, got, want.W, want.H)
		}
		if l := got.Landscape(); l.W != got.H || l.H != got.W || l.Portrait() != got {
			t.Errorf("%s turned: %v", want.Name, l)
		}
	}
	if _, ok := PaperNamed("foolscap"); ok {
		t.Error("a paper that is not known was found")
	}
}

// ISO 216: area of A0 is 1 m², each size half the one before, sides 1 : √2,
// rounded down to whole millimetres.
func TestISO216(t *testing.T) {
	for i, n := range []string{"A1", "A2", "A3", "A4"} {
		p, _ := PaperNamed(n)
		long := 1000 * math.Pow(2, 0.25-float64(i+1)/2)
		if math.Abs(p.H-long) > 1 || math.Abs(p.W-long/math.Sqrt2) > 1 {
			t.Errorf("%s: %v x %v, by formula %.1f x %.1f", n, p.W, p.H, long/math.Sqrt2, long)
		}
	}
}

// ISO 128-2: line widths 0.18, 0.25, 0.35, 0.5, 0.7, 1.0, 1.4, 2.0 mm; wide to
// narrow 2 : 1; dash 12d, gap 3d, long dash 24d, dot not more than 0.5d.
func TestPens(t *testing.T) {
	for step, want := range [][3]float64{{0.5, 0.25, 0.18}, {0.7, 0.35, 0.25}, {1.0, 0.5, 0.35}} {
		got := [3]float64{PenFor(Part, step).Width, PenFor(Hidden, step).Width, PenFor(Hatch, step).Width}
		if got != want {
			t.Errorf("step %d: wide, narrow, fine %v, want %v", step, got, want)
		}
	}
	patterns := map[Class][]float64{Part: nil, Hidden: {12, 3}, Centre: {24, 3, .5, 3},
		Phantom: {24, 3, .5, 3, .5, 3}, Dimension: nil}
	for step := range 4 {
		for c, want := range patterns {
			p := PenFor(c, step)
			if len(p.Dash) != len(want) {
				t.Fatalf("%s: dash %v", c, p.Dash)
			}
			for i, d := range p.Dash {
				if math.Abs(d/p.Width-want[i]) > 1e-9 {
					t.Errorf("%s step %d: dash %v of width %v, want multiples %v", c, step, p.Dash, p.Width, want)
				}
			}
		}
	}
	if PenFor(Part, 99).Width != PenFor(Part, 3).Width || PenFor(Part, -1).Width != 0.5 {
		t.Error("steps are not kept within the list")
	}
}

func TestNumber(t *testing.T) {
	for _, c := range []struct {
		x      float64
		places int
		want   string
	}{{0, 3, "0"}, {math.Copysign(0, -1), 3, "0"}, {-0.0004, 3, "0"}, {-0.0005, 3, "-0.001"}, {12.5, 3, "12.5"},
		{100, 0, "100"}, {100, 3, "100"}, {1.23456, 4, "1.2346"}, {-1.5, 0, "-2"}, {1e5, 4, "100000"}, {0.1 + 0.2, 4, "0.3"}} {
		if got := Number(c.x, c.places); got != c.want {
			t.Errorf("Number(%v, %d) = %s, want %s", c.x, c.places, got, c.want)
		}
	}
	if math.Signbit(Round(-1e-9, 4)) {
		t.Error("negative zero")
	}
}

// A number is the shortest decimal that strconv writes for the rounded one, halves
// and their neighbours among them. All have at most 15 figures, or none: a float64
// tells these apart.
func TestNumberAsStrconv(t *testing.T) {
	lot := rand.New(rand.NewPCG(1, 2))
	xs := []float64{0, 0.49999999999999994, 1<<32 - 1, 1 << 32, 429496.7295, 1e15, math.Inf(1), math.NaN()}
	for range 20000 {
		half := float64(lot.IntN(1e7)) / 2000
		xs = append(xs, half, math.Nextafter(half, 0), math.Nextafter(half, 1e9), math.Ldexp(lot.NormFloat64(), lot.IntN(30)-15))
	}
	for i, x := range xs {
		for _, x := range []float64{x, -x} {
			places := i % 10
			want := strconv.FormatFloat(Round(x, places), 'f', -1, 64)
			if got := Number(x, places); got != want {
				t.Errorf("Number(%v, %d) = %s, want %s", x, places, got, want)
			}
		}
	}
}

// The box of a turned ellipse against a thousand points of it, each found from
// the equation of the ellipse; and the closed form sqrt(a²cos² + b²sin²).
func TestBounds(t *testing.T) {
	for _, rot := range []float64{0, 0.3, math.Pi / 4, 1.2, math.Pi / 2, 2.5, -0.7} {
		for _, span := range [][2]float64{{0, 0}, {0.2, 1.1}, {-1, 2}, {3, 1}, {5, 6.1}} {
			e := &Ellipse{C: vec.P{X: 10, Y: 20}, RX: 7, RY: 3, Rot: rot, From: span[0], To: span[1]}
			from, to := span[0], span[1]
			for to <= from {
				to += 2 * math.Pi
			}
			brute := NoBox()
			for i := range 20001 {
				a := from + (to-from)*float64(i)/20000
				x, y := 7*math.Cos(a), 3*math.Sin(a)
				brute = brute.With(vec.P{X: 10 + x*math.Cos(rot) - y*math.Sin(rot), Y: 20 + x*math.Sin(rot) + y*math.Cos(rot)})
			}
			got := ItemBounds(e)
			if got.Min.Dist(brute.Min) > 1e-5 || got.Max.Dist(brute.Max) > 1e-5 {
				t.Errorf("rot %v span %v: %v, point by point %v", rot, span, got, brute)
			}
		}
		whole := ItemBounds(&Ellipse{RX: 7, RY: 3, Rot: rot})
		want := math.Hypot(7*math.Cos(rot), 3*math.Sin(rot))
		if math.Abs(whole.Max.X-want) > 1e-9 || math.Abs(whole.Min.X+want) > 1e-9 {
			t.Errorf("rot %v: half width %v, closed form %v", rot, whole.Max.X, want)
		}
	}
	s := NewSheet("k", "i", "t", 100, 100)
	if !s.Bounds().Empty() {
		t.Error("an empty sheet has a box")
	}
	s.Line(Part, vec.P{X: 3, Y: 4}, vec.P{X: 1, Y: 9})
	s.Circle(Part, vec.P{X: 0, Y: 0}, 2)
	if b := s.Bounds(); b.Min.Dist(vec.P{X: -2, Y: -2}) > 1e-12 || b.Max.Dist(vec.P{X: 3, Y: 9}) > 1e-12 {
		t.Errorf("box %v", b)
	}
}

func TestValid(t *testing.T) {
	bad := []Item{
		&Path{Pts: []vec.P{{X: math.NaN()}}}, &Path{Holes: [][]vec.P{{{Y: math.Inf(1)}}}},
		&Circle{R: -1}, &Circle{R: math.NaN()}, &Circle{Grey: 2}, &Arc{From: math.Inf(-1)},
		&Ellipse{RY: -1}, &Text{Height: math.NaN()}, &Text{Rot: math.Inf(1)}, nil,
		&Path{Meta: Meta{Pen: &Pen{Width: -1}}}, &Path{Meta: Meta{Pen: &Pen{Width: 1, Dash: []float64{math.NaN()}}}},
	}
	for i, it := range bad {
		s := NewSheet("k", "i", "t", 100, 100)
		s.Add(it)
		if s.Valid() == nil {
			t.Errorf("bad item %d passed", i)
		}
	}
	if NewSheet("k", "i", "t", 0, 100).Valid() == nil || NewSheet("k", "i", "t", math.NaN(), 1).Valid() == nil {
		t.Error("bad paper passed")
	}
	s := NewSheet("k", "i", "t", 100, 100)
	s.Rect(FrameLine, Box{vec.P{X: 1, Y: 1}, vec.P{X: 99, Y: 99}})
	s.Text(vec.P{}, 3.5, "good")
	if err := s.Valid(); err != nil {
		t.Error(err)
	}
}

// Tones lie under all lines, lettering with its white ground over them, the
// words under the sheet under all; items of one layer stay together and in
// order, and none is lost.
func TestLayers(t *testing.T) {
	s := NewSheet("k", "i", "t", 100, 100)
	add := func(c Class, layer, mark string) {
		s.Add(&Path{Meta: Meta{Class: c, Layer: layer, Mark: mark}})
	}
	for i, l := range [][2]string{{"text", ""}, {"part", ""}, {"text", "title"}, {"part", "key view"}, {"fill", ""}, {"break", ""},
		{"part", ""}, {"dimension", "border"}, {"text", LayerUnder}, {"text", ""}, {"dimension", ""}, {"hatch", ""}} {
		add(Class(l[0]), l[1], string(rune('a'+i)))
	}
	got := ""
	for _, l := range s.Layers() {
		got += l.Name + ":"
		for _, it := range l.Items {
			got += it.Head().Mark
		}
		got += " "
	}
	if want := "under:i fill:e hatch:l part:bg dimension:k key view:d break:f border:h text:aj title:c "; got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
}

func TestDump(t *testing.T) {
	s := NewSheet("hole", "J12-near", "Near face", 215.9, 279.4)
	s.FullScale = true
	s.Line(Part, vec.P{X: 0, Y: -0.00001}, vec.P{X: 1.23456, Y: 2}).Owner = "post-1"
	s.Circle(Hidden, vec.P{X: 5, Y: 6}, 12.7).Mark = "hole:J12"
	s.Text(vec.P{X: 1, Y: 1}, 3.5, "7'-6\"").Rot = math.Pi / 2
	s.Links = append(s.Links, Link{Box{vec.P{}, vec.P{X: 1, Y: 1}}, "cover"})
	want := strings.Join([]string{
		`sheet hole "J12-near" "Near face" 215.9 x 279.4 step 0 full-scale`,
		`part owner="post-1" path 0,0 1.2346,2`,
		`hidden mark="hole:J12" circle 5,6 r 12.7`,
		`text text 1,1 h 3.5 start rot 90 "7'-6\""`,
		`link 0,0 1,1 -> "cover"`, ""}, "\n")
	if got := s.Dump(); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}
