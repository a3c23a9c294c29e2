//go:build unix

package check_test

import (
	"fmt"
	"strings"
	"syscall"
	"testing"
	"time"

	"pegwright/geom/check"
	"pegwright/geom/solve"
	"pegwright/geom/spec"
)

// row describes n bents of two posts, a tie and two braces, 10 ft apart, with
// girts between them: 5n + 2(n - 1) timbers, all joined and pegged.
func row(n int) []byte {
	var b, j strings.Builder
	b.WriteString("frame: Row\nunits: in\ntimbers:\n")
	tenon := func(of, end, into string) {
		fmt.Fprintf(&j, "  - {kind: mortise and tenon, of: %s, end: %s, into: %s}\n", of, end, into)
	}
	for i := range n {
		x := 120 * i
		fmt.Fprintf(&b, "  ps-%d: {role: post, section: 8 x 8, from: [%d, 0, 0], to: [%d, 0, 108], faces: [south, west]}\n", i, x, x)
		fmt.Fprintf(&b, "  pn-%d: {role: post, section: 8 x 8, from: [%d, 144, 0], to: [%d, 144, 108], faces: [north, west]}\n", i, x, x)
		fmt.Fprintf(&b, "  tie-%d: {role: tie, section: 8 x 9, from: [%d, 8, 96], to: [%d, 136, 96], faces: [top, west]}\n", i, x, x)
		fmt.Fprintf(&b, "  bs-%d: {role: brace, section: 4 x 6, between: [ps-%d, tie-%d], legs: 30 x 30, toward: north}\n", i, i, i)
		fmt.Fprintf(&b, "  bn-%d: {role: brace, section: 4 x 6, between: [pn-%d, tie-%d], legs: 30 x 30, toward: south}\n", i, i, i)
		tenon(fmt.Sprintf("tie-%d", i), "start", fmt.Sprintf("ps-%d", i))
		tenon(fmt.Sprintf("tie-%d", i), "end", fmt.Sprintf("pn-%d", i))
		if i == 0 {
			continue
		}
		for k, y := range []int{0, 144} {
			side := []string{"s", "n"}[k]
			fmt.Fprintf(&b, "  g%s-%d: {role: girt, section: 5 x 5, from: [%d, %d, 36], to: [%d, %d, 36], faces: [top, %s]}\n",
				side, i, x-112, y, x, y, []string{"south", "north"}[k])
			for _, end := range []string{"start", "end"} {
				at := i - 1
				if end == "end" {
					at = i
				}
				fmt.Fprintf(&j, "  - {kind: mortise and tenon, of: g%s-%d, end: %s, into: p%s-%d, tenon length: 2.5, off shoulder: 1.25}\n", side, i, end, side, at)
			}
		}
	}
	return []byte(b.String() + "joints:\n" + j.String())
}

// spent returns the processor time that the program has used so far: unlike
// the clock it leaves out what else the machine does.
func spent(b *testing.B) time.Duration {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		b.Fatal(err)
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}

// timed solves and proves a row and returns the processor time that each took.
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
	if len(stops(list)) > 0 {
		b.Fatalf("stops:%s", texts(list))
	}
	return len(f.Timbers), solved, spent(b) - start
}

// BenchmarkGrowth solves and proves frames of about 10, 100 and 1,000 timbers
// and reports how much longer the last takes than the one before: time in
// proportion would be 10, and 15 is the most allowed. The least of three
// times counts.
func BenchmarkGrowth(b *testing.B) {
	rows := [3][]byte{row(2), row(15), row(143)}
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
