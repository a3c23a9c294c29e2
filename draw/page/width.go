package page

import (
	"strings"

	"pegwright/draw/font"
)

// Fit settles the column widths: each as wide as its cells and as its heading in
// two lines. Where that is too much for the sheet headings take more lines, and
// then the columns of words give way, widest first, by wrapping.
func (g *Table) Fit(total float64) {
	g.total, g.gap = total, cellGap
	least, cells, heads := g.wants()
	g.width = make([]float64, len(cells))
	for c := range cells {
		g.width[c] = max(cells[c], heads[c])
	}
	if g.sum() > total {
		copy(g.width, cells)
	}
	sum := g.narrow(least, g.sum(), total)
	if n := len(g.width); sum < total && n > 1 {
		g.gap = min(g.gap+(total-sum)/float64(n-1), gapMost)
	} else if n > 1 {
		g.gap = max(g.gap-(sum-total)/float64(n-1), gapLeast)
	}
}

// Natural is the width of the table where every column is as wide as its cells
// and its heading in two lines.
func (g *Table) Natural() float64 {
	_, cells, heads := g.wants()
	sum := float64(len(cells)-1) * cellGap
	for c := range cells {
		sum += max(cells[c], heads[c])
	}
	return sum
}

// sum is the width of the table.
func (g *Table) sum() float64 {
	sum := float64(len(g.width)-1) * g.gap
	for _, w := range g.width {
		sum += w
	}
	return sum
}

// wants returns for every column the least width that it can have, the width of
// its cells unwrapped, and that of its heading in two lines.
func (g *Table) wants() (least, cells, heads []float64) {
	n := len(g.Heads)
	least, cells, heads = make([]float64, n), make([]float64, n), make([]float64, n)
	for c, h := range g.Heads {
		for _, w := range strings.Fields(h) {
			least[c] = max(least[c], font.Measure(w, g.Size(), true))
		}
		cells[c] = least[c]
		for _, r := range g.Rows {
			w := g.Letters.Measure(r[c])
			cells[c] = max(cells[c], w)
			if g.Numeric[c] {
				least[c] = max(least[c], w)
			}
		}
		least[c] = max(least[c], min(cells[c], 16))
		if c > 0 && c == g.Middle {
			// a figure and a half clear of a length beside it, gaps at their least
			least[c] = max(least[c], cells[c]+3*g.Letters.Measure("2")-2*gapLeast)
			cells[c] = least[c]
		}
		for heads[c] = least[c]; len(font.WrapFace(h, heads[c], g.Size(), true)) > 2; {
			heads[c]++
		}
	}
	return least, cells, heads
}

// narrow takes width from the widest columns, down to their least, until sum is
// no more than total, and returns the sum that is left.
func (g *Table) narrow(least []float64, sum, total float64) float64 {
	for sum > total {
		widest := -1
		for c := range g.width {
			if g.width[c] > least[c]+0.5 && (widest < 0 || g.width[c] > g.width[widest]) {
				widest = c
			}
		}
		if widest < 0 {
			break
		}
		g.width[widest] -= 0.5
		sum -= 0.5
	}
	return sum
}

// headLines returns the headings wrapped to their columns and the most lines
// that one takes.
func (g *Table) headLines() (lines [][]string, most int) {
	lines = make([][]string, len(g.Heads))
	for c, h := range g.Heads {
		lines[c] = font.WrapFace(h, g.width[c], g.Size(), true)
		most = max(most, len(lines[c]))
	}
	return lines, most
}

// wrapList is font.Wrap that breaks a list of names and sizes, of two words each
// at most, at its commas, so that no size parts from its name. Text that is
// broken already keeps its lines.
func wrapList(t string, width, height float64) []string {
	for p := range strings.SplitAfterSeq(t, ", ") {
		if strings.Contains(p, "\n") || moreThanTwo(p) || font.Measure(p, height, false) > width {
			return font.Wrap(t, width, height)
		}
	}
	var out []string
	from, to := 0, 0 // the line
	for p := range strings.SplitAfterSeq(t, ", ") {
		more := to + len(p)
		if to > from && font.Measure(strings.TrimSpace(t[from:more]), height, false) > width {
			out, from = append(out, strings.TrimSpace(t[from:to])), to
		}
		to = more
	}
	return append(out, strings.TrimSpace(t[from:]))
}

// moreThanTwo reports whether a text has more than two words.
func moreThanTwo(t string) bool {
	n := 0
	for range strings.FieldsSeq(t) {
		n++
	}
	return n > 2
}
