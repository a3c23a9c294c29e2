package page

import (
	"slices"
	"strings"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/font"
	"pegwright/geom/vec"
)

// Table is a table about to be set: the heads of its columns, which of these
// hold numbers, the one that is set in the middle (0: none), its rows, and the
// group of all its lettering.
type Table struct {
	Heads   []string
	Numeric []bool
	Middle  int
	Rows    [][]string
	Letters dim.Group

	name   string
	totals []string
	under  []string // what stands over each row that begins a run, "" for none
	asides []string // what stands under the table before its totals
	width  []float64
	gap    float64 // between columns
	total  float64 // width of the sheet's field
}

const (
	cellGap = 2.6 // between columns

	// the same where the sheet has room, and where words leave none
	gapMost, gapLeast = 8.6, 1.5

	lineUp = 1.56 // from line to line of a cell or heading, in text heights
)

// DropEmpty takes away those of the named columns, all behind Middle, in which
// no row says anything.
func (g *Table) DropEmpty(heads ...string) {
	for _, h := range heads {
		c := slices.Index(g.Heads, h)
		if c < 0 || slices.ContainsFunc(g.Rows, func(r []string) bool { return r[c] != "" }) {
			continue
		}
		g.Heads, g.Numeric = slices.Delete(g.Heads, c, c+1), slices.Delete(g.Numeric, c, c+1)
		for i, r := range g.Rows {
			g.Rows[i] = slices.Delete(r, c, c+1)
		}
	}
}

// Settle chooses the group of all cells and heads, and of the words over runs.
func (g *Table) Settle() {
	all := slices.Concat(append([][]string{g.Heads, g.under}, g.Rows...)...)
	g.Letters = dim.Together("table "+g.name, all...)
}

// Size is the height of all lettering of the table.
func (g *Table) Size() float64 { return g.Letters.Height }

// over returns the lines that stand over row i and their height; at the head of
// a sheet the run that goes on is named again.
func (g *Table) over(i int, head bool) ([]string, float64) {
	w := ""
	if i < len(g.under) {
		w = g.under[i]
		for k := i; head && w == "" && k > 0; k-- {
			w = g.under[k-1]
		}
	}
	if w == "" {
		return nil, 0
	}
	lines := font.WrapFace(w, g.total, g.Size(), true)
	return lines, float64(len(lines)-1)*g.Size()*lineUp + g.Size()*1.4 + 0.6
}

// OverHigh is the most that stands over a row.
func (g *Table) OverHigh() float64 {
	most := 0.0
	for i := range g.under {
		_, h := g.over(i, false)
		most = max(most, h)
	}
	return most
}

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

// HeadHeight is the height of the headings with the rule under them, mm.
func (g *Table) HeadHeight() float64 {
	_, n := g.headLines()
	return float64(n)*g.Size()*lineUp + 1
}

// Head sets the headings and returns the y below them.
func (g *Table) Head(s *draw.Sheet, f block.Field) float64 {
	lines, most := g.headLines()
	x := f.X0
	for c, ls := range lines {
		y := f.Y1 - float64(most-len(ls))*g.Size()*lineUp
		for _, l := range ls {
			g.cell(s, x, y-g.Size(), c, l).Bold = true
			y -= g.Size() * lineUp
		}
		x += g.width[c] + g.gap
	}
	y := f.Y1 - g.HeadHeight()
	s.Line(draw.FrameLine, vec.At(f.X0, y), vec.At(x-g.gap, y))
	return y - 1
}

// cell sets one line of a cell, numbers to the right.
func (g *Table) cell(s *draw.Sheet, x, y float64, c int, t string) *draw.Text {
	switch {
	case c > 0 && c == g.Middle:
		cell := g.Letters.Text(s, vec.At(x+g.width[c]/2, y), t)
		cell.Anchor = draw.Middle
		return cell
	case g.Numeric[c]:
		cell := g.Letters.Text(s, vec.At(x+g.width[c], y), t)
		cell.Anchor = draw.End
		return cell
	}
	return g.Letters.Text(s, vec.At(x, y), t)
}

func (g *Table) lines(row []string) (cells [][]string, height float64) {
	cells = make([][]string, len(row))
	for c, t := range row {
		cells[c] = wrapList(t, g.width[c], g.Size())
		height = max(height, float64(len(cells[c])-1)*g.Size()*lineUp)
	}
	return cells, height
}

// Height is the height of a row with the rule under it, mm.
func (g *Table) Height(row []string) float64 {
	_, h := g.lines(row)
	return g.ruled(h)
}

// ruled is the height of a row whose cells go on for h mm below their first line.
func (g *Table) ruled(h float64) float64 { return g.rise() + h + g.Size()*0.25 + 0.25 }

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

// Part breaks every row that is higher than most, as one is that names hundreds
// of joints, into rows that follow each other and hold its lines in order.
func (g *Table) Part(most float64) {
	var out [][]string
	var under []string
	for i, row := range g.Rows {
		word := ""
		if i < len(g.under) {
			word = g.under[i]
		}
		for g.Height(row) > most {
			cells, _ := g.lines(row)
			rest := false
			for c, ls := range cells {
				k := min(len(ls), 1+max(0, int((most-g.Height(nil))/(g.Size()*lineUp))))
				cells[c] = []string{strings.Join(ls[:k], "\n"), strings.Join(ls[k:], "\n")}
				rest = rest || k < len(ls)
			}
			if !rest {
				break // of one line, higher than a sheet
			}
			head := make([]string, len(cells))
			row = make([]string, len(cells))
			for c, p := range cells {
				head[c], row[c] = p[0], p[1]
			}
			out, under, word = append(out, head), append(under, word), ""
		}
		out, under = append(out, row), append(under, word)
	}
	g.Rows, g.under = out, under
}

// rise is how far the first base line of a row lies under its upper edge.
func (g *Table) rise() float64 { return 0.5 + g.Size()*1.1 }

// Row sets one row with a fine rule under it and returns the y below.
func (g *Table) Row(s *draw.Sheet, f block.Field, y float64, row []string) float64 {
	cells, h := g.lines(row)
	x := f.X0
	for c, ls := range cells {
		v := y
		for _, l := range ls {
			g.cell(s, x, v-g.rise(), c, l)
			v -= g.Size() * lineUp
		}
		x += g.width[c] + g.gap
	}
	y -= g.ruled(h)
	s.Line(draw.Hatch, vec.At(f.X0, y), vec.At(x-g.gap, y))
	return y
}
