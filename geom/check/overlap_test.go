package check_test

import (
	"fmt"
	"math"
	"testing"

	"pegwright/geom"
	"pegwright/geom/vec"
	"pegwright/samples/trial"
)

// Brute force, apart from the kernel: points are thrown into the box where two
// timbers could meet and each is asked of the planes of both timbers' blanks
// and cuts. A point inside the wood of both is an overlap.

// shrink is how deep a point must lie inside both timbers to count, in mm:
// faces that bear on each other touch and do not overlap.
const shrink = 0.05

// boxOf returns the extent of a timber's blank in the axes of another.
func boxOf(of, in *geom.Timber) (lo, hi [3]float64) {
	lo = [3]float64{math.Inf(1), math.Inf(1), math.Inf(1)}
	hi = [3]float64{math.Inf(-1), math.Inf(-1), math.Inf(-1)}
	for _, v := range of.Blank.V {
		p := in.Place.In(of.Place.Out(v))
		for i, x := range [3]float64{p.X, p.Y, p.Z} {
			lo[i], hi[i] = min(lo[i], x), max(hi[i], x)
		}
	}
	return
}

// finest is the most points of the grid along each side of the box.
func finest() int {
	if long() {
		return 32
	}
	return 18
}

// sharedPoints counts the points that lie in the wood of both timbers, of one
// thrown into every cell of a grid over the box in which they could meet.
func sharedPoints(a, b *geom.Timber, seed uint64) (hits, thrown int, at vec.V) {
	lo, hi := boxOf(a, a)
	lo2, hi2 := boxOf(b, a)
	var n [3]int
	for i := range 3 {
		lo[i], hi[i] = max(lo[i], lo2[i]), min(hi[i], hi2[i])
		if hi[i]-lo[i] < 2*shrink {
			return 0, 0, at
		}
		n[i] = min(max(int((hi[i]-lo[i])/4), 3), finest())
	}
	r := jitter(seed)
	for i := range n[0] {
		for j := range n[1] {
			for k := range n[2] {
				at3 := [3]float64{}
				for c, m := range [3]int{i, j, k} {
					at3[c] = lo[c] + (hi[c]-lo[c])*(float64(m)+r.Float64())/float64(n[c])
				}
				p := vec.V{X: at3[0], Y: at3[1], Z: at3[2]}
				thrown++
				if clear(a, p, shrink) && clear(b, b.Place.In(a.Place.Out(p)), shrink) {
					hits++
					at = a.Place.Out(p)
				}
			}
		}
	}
	return
}

func TestNoTwoTimbersShareWood(t *testing.T) {
	trial.EachSample(t, func(t *testing.T, f *geom.Frame) {
		all := 0
		for i, a := range f.Timbers {
			for k, b := range f.Timbers[i+1:] {
				hits, thrown, at := sharedPoints(a, b, uint64(i*1000+k))
				all += thrown
				if hits > 0 {
					t.Errorf("%s and %s share wood at %d of %d points, one at %.2f, %.2f, %.2f", a.ID, b.ID, hits, thrown, at.X, at.Y, at.Z)
				}
			}
		}
		if all < 5000 {
			t.Errorf("only %d points were thrown: the test would not see an overlap", all)
		}
	})
}

// Every joint's mortise, housing or notch is left out in turn: then the
// enterer must be found inside its receiver, or the test above proves nothing.
func TestSharedWoodIsSeen(t *testing.T) {
	trial.EachSample(t, func(t *testing.T, f *geom.Frame) {
		tried := 0
		for _, j := range f.Joints {
			for i, c := range j.Into.Cuts {
				if c.Joint != j.ID || c.Name != "mortise" && c.Name != "notch" && c.Name != "slot" {
					continue
				}
				whole := *j.Into
				whole.Cuts = append(append([]geom.Cut{}, j.Into.Cuts[:i]...), j.Into.Cuts[i+1:]...)
				if hits, _, _ := sharedPoints(&whole, j.Of, 7); hits == 0 {
					t.Errorf("%s without its %s: no shared point found", j.ID, c.Name)
				}
				tried++
			}
		}
		if tried == 0 {
			t.Error("no joint was tried")
		}
	})
}

// A timber pushed 2 mm into its neighbour is an overlap for the points and for
// the proof alike.
func TestPushedTimberOverlaps(t *testing.T) {
	trial.EachSample(t, func(t *testing.T, f *geom.Frame) {
		var j *geom.Joint
		for _, x := range f.Joints {
			if x.Kind == "Mortise and tenon" {
				j = x
				break
			}
		}
		was := j.Of.Place.O
		defer func() { j.Of.Place.O = was }()
		j.Of.Place.O = was.Sub(j.Axes.W.Mul(2))
		if hits, _, _ := sharedPoints(j.Into, j.Of, 3); hits == 0 {
			t.Error("the points do not see it")
		}
		if got := stops(proofs(f)); fmt.Sprint(got) == "[]" || got[0] != "overlap" && !contains(got, "overlap") {
			t.Errorf("the proof reports %v", got)
		}
	})
}

func contains(list []string, s string) bool {
	for _, x := range list {
		if x == s {
			return true
		}
	}
	return false
}
