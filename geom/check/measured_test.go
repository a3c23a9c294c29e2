package check_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/measure"
	"pegwright/samples"
	"pegwright/samples/trial"
)

// The square rule: however much wood a stick has round its ideal timber, down
// to none and up to 1/4 in over nominal, every joint is cut to the same planes.

// measuredRounds is how often every sample is measured anew. More are run with
// PEGWRIGHT_ROUNDS=n.
func measuredRounds(t *testing.T) int {
	if v := os.Getenv("PEGWRIGHT_ROUNDS"); v != "" {
		n, err := strconv.Atoi(v)
		if err != nil {
			t.Fatal(err)
		}
		return n
	}
	if long() {
		return 2
	}
	return 1
}

// given is a description without its list of measured sticks.
func given(src string) string {
	return regexp.MustCompile(`(?m)^measured:\n(?:[ \t]+.*\n)*`).ReplaceAllString(src, "")
}

// asWritten returns a timber's sizes along y and z in the order in which its
// section is written: level width by depth, or off the outside face first.
func asWritten(tm *geom.Timber, s [2]float64) [2]float64 {
	level := math.Abs(tm.Place.Y.Z) < math.Abs(tm.Place.Z.Z)
	if math.Abs(tm.Place.X.Z) > 0.999 {
		level = tm.FaceNames[0] == "outside" || tm.FaceNames[0] == "south"
		if tm.Role == "king post" || tm.Role == "queen post" { // which have no outside
			level = tm.FaceNames[0] == "south side" || tm.FaceNames[0] == "north side"
		}
	}
	if level {
		return s
	}
	return [2]float64{s[1], s[0]}
}

// sizes writes a measured size in the file's unit, to 1e-4.
func sizes(f *geom.Frame, s [2]float64) string {
	per := 25.4
	if f.Units == measure.Metric {
		per = 1
	}
	return fmt.Sprintf("%.4f x %.4f", s[0]/per, s[1]/per)
}

// measuredAtRandom lists every stick of a frame with sizes drawn at random.
func measuredAtRandom(f *geom.Frame, r *rand.Rand) string {
	var b strings.Builder
	b.WriteString("measured:\n")
	for _, tm := range f.Timbers {
		ideal, nominal := asWritten(tm, tm.Ideal), asWritten(tm, tm.Section)
		var end [2]string
		for i := range end {
			var s [2]float64
			for k := range s {
				switch r.IntN(4) {
				case 0:
					s[k] = ideal[k] + 0.01 // as small as a stick may be
				case 1:
					s[k] = nominal[k] + 25.4/4
				default:
					s[k] = ideal[k] + 0.01 + r.Float64()*(nominal[k]+25.4/4-ideal[k]-0.01)
				}
			}
			end[i] = sizes(f, s)
		}
		fmt.Fprintf(&b, "  %s: {start: %s, end: %s}\n", tm.ID, end[0], end[1])
	}
	return b.String()
}

func TestMeasuredSticksKeepTheirJoints(t *testing.T) {
	for i, name := range samples.Names() {
		t.Run(name, func(t *testing.T) {
			raw, _ := samples.Source(name)
			src := given(string(raw))
			plain := trial.Frame(t, name, src)
			r := jitter(uint64(70 + i))
			for round := range measuredRounds(t) {
				list := measuredAtRandom(plain, r)
				f := trial.Frame(t, name, src+"\n"+list)
				found := proofs(f)
				if len(stops(found)) > 0 {
					t.Fatalf("round %d: stops:%s\n%s", round, texts(found), list)
				}
				unmoved(t, plain, f)
				if t.Failed() {
					t.Fatalf("round %d:\n%s", round, list)
				}
			}
		})
	}
}

// unmoved holds the joints of a measured frame against those of the same frame
// in nominal sticks.
func unmoved(t *testing.T, plain, f *geom.Frame) {
	changed := 0
	for i, j := range plain.Joints {
		k := f.Joints[i]
		if j.ID != k.ID {
			t.Fatalf("joint %d is %s, was %s", i, k.ID, j.ID)
		}
		same := func(what string, a, b float64) {
			if math.Abs(a-b) > 1e-6 {
				t.Errorf("%s: %s is %.6f, was %.6f", j.ID, what, b, a)
			}
		}
		if !j.Tenon.Empty() {
			same("bearing plane", j.Bearing.D, k.Bearing.D)
			same("direction of the bearing plane", 0, j.Bearing.N.Dist(k.Bearing.N))
			same("tenon", j.Tenon.Volume(), k.Tenon.Volume())
		}
		if len(j.Pegs) != len(k.Pegs) || len(j.Places) != len(k.Places) {
			t.Fatalf("%s: %d pegs and %d places, were %d and %d", j.ID, len(k.Pegs), len(k.Places), len(j.Pegs), len(j.Places))
		}
		for n, p := range j.Pegs {
			q := k.Pegs[n]
			same("mortise hole of "+p.ID, 0, p.Mortise.Dist(q.Mortise))
			same("tenon hole of "+p.ID, 0, p.Tenon.Dist(q.Tenon))
			same("a of "+p.ID, p.A, q.A)
			same("b of "+p.ID, p.B, q.B)
		}
		for n, p := range j.Places {
			if strings.Contains(p.Label, "shoulder") {
				same(p.Label, p.X, k.Places[n].X)
			}
		}
		if math.Abs(j.LetIn-k.LetIn) > 0.1 {
			changed++
		}
	}
	for i, tm := range plain.Timbers {
		if math.Abs(tm.Length-f.Timbers[i].Length) > 1e-6 {
			t.Errorf("%s is %.6f long, was %.6f", tm.ID, f.Timbers[i].Length, tm.Length)
		}
		if tm.NetVolume != f.Timbers[i].NetVolume {
			changed++
		}
	}
	if changed < len(plain.Timbers)/2 {
		t.Errorf("only %d housings and volumes changed: the sticks were not measured", changed)
	}
}

// A stick under its ideal by 1/16 in, anywhere in a frame, is stopped at its
// own line, with the mend, and no other stop is raised for it.
func TestSticksUnderTheirIdealAreStopped(t *testing.T) {
	for n, name := range samples.Names() {
		t.Run(name, func(t *testing.T) {
			raw, _ := samples.Source(name)
			src := given(string(raw))
			plain := trial.Frame(t, name, src)
			which := []int{0, len(plain.Timbers) / 2, len(plain.Timbers) - 1}
			if !long() {
				which = which[n%3 : n%3+1]
			}
			for _, i := range which {
				tm := plain.Timbers[i]
				s := asWritten(tm, tm.Ideal)
				s[i%2] -= 25.4 / 16
				all := src + fmt.Sprintf("\nmeasured:\n  %s: {start: %s}\n", tm.ID, sizes(plain, s))
				line := strings.Count(all, "\n")
				var hits []finding.Finding
				for _, x := range proofs(trial.Frame(t, name, all)) {
					if x.Severity == finding.Stop {
						hits = append(hits, x)
					}
				}
				if len(hits) != 1 || hits[0].Rule != "stick" || hits[0].At.Line != line || hits[0].Mend == "" || !strings.Contains(hits[0].Text, "under its ideal") {
					t.Errorf("%s: want one stop at line %d, got %+v", tm.ID, line, hits)
				}
			}
		})
	}
}
