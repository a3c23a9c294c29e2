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
