package list

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"pegwright/geom"
	"pegwright/geom/measure"
	"pegwright/geom/vec"
)

// full is the frame of the other tests with a tenon, an order of assembly and
// prices, so that every list has rows.
func full(u measure.Units) *geom.Frame {
	f := frame(u)
	g := pair()
	tenon := g.Joints[0]
	tenon.Pegs[0].From, tenon.Pegs[0].To, tenon.Pegs[0].Exit = vec.V{}, vec.V{Y: 6 * in}, 3
	for i, w := range tenon.Tenon.Faces {
		if math.Abs(w.Plane.N.Y) == 1 {
			tenon.Tenon.Faces[i].Role = geom.RoleCheek
		}
	}
	tenon.Mortise = tenon.Tenon
	f.Timbers = append(f.Timbers, g.Timbers...)
	f.Joints = append(f.Joints, g.Joints...)
	f.Steps = []geom.Step{{Name: "both", Move: []string{"post-long", "post-short"}}}
	f.Offer.Prices = []geom.Price{{Wood: "eastern white pine", Cost: 1.85}}
	driven(f)
	return f
}

// figure reads a figure as it is printed, in the unit given, as a number in the
// unit of the JSON, and how far it may be off.
func figure(t *testing.T, u measure.Units, text, unit string) (value, off float64) {
	t.Helper()
	switch unit {
	case "ft-in", "mm":
		scope := measure.Scope{Unit: measure.Inch}
		off = 25.4 / 32
		if u == measure.Metric {
			scope.Unit, off = measure.Millimetre, 0.5
		}
		mm, err := measure.ParseLength(text, scope)
		if err != nil {
			t.Errorf("%q is no length: %v", text, err)
		}
		return mm, off + 1e-6
	}
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Errorf("%q is no figure", text)
	}
	_, decimals, _ := strings.Cut(text, ".")
	return v, 0.5*math.Pow10(-len(decimals)) + 1e-9
}

// The text, the CSV and the JSON of every list are read back, each with a
// reader of its own, and hold the same figures under the same headings.
func TestSameFiguresEverywhere(t *testing.T) {
	for _, u := range []measure.Units{measure.Imperial, measure.Metric} {
		tables := Of(full(u), nil)
		doc, err := JSON(tables)
		if err != nil {
			t.Fatal(err)
		}
		var read struct {
			Lists []struct {
				Columns []struct{ Name, Unit string }
				Rows    [][]any
			}
		}
		if err := json.Unmarshal(doc, &read); err != nil {
			t.Fatal(err)
		}
		for i, l := range tables {
			rows := read.Lists[i].Rows
			if len(rows) == 0 {
				t.Errorf("%s has no row to compare", l.Name)
			}
			sheet, err := csv.NewReader(bytes.NewReader(l.CSV())).ReadAll()
			if err != nil || len(sheet) != len(rows)+1 {
				t.Fatalf("%s: %d lines of CSV for %d rows: %v", l.Name, len(sheet), len(rows), err)
			}
			lines := strings.Split(l.Text(), "\n")[2:]
			for k, row := range rows {
				for c, v := range row {
					name := fmt.Sprintf("%s, row %d, %s", l.Name, k+1, read.Lists[i].Columns[c].Name)
					want := l.Columns[c].Name
					if !strings.HasPrefix(sheet[0][c], want) || read.Lists[i].Columns[c].Name != want {
						t.Errorf("%s: headed %q and %q", name, sheet[0][c], read.Lists[i].Columns[c].Name)
					}
					compare(t, u, name, l.Columns[c], v, read.Lists[i].Columns[c].Unit, sheet[k+1][c], sheet[0][c], l.Rows[k][c])
					if l.Rows[k][c] != "" && !strings.Contains(lines[k+2], l.Rows[k][c]) {
						t.Errorf("%s: %q is not in the text %q", name, l.Rows[k][c], lines[k+2])
					}
				}
			}
		}
	}
}

// compare holds the JSON's value of a cell against its CSV and its text.
func compare(t *testing.T, u measure.Units, name string, col Column, v any, unit, sheet, head, text string) {
	t.Helper()
	inches := 1.0
	if unit == "mm" && strings.HasSuffix(head, "(in)") {
		inches = 25.4
	}
	switch x := v.(type) {
	case nil:
		if sheet != "" || text != "" {
			t.Errorf("%s: nothing in the JSON, %q and %q elsewhere", name, sheet, text)
		}
	case string:
		if sheet != x || text != x {
			t.Errorf("%s: %q, %q, %q", name, x, sheet, text)
		}
	case []any:
		a, b, _ := strings.Cut(sheet, " x ")
		for i, part := range []string{a, b} {
			if got, err := strconv.ParseFloat(part, 64); err != nil || math.Abs(got*inches-x[i].(float64)) > 5e-4*inches {
				t.Errorf("%s: %v in the JSON, %q in the CSV", name, x, sheet)
			}
		}
	case float64:
		if got, err := strconv.ParseFloat(sheet, 64); err != nil || math.Abs(got*inches-x) > 5e-4*inches {
			t.Errorf("%s: %g %s in the JSON, %q under %q in the CSV", name, x, unit, sheet, head)
		}
		if got, off := figure(t, u, text, col.Unit); math.Abs(got-x) > off {
			t.Errorf("%s: %g %s in the JSON, %q in the text", name, x, unit, text)
		}
	}
}
