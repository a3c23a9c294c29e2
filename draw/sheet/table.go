package sheet

import (
	"fmt"
	"strings"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/font"
	"pegwright/geom"
	"pegwright/geom/list"
)

// Lists returns the sheets of all lists of the frame, each on as many sheets as
// its rows take.
func Lists(f *geom.Frame) []*draw.Sheet {
	var out []*draw.Sheet
	for _, t := range list.All(f) {
		out = append(out, Table(f, t)...)
	}
	return out
}

// Table returns the sheets of one list.
func Table(f *geom.Frame, t list.Table) []*draw.Sheet {
	g := gridOf(t)
	page := func(n int) (*draw.Sheet, block.Field) {
		title := block.TitleFor(f, t.Title, "", "none")
		title.Note = "heavy rule: head of the list; lengths in " + block.UnitName(f.Units)
		id := "list-" + t.Name
		if n > 1 {
			id = fmt.Sprintf("%s-%d", id, n)
			title.Sheet = fmt.Sprintf("%s, page %d", t.Title, n)
		}
		s, field := fresh(f, "list", id, title)
		return s, field
	}
	s, field := page(1)
	out := []*draw.Sheet{s}
	g.fit(field.W())
	y := g.head(s, field)
	for _, row := range g.rows {
		h := g.height(row)
		if y-h < field.Y0 {
			s, field = page(len(out) + 1)
			out = append(out, s)
			y = g.head(s, field)
		}
		y = g.row(s, field, y, row)
	}
	foot := pen{s: s, x: field.X0, y: y - 3, w: field.W()}
	if foot.y-float64(len(t.Totals)+1)*small*pitch < field.Y0 && len(t.Totals) > 0 {
		s, field = page(len(out) + 1)
		out = append(out, s)
		foot = pen{s: s, x: field.X0, y: field.Y1, w: field.W()}
	}
	for i, l := range t.Totals {
		if i == 0 {
			foot.line(block.Fit(l, field.W(), text, true), text, true)
			continue
		}
		foot.para(l)
	}
	return out
}

// grid is a table about to be set.
type grid struct {
	heads   []string
	numeric []bool
	rows    [][]string
	width   []float64
	size    []float64 // text height of each column
}

const cellGap = 3.0

func gridOf(t list.Table) *grid {
	g := &grid{}
	for _, c := range t.Columns {
		g.heads, g.numeric = append(g.heads, c.Heading()), append(g.numeric, c.Numeric())
		g.size = append(g.size, small)
	}
	g.rows = t.Rows
	for _, r := range t.Rows {
		for i, c := range r {
			g.size[i] = max(g.size[i], dim.Legible(c, small))
		}
	}
	return g
}

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
			w := font.Measure(r[c], g.size[c], false)
			g.width[c] = max(g.width[c], w)
			if g.numeric[c] {
				least[c] = max(least[c], w)
			}
		}
		least[c] = max(least[c], min(g.width[c], 16))
		sum += g.width[c]
	}
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
	if sum < total && n > 1 {
		for c := range g.width {
			g.width[c] += min((total-sum)/float64(n), 8)
		}
	}
}

// head sets the headings and returns the y below them.
func (g *grid) head(s *draw.Sheet, f block.Field) float64 {
	lines := make([][]string, len(g.heads))
	most := 0
	for c, h := range g.heads {
		lines[c] = font.WrapFace(h, g.width[c], small, true)
		most = max(most, len(lines[c]))
	}
	x := f.X0
	for c, ls := range lines {
		y := f.Y1 - float64(most-len(ls))*small*pitch
		for _, l := range ls {
			g.cell(s, x, y-small, c, l, small).Bold = true
			y -= small * pitch
		}
		x += g.width[c] + cellGap
	}
	y := f.Y1 - float64(most)*small*pitch
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
		cells[c] = wrap(t, g.width[c], g.size[c])
		height = max(height, float64(len(cells[c])-1)*g.size[c]*1.6)
	}
	return cells, height
}

func (g *grid) height(row []string) float64 {
	_, h := g.lines(row)
	return 0.8 + g.tallest()*1.15 + h + g.tallest()*0.4 + 0.4
}

// tallest is the text height that sets the first base line of a row.
func (g *grid) tallest() float64 {
	h := small
	for _, x := range g.size {
		h = max(h, x)
	}
	return h
}

// row sets one row with a fine rule under it and returns the y below.
func (g *grid) row(s *draw.Sheet, f block.Field, y float64, row []string) float64 {
	cells, _ := g.lines(row)
	x := f.X0
	for c, ls := range cells {
		v := y
		for _, l := range ls {
			g.cell(s, x, v-0.8-g.tallest()*1.15, c, l, g.size[c])
			v -= g.size[c] * 1.6
		}
		x += g.width[c] + cellGap
	}
	y -= g.height(row)
	s.Line(draw.Hatch, at(f.X0, y), at(x-cellGap, y))
	return y
}
