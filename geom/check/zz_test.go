package check_test

import (
	"fmt"
	"math/rand/v2"
	"pegwright/geom/finding"
	"pegwright/geom/solve"
	"pegwright/geom/spec"
	"pegwright/samples"
	"regexp"
	"testing"
	"time"
)

var fg = regexp.MustCompile(`\b\d+(\.\d+)?\b`)

func TestZZ(t *testing.T) {
	r := rand.New(rand.NewPCG(77, 4))
	seen := map[string]bool{}
	start := time.Now()
	for i := 0; time.Since(start) < 60*time.Second; i++ {
		names := samples.Names()
		s, _ := samples.Source(names[r.IntN(len(names))])
		src := string(s)
		other := []string{"0", "1", "2", "3", "5", "7", "0.01", "12", "25", "40", "100", "999", "5000", "100000"}
		for range 1 + r.IntN(3) {
			all := fg.FindAllStringIndex(src, -1)
			at := all[r.IntN(len(all))]
			src = src[:at[0]] + other[r.IntN(len(other))] + src[at[1]:]
		}
		func() {
			defer func() {
				if e := recover(); e != nil {
					k := fmt.Sprint(e)
					if !seen[k] {
						seen[k] = true
						t.Errorf("PANIC %v\n%s", e, src)
					}
				}
			}()
			d, fs := spec.Read("x", []byte(src), nil)
			if len(fs) > 0 {
				return
			}
			t0 := time.Now()
			f, fs := solve.Solve(d)
			if len(fs) > 0 {
				return
			}
			list := proofs(f)
			if dt := time.Since(t0); dt > 3*time.Second {
				t.Logf("SLOW %v %d timbers", dt, len(f.Timbers))
			}
			for _, x := range list {
				if x.Severity == finding.Stop {
					k := x.Rule + pattern(x.Text)
					if !seen[k] {
						seen[k] = true
						t.Logf("STOP %s: %s", x.Rule, x.Text)
					}
					if x.At.Line == 0 {
						if !seen["noline"+x.Rule] {
							seen["noline"+x.Rule] = true
							t.Logf("NOLINE %s %s\n%s", x.Rule, x.Text, src)
						}
					}
				}
			}
			for _, tm := range f.Timbers {
				if err := tm.Net.Valid(); err != nil {
					k := "valid"
					stick := false
					for _, x := range list {
						if x.Rule == "stick" {
							stick = true
						}
					}
					if !stick && !seen[k] {
						seen[k] = true
						t.Errorf("INVALID %s %v\n%s", tm.ID, err, src)
					}
				}
			}
		}()
		if time.Since(start) > 59*time.Second {
			t.Log(i)
		}
	}
}
