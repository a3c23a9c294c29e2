package sheet

import (
	"encoding/json"
	"math"
	"strconv"
	"strings"
	"testing"

	"pegwright/draw"
	"pegwright/draw/dim"
	"pegwright/geom"
	"pegwright/geom/list"
	"pegwright/geom/measure"
	"pegwright/samples/trial"
)

// setRow is a row read off the list sheets.
type setRow struct {
	list    string   // the list's title
	names   []string // whom it is about: the words over its run, or its first words
	figures []string // the texts that end at the right of their column, left to right
}

// setRows reads the rows of all lists off their sheets in the order in which
// they are set: a title, heads over a wide line, then words over a run in bold
// and rows over fine lines.
func setRows(sheets []*draw.Sheet) []setRow {
	var out []setRow
	for _, s := range sheets {
		list, over, heads, bold := "", "", true, false
		var words, figures []string
		left := 0.0 // where the first column's words begin
		for _, it := range s.Items {
			switch x := it.(type) {
			case *draw.Path:
				bold = false
				switch {
				case x.Class == draw.FrameLine:
					heads = false
				case x.Class == draw.Hatch:
					out = append(out, setRow{list, namesIn(over, words), figures})
					words, figures = nil, nil
				}
			case *draw.Text:
				switch {
				case x.Bold && x.Height == dim.Text && x.Group == "" && x.Layer == "":
					list, over, heads = strings.TrimSuffix(x.S, ", continued"), "", true
				case !strings.HasPrefix(x.Group, "table ") || heads || x.S == "":
				case x.Bold && bold:
					over += " " + x.S
				case x.Bold:
					over = x.S
				case x.Anchor == draw.End:
					figures = append(figures, x.S)
				case len(words) == 0:
					words, left = append(words, x.S), x.At.X
				case x.At.X == left:
					words = append(words, x.S)
				}
				bold = x.Bold
			}
		}
	}
	return out
}

// namesIn are the names over a run, or else in a row's first words; what is said
// of them all behind the last comma goes with each.
func namesIn(over string, words []string) []string {
	all := over
	if all == "" {
		all = strings.TrimSuffix(strings.Join(words, " "), " *")
	}
	all, tail, cut := strings.Cut(all, ", as it is moved")
	names := strings.Split(all, ", ")
	for i := range names {
		if cut {
			names[i] += ", as it is moved" + tail
		}
	}
	return names
}

// figuresOf are the figures of the lists in the JSON, row by row, with their
// units, by list and by the name in the first column; columns that paper leaves
// off are left out.
func figuresOf(t *testing.T, f *geom.Frame) (rows map[string][][]any, units map[string][][]string) {
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
	rows, units = map[string][][]any{}, map[string][][]string{}
	for i, l := range doc.Lists {
		for _, r := range l.Rows {
			key := tables[i].Title
			if tables[i].Columns[0].Own {
				key += ": " + r[0].(string)
			}
			var row []any
			var unit []string
			for c, v := range r {
				col := tables[i].Columns[c]
				if v != nil && col.Numeric() && !col.Spare {
					row, unit = append(row, v), append(unit, l.Columns[c].Unit)
				}
			}
			rows[key], units[key] = append(rows[key], row), append(units[key], unit)
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

// Every figure on the list sheets is the same figure in the JSON, row by row:
// that has a row for every timber where a sheet names timbers that are alike
// together.
func TestListSheetsShowTheFiguresOfTheJSON(t *testing.T) {
	for _, name := range trial.Drawn() {
		f := trial.Sample(t, name)
		f.Offer.Prices = []geom.Price{{Wood: f.Stock.Timber, Cost: 1.85}}
		rows, units := figuresOf(t, f)
		drawn := map[string][][]string{}
		for _, r := range setRows(Lists(f, nil)) {
			if _, ok := rows[r.list]; ok { // a list without names
				drawn[r.list] = append(drawn[r.list], r.figures)
				continue
			}
			for _, n := range r.names {
				key := r.list + ": " + n
				drawn[key] = append(drawn[key], r.figures)
			}
		}
		if len(drawn) != len(rows) {
			t.Errorf("%s: %d lists and names drawn, %d in the JSON", name, len(drawn), len(rows))
		}
		for key, want := range rows {
			got := drawn[key]
			if len(got) != len(want) {
				t.Errorf("%s: %s: %d rows of figures drawn, %d in the JSON", name, key, len(got), len(want))
				continue
			}
			for i, row := range want {
				if len(got[i]) != len(row) {
					t.Errorf("%s: %s: row %d is %q, want %v", name, key, i, got[i], row)
					continue
				}
				for k, v := range row {
					if !agrees(f.Units, strings.TrimSuffix(got[i][k], " *"), v, units[key][i][k]) {
						t.Errorf("%s: %s: row %d prints %q for %v %s", name, key, i, got[i][k], v, units[key][i][k])
					}
				}
			}
		}
	}
}

// Timbers are named together on the bores' sheets only where all that is bored
// in them is the same to the figure, found by comparing the bores themselves,
// and the default sample has such timbers.
func TestTimbersNamedTogetherAreBoredAlike(t *testing.T) {
	together := 0
	for _, name := range trial.Drawn() {
		f := trial.Sample(t, name)
		for _, r := range setRows(Lists(f, nil)) {
			if r.list != "Bores" || len(r.names) < 2 {
				continue
			}
			together++
			first := f.Timber(r.names[0])
			for _, n := range r.names[1:] {
				if !boredAlike(first, f.Timber(n)) {
					t.Errorf("%s: %s and %s are not bored alike", name, first.ID, n)
				}
			}
		}
	}
	if together == 0 {
		t.Error("no timbers are named together")
	}
}

// boredAlike reports whether every bore of one timber is found in the other, to
// the 1/32 in that is printed.
func boredAlike(a, b *geom.Timber) bool {
	for _, x := range a.Bores {
		found := false
		for _, y := range b.Bores {
			p, q := list.Locate(a, x), list.Locate(b, y)
			found = found || x.Entry == y.Entry && x.Exit == y.Exit && math.Abs(x.Diameter-y.Diameter) < 0.8 &&
				math.Abs(p.Along-q.Along) < 0.8 && math.Abs(p.Across-q.Across) < 0.8
		}
		if !found {
			return false
		}
	}
	return len(a.Bores) == len(b.Bores)
}
