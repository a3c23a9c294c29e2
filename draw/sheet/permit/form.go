package permit

import (
	"slices"
	"strings"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/font"
	"pegwright/draw/page"
	"pegwright/geom/vec"
)

// form is a table with ruled cells, some of them left blank to write in.
type form struct {
	heads  []string
	shares []float64 // of the width, sum 1
	rows   [][]string
	least  float64 // height of a row, paper mm
}

const cellPad = 1.5

// drop takes a column out; the shares are to be set anew.
func (m *form) drop(c int) {
	m.heads = slices.Delete(m.heads, c, c+1)
	for i := range m.rows {
		m.rows[i] = slices.Delete(m.rows[i], c, c+1)
	}
}

// letters is the group of all cells and heads.
func (m *form) letters() dim.Group {
	all := slices.Concat(append([][]string{m.heads}, m.rows...)...)
	return dim.Together("form "+m.heads[0], all...)
}

// roomy returns the shares with every column wide enough for the longest word of
// its heading and for every number in it, which is never broken; the widest
// columns give what that takes.
func (m *form) roomy(g dim.Group, width float64) []float64 {
	out := slices.Clone(m.shares)
	for c, head := range m.heads {
		need := 0.0
		wide := func(w string, bold bool) { need = max(need, font.Measure(w, g.Height, bold)+2*cellPad+0.5) }
		for _, w := range strings.Fields(head) {
			wide(w, true)
		}
		for _, r := range m.rows {
			for _, w := range strings.Split(r[c], " ") {
				if strings.ContainsAny(w, "0123456789") && !strings.ContainsAny(w, "-–") {
					wide(w, false)
				}
			}
		}
		if short := need/width - out[c]; short > 0 {
			widest := slices.Index(out, slices.Max(out))
			out[widest] -= short
			out[c] += short
		}
	}
	return out
}

// set draws as many rows as there is room for from the top of the field down,
// under the heads, and returns the y below and the rows that are left. At least
// one row is drawn.
func (m *form) set(s *draw.Sheet, f block.Field) (y float64, left [][]string) {
	g := m.letters()
	m.shares = m.roomy(g, f.W())
	y = m.row(s, f, f.Y1, m.heads, g, true, 0)
	for i, r := range m.rows {
		h := m.height(f, r, g.Height, false, m.least)
		if i > 0 && y-h < f.Y0 {
			return y, m.rows[i:]
		}
		y = m.row(s, f, y, r, g, false, m.least)
	}
	return y, nil
}

// high is the height of the whole form in a field.
func (m *form) high(f block.Field) float64 {
	g := m.letters()
	m.shares = m.roomy(g, f.W())
	sum := m.height(f, m.heads, g.Height, true, 0)
	for _, r := range m.rows {
		sum += m.height(f, r, g.Height, false, m.least)
	}
	return sum
}

// lines wraps the cells of a row.
func (m *form) lines(f block.Field, row []string, h float64, bold bool) (cells [][]string, most int) {
	cells = make([][]string, len(row))
	for c, t := range row {
		w := m.shares[c]*f.W() - 2*cellPad
		if bold {
			cells[c] = font.WrapFace(t, w, h, true)
		} else {
			cells[c] = page.Wrap(t, w, h)
		}
		most = max(most, len(cells[c]))
	}
	return cells, most
}

func (m *form) height(f block.Field, row []string, h float64, bold bool, least float64) float64 {
	_, n := m.lines(f, row, h, bold)
	return max(least, float64(n)*h*1.6+1.6)
}

// row draws one row with its rules and returns the y below it.
func (m *form) row(s *draw.Sheet, f block.Field, y float64, row []string, g dim.Group, bold bool, least float64) float64 {
	h := g.Height
	cells, _ := m.lines(f, row, h, bold)
	low := y - m.height(f, row, h, bold, least)
	s.Rect(draw.Dimension, draw.Box{Min: vec.At(f.X0, low), Max: vec.At(f.X1, y)})
	x := f.X0
	for c, ls := range cells {
		if c > 0 {
			s.Line(draw.Dimension, vec.At(x, low), vec.At(x, y))
		}
		for i, l := range ls {
			g.Text(s, vec.At(x+cellPad, y-1-h-float64(i)*h*1.6), l).Bold = bold
		}
		x += m.shares[c] * f.W()
	}
	return low
}
