// Package crew shares pieces of work that do not depend on each other among
// the processors. What comes out is in the order asked for, however many
// processors there are.
package crew

import (
	"runtime"
	"sync"
	"sync/atomic"
)

// Each calls do(0) to do(n-1), as many at a time as there are processors
// (GOMAXPROCS), and returns when all have ended. The calls are begun in order
// and must not change what another reads. A panic in one is raised again in the
// caller: of several, that of the least number.
func Each(n int, do func(i int)) {
	var next atomic.Int64
	var all sync.WaitGroup
	crashed := make([]any, n)
	for range min(n, runtime.GOMAXPROCS(0)) {
		all.Go(func() {
			for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
				crashed[i] = caught(do, i)
			}
		})
	}
	all.Wait()
	for _, c := range crashed {
		if c != nil {
			panic(c)
		}
	}
}

// caught calls do(i) and returns what it panicked with, nil if it did not.
func caught(do func(int), i int) (crash any) {
	defer func() { crash = recover() }()
	do(i)
	return nil
}

// Join calls all parts as Each does and returns their results one after the
// other.
func Join[T any](parts []func() []T) []T {
	made := make([][]T, len(parts))
	Each(len(parts), func(i int) { made[i] = parts[i]() })
	var out []T
	for _, m := range made {
		out = append(out, m...)
	}
	return out
}
