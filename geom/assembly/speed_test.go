//go:build unix

package assembly_test

import (
	"strings"
	"syscall"
	"testing"
	"time"

	"pegwright/geom/assembly"
	"pegwright/samples"
	"pegwright/samples/trial"
)

// processorTime returns the processor time that the program has used so far.
func processorTime(t *testing.T) time.Duration {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		t.Fatal(err)
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}

// A long store on scarfed sills and plates, of 450 timbers, is solved and put in
// order within three seconds of processor time (a limit of our own), and an
// order that is stuck at every bent, because the feet of its braces are too
// long to be turned up, is told as soon.
func TestOrderOfALongStore(t *testing.T) {
	if testing.Short() {
		t.Skip("takes some seconds")
	}
	src, _ := samples.Source("apiary-store")
	long := strings.NewReplacer("bays: [length]", "bays: [length"+strings.Repeat(", length", 19)+"]",
		", ridge: beam", "", "timbers: {", "timbers: {longest: 20', ").Replace(string(src))
	const stuck = `frame: Stuck
units: in
sections: {post: 7 x 7, plate: 7 x 7, tie: 7 x 9, girt: 6 x 5, sill: 6 x 9, brace: 4 x 5}
building:
  span: 180
  bays: [140, 140, 140, 140, 140, 140]
  eave: 106
  ties: over plates
  sills: yes
  cross sills: at bents
  girts: {height: [58, 36], in: [gable walls, north, east]}
  braces:
    - {legs: 33 x 33, in: [walls]}
    - {legs: 27 x 27, in: [walls], go: down}
`
	for _, c := range []struct {
		src   string
		least int
	}{{long, 440}, {stuck, 80}} {
		start := processorTime(t)
		f := trial.Frame(t, "test.yaml", c.src)
		assembly.Plan(f)
		if spent := processorTime(t) - start; spent > 3*time.Second {
			t.Errorf("%s: %d timbers took %v", f.Title, len(f.Timbers), spent)
		}
		if len(f.Timbers) < c.least || len(f.Steps) < len(f.Timbers)/2 {
			t.Errorf("%s: %d timbers, %d steps", f.Title, len(f.Timbers), len(f.Steps))
		}
		if c.src == stuck && len(against(f)) == 0 {
			t.Errorf("%s: nothing stands against it", f.Title)
		}
	}
}
