package solve_test

import (
	"math"
	"testing"

	"pegwright/geom"
	"pegwright/samples/trial"
)

// The slot of every fork of the samples is as wide as a chisel: bench and mortise
// chisels come by eighths of an inch, or by 5 mm (makers' usual lists, from memory).
// It takes the third of the stick within half a step, and stands in its middle.
func TestForksAreAsWideAsChisels(t *testing.T) {
	n := 0
	for _, name := range trial.Drawn() {
		f := trial.Sample(t, name)
		step := 25.4 / 8
		if f.Units != 0 {
			step = 5
		}
		for _, j := range f.Joints {
			if j.Kind != "Bridle" || j.Into.Role != "rafter" {
				continue
			}
			n++
			lo, hi := slotOf(j)
			if wide := hi - lo; math.Abs(wide/step-math.Round(wide/step)) > 1e-6 {
				t.Errorf("%s: the slot of %s is %.3f mm wide", name, j.ID, wide)
			}
			side := j.Into.Section[0]
			if j.Entered%2 == 1 {
				side = j.Into.Section[1]
			}
			if wide := hi - lo; math.Abs(wide-side/3) > step/2+1e-6 || math.Abs(lo+hi-side) > 1e-6 {
				t.Errorf("%s: the slot of %s lies from %.3f to %.3f of %.3f mm", name, j.ID, lo, hi, side)
			}
		}
	}
	if n == 0 {
		t.Error("no fork")
	}
}

// slotOf returns where the slot of a bridle lies across its receiver, by the
// corners of the cut.
func slotOf(j *geom.Joint) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, c := range j.Into.Cuts {
		if c.Joint != j.ID || !c.Solid.HasRole(geom.RoleWall) {
			continue
		}
		for _, v := range c.Solid.V {
			_, x, _ := j.Axes.Of(j.Into.Place.Out(v))
			lo, hi = min(lo, x), max(hi, x)
		}
	}
	return lo, hi
}
