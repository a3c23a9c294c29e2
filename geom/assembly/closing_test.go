package assembly_test

import (
	"math"
	"slices"
	"testing"

	"pegwright/geom"
	"pegwright/samples/trial"
)

// Every straight step and the joints that it closes tell one motion: the joint's
// last move is that of the step, seen from what enters.
func TestJointsCloseAsTheirStepsMove(t *testing.T) {
	n := 0
	for _, name := range trial.Drawn() {
		f := trial.Sample(t, name)
		for _, s := range f.Steps {
			if s.Motion != geom.Straight || len(s.Legs) != 1 {
				continue
			}
			for _, id := range s.Joints {
				j := f.Joint(id)
				d := s.Direction()
				if slices.Contains(s.Move, j.Into.ID) {
					d = d.Neg()
				}
				n++
				if got := j.Moves[len(j.Moves)-1].Direction; got.Sub(d).Len() > 1e-6 {
					t.Errorf("%s: %s closes along %v, its step moves along %v", name, id, got, d)
				}
			}
		}
	}
	if n == 0 {
		t.Error("no joint is closed by a straight step")
	}
}

// The north bearers of the footbridge lie in notches of the caps, which forbid that
// one slides into its scarf from the side: it is lowered, and the scarf holds over
// the height of its butts, 2 in as its table of sizes says. The queen posts of the
// shelter stand plumb in tenons of 92 mm square to a principal at 40°: lowered plumb
// over them it comes down by 92 / cos 40° mm.
func TestJointsTellTheProvenWay(t *testing.T) {
	for _, c := range []struct {
		sample, joint string
		z, long       float64
	}{
		{"footbridge", "bearer-north-east-into-bearer-north-west", -1, 2 * 25.4},
		{"fair-shelter", "queen-post-1-south-into-principal-1-south", 1, 92 / math.Cos(40*math.Pi/180)},
	} {
		m := trial.Sample(t, c.sample).Joint(c.joint).Moves
		if len(m) != 1 || math.Abs(m[0].Direction.Z-c.z) > 1e-9 || math.Abs(m[0].Distance-c.long) > 1e-6 {
			t.Errorf("%s: %v, want %v up by %.2f", c.joint, m, c.z, c.long)
		}
	}
}
