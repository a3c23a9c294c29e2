package sheet

import (
	"encoding/json"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pegwright/draw"
	"pegwright/geom"
	"pegwright/geom/list"
	"pegwright/geom/measure"
	"pegwright/samples/trial"
)

// figureRows reads the rows of figures off the list sheets: the texts that end
// at the right of their column, line by line from the top, left to right.
func figureRows(sheets []*draw.Sheet) [][]string {
	var out [][]string
	for _, s := range sheets {
		lines := map[float64][]*draw.Text{}
		var ys []float64
		for _, it := range s.Items {
			x, ok := it.(*draw.Text)
			if !ok || x.Anchor != draw.End || x.Bold || x.Layer == draw.LayerUnder {
				continue
			}
			y := math.Round(x.At.Y*100) / 100
			if lines[y] == nil {
				ys = append(ys, y)
			}
			lines[y] = append(lines[y], x)
		}
		slices.SortFunc(ys, func(a, b float64) int { return int(math.Copysign(1, b-a)) })
		for _, y := range ys {
			slices.SortFunc(lines[y], func(a, b *draw.Text) int { return int(math.Copysign(1, a.At.X-b.At.X)) })
			var row []string
			for _, x := range lines[y] {
				if x.S != "" {
					row = append(row, x.S)
				}
			}
			if len(row) > 0 {
				out = append(out, row)
			}
		}
	}
	return out
}

// jsonRows are the figures of the lists in the JSON, row by row, with their
// units; columns that paper leaves off are left out.
func jsonRows(t *testing.T, f *geom.Frame) (rows [][]any, units [][]string) {
	t.Helper()
	tables := onPaper(f, list.Of(f, nil))
	text, err := list.JSON(tables)
	if err != nil {
		t.Fatal(err)
	}
	var doc struct {
		Lists []struct {
			Columns []struct{ Unit string }
			Rows    [][]any
		}
	}
	if err := json.Unmarshal(text, &doc); err != nil {
		t.Fatal(err)
	}
	for i, l := range doc.Lists {
		for _, r := range l.Rows {
			var row []any
			var unit []string
			for c, v := range r {
				col := tables[i].Columns[c]
				if v != nil && col.Numeric() && !col.Spare {
					row, unit = append(row, v), append(unit, l.Columns[c].Unit)
				}
			}
			rows, units = append(rows, row), append(units, unit)
		}
	}
	return rows, units
}

// agrees reports whether a printed figure is the JSON's, to half of the last
// place or step that is printed.
func agrees(u measure.Units, text string, v any, unit string) bool {
	if pair, ok := v.([]any); ok {
		a, b, cut := strings.Cut(text, " x ")
		return cut && agrees(u, a, pair[0], unit) && agrees(u, b, pair[1], unit)
	}
	x, ok := v.(float64)
	if !ok {
		return v == text // "none" among figures
	}
	if unit == "mm" {
		scope, step := measure.Scope{Unit: measure.Inch}, 25.4/16
		if u == measure.Metric {
			scope, step = measure.Scope{Unit: measure.Millimetre}, 1
		}
		mm, err := measure.ParseLength(text, scope)
		return err == nil && math.Abs(mm-x) <= step/2+1e-3
	}
	got, err := strconv.ParseFloat(text, 64)
	_, decimals, _ := strings.Cut(text, ".")
	return err == nil && math.Abs(got-x) <= 0.5*math.Pow10(-len(decimals))+1e-9
}

// Every figure on the list sheets is the same figure in the JSON, row by row.
func TestListSheetsShowTheFiguresOfTheJSON(t *testing.T) {
	for _, name := range drawnSamples() {
		f := trial.Sample(t, name)
		f.Offer.Prices = []geom.Price{{Wood: f.Stock.Timber, Cost: 1.85}}
		drawn := figureRows(Lists(f, nil))
		rows, units := jsonRows(t, f)
		if len(drawn) != len(rows) {
			t.Fatalf("%s: %d rows of figures drawn, %d in the JSON", name, len(drawn), len(rows))
		}
		for i, row := range rows {
			if len(drawn[i]) != len(row) {
				t.Fatalf("%s: row %d is %q, want %v", name, i, drawn[i], row)
			}
			for k, v := range row {
				if !agrees(f.Units, drawn[i][k], v, units[i][k]) {
					t.Errorf("%s: row %d prints %q for %v %s", name, i, drawn[i][k], v, units[i][k])
				}
			}
		}
	}
}
