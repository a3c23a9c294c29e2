package permit

import (
	"slices"
	"testing"

	"pegwright/draw/block"
)

// A number stands whole in its cell, however narrow its column was planned.
func TestNumbersAreNotBroken(t *testing.T) {
	m := &form{heads: []string{"a", "b"}, shares: []float64{0.97, 0.03}, rows: [][]string{{"words", "705.9"}, {"words", "12345 lb"}}}
	f := block.Field{X1: 200, Y1: 100}
	g := m.letters()
	m.shares = m.roomy(g, f.W())
	for i, want := range []string{"705.9", "12345"} {
		cells, _ := m.lines(f, m.rows[i], g.Height, false)
		if !slices.Contains(cells[1], want) {
			t.Errorf("%q is set as %q", m.rows[i][1], cells[1])
		}
	}
	if sum := m.shares[0] + m.shares[1]; sum < 0.999 || sum > 1.001 {
		t.Errorf("the columns take %v of the width", sum)
	}
}
