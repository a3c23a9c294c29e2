package templates

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"pegwright/draw"
	"pegwright/samples/trial"
)

// Templates of frames drawn by lot keep their layout. PEGWRIGHT_FRAMES asks for
// more than a few. To look at one of them, say 17:
//
//	PEGWRIGHT_FRAMES=18 TEMPLATES_OUT=/tmp go test ./templates -run 'Random.*/^17$'
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
			sheets := Sheets(f, nil)
			for _, s := range sheets {
				readable(t, s.ID, s)
			}
			lookAt(t, fmt.Sprint("random-", i), sheets)
			if t.Failed() {
				t.Log(src)
			}
		})
	}
}

// lookAt writes the sheets as a PDF into the folder that TEMPLATES_OUT names,
// where it names one.
func lookAt(t *testing.T, name string, sheets []*draw.Sheet) {
	t.Helper()
	dir := os.Getenv("TEMPLATES_OUT")
	if dir == "" {
		return
	}
	_, data, err := pagesOf(sheets, name)
	if err == nil {
		err = os.WriteFile(filepath.Join(dir, name+".pdf"), data, 0o644)
	}
	if err != nil {
		t.Error(err)
	}
}
