package list

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode/utf8"

	"pegwright/geom/measure"
)

// widest is how wide a column of words grows in a list for a terminal, in runes.
const widest = 72

// Text returns the list in aligned columns for a terminal: title, headings
// with their units beneath, rows, totals. Long words run on in further lines of
// their column.
func (t Table) Text() string {
	names, units := make([]string, len(t.Columns)), make([]string, len(t.Columns))
	for i, c := range t.Columns {
		names[i] = c.Name
		if c.Unit != "" {
			units[i] = "(" + c.Unit + ")"
		}
	}
	lines := [][]string{names, units}
	for _, row := range t.Rows {
		lines = append(lines, broken(row)...)
	}
	width := make([]int, len(t.Columns))
	for _, row := range lines {
		for i, cell := range row {
			width[i] = max(width[i], utf8.RuneCountInString(cell))
		}
	}
	var b strings.Builder
	b.WriteString(t.Title + "\n\n")
	for _, row := range lines {
		t.line(&b, row, width)
	}
	b.WriteByte('\n')
	for _, total := range t.Totals {
		b.WriteString(total + "\n")
	}
	return b.String()
}

// broken breaks the cells of a row between words into lines no wider than a
// column may be. The first line is all of the row where nothing is broken.
func broken(row []string) [][]string {
	lines := [][]string{make([]string, len(row))}
	for i, cell := range row {
		at, n := 0, 0
		for word := range strings.SplitSeq(cell, " ") {
			long := utf8.RuneCountInString(word)
			switch {
			case n == 0:
				lines[at][i], n = word, long
			case n+1+long > widest:
				if at++; at == len(lines) {
					lines = append(lines, make([]string, len(row)))
				}
				lines[at][i], n = word, long
			default:
				lines[at][i], n = lines[at][i]+" "+word, n+1+long
			}
		}
	}
	return lines
}

// line writes one row, numbers to the right, without trailing spaces.
func (t Table) line(b *strings.Builder, row []string, width []int) {
	var l strings.Builder
	for i, cell := range row {
		gap := strings.Repeat(" ", width[i]-utf8.RuneCountInString(cell))
		if i > 0 {
			l.WriteString("  ")
		}
		if t.Columns[i].Numeric() {
			l.WriteString(gap + cell)
		} else {
			l.WriteString(cell + gap)
		}
	}
	b.WriteString(strings.TrimRight(l.String(), " ") + "\n")
}

// CSV returns the list after RFC 4180 with one heading line, for a
// spreadsheet: lengths are plain decimal inches or millimetres, as the heading
// says, so that they can be added up. Words that a spreadsheet would take for a
// formula are preceded by an apostrophe.
func (t Table) CSV() []byte {
	var buf bytes.Buffer
	w := csv.NewWriter(&buf)
	w.UseCRLF = true
	head := make([]string, len(t.Columns))
	for i, c := range t.Columns {
		head[i] = withUnit(c.Name, t.sheetUnit(c))
	}
	rows := [][]string{head}
	for _, values := range t.Values {
		row := make([]string, len(values))
		for i, v := range values {
			row[i] = t.sheetCell(t.Columns[i].kind, v)
		}
		rows = append(rows, row)
	}
	// A bytes.Buffer takes every write.
	_ = w.WriteAll(rows)
	return buf.Bytes()
}

// sheetUnit is the unit of a column in a spreadsheet.
func (t Table) sheetUnit(c Column) string {
	switch c.kind {
	case long, fine, section:
		return smallUnit(t.Units)
	case precise:
		return strings.TrimSuffix(c.Unit, ", decimal")
	}
	return c.Unit
}

func (t Table) sheetCell(k kind, v any) string {
	switch x := v.(type) {
	case int:
		return strconv.Itoa(x)
	case [2]float64:
		return t.sheetCell(long, x[0]) + " x " + t.sheetCell(long, x[1])
	case float64:
		if (k == long || k == fine) && t.Units == measure.Imperial {
			x /= 25.4
		}
		return plain(x, 4)
	case string:
		return harmless(x)
	}
	return ""
}

// harmless keeps a spreadsheet from reading words as a formula.
func harmless(s string) string {
	if s != "" && strings.ContainsRune("=+-@\t\r", rune(s[0])) {
		return "'" + s
	}
	return s
}

// plain writes x to at most n decimals without trailing zeros; empty for what
// is not a number.
func plain(x float64, n int) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return ""
	}
	p := math.Pow10(n)
	if r := math.Round(x * p); math.Abs(r) < 1<<52 {
		x = r / p
	}
	return strconv.FormatFloat(x+0, 'f', -1, 64)
}

// columnJSON and tableJSON are the shape of a list as JSON.
type columnJSON struct {
	Name string `json:"name"`
	Unit string `json:"unit,omitempty"`
}

type tableJSON struct {
	Name    string       `json:"name"`
	Title   string       `json:"title"`
	Columns []columnJSON `json:"columns"`
	Rows    [][]any      `json:"rows"`
	Totals  []string     `json:"totals"`
}

// JSON returns the lists as one document: lengths in millimetres, other
// figures in the unit of their column. It fails on a figure that is not a
// number.
func JSON(tables []Table) ([]byte, error) {
	doc := struct {
		Format string      `json:"format"`
		Lists  []tableJSON `json:"lists"`
	}{"pegwright-lists/1", []tableJSON{}}
	for _, t := range tables {
		doc.Lists = append(doc.Lists, t.shape())
	}
	var buf bytes.Buffer
	enc := json.NewEncoder(&buf)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", " ")
	if err := enc.Encode(doc); err != nil {
		return nil, fmt.Errorf("lists: %w", err)
	}
	return buf.Bytes(), nil
}

func (t Table) shape() tableJSON {
	j := tableJSON{Name: t.Name, Title: t.Title, Columns: []columnJSON{}, Rows: [][]any{}, Totals: t.Totals}
	for _, c := range t.Columns {
		unit := c.Unit
		if c.kind == long || c.kind == fine || c.kind == section {
			unit = "mm"
		}
		j.Columns = append(j.Columns, columnJSON{c.Name, strings.TrimSuffix(unit, ", decimal")})
	}
	for _, values := range t.Values {
		row := make([]any, len(values))
		for i, v := range values {
			row[i] = rounded(v)
		}
		j.Rows = append(j.Rows, row)
	}
	return j
}

// rounded brings figures to 1e-6 of their unit, with no negative zero.
func rounded(v any) any {
	to := func(x float64) float64 {
		if r := math.Round(x * 1e6); math.Abs(r) < 1<<52 {
			return r/1e6 + 0
		}
		return x
	}
	switch x := v.(type) {
	case float64:
		return to(x)
	case [2]float64:
		return [2]float64{to(x[0]), to(x[1])}
	}
	return v
}
