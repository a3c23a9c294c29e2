package sheet

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"pegwright/draw/block"
	"pegwright/geom/solve"
	"pegwright/geom/spec"
)

// randomHouse describes a building with sizes, roof, walls, units and paper
// drawn by lot within what a small pegged frame can have.
func randomHouse(r *rand.Rand) string {
	pick := func(list ...string) string { return list[r.IntN(len(list))] }
	unit, k := "in", 1.0
	if r.IntN(3) == 0 {
		unit, k = "mm", 25.0
	}
	length := func(lo, hi int) string { return fmt.Sprintf("%.0f", float64(lo+r.IntN(hi-lo+1))*k) }
	size := func(a, b float64) string { return fmt.Sprintf("%g x %g", a*k, b*k) }
	var b strings.Builder
	line := func(format string, a ...any) { fmt.Fprintf(&b, format+"\n", a...) }
	line("frame: Random\nunits: %s\npaper: {sheets: %s}", unit, pick("letter", "a4", "tabloid", "a3"))
	line("wood: {timbers: {species: %s, seasoning: green}}", pick("eastern white pine", "eastern hemlock", "white oak"))
	line("sections: {sill: %s, post: %s, tie: %s, plate: %s, rafter: %s, brace: %s}", size(7, 8), size(7, 7), size(7, 9), size(7, 8), size(4, 6), size(3, 5))
	line("building:\n  span: %s", length(110, 200))
	var bays []string
	for range 1 + r.IntN(3) {
		bays = append(bays, length(96, 140))
	}
	line("  bays: [%s]\n  eave: %s", strings.Join(bays, ", "), length(90, 120))
	shape := pick("gable", "gable", "shed")
	pitch := pick("6 in 12", "8 in 12", "9 in 12", "10 in 12")
	more := ""
	if shape == "shed" {
		pitch = pick("2 in 12", "3 in 12")
	} else {
		more = pick("", ", ridge: beam", ", truss: king post")
	}
	line("  roof: {shape: %s, pitch: %s, overhang: %s, rafter spacing: %s%s}", shape, pitch, length(6, 14), length(24, 40), more)
	line("  sills: %s\n  braces: {legs: %s x %[2]s, in: [bents, walls]}", pick("yes", "no"), length(22, 26))
	if r.IntN(2) == 0 {
		line("  girts: {height: [%s], in: [eave walls]}", length(30, 44))
	}
	return b.String()
}

// Sheets of frames drawn by lot keep their layout: no two texts overlap, none is
// struck by a part's line, nothing leaves its border, no figure is too small,
// and no sheet is left nearly empty.
func TestRandomFramesKeepTheirLayout(t *testing.T) {
	n := frames(2)
	drawn := 0
	for i := range n {
		src := randomHouse(rand.New(rand.NewPCG(17, uint64(i))))
		d, faults := spec.Read("random", []byte(src), nil)
		if len(faults) > 0 {
			t.Fatalf("%v in\n%s", faults, src)
		}
		f, faults := solve.Solve(d)
		if faults.Err() != nil || f == nil {
			continue // such a frame cannot be, and says so
		}
		drawn++
		sheets := All(f, nil)
		for k, s := range sheets {
			block.Number(s, k+1, len(sheets), "0123456789ab")
			for _, fault := range append(layoutFaults(s), emptyFaults(s)...) {
				t.Errorf("frame %d: %s", i, fault)
			}
		}
		if t.Failed() {
			t.Fatalf("frame %d:\n%s", i, src)
		}
	}
	if drawn*2 < n {
		t.Errorf("only %d of %d frames could be drawn", drawn, n)
	}
}
