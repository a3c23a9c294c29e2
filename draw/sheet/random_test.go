package sheet

import (
	"fmt"
	"math/rand/v2"
	"sync/atomic"
	"testing"

	"pegwright/draw/block"
	"pegwright/draw/sheet/tidy"
	"pegwright/geom"
	"pegwright/samples/trial"
)

// lot is a building drawn at random, and paper to draw it on.
func lot(i int) string {
	src := trial.Building(rand.New(rand.NewPCG(17, uint64(i))))
	sizes := []string{"letter", "a4", "tabloid", "a3", "legal", "arch c"}
	paper := sizes[rand.New(rand.NewPCG(18, uint64(i))).IntN(len(sizes))]
	return fmt.Sprintf("%spaper: {sheets: %s}\n", src, paper)
}

// Sheets of frames drawn by lot keep their layout: no two texts overlap, none is
// struck by a part's line, nothing leaves its border, no figure is too small,
// and no sheet is left nearly empty. PEGWRIGHT_FRAMES asks for more than a few.
func TestRandomFramesKeepTheirLayout(t *testing.T) {
	n := trial.Count(2)
	var drawn atomic.Int32
	t.Run("frames", func(t *testing.T) {
		for i := range n {
			t.Run(fmt.Sprint(i), func(t *testing.T) {
				t.Parallel()
				src := lot(i)
				f, faults := trial.Solve("random", src)
				if faults.Err() != nil || f == nil {
					return // such a frame cannot be, and says so
				}
				drawn.Add(1)
				keepsLayout(t, f)
				if t.Failed() {
					t.Log(src)
				}
			})
		}
	})
	t.Logf("%d of %d frames drawn", drawn.Load(), n)
	if int(drawn.Load())*2 < n {
		t.Errorf("only %d of %d frames could be drawn", drawn.Load(), n)
	}
}

func keepsLayout(t *testing.T, f *geom.Frame) {
	sheets := All(f, nil)
	for k, s := range sheets {
		block.Number(s, k+1, len(sheets), "0123456789ab")
		for _, fault := range append(tidy.Faults(s), tidy.Empty(s)...) {
			t.Error(fault)
		}
	}
}
