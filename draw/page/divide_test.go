package page

import (
	"fmt"
	"strings"
	"testing"

	"pegwright/draw/dim"
)

// A row that no sheet could hold goes on in further rows: none is higher than
// the sheet, no word is lost and their order stays. The planner then ends, with
// every row on one sheet, in order.
func TestLongRowsGoOn(t *testing.T) {
	var words []string
	for i := range 1500 {
		words = append(words, fmt.Sprintf("tie-%d-north", i))
	}
	g := &Table{
		Heads: []string{"no.", "joints"}, Numeric: []bool{true, false}, width: []float64{10, 60}, Letters: dim.Together("table"),
		Rows: [][]string{{"1", "one"}, {"2", strings.Join(words, ", ")}, {"3", "three"}}, totals: []string{"4 rows"},
	}
	const high = 120.0
	g.Part(high - g.Top())
	var numbers, rest []string
	for _, row := range g.Rows {
		if h := g.Height(row); h > high-g.Top() {
			t.Errorf("a row is %.1f mm high where there are %.1f mm", h, high-g.Top())
		}
		numbers, rest = append(numbers, strings.Fields(row[0])...), append(rest, strings.Fields(row[1])...)
	}
	if got, want := strings.Join(rest, " "), "one "+strings.Join(words, ", ")+" three"; got != want {
		t.Errorf("words differ: %d bytes, want %d", len(got), len(want))
	}
	if got := strings.Join(numbers, " "); got != "1 2 3" {
		t.Errorf("numbers %q", got)
	}
	at := 0
	for _, page := range Divide([]*Table{g}, high, 80) {
		for _, s := range page {
			if s.From != at {
				t.Errorf("row %d follows row %d", s.From, at)
			}
			at = s.To
		}
	}
	if at != len(g.Rows) {
		t.Errorf("%d of %d rows are on a sheet", at, len(g.Rows))
	}
}
