package crew

import (
	"fmt"
	"runtime"
	"slices"
	"sync/atomic"
	"testing"
)

// Every number is called once, whatever the number of processors, and the
// results come in order.
func TestOrder(t *testing.T) {
	for _, procs := range []int{1, 2, 7} {
		before := runtime.GOMAXPROCS(procs)
		var called [100]atomic.Int32
		var parts []func() []int
		var want []int
		for i := range called {
			for k := range i % 4 {
				want = append(want, 10*i+k)
			}
			parts = append(parts, func() (out []int) {
				called[i].Add(1)
				for k := range i % 4 {
					out = append(out, 10*i+k)
				}
				return out
			})
		}
		if got := Join(parts); !slices.Equal(got, want) {
			t.Errorf("%d processors: %v", procs, got)
		}
		for i := range called {
			if n := called[i].Load(); n != 1 {
				t.Errorf("%d processors: %d called %d times", procs, i, n)
			}
		}
		runtime.GOMAXPROCS(before)
	}
	Each(0, func(int) { t.Error("called for none") })
}

// Of several panics the first by number comes out, after all work has ended.
func TestPanic(t *testing.T) {
	var ended atomic.Int32
	defer func() {
		if r := recover(); fmt.Sprint(r) != "piece 3" || ended.Load() != 18 {
			t.Errorf("recovered %v after %d pieces", r, ended.Load())
		}
	}()
	Each(20, func(i int) {
		if i == 3 || i == 11 {
			panic(fmt.Sprintf("piece %d", i))
		}
		ended.Add(1)
	})
}
