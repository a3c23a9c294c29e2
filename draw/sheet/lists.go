package sheet

import (
	"fmt"
	"strings"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/geom"
	"pegwright/geom/list"
)

// Lists returns the sheets of all lists of the frame: lists follow each other
// on a sheet, and a long one runs on to further sheets under a new head. Joints
// that stops names are marked, as list.Of does.
func Lists(f *geom.Frame, stops map[string]int) []*draw.Sheet {
	_, field := fresh(f, "list", "", block.TitleFor(f, "", "", ""))
	tables := onPaper(f, list.Of(f, stops))
	grids := make([]*grid, len(tables))
	for i, t := range tables {
		grids[i] = gridOf(t)
		grids[i].fit(field.W())
		grids[i].part(field.H() - grids[i].top() - grids[i].overHigh())
	}
	pages := plan(grids, field.H(), field.W())
	var out []*draw.Sheet
	for n, p := range pages {
		out = append(out, listSheet(f, tables, grids, p, n+1, len(pages)))
	}
	return out
}

// onPaper leaves out the lists that have no rows, and the order of assembly
// where the raising sheets tell it.
func onPaper(f *geom.Frame, tables []list.Table) []list.Table {
	var out []list.Table
	for _, t := range tables {
		if len(t.Rows) > 0 && (t.Name != "steps" || len(f.Steps) == 0) {
			out = append(out, t)
		}
	}
	return out
}

// segment is a stretch of a list on one sheet, with its totals or without.
type segment struct {
	list, from, to int
	foot           bool
}

// listGap is the space between two lists on a sheet, footGap that between a list
// and what stands under it, mm.
const (
	listGap = 6.0
	footGap = 3.6
)

// plan divides the lists into sheets of the given height. A list begins on a
// sheet only where at least four of its rows follow, or all.
func plan(grids []*grid, height, width float64) [][]segment {
	pages := [][]segment{nil}
	left := height
	for i, g := range grids {
		from, end := 0, g.foot(width)
		high := make([]float64, len(g.rows))
		for k, row := range g.rows {
			high[k] = g.height(row)
		}
		for {
			left -= g.top()
			n := 0
			for from+n < len(g.rows) {
				_, over := g.over(from+n, n == 0)
				if left < over+high[from+n] {
					break
				}
				left -= over + high[from+n]
				n++
			}
			last := from+n == len(g.rows)
			page := &pages[len(pages)-1]
			foot := last && (left >= max(0, end) || n == 0 && len(*page) == 0)
			if left >= 0 && n >= min(4, len(g.rows)-from) || len(*page) == 0 {
				*page = append(*page, segment{i, from, from + n, foot})
				from += n
			}
			if foot {
				left -= end + listGap
				break
			}
			pages = append(pages, nil)
			left = height
		}
	}
	return pages
}

// listSheet draws the segments of one sheet.
func listSheet(f *geom.Frame, tables []list.Table, grids []*grid, segs []segment, n, of int) *draw.Sheet {
	var names []string
	for _, g := range segs {
		names = append(names, strings.ToLower(tables[g.list].Title))
	}
	title := block.TitleFor(f, "Lists", strings.Join(names, ", "), "none")
	title.Note = "lengths in " + block.UnitName(f.Units) + ""
	s, field := fresh(f, "list", fmt.Sprintf("lists-%d", n), title)
	y := field.Y1
	for _, g := range segs {
		name := tables[g.list].Title
		if g.from > 0 {
			name += ", continued"
		}
		y = grids[g.list].draw(s, field, y, name, g) - listGap
	}
	return s
}

// draw sets a segment from y down and returns the y below it.
func (g *grid) draw(s *draw.Sheet, f block.Field, y float64, name string, seg segment) float64 {
	p := pen{s: s, x: f.X0, y: y, w: f.W()}
	p.line(name, text, true)
	f.Y1, y = p.y-1, p.y
	if seg.to > seg.from {
		y = g.head(s, f)
	}
	for i, row := range g.rows[seg.from:seg.to] {
		lines, high := g.over(seg.from+i, i == 0)
		for k, l := range lines {
			g.letters.Text(s, at(f.X0, y-g.rise()-float64(k)*g.size()*lineUp), l).Bold = true
		}
		y -= high
		y = g.row(s, f, y, row)
	}
	if !seg.foot {
		return y
	}
	p.y = y - footGap
	p.together("foot of "+name, g.totals...)
	for _, l := range g.totals {
		p.para(l)
	}
	return p.y
}

// top is the height of a list's name and head.
func (g *grid) top() float64 { return text*pitch + 1 + g.headHeight() + 1 }

// foot is the height of a list's totals.
func (g *grid) foot(width float64) float64 {
	p := pen{w: width}
	p.together("", g.totals...)
	h := footGap
	for _, l := range g.totals {
		h += p.paraHeight(l)
	}
	return h
}
