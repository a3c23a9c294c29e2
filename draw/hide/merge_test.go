package hide

import (
	"math"
	"math/rand"
	"testing"

	"pegwright/geom/vec"
)

// Brute force: pieces with whole-number ends on a few lines; each unit of each
// line must come out once, with the least rank and owner that covers it, and
// no two pieces of one rank and owner may touch.
func TestMergeAgreesWithCounting(t *testing.T) {
	rng := rand.New(rand.NewSource(6))
	dirs := []vec.P{{X: 1}, {Y: 1}, {X: 0.6, Y: 0.8}, vec.P{X: math.Sqrt(3) / 2, Y: 0.5}, {X: -1, Y: 0.0123}}
	for range 300 {
		d := dirs[rng.Intn(len(dirs))].Unit()
		const rows, units = 3, 30
		var want [rows][units]int // 1 + 10·rank + owner, 0 for none
		var lines []Line
		for range rng.Intn(14) {
			r, from, to := rng.Intn(rows), rng.Intn(units), rng.Intn(units)
			l := Line{Rank: rng.Intn(2), Owner: rng.Intn(3)}
			off := d.Left().Mul(float64(r) * 5)
			l.A, l.B = off.Add(d.Mul(float64(from))), off.Add(d.Mul(float64(to)))
			lines = append(lines, l)
			for u := min(from, to); u < max(from, to); u++ {
				if k := 1 + 10*l.Rank + l.Owner; want[r][u] == 0 || k < want[r][u] {
					want[r][u] = k
				}
			}
		}
		var got [rows][units]int
		var stops [rows]map[[2]int]bool
		for i := range stops {
			stops[i] = map[[2]int]bool{}
		}
		for _, l := range Merge(lines, 1e-3) {
			r := int(math.Round(d.Cross(l.A) / 5))
			a, b := int(math.Round(d.Dot(l.A))), int(math.Round(d.Dot(l.B)))
			k := 1 + 10*l.Rank + l.Owner
			for _, e := range []int{a, b} {
				if stops[r][[2]int{e, k}] {
					t.Fatalf("two pieces of one kind meet at %d: %v", e, lines)
				}
				stops[r][[2]int{e, k}] = true
			}
			for u := min(a, b); u < max(a, b); u++ {
				if got[r][u] != 0 {
					t.Fatalf("unit %d drawn twice: %v", u, lines)
				}
				got[r][u] = k
			}
		}
		if got != want {
			t.Fatalf("lines %v\n got %v\nwant %v", lines, got, want)
		}
	}
}

func TestMergeKeepsLinesApart(t *testing.T) {
	lines := []Line{
		{A: vec.P{}, B: vec.P{X: 10}},
		{A: vec.P{Y: 0.01}, B: vec.P{X: 10, Y: 0.01}},      // a hundredth of a millimetre beside it
		{A: vec.P{}, B: vec.P{X: 10, Y: 0.05}},             // nearly the same direction
		{A: vec.P{X: 10.01}, B: vec.P{X: 20}},              // a gap between
		{A: vec.P{X: 3, Y: 3}, B: vec.P{X: 3, Y: 3.00001}}, // nothing
	}
	if got := Merge(lines, 1e-3); len(got) != 4 {
		t.Errorf("got %d lines, want 4: %v", len(got), got)
	}
}

// The result depends on the lines, not on their order.
func TestMergeDoesNotDependOnOrder(t *testing.T) {
	rng := rand.New(rand.NewSource(7))
	var lines []Line
	for range 60 {
		y, x := float64(rng.Intn(4)), float64(rng.Intn(20))
		lines = append(lines, Line{vec.P{X: x, Y: y}, vec.P{X: x + 1 + float64(rng.Intn(9)), Y: y}, rng.Intn(2), rng.Intn(3)})
	}
	want := Merge(lines, 1e-3)
	for range 20 {
		rng.Shuffle(len(lines), func(i, j int) { lines[i], lines[j] = lines[j], lines[i] })
		got := Merge(lines, 1e-3)
		if len(got) != len(want) {
			t.Fatalf("%d lines, then %d", len(want), len(got))
		}
		for i := range got {
			if got[i] != want[i] {
				t.Fatalf("line %d: %v, then %v", i, want[i], got[i])
			}
		}
	}
}
