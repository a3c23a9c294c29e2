package assembly_test

import (
	"fmt"
	"strings"
	"testing"

	"pegwright/geom"
	"pegwright/geom/assembly"
	"pegwright/geom/check"
	"pegwright/samples/trial"
)

// village returns generated buildings of nine bays side by side, n timbers or a
// little more in all: a building may be no longer than its longest stick.
func village(t testing.TB, n int) *geom.Frame {
	bays := strings.TrimSuffix(strings.Repeat("10', ", max(1, min(9, n/20-1))), ", ")
	f := trial.Frame(t, "test.yaml", fmt.Sprintf(barn, bays, "yes", "eave walls"))
	whole := *f
	for k := 1; len(whole.Timbers) < n; k++ {
		to := map[*geom.Timber]*geom.Timber{}
		for _, x := range f.Timbers {
			c := *x
			c.ID = fmt.Sprintf("%s-%d", x.ID, k)
			c.Place.O.Y += 6000 * float64(k)
			if c.Bent > 0 {
				c.Bent += 10 * k
			}
			if c.Bay > 0 {
				c.Bay += 10 * k
			}
			to[x] = &c
			whole.Timbers = append(whole.Timbers, &c)
		}
		for _, j := range f.Joints {
			c := *j
			c.ID, c.Into, c.Of, c.Pegs = fmt.Sprintf("%s-%d", j.ID, k), to[j.Into], to[j.Of], nil
			for _, g := range j.Pegs {
				g.ID = fmt.Sprintf("%s-%d", g.ID, k)
				g.From.Y += 6000 * float64(k)
				g.To.Y += 6000 * float64(k)
				c.Pegs = append(c.Pegs, g)
			}
			whole.Joints = append(whole.Joints, &c)
		}
	}
	return &whole
}

func BenchmarkPlan(b *testing.B) {
	for _, n := range []int{10, 100, 1000} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			f := village(b, n)
			b.ResetTimer()
			for range b.N {
				steps, finds := assembly.Plan(f)
				if len(steps) < n/2 {
					b.Fatalf("%d steps for %d timbers: %v", len(steps), len(f.Timbers), finds)
				}
			}
			b.ReportMetric(float64(len(f.Timbers)), "timbers")
		})
	}
}

func BenchmarkProveToCompare(b *testing.B) {
	for _, n := range []int{100, 1000} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			f := village(b, n)
			b.ResetTimer()
			for range b.N {
				check.Check(f)
			}
		})
	}
}
