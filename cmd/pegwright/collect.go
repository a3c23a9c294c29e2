package main

import (
	"runtime"
	"runtime/debug"
	"runtime/metrics"
)

// spare is how much may be allocated between two collections of memory at
// least; with much memory in use it is half of that.
const spare = 60 << 20

// paceCollections lets memory be collected seldom while little is in use: a
// drawing makes and drops many small things, and half of the time would go into
// looking through the same few that stay.
func paceCollections() {
	debug.SetGCPercent(100 * spare / (4 << 20)) // the first comes at 4 MB times that
	again(&watch{sample: []metrics.Sample{{Name: "/gc/heap/live:bytes"}}})
}

// watch is dropped and so found by every collection.
type watch struct {
	sample []metrics.Sample
}

func again(w *watch) {
	runtime.SetFinalizer(w, func(w *watch) {
		metrics.Read(w.sample)
		if s := w.sample[0].Value; s.Kind() == metrics.KindUint64 {
			debug.SetGCPercent(int(max(50, 100*spare/max(s.Uint64(), 1<<20))))
		}
		again(w)
	})
}
