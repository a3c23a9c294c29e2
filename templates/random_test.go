package templates

import (
	"fmt"
	"math/rand/v2"
	"os"
	"strconv"
	"testing"

	"pegwright/samples/trial"
)

// Templates of frames drawn by lot keep their layout. PEGWRIGHT_FRAMES asks for
// more than a few.
func TestRandomFramesCanBeRead(t *testing.T) {
	n := 2
	if v, err := strconv.Atoi(os.Getenv("PEGWRIGHT_FRAMES")); err == nil {
		n = v
	}
	for i := range n {
		t.Run(fmt.Sprint(i), func(t *testing.T) {
			t.Parallel()
			src := trial.Building(rand.New(rand.NewPCG(17, uint64(i))))
			f, faults := trial.Solve("random", src)
			if faults.Err() != nil || f == nil {
				return // such a frame cannot be, and says so
			}
			for _, s := range Sheets(f, nil) {
				readable(t, s.ID, s)
			}
			if t.Failed() {
				t.Log(src)
			}
		})
	}
}
