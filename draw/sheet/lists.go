package sheet

import (
	"fmt"
	"strings"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/page"
	"pegwright/geom"
	"pegwright/geom/list"
)

// Lists returns the sheets of all lists of the frame: lists follow each other
// on a sheet, and a long one runs on to further sheets under a new head. Joints
// that stops names are marked, as list.Of does.
func Lists(f *geom.Frame, stops map[string]int) []*draw.Sheet {
	field := block.FieldFor(f)
	tables := onPaper(f, list.Of(f, stops))
	grids := make([]*page.Table, len(tables))
	for i, t := range tables {
		grids[i] = page.TableOf(t, field.W())
		grids[i].Fit(field.W())
		grids[i].Part(field.H() - grids[i].Top() - grids[i].OverHigh())
	}
	pages := page.Divide(grids, field.H(), field.W())
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

// listSheet draws the segments of one sheet.
func listSheet(f *geom.Frame, tables []list.Table, grids []*page.Table, segs []page.Run, n, of int) *draw.Sheet {
	var names []string
	for _, g := range segs {
		names = append(names, strings.ToLower(tables[g.Table].Title))
	}
	title := block.TitleFor(f, "Lists", strings.Join(names, ", "), "none")
	title.Note = "lengths in " + block.UnitName(f.Units) + ""
	s, field := block.ForFrame(f, "list", fmt.Sprintf("lists-%d", n), title)
	y := field.Y1
	for _, g := range segs {
		name := tables[g.Table].Title
		if g.From > 0 {
			name += ", continued"
		}
		y = grids[g.Table].Draw(s, field, y, name, g) - page.ListGap
	}
	return s
}
