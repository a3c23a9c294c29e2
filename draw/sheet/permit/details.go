package permit

import (
	"fmt"
	"strings"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/font"
	"pegwright/draw/page"
)

// arrange returns into how many columns and rows a sheet of n details is divided:
// at most four by two.
func arrange(n int) (across, down int) {
	switch {
	case n <= 3:
		return max(n, 2), 1
	case n == 4:
		return 2, 2
	case n <= 6:
		return 3, 2
	}
	return 4, 2
}

// details draws one joint of every kind, exploded.
func (p *set) details() {
	pages := (len(p.kinds) + 7) / 8
	each := (len(p.kinds) + pages - 1) / max(pages, 1) // so that no sheet holds the last one alone
	across, down := arrange(each)
	var s *draw.Sheet
	var field block.Field
	for i, k := range p.kinds {
		at := i % each
		if at == 0 {
			n := i/each + 1
			id, title := "details", "Joint details"
			if n > 1 {
				id, title = fmt.Sprintf("details-%d", n), title+furtherPage+fmt.Sprint(n)
			}
			s, field = p.sheet(id, title, "one of each kind, pulled apart", "pictorial",
				"exploded views, hidden lines left out; not for measuring")
		}
		cell := cellOf(field, at%across, at/across, across, down, 5)
		p.detail(s, cell, i+1, k)
	}
}

// cellOf returns a cell of a field divided into columns and rows, the first row
// on top.
func cellOf(f block.Field, col, row, cols, rows int, gap float64) block.Field {
	w := (f.W() - gap*float64(cols-1)) / float64(cols)
	h := (f.H() - gap*float64(rows-1)) / float64(rows)
	x := f.X0 + float64(col)*(w+gap)
	y := f.Y1 - float64(row)*(h+gap)
	return block.Field{X0: x, Y0: y - h, X1: x + w, Y1: y}
}

// detail draws one joint with its heading above and what is said of it below.
func (p *set) detail(s *draw.Sheet, cell block.Field, n int, k jointKind) {
	j := k.joints[0]
	s.Rect(draw.Dimension, cell.Box())
	cell = cell.Inset(1.8)
	head := font.WrapFace(fmt.Sprintf("D%d  %s", n, k.name), cell.W(), dim.Text, true)
	w := page.Pen{S: s, X: cell.X0, Y: cell.Y1, W: cell.W()}
	for _, l := range head {
		w.Line(l, dim.Text, true)
	}
	f := page.Pen{S: s, X: cell.X0, W: cell.W()}
	var all []string
	for _, o := range p.kinds {
		all = append(all, p.detailWords(o))
	}
	f.Together("details", all...)
	foot := f.ParaHeight(p.detailWords(k))
	f.Y = cell.Y0 + foot
	f.Para(p.detailWords(k))
	room := cell
	room.Y1, room.Y0 = w.Y-0.5, cell.Y0+foot+1
	k.drawn.Apart().Picture(room.W(), room.H(), false).Fill(s, room)
	s.Links = append(s.Links, draw.Link{To: j.ID, Rect: cell.Box()})
}

// detailWords says which joint is drawn, how many there are, and what holds it.
func (p *set) detailWords(k jointKind) string {
	j := k.joints[0]
	n := "the only one"
	if c := len(k.joints); c > 1 {
		n = fmt.Sprintf("one of %d", c)
	}
	return fmt.Sprintf("Drawn: %s into %s, %s; %s.", j.Of.ID, j.Into.ID, n, strings.Join(p.pegsOf(k), " or "))
}

// pegsOf lists how the joints of a kind are pegged, each once.
func (p *set) pegsOf(k jointKind) []string {
	var out []string
	said := map[string]bool{}
	for _, j := range k.joints {
		if w := pegWords(p.f, j); !said[w] {
			said[w] = true
			out = append(out, w)
		}
	}
	return out
}
