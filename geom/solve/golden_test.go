package solve_test

import (
	"flag"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"pegwright/samples"
	"pegwright/samples/trial"
)

var update = flag.Bool("update", false, "rewrite the golden files")

// TestGolden holds the solved samples against what they were when last looked
// at. It proves no number right: it shows which one changed.
func TestGolden(t *testing.T) {
	for _, name := range samples.Names() {
		src, _ := samples.Source(name)
		f := trial.Frame(t, name+".yaml", string(src))
		got := f.Dump()
		path := filepath.Join("..", "..", "golden", name+".frame.txt")
		if *update {
			if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		differ(t, name, got, string(want))
	}
}

// differ compares two dumps: words exactly, numbers to 2e-3 mm, so that another
// architecture's rounding does not matter.
func differ(t *testing.T, name, got, want string) {
	t.Helper()
	g, w := strings.Split(got, "\n"), strings.Split(want, "\n")
	if len(g) != len(w) {
		t.Errorf("%s: %d lines, want %d", name, len(g), len(w))
	}
	for i := range min(len(g), len(w)) {
		if !same(strings.Fields(g[i]), strings.Fields(w[i])) {
			t.Errorf("%s line %d:\n got %s\nwant %s", name, i+1, g[i], w[i])
			return
		}
	}
}

func same(a, b []string) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if a[i] == b[i] {
			continue
		}
		x, errX := numbers(a[i])
		y, errY := numbers(b[i])
		if errX != nil || errY != nil || len(x) != len(y) {
			return false
		}
		for k := range x {
			if math.Abs(x[k]-y[k]) > 2e-3*max(1, math.Abs(x[k])/1e5) {
				return false
			}
		}
	}
	return true
}

func numbers(s string) ([]float64, error) {
	var r []float64
	for _, p := range strings.Split(s, "..") {
		v, err := strconv.ParseFloat(p, 64)
		if err != nil {
			return nil, err
		}
		r = append(r, v)
	}
	return r, nil
}
