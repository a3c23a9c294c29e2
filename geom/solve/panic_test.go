package solve_test

import (
	"math/rand/v2"
	"regexp"
	"testing"

	"pegwright/geom/finding"
	"pegwright/samples"
	"pegwright/samples/trial"
)

// figures are the lengths and counts of a description.
var figures = regexp.MustCompile(`\b\d+(\.\d+)?\b`)

// spoilt returns a description with one to three of its numbers changed.
func spoilt(r *rand.Rand, src string) string {
	other := []string{"0", "1", "2", "3", "7", "0.01", "12", "25", "40", "100", "999", "5000", "100000"}
	for range 1 + r.IntN(3) {
		all := figures.FindAllStringIndex(src, -1)
		at := all[r.IntN(len(all))]
		src = src[:at[0]] + other[r.IntN(len(other))] + src[at[1]:]
	}
	return src
}

// Whatever the numbers, a description is either solved or faulted with a place
// and a mend; nothing panics, and a solved frame holds no bad number.
func TestSpoiltSamplesNeverPanic(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 4))
	trials := 40
	if long() {
		trials = 300
	}
	solvedN, faulted := 0, 0
	for range trials {
		names := samples.Names()
		src, _ := samples.Source(names[r.IntN(len(names))])
		text := spoilt(r, string(src))
		func() {
			defer func() {
				if e := recover(); e != nil {
					t.Errorf("panic: %v\n%s", e, text)
				}
			}()
			f, faults := trial.Solve("test.yaml", text)
			if len(faults) > 0 {
				faulted++
				placed(t, faults, text)
				return
			}
			solvedN++
			for _, tm := range f.Timbers {
				if !(tm.NetVolume > 0) || !(tm.Length > 0) || !tm.Place.O.Finite() {
					t.Errorf("%s: volume %g, length %g, at %v\n%s", tm.ID, tm.NetVolume, tm.Length, tm.Place.O, text)
				}
			}
		}()
	}
	if solvedN == 0 || faulted == 0 {
		t.Errorf("%d solved, %d faulted", solvedN, faulted)
	}
}

func placed(t *testing.T, faults finding.Faults, text string) {
	for _, x := range faults {
		if x.At.Line == 0 || x.At.Col == 0 || x.Text == "" {
			t.Errorf("no place: %v\n%s", x, text)
		}
	}
}
