package page

import (
	"strings"

	"pegwright/draw/block"
	"pegwright/geom/list"
)

// TableOf sets a list for paper, in fewer words than a spreadsheet needs: rows
// that differ in names alone are told once; where the rows of the first column
// come in runs of one word, as the bores of a timber do, the word stands over
// the run; what a whole column says stands at the foot, that of a row or two
// only where the table is wider than the width given, mm.
func TableOf(t list.Table, width float64) *Table {
	g := tableOf(t, 3)
	if g.Natural() > width {
		g = tableOf(t, 1)
	}
	return g
}

// tableOf is TableOf with the foot telling what a column says in that many rows
// and more.
func tableOf(t list.Table, many int) *Table {
	runs := inRuns(t)
	t, merged := alikeRows(t, runs)
	g := &Table{name: t.Title, under: make([]string, len(t.Rows))}
	first := 0
	if runs {
		first = 1
		for i, r := range t.Rows {
			if i == 0 || t.Rows[i-1][0] != r[0] {
				g.under[i] = r[0]
			}
		}
	}
	var kept []int
	for i, c := range t.Columns {
		switch w := oneWord(t, i, many); {
		case c.Spare || i < first || empty(t, i):
		case w != "":
			g.asides = append(g.asides, "all: "+c.Name+" "+w)
		case c.Aside && g.aside(t, i, first):
		default:
			kept = append(kept, i)
			g.Heads, g.Numeric = append(g.Heads, columnHead(t, c)), append(g.Numeric, c.Numeric())
		}
	}
	if merged && runs {
		g.asides = append(g.asides, "timbers named together are bored alike; joiner's marks that differ among them stand on their timber sheets")
	}
	for _, r := range t.Rows {
		row := make([]string, len(kept))
		for k, i := range kept {
			row[k] = r[i]
		}
		g.Rows = append(g.Rows, row)
	}
	g.totals = append(g.asides, t.Totals...)
	g.Settle()
	return g
}

// columnHead is the heading of a column, without the unit of lengths, which the
// title block gives.
func columnHead(t list.Table, c list.Column) string {
	if c.Unit == block.UnitName(t.Units) {
		return c.Name
	}
	return strings.Replace(c.Heading(), ", decimal", "", 1) // as is plain to see
}

// oneWord returns what a column of words that are no names says in every row of
// a list of so many rows and more; the foot tells it once, and the column goes.
func oneWord(t list.Table, c, many int) string {
	if t.Columns[c].Numeric() || len(t.Rows) < many || len(t.Rows) < 3 && (c == 0 || t.Columns[c].Own) {
		return ""
	}
	for _, r := range t.Rows {
		if r[c] != t.Rows[0][c] {
			return ""
		}
	}
	return t.Rows[0][c]
}

// empty reports whether a column of words says nothing at all.
func empty(t list.Table, c int) bool {
	for _, r := range t.Rows {
		if r[c] != "" {
			return false
		}
	}
	return !t.Columns[c].Numeric()
}

// asideMark stands at the rows that a remark under the table is about.
const asideMark = "*"

// aside puts the one remark of a column under the table, with a mark behind the
// rows' first words, and reports whether it did: a column that says different
// things is left as it is.
func (g *Table) aside(t list.Table, c, first int) bool {
	word := ""
	for _, r := range t.Rows {
		if word == "" {
			word = r[c]
		}
		if r[c] != "" && r[c] != word {
			return false
		}
	}
	at := first
	for t.Columns[at].Spare {
		at++
	}
	for i, r := range t.Rows {
		if r[c] != "" {
			t.Rows[i] = append([]string(nil), r...)
			t.Rows[i][at] += " " + asideMark
		}
	}
	g.asides = append(g.asides, asideMark+" "+word)
	return true
}

// inRuns reports whether the words of a list's first column stand for two rows
// and more each.
func inRuns(t list.Table) bool {
	runs := 0
	for i, r := range t.Rows {
		if i == 0 || t.Rows[i-1][0] != r[0] {
			runs++
		}
	}
	return len(t.Columns) > 1 && !t.Columns[0].Numeric() && len(t.Rows) >= 2*runs
}

// alikeRows tells rows that differ in names alone together, under all their
// names, where the first of them stood, and reports whether there were any. With
// runs set whole runs of the first column are compared. A name of another column
// that is not the same for all is left out.
func alikeRows(t list.Table, runs bool) (list.Table, bool) {
	if !t.Columns[0].Own {
		return t, false
	}
	var out [][][]string
	var names [][]string
	place := map[string]int{}
	for _, run := range runsOf(t.Rows, runs) {
		key := keyOf(t, run)
		i, known := place[key]
		if !known {
			i = len(out)
			place[key] = i
			out, names = append(out, copied(run)), append(names, nil)
		}
		names[i] = append(names[i], run[0][0])
		keepSame(t, out[i], run)
	}
	merged := false
	rows := t.Rows[:0:0]
	for i, run := range out {
		merged = merged || len(names[i]) > 1
		for _, r := range run {
			r[0] = joinNames(names[i])
			rows = append(rows, r)
		}
	}
	t.Rows = rows
	return t, merged
}

// runsOf parts rows into those of one first word that follow each other, or into
// single rows.
func runsOf(rows [][]string, whole bool) [][][]string {
	var out [][][]string
	for i, r := range rows {
		if whole && i > 0 && rows[i-1][0] == r[0] {
			out[len(out)-1] = append(out[len(out)-1], r)
		} else {
			out = append(out, [][]string{r})
		}
	}
	return out
}

// keyOf is all that rows say apart from names.
func keyOf(t list.Table, rows [][]string) string {
	var b strings.Builder
	for _, r := range rows {
		for c, w := range r {
			if !t.Columns[c].Own {
				b.WriteString(w + "\x00")
			}
		}
		b.WriteString("\x01")
	}
	return b.String()
}

func copied(rows [][]string) [][]string {
	out := make([][]string, len(rows))
	for i, r := range rows {
		out[i] = append([]string(nil), r...)
	}
	return out
}

// keepSame clears the names in rows, the first column's apart, that are others in
// rows that are alike.
func keepSame(t list.Table, rows, like [][]string) {
	for i, r := range rows {
		for c := 1; c < len(r); c++ {
			if t.Columns[c].Own && r[c] != like[i][c] {
				r[c] = ""
			}
		}
	}
}

// joinNames joins names by commas; what all of them say behind a comma comes
// once, at the end.
func joinNames(names []string) string {
	_, tail, _ := strings.Cut(names[0], ", ")
	short := make([]string, len(names))
	for i, n := range names {
		before, after, _ := strings.Cut(n, ", ")
		if after != tail {
			return strings.Join(names, "; ")
		}
		short[i] = before
	}
	out := strings.Join(short, ", ")
	if tail != "" {
		out += ", " + tail
	}
	return out
}
