package check_test

import (
	"math/rand/v2"
	"os"
	"strings"

	"pegwright/geom"
	"pegwright/geom/check"
	"pegwright/geom/finding"
	"pegwright/geom/vec"
)

// long reports whether all cases are asked for, and not only the few of an
// ordinary run: PEGWRIGHT_LONG is set.
func long() bool { return os.Getenv("PEGWRIGHT_LONG") != "" }

// stops returns the rules of the stop findings, each once, in order.
func stops(list []finding.Finding) []string {
	var r []string
	seen := map[string]bool{}
	for _, x := range list {
		if x.Severity == finding.Stop && !seen[x.Rule] {
			seen[x.Rule] = true
			r = append(r, x.Rule)
		}
	}
	return r
}

func texts(list []finding.Finding) string {
	var b strings.Builder
	for _, x := range list {
		if x.Severity == finding.Stop {
			b.WriteString("\n  " + x.Rule + ": " + x.Text)
		}
	}
	return b.String()
}

func proofs(f *geom.Frame) []finding.Finding { return check.Check(f) }

// clear reports whether the point lies in the wood of a timber and at least
// gap mm away from every one of its surfaces, bores left out. It asks the
// planes of the blank and of the cuts, not the cells that the kernel made.
func clear(tm *geom.Timber, p vec.V, gap float64) bool {
	for _, f := range tm.Blank.Faces {
		if f.Plane.N.Dot(p)-f.Plane.D > -gap {
			return false
		}
	}
	for _, c := range tm.Cuts {
		inside := true
		for _, f := range c.Solid.Faces {
			if f.Plane.N.Dot(p)-f.Plane.D > gap {
				inside = false
				break
			}
		}
		if inside {
			return false
		}
	}
	return true
}

// jitter returns a source of random numbers that is the same on every run.
func jitter(seed uint64) *rand.Rand { return rand.New(rand.NewPCG(seed, 20260501)) }
