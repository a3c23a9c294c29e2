package sheet

import (
	"strings"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/font"
	"pegwright/geom/list"
)

// grid is a table about to be set.
type grid struct {
	heads   []string
	numeric []bool
	rows    [][]string
	totals  []string
	under   []string // what stands over each row that begins a run, "" for none
	width   []float64
	size    float64 // text height of all cells
}

const (
	cellGap = 2.6
	lineUp  = 1.56 // from line to line of a cell, in text heights
)

// gridOf sets a list for paper. Where the rows of its first column come in runs
// of one word, as the bores of a timber do, the word stands over the run.
func gridOf(t list.Table) *grid {
	g := &grid{totals: t.Totals, under: make([]string, len(t.Rows))}
	first := 0
	if inRuns(t) {
		first = 1
		for i, r := range t.Rows {
			if i == 0 || t.Rows[i-1][0] != r[0] {
				g.under[i] = r[0]
			}
		}
	}
	var kept []int
	for i, c := range t.Columns {
		if c.Spare || i < first {
			continue
		}
		if w := oneWord(t, i); w != "" {
			g.totals = append([]string{"all: " + c.Name + " " + w}, g.totals...)
			continue
		}
		kept = append(kept, i)
		g.heads, g.numeric = append(g.heads, c.Heading()), append(g.numeric, c.Numeric())
	}
	for _, r := range t.Rows {
		row := make([]string, len(kept))
		for k, i := range kept {
			row[k] = r[i]
		}
		g.rows = append(g.rows, row)
	}
	g.settle()
	return g
}

// oneWord returns what a column of words says in every row of a list of three
// rows and more; the foot tells it once, and the column goes.
func oneWord(t list.Table, c int) string {
	if t.Columns[c].Numeric() || len(t.Rows) < 3 {
		return ""
	}
	for _, r := range t.Rows {
		if r[c] != t.Rows[0][c] {
			return ""
		}
	}
	return t.Rows[0][c]
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

// settle chooses the one height of all cells: that at which every figure of a
// fraction can be read.
func (g *grid) settle() {
	g.size = small
	for _, r := range g.rows {
		for _, c := range r {
			g.size = max(g.size, dim.Legible(c, small))
		}
	}
}

// over is the height of what stands over row i; at the head of a sheet the run
// that goes on is named again.
func (g *grid) over(i int, head bool) (string, float64) {
	w := ""
	if i < len(g.under) {
		w = g.under[i]
		for k := i; head && w == "" && k > 0; k-- {
			w = g.under[k-1]
		}
	}
	if w == "" {
		return "", 0
	}
	return w, g.runHigh()
}

// runHigh is the height of a line over a run.
func (g *grid) runHigh() float64 { return g.size*1.4 + 0.6 }

// fit settles the column widths: each as wide as its cells, and where that is
// too much for the sheet the columns of words give way, widest first, by
// wrapping.
func (g *grid) fit(total float64) {
	n := len(g.heads)
	g.width = make([]float64, n)
	least := make([]float64, n)
	sum := float64(n-1) * cellGap
	for c := range g.heads {
		for _, w := range strings.Fields(g.heads[c]) {
			least[c] = max(least[c], font.Measure(w, small, true))
		}
		g.width[c] = least[c]
		for _, r := range g.rows {
			w := font.Measure(r[c], g.size, false)
			g.width[c] = max(g.width[c], w)
			if g.numeric[c] {
				least[c] = max(least[c], w)
			}
		}
		least[c] = max(least[c], min(g.width[c], 16))
		sum += g.width[c]
	}
	sum = g.narrow(least, sum, total)
	if sum < total && n > 1 {
		for c := range g.width {
			g.width[c] += min((total-sum)/float64(n), 8)
		}
	}
}

// narrow takes width from the widest columns, down to their least, until sum is
// no more than total, and returns the sum that is left.
func (g *grid) narrow(least []float64, sum, total float64) float64 {
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
func (g *grid) headLines() (lines [][]string, most int) {
	lines = make([][]string, len(g.heads))
	for c, h := range g.heads {
		lines[c] = font.WrapFace(h, g.width[c], small, true)
		most = max(most, len(lines[c]))
	}
	return lines, most
}

func (g *grid) headHeight() float64 {
	_, n := g.headLines()
	return float64(n) * small * pitch
}

// head sets the headings and returns the y below them.
func (g *grid) head(s *draw.Sheet, f block.Field) float64 {
	lines, most := g.headLines()
	x := f.X0
	for c, ls := range lines {
		y := f.Y1 - float64(most-len(ls))*small*pitch
		for _, l := range ls {
			g.cell(s, x, y-small, c, l, small).Bold = true
			y -= small * pitch
		}
		x += g.width[c] + cellGap
	}
	y := f.Y1 - g.headHeight()
	s.Line(draw.FrameLine, at(f.X0, y), at(x-cellGap, y))
	return y - 1
}

// cell sets one line of a cell, numbers to the right.
func (g *grid) cell(s *draw.Sheet, x, y float64, c int, t string, h float64) *draw.Text {
	if g.numeric[c] {
		cell := s.Text(at(x+g.width[c], y), h, t)
		cell.Anchor = draw.End
		return cell
	}
	return s.Text(at(x, y), h, t)
}

func (g *grid) lines(row []string) (cells [][]string, height float64) {
	cells = make([][]string, len(row))
	for c, t := range row {
		cells[c] = font.Wrap(t, g.width[c], g.size)
		height = max(height, float64(len(cells[c])-1)*g.size*lineUp)
	}
	return cells, height
}

func (g *grid) height(row []string) float64 {
	_, h := g.lines(row)
	return g.rise() + h + g.size*0.32 + 0.3
}

// part breaks every row that is higher than most, as one is that names hundreds
// of joints, into rows that follow each other and hold its lines in order.
func (g *grid) part(most float64) {
	var out [][]string
	var under []string
	for i, row := range g.rows {
		word := ""
		if i < len(g.under) {
			word = g.under[i]
		}
		for g.height(row) > most {
			cells, _ := g.lines(row)
			rest := false
			for c, ls := range cells {
				k := min(len(ls), 1+max(0, int((most-g.height(nil))/(g.size*lineUp))))
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
	g.rows, g.under = out, under
}

// rise is how far the first base line of a row lies under its upper edge.
func (g *grid) rise() float64 { return 0.5 + g.size*1.1 }

// row sets one row with a fine rule under it and returns the y below.
func (g *grid) row(s *draw.Sheet, f block.Field, y float64, row []string) float64 {
	cells, _ := g.lines(row)
	x := f.X0
	for c, ls := range cells {
		v := y
		for _, l := range ls {
			g.cell(s, x, v-g.rise(), c, l, g.size)
			v -= g.size * lineUp
		}
		x += g.width[c] + cellGap
	}
	y -= g.height(row)
	s.Line(draw.Hatch, at(f.X0, y), at(x-cellGap, y))
	return y
}
