package page

import (
	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/geom/vec"
)

// Run is a stretch of a table on one sheet, with its totals or without: the
// number of the table and its rows, the last one apart.
type Run struct {
	Table, From, To int
	foot            bool
}

// ListGap is the space between two lists on a sheet, footGap that between a list
// and what stands under it, mm.
const (
	ListGap = 6.0
	footGap = 3.6
)

// Divide divides the lists into sheets of the given height. A list begins on a
// sheet only where at least four of its rows follow, or all.
func Divide(grids []*Table, height, width float64) [][]Run {
	pages := [][]Run{nil}
	left := height
	for i, g := range grids {
		from, end := 0, g.foot(width)
		high := make([]float64, len(g.Rows))
		for k, row := range g.Rows {
			high[k] = g.Height(row)
		}
		for {
			left -= g.Top()
			n := 0
			for from+n < len(g.Rows) {
				_, over := g.over(from+n, n == 0)
				if left < over+high[from+n] {
					break
				}
				left -= over + high[from+n]
				n++
			}
			last := from+n == len(g.Rows)
			page := &pages[len(pages)-1]
			foot := last && (left >= max(0, end) || n == 0 && len(*page) == 0)
			if left >= 0 && n >= min(4, len(g.Rows)-from) || len(*page) == 0 {
				*page = append(*page, Run{i, from, from + n, foot})
				from += n
			}
			if foot {
				left -= end + ListGap
				break
			}
			pages = append(pages, nil)
			left = height
		}
	}
	return pages
}

// Draw sets a run of the table from y down and returns the y below it.
func (g *Table) Draw(s *draw.Sheet, f block.Field, y float64, name string, r Run) float64 {
	p := Pen{S: s, X: f.X0, Y: y, W: f.W()}
	p.Line(name, dim.Text, true)
	f.Y1, y = p.Y-1, p.Y
	if r.To > r.From {
		y = g.Head(s, f)
	}
	for i, row := range g.Rows[r.From:r.To] {
		lines, high := g.over(r.From+i, i == 0)
		for k, l := range lines {
			g.Letters.Text(s, vec.At(f.X0, y-g.rise()-float64(k)*g.Size()*lineUp), l).Bold = true
		}
		y -= high
		y = g.Row(s, f, y, row)
	}
	if !r.foot {
		return y
	}
	p.Y = y - footGap
	p.Together("foot of "+name, g.totals...)
	for _, l := range g.totals {
		p.Para(l)
	}
	return p.Y
}

// Top is the height of a list's name and head.
func (g *Table) Top() float64 { return dim.Text*Pitch + 1 + g.HeadHeight() + 1 }

// foot is the height of a list's totals.
func (g *Table) foot(width float64) float64 {
	p := Pen{W: width}
	p.Together("", g.totals...)
	h := footGap
	for _, l := range g.totals {
		h += p.ParaHeight(l)
	}
	return h
}
