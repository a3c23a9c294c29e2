package check_test

import (
	"math"
	"testing"

	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/joint"
	"pegwright/geom/spec"
	"pegwright/geom/vec"
	"pegwright/samples"
	"pegwright/samples/trial"
)

// sides counts the four long sides of the enterer's ideal timber that its
// tenon reaches: two for a tenon with a shoulder on either cheek, three for a
// barefaced one, none for one with shoulders all round.
func sides(j *geom.Joint) int {
	n := 0
	for face := 1; face <= 4; face++ {
		pl := j.Of.IdealPlane(face).Moved(j.Of.Place)
		if _, hi := j.Tenon.Extent(pl.N); math.Abs(hi-pl.D) < 1e-3 {
			n++
		}
	}
	return n
}

// squareTenon reports whether j is a tenon that is not cut at an angle.
func squareTenon(j *geom.Joint) bool { return j.Kind == "Mortise and tenon" && !j.Tenon.Empty() }

// opposite reports whether the tenons of two joints come into one timber from
// opposite faces, on one line.
func opposite(j, k *geom.Joint) bool {
	if j.Into != k.Into || j.Tenon.Empty() || k.Tenon.Empty() || j.Axes.W.Dot(k.Axes.W) > -0.999 {
		return false
	}
	for _, d := range [2]vec.V{j.Axes.U, j.Axes.V} {
		lo, hi := j.Tenon.Extent(d)
		lo2, hi2 := k.Tenon.Extent(d)
		if min(hi, hi2)-max(lo, lo2) < 10 {
			return false
		}
	}
	return true
}

// haunched reports whether the tenon is held back and a shallow tenon left
// beside it: the enterer's wood beyond its shoulder is more than the tenon.
func haunched(j *geom.Joint) bool {
	if !squareTenon(j) || sides(j) != 1 {
		return false
	}
	beyond := 0.0
	for _, c := range j.Of.NetInFrame().Cells() {
		beyond += c.Clip(j.Bearing, "").Volume()
	}
	return beyond > j.Tenon.Volume()+1000
}

// variants are the ways to cut a joint that a sample must show, each told by
// the geometry alone.
var variants = map[string]func(f *geom.Frame, j *geom.Joint) bool{
	"haunch":         func(_ *geom.Frame, j *geom.Joint) bool { return haunched(j) },
	"barefaced":      func(_ *geom.Frame, j *geom.Joint) bool { return squareTenon(j) && sides(j) == 3 },
	"four shoulders": func(_ *geom.Frame, j *geom.Joint) bool { return squareTenon(j) && sides(j) == 0 },
	"proud":          func(_ *geom.Frame, j *geom.Joint) bool { return squareTenon(j) && j.Proud > 1 },
	"two pegs":       func(_ *geom.Frame, j *geom.Joint) bool { return squareTenon(j) && len(j.Pegs) == 2 },
	"diminished housing": func(_ *geom.Frame, j *geom.Joint) bool {
		tilt := j.Bearing.N.Dot(j.Axes.W)
		return !j.Tenon.Empty() && tilt < 1-1e-6 && tilt > 0.9
	},
	"opposed tenons": func(f *geom.Frame, j *geom.Joint) bool {
		for _, k := range f.JointsOf(j.Into) {
			if opposite(j, k) {
				return true
			}
		}
		return false
	},
	"key":   func(_ *geom.Frame, j *geom.Joint) bool { return len(j.Pieces) > 0 && j.Pieces[0].Kind == "key" },
	"wedge": func(_ *geom.Frame, j *geom.Joint) bool { return len(j.Pieces) > 0 && j.Pieces[0].Kind == "wedge" },
}

// Every kind of joint and every variant is to be seen in a sample.
func TestFramesShowEveryJoint(t *testing.T) {
	missing := map[string]bool{}
	for _, n := range joint.Names() {
		k, _ := joint.Lookup(n)
		missing[k.Title] = true
	}
	for n := range variants {
		missing[n] = true
	}
	for _, f := range trial.Samples(t) {
		for _, j := range f.Joints {
			delete(missing, j.Kind)
			for n, shows := range variants {
				if missing[n] && shows(f, j) {
					delete(missing, n)
				}
			}
		}
	}
	for n := range missing {
		t.Errorf("no sample shows: %s", n)
	}
}

// The footbridge, where the rare joints are, needs no more than notes.
func TestFootbridgeIsSound(t *testing.T) {
	for _, x := range proofs(trial.Sample(t, "footbridge")) {
		if x.Severity != finding.Note {
			t.Errorf("%v: %s", x.Rule, x.Text)
		}
	}
}

// A floor and a loft are to be seen in a sample.
func TestSamplesShowFloorAndLoft(t *testing.T) {
	floor, loft := false, false
	for _, name := range samples.Names() {
		src, _ := samples.Source(name)
		d, faults := spec.Read(name+".yaml", src, nil)
		if len(faults) > 0 {
			t.Fatal(faults)
		}
		floor, loft = floor || d.Building.Floor.Set, loft || d.Building.Loft.Set
	}
	if !floor || !loft {
		t.Errorf("a floor: %v, a loft: %v", floor, loft)
	}
}
