package peg

import (
	"math"
	"math/rand"
	"testing"

	"pegwright/geom/vec"
	"pegwright/geom/wood"
)

const inch = 25.4

func approx(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s = %.6g, want %.6g within %.2g", what, got, want, tol)
	}
}

func woodOf(t *testing.T, name string) wood.Wood {
	t.Helper()
	w, ok := wood.Lookup(name)
	if !ok {
		t.Fatalf("no wood %q", name)
	}
	return w
}

// Check values worked by hand for eastern white pine, green to 12 %, 45°,
// a 1.5 in, p 2 in, offset 1/8 in: toward shoulder and toward nose, inches.
func TestBraceCheckValues(t *testing.T) {
	pine := Drying(woodOf(t, "eastern white pine"), 100, 12)
	approx(t, "tangential", pine.Tangential, 0.0366, 1e-12)
	approx(t, "radial", pine.Radial, 0.0126, 1e-12)
	for _, c := range []struct {
		way  Way
		want [4][2]float64 // T/T, T/R, R/T, R/R
	}{
		{SquareToShoulder, [4][2]float64{{0.132, -0.062}, {0.091, -0.021}, {0.168, -0.062}, {0.127, -0.021}}},
		{AlongBrace, [4][2]float64{{0.098, 0.024}, {0.056, 0.066}, {0.134, 0.024}, {0.092, 0.066}}},
	} {
		b := Brace{Offset: inch / 8, Way: c.way, Angle: math.Pi / 4, Bearing: 1.5 * inch, Along: 2 * inch}
		bounds := b.Bounds(pine, pine)
		least := math.Inf(1)
		for i, want := range c.want {
			name := c.way.String() + " " + bounds[i].Receiver.String() + "/" + bounds[i].Enterer.String()
			approx(t, name+" shoulder", bounds[i].Left.Shoulder/inch, want[0], 0.001)
			approx(t, name+" nose", bounds[i].Left.Nose/inch, want[1], 0.001)
			least = min(least, want[0], want[1])
		}
		approx(t, "worst", Worst(bounds)/inch, least, 0.001)
	}
}

// shrinkAcross moves p as wood with grain direction g does that shrinks by s
// across it while every point of the line through the origin along g stays.
func shrinkAcross(p, g vec.P, s float64) vec.P {
	along := g.Mul(p.Dot(g))
	return along.Add(p.Sub(along).Mul(1 - s))
}

// The law of the brace against a brace that is really laid out and shrunk: the
// bearing plane is y = 0, the nose line x = 0, the receiver below. The brace
// stays home at its nose, so its outer line through the origin does not move.
func TestBraceAgainstShrunkPoints(t *testing.T) {
	rng := rand.New(rand.NewSource(7))
	for range 2000 {
		b := Brace{
			Offset: rng.Float64() * 6, Way: Way(rng.Intn(2)), Angle: 0.3 + rng.Float64()*1.2,
			Bearing: 20 + rng.Float64()*40, Along: 20 + rng.Float64()*60, Width: 80 + rng.Float64()*80,
		}
		sr, sb := rng.Float64()*0.08, rng.Float64()*0.08
		axis := vec.P{X: math.Cos(b.Angle), Y: math.Sin(b.Angle)}
		mortise := vec.P{X: b.Along, Y: -b.Bearing}
		set := vec.P{Y: b.Offset}
		if b.Way == AlongBrace {
			set = axis.Mul(b.Offset)
		}
		tenon := shrinkAcross(mortise.Add(set), axis, sb)
		mortise.Y *= 1 - sr // across the receiver's grain only
		got := b.Left(sr, sb)
		approx(t, "shoulder", got.Shoulder, tenon.Y-mortise.Y, 1e-9)
		approx(t, "nose", got.Nose, tenon.X-mortise.X, 1e-9)
		toe := shrinkAcross(vec.P{X: b.Width / math.Sin(b.Angle)}, axis, sb)
		approx(t, "toe", b.Toe(sb), toe.Y, 1e-9)
	}
}

// The law of the square joint against its edges, dried one by one. The driven
// peg fills its bore; it bears on the mortise hole's edge nearest the bearing
// plane and on the tenon hole's edge farthest from the shoulder.
func TestSquareAgainstEdges(t *testing.T) {
	rng := rand.New(rand.NewSource(8))
	for range 1000 {
		bore := 15 + rng.Float64()*15
		s := Square{Offset: rng.Float64() * 5, Bearing: 25 + rng.Float64()*40, Bore: bore, Peg: bore}
		sr, sp := rng.Float64()*0.08, rng.Float64()*0.08
		mortiseEdge := (s.Bearing - bore/2) * (1 - sr)
		tenonEdge := s.TenonHole() + bore/2 // along the tenon's grain: it does not move
		approx(t, "left", s.Left(sr, sp), mortiseEdge+bore*(1-sp)-tenonEdge, 1e-9)
	}
}

// Loss a S_M green to 12 % in inches at a = 1.5 and 2 in, worked by hand from
// the shrinkage percentages of Wood Handbook Table 4-3: between the hole centres,
// as a peg without thickness has it.
func TestSquareLosses(t *testing.T) {
	for _, c := range []struct {
		name       string
		kind       wood.Kind
		loss, more float64
	}{
		{"eastern white pine", wood.Tangential, 0.055, 0.073},
		{"eastern white pine", wood.Radial, 0.019, 0.025},
		{"Douglas-fir", wood.Tangential, 0.068, 0.091},
		{"northern red oak", wood.Tangential, 0.077, 0.103},
		{"white oak", wood.Tangential, 0.095, 0.126},
	} {
		s := Drying(woodOf(t, c.name), 80, 12).Of(c.kind)
		approx(t, c.name, -Square{Bearing: 1.5}.Left(s, 0), c.loss, 6e-4)
		approx(t, c.name, -Square{Bearing: 2}.Left(s, 0), c.more, 6e-4)
	}
}

// A green peg of white oak (6.3 % tangential, 3.36 % radial to 12 %) in a dry
// receiver: the larger of its two directions is the careful one.
func TestGreenPeg(t *testing.T) {
	oak := Drying(woodOf(t, "white oak"), 70, 12)
	s := Square{Offset: inch / 8, Bearing: 1.5 * inch, Bore: inch, Peg: inch}
	bounds := s.Bounds(Shrunk{}, oak)
	approx(t, "left", Worst(bounds)/inch, 0.125-0.063, 1e-9)
	if len(bounds) != 2 || bounds[1].Receiver != wood.Radial {
		t.Errorf("bounds: %+v", bounds)
	}
}
