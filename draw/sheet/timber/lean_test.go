package timber

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pegwright/draw/scene"
	"pegwright/geom"
	"pegwright/samples/trial"
)

// A hole that leans is told along the bit, with its lean. By hand, of the rafter
// seats of the default sample: square to rafters at 9 in 12 a bit leans by the angle
// whose tangent is 3/4, and goes 5/4 as deep along itself as square to the plate
// (3-4-5). No other label or row tells a depth of such a hole.
func TestLeaningHolesAreToldAlongTheBit(t *testing.T) {
	f := trial.Sample(t, "apiary-store")
	n := 0
	for _, g := range scene.AllSticks(f) {
		s := g.First()
		for _, x := range features(f, s) {
			if x.bore == nil || x.through || s.Role != "plate" {
				continue
			}
			n++
			square := -s.BlankPlane(x.face).Height(x.bore.To)
			if math.Abs(x.deep-square*5/4) > 0.01 {
				t.Errorf("%s: %.2f deep, want 5/4 of %.2f", s.ID, x.deep, square)
			}
			full := x.figures(f.Units)[0]
			row := strings.Join(x.row(f.Units, nil, false), "|")
			for _, text := range []string{full, row} {
				if !strings.Contains(text, "leans 36.9°") || !strings.Contains(text, f.Units.PlainJoint(x.deep)+" along the bit") {
					t.Errorf("%s: %q", s.ID, text)
				}
			}
			for _, short := range x.figures(f.Units)[1:] {
				if strings.Contains(short, "deep") || strings.Contains(short, " at ") {
					t.Errorf("%s: %q tells the hole without its lean", s.ID, short)
				}
			}
		}
	}
	if n == 0 {
		t.Error("no plate has a blind hole")
	}
}

// The way that a leaning bit goes is that of its lower end, by its coordinates.
func TestLeaningBitsGoWhereTheyAreSaidTo(t *testing.T) {
	eachStick(t, func(t *testing.T, f *geom.Frame, g scene.Sticks) {
		for _, x := range features(f, g.First()) {
			if x.bore == nil || x.leans == "" {
				continue
			}
			d := x.bore.To.Sub(x.bore.From)
			ways := map[string]float64{"the start end": -d.X, "the other end": d.X, "face 1": -d.Y, "face 3": d.Y, "face 2": -d.Z, "face 4": d.Z}
			delete(ways, fmt.Sprint("face ", x.face))
			delete(ways, fmt.Sprint("face ", geom.Opposite(x.face)))
			for way, far := range ways {
				if far > ways[x.leans]+1e-6 {
					t.Errorf("%s: said to lean to %s, leans to %s", x.bore.Peg, x.leans, way)
				}
			}
		}
	})
}
