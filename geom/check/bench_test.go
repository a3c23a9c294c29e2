//go:build unix

package check_test

import (
	"fmt"
	"syscall"
	"testing"
	"time"

	"pegwright/geom/check"
	"pegwright/geom/solve"
	"pegwright/geom/spec"
	"pegwright/samples/row"
)

// spent returns the processor time that the program has used so far: unlike
// the clock it leaves out what else the machine does.
func spent(b *testing.B) time.Duration {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		b.Fatal(err)
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}

// timed solves a row, its order of assembly included, and proves it, and returns
// the processor time that each took.
func timed(b *testing.B, src []byte) (timbers int, solved, proved time.Duration) {
	d, faults := spec.Read("row", src, nil)
	if len(faults) > 0 {
		b.Fatal(faults)
	}
	start := spent(b)
	f, faults := solve.Solve(d)
	if len(faults) > 0 {
		b.Fatal(faults)
	}
	solved = spent(b) - start
	start = spent(b)
	list := check.Check(f)
	if len(f.Steps) < len(f.Timbers)/2 {
		b.Fatalf("only %d steps for %d timbers", len(f.Steps), len(f.Timbers))
	}
	if len(stops(list)) > 0 {
		b.Fatalf("stops:%s", texts(list))
	}
	return len(f.Timbers), solved, spent(b) - start
}

// BenchmarkGrowth solves, orders and proves frames of about 10, 100 and 1,000 timbers
// and reports how much longer the last takes than the one before: time in
// proportion would be 10, and 15 is the most allowed. The least of three
// times counts.
func BenchmarkGrowth(b *testing.B) {
	rows := [3][]byte{row.Source(2), row.Source(15), row.Source(143)}
	var solved, proved [3]time.Duration
	for b.Loop() {
		for i, src := range rows {
			for range 3 {
				n, s, p := timed(b, src)
				if solved[i] == 0 || s < solved[i] {
					solved[i] = s
				}
				if proved[i] == 0 || p < proved[i] {
					proved[i] = p
				}
				b.ReportMetric(float64((solved[i]+proved[i]).Microseconds())/float64(n), fmt.Sprintf("us/timber-%d", n))
			}
		}
	}
	growth := float64(solved[2]+proved[2]) / float64(solved[1]+proved[1])
	b.ReportMetric(float64(solved[2])/float64(solved[1]), "solve-growth")
	b.ReportMetric(float64(proved[2])/float64(proved[1]), "prove-growth")
	b.ReportMetric(growth, "growth")
	if growth > 15 {
		b.Errorf("1,000 timbers take %.1f times as long as 100", growth)
	}
}
