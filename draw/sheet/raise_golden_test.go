package sheet

import (
	"flag"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"pegwright/samples/trial"
)

var update = flag.Bool("update", false, "rewrite the golden files")

// The raising sheet of the smallest sample is as it was when last looked at:
// words exactly, numbers to 2e-3 mm. It proves no number right: it shows which
// one changed.
func TestGoldenRaise(t *testing.T) {
	const path = "../../golden/rail-and-post.raise.txt"
	sheets := Raise(trial.Sample(t, "rail-and-post"))
	got := withoutBlock(sheets[len(sheets)-1].Dump())
	if *update {
		if err := os.WriteFile(filepath.FromSlash(path), []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(filepath.FromSlash(path))
	if err != nil {
		t.Fatal(err)
	}
	g, w := strings.Split(got, "\n"), strings.Split(string(want), "\n")
	if len(g) != len(w) {
		t.Errorf("%d lines, want %d", len(g), len(w))
	}
	for i := range min(len(g), len(w)) {
		if !nearlySame(g[i], w[i]) {
			t.Fatalf("line %d:\n got %s\nwant %s", i+1, g[i], w[i])
		}
	}
}

// withoutBlock leaves border and title block out of a dump: every sheet has them.
func withoutBlock(dump string) string {
	var kept []string
	for _, l := range strings.Split(dump, "\n") {
		if !strings.Contains(l, `layer="title"`) && !strings.Contains(l, `layer="border"`) {
			kept = append(kept, l)
		}
	}
	return strings.Join(kept, "\n")
}

// nearlySame compares two lines word by word, numbers to 2e-3.
func nearlySame(a, b string) bool {
	cut := func(r rune) bool { return strings.ContainsRune(" ,()[]{}=:", r) }
	x, y := strings.FieldsFunc(a, cut), strings.FieldsFunc(b, cut)
	if len(x) != len(y) {
		return false
	}
	for i := range x {
		p, errP := strconv.ParseFloat(x[i], 64)
		q, errQ := strconv.ParseFloat(y[i], 64)
		if errP == nil && errQ == nil && math.Abs(p-q) <= 2e-3 {
			continue
		}
		if x[i] != y[i] {
			return false
		}
	}
	return true
}
