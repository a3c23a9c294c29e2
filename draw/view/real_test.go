//go:build unix

package view_test

import (
	"fmt"
	"runtime"
	"syscall"
	"testing"
	"time"

	"pegwright/draw/view"
	"pegwright/geom/solve"
	"pegwright/geom/spec"
	"pegwright/geom/vec"
	"pegwright/samples/row"
)

// solvedRow returns the cut timbers of so many bents in a row, in frame axes.
func solvedRow(tb testing.TB, bents int) []view.Part {
	tb.Helper()
	d, faults := spec.Read("row.yaml", row.Source(bents), nil)
	if len(faults) > 0 {
		tb.Fatal(faults)
	}
	f, faults := solve.Solve(d)
	if len(faults) > 0 {
		tb.Fatal(faults)
	}
	var parts []view.Part
	for _, t := range f.Timbers {
		parts = append(parts, view.Part{Owner: t.ID, Body: t.NetInFrame()})
	}
	return parts
}

// repeated returns n parts: copies of the row one behind the other, 6 m apart.
func repeated(parts []view.Part, n int) []view.Part {
	var out []view.Part
	for k := 0; len(out) < n; k++ {
		at := vec.Identity
		at.O = vec.V{Y: 6000 * float64(k)}
		for _, p := range parts[:min(len(parts), n-len(out))] {
			p.Owner, p.Body = fmt.Sprintf("%s-%d", p.Owner, k), p.Body.Moved(at)
			out = append(out, p)
		}
	}
	return out
}

// processorTime is how long processors have worked for this process: it leaves
// out what else the machine does.
func processorTime(tb testing.TB) time.Duration {
	tb.Helper()
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		tb.Fatal(err)
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}

// BenchmarkRealTimbers takes 50, 500 and 5,000 cut timbers, of a solved frame
// and copies of it, from cells to drawn lines in elevation and isometric, with
// edges found beforehand. It tells the processor time of each and how much more
// ten times the timbers take: time in proportion would be 10.
func BenchmarkRealTimbers(b *testing.B) {
	parts := solvedRow(b, 72)
	for _, v := range []struct {
		name string
		cam  view.Camera
	}{{"elevation", view.Front()}, {"isometric", view.Isometric()}} {
		before := 0.0
		for _, n := range []int{50, 500, 5000} {
			b.Run(fmt.Sprintf("%s-%d", v.name, n), func(b *testing.B) {
				scene := repeated(parts, n)
				for _, p := range scene {
					p.Body.Edges()
				}
				runtime.GC() // what the scene left is not to be cleared away below
				lines, start := 0, processorTime(b)
				for b.Loop() {
					lines = len(view.Render(v.cam, scene, view.Options{Scale: 0.02}))
				}
				ms := float64((processorTime(b) - start).Microseconds()) / 1e3 / float64(b.N)
				b.ReportMetric(ms, "ms-processor")
				b.ReportMetric(float64(lines), "lines")
				if before > 0 {
					b.ReportMetric(ms/before, "growth")
				}
				before = ms
			})
		}
	}
}
