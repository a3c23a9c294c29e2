package building_test

import (
	"math"
	"strings"
	"testing"

	"pegwright/geom/vec"
	"pegwright/samples/trial"
)

// A rafter's ideal underside lies the seat depth below the plate's outer top
// arris, square to the rafter, as written; a third of the ideal rafter when
// nothing is written (common practice, no source).
func TestSeatDepth(t *testing.T) {
	for _, c := range []struct {
		layout string
		deep   float64
	}{{"layout: {rafter: {seat depth: 1.5}}", 1.5}, {"layout: {rafter: {seat depth: 1}}", 1}, {"", 5.5 / 3}} {
		f := trial.Frame(t, "test.yaml", trial.Hut(c.layout, ""))
		for id, y := range map[string]float64{"rafter-1-south": 0, "rafter-2-north": 120 * inch} {
			tm := f.Timber(id)
			under := trial.FacePlane(tm, trial.WordFace(t, tm, "underside"), tm.Ideal)
			trial.Near(t, id+" with "+c.layout+": arris inside the rafter", -under.Height(vec.V{Y: y, Z: 96 * inch}), c.deep*inch, 1e-6)
		}
	}
}

// The seat peg's blind bore stops 1/2 in above the mortise of the post below
// it, and never opens it. A mortise that ends 1/2 in beside the bore is not
// below it.
func TestSeatBoreStopsAboveTheMortise(t *testing.T) {
	for _, pitch := range []string{"4 in 12", "9 in 12", "14 in 12"} {
		for _, seat := range []string{"step-lap", "birdsmouth"} {
			src := strings.Replace(trial.Hut("", ""), "pitch: 9 in 12", "pitch: "+pitch+", seat: "+seat, 1)
			f := trial.Frame(t, "test.yaml", src)
			plate := f.Timber("plate-south")
			n := 0
			for _, b := range plate.Bores {
				if b.Exit != 0 {
					continue
				}
				n++
				from, to := plate.Place.Out(b.From), plate.Place.Out(b.To)
				d := to.Sub(from).Unit()
				low := to.Z - b.Diameter/2*math.Sqrt(1-d.Z*d.Z) // lowest point of the rim
				for _, c := range plate.Cuts {
					if c.Name != "mortise" {
						continue
					}
					_, top := c.Solid.Moved(plate.Place).Extent(vec.V{Z: 1})
					lo, hi := c.Solid.Extent(vec.V{X: 1})
					beside := max(lo-b.To.X, b.To.X-hi) - b.Diameter/2
					if low < top+0.5*inch-0.05 && beside < 0.5*inch-0.05 {
						t.Errorf("%s, %s: the bore ends %.2f mm above a mortise, %.2f mm beside it", pitch, seat, low-top, beside)
					}
				}
			}
			if n == 0 {
				t.Errorf("%s, %s: no blind bore", pitch, seat)
			}
		}
	}
}

// What is written on a brace itself goes before what is written for its role,
// and one brace does not lend it to the next.
func TestBracesKeepTheirOwnSettings(t *testing.T) {
	f := trial.Frame(t, "test.yaml", `frame: Knees
units: in
sections: {brace: 3 x 5}
timbers:
  post: {role: post, section: 8 x 8, from: [0, 0, 0], to: [0, 0, 9'], faces: [south, west]}
  beam: {role: beam, section: 8 x 8, from: [0, -6', 9'], to: [0, 9', 9'], faces: [top, west]}
  stout: {role: brace, section: 4 x 6, between: [post, beam], legs: 36 x 36, toward: north}
  oaken: {role: brace, species: white oak, reduce: 1/2, between: [post, beam], legs: 30 x 30, toward: south}
`)
	for _, c := range []struct {
		id, species  string
		a, b, reduce float64
	}{{"stout", "eastern white pine", 4, 6, 0}, {"oaken", "white oak", 3, 5, 0.5}} {
		tm := f.Timber(c.id)
		if tm.Species != c.species {
			t.Errorf("%s is of %s", c.id, tm.Species)
		}
		trial.Near(t, c.id+" thinner side", min(tm.Section[0], tm.Section[1]), c.a*inch, 1e-9)
		trial.Near(t, c.id+" deeper side", max(tm.Section[0], tm.Section[1]), c.b*inch, 1e-9)
		trial.Near(t, c.id+" ideal", max(tm.Ideal[0], tm.Ideal[1]), (c.b-c.reduce)*inch, 1e-9)
	}
	if list := f.Notes; len(list) > 0 {
		t.Errorf("a note: %s", list[0].Text)
	}
}
