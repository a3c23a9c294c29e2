package list

import (
	"testing"

	"pegwright/geom"
	"pegwright/geom/measure"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// driven gives the first joint of a frame two wedges and a key.
func driven(f *geom.Frame) {
	w := solid.Hexahedron([8]vec.V{
		{}, {X: 1.5 * in}, {X: 1.5 * in, Y: 6 * in}, {Y: 6 * in},
		{Z: 1.375 * in}, {X: 1.5 * in, Z: 1.375 * in}, {X: 1.5 * in, Y: 6 * in, Z: 0.875 * in}, {Y: 6 * in, Z: 0.875 * in},
	})
	j := f.Joints[0]
	j.Mark, j.Axes = "I", geom.Axes{U: vec.V{Z: 1}, V: vec.V{X: 1}, W: vec.V{Y: 1}}
	drive := []geom.Move{{Direction: vec.V{Y: 1}, Distance: 6 * in}}
	j.Pieces = []geom.Piece{{ID: "a", Kind: "wedge", Solid: w, Moves: drive}, {ID: "b", Kind: "wedge", Solid: w, Moves: drive},
		{ID: "c", Kind: "key", Solid: solid.Box(vec.V{}, vec.V{X: in, Y: 8 * in, Z: in}), Moves: drive}}
}

// A wedge 6 in long, 1-1/2 in wide, 1-3/8 in thick at its head and 7/8 in at its
// point, driven along y; by hand.
func TestWedges(t *testing.T) {
	f := frame(measure.Imperial)
	driven(f)
	got := Wedges(f)
	want := [][]any{{"key", 8 * in, [2]float64{in, in}, [2]float64{in, in}, 1}, {"wedge", 6 * in, [2]float64{1.375 * in, 1.5 * in}, [2]float64{0.875 * in, 1.5 * in}, 2}}
	if len(got.Values) != len(want) {
		t.Fatalf("%d rows, want %d", len(got.Values), len(want))
	}
	near := func(a, b any) bool {
		switch x := a.(type) {
		case float64:
			return x-b.(float64) < 1e-6 && b.(float64)-x < 1e-6
		case [2]float64:
			y := b.([2]float64)
			return x[0]-y[0] < 1e-6 && y[0]-x[0] < 1e-6 && x[1]-y[1] < 1e-6 && y[1]-x[1] < 1e-6
		}
		return a == b
	}
	for i, row := range want {
		for k, x := range row {
			if !near(x, got.Values[i][k]) {
				t.Errorf("row %d, %s: %v, want %v", i, got.Columns[k].Name, got.Values[i][k], x)
			}
		}
		if got.Values[i][5] != "I" {
			t.Errorf("joints: %v", got.Values[i][5])
		}
	}
	if got.Totals[0] != "3 wedges and keys" {
		t.Errorf("total: %q", got.Totals)
	}
}
