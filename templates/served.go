package templates

import (
	"fmt"
	"strings"

	"pegwright/draw"
	"pegwright/geom"
)

// servedSheets prints the lists of joints that found no room on their templates,
// one after another, so that few sheets hold them all.
func servedSheets(f *geom.Frame, groups []plan, lists []words) []*draw.Sheet {
	var out []*draw.Sheet
	var pg *page
	second := false // the page's second column is being filled
	for i, list := range lists {
		if len(list) == 0 {
			continue
		}
		title, word := groups[i].title()
		owner := groups[i].joint.ID + "-" + word
		all := append(words{{title + ", " + groups[i].joint.ID, lettering, true}}, list...)
		for tries := 0; len(all) > 0; tries++ {
			if pg != nil && (pg.roomFor(all) || tries > 1) {
				all = pg.list(owner, all)
			}
			switch {
			case len(all) == 0:
			case pg != nil && !second:
				pg.beside(f)
				second = true
			default:
				pg, second = servedPage(f, len(out)+1), false
				out = append(out, pg.s)
			}
		}
	}
	return out
}

// servedPage starts a sheet of lists with its first column.
func servedPage(f *geom.Frame, n int) *page {
	l := layouts(f)[0]
	pg := newPage(f, l, "hole", fmt.Sprintf("served-%d", n), "Joints served", "lists of templates that serve several joints")
	pg.col, pg.wide, pg.above = l.win, 0, l.paper.H
	pg.y = pg.col.Max.Y
	return pg
}

// beside goes on to the second column of a sheet of lists, beside the bars.
func (p *page) beside(f *geom.Frame) {
	p.layout = layouts(f)[0]
	p.y = p.col.Max.Y
}

// roomFor reports whether the words stand in what is left of the column.
func (p *page) roomFor(w words) bool {
	l := p.layout
	l.col.Max.Y = p.y
	return l.room(w, 0)
}

// list writes words, notes whose list they are, and returns those that found no
// room. A paragraph that no column of this kind holds whole is begun in this one
// and goes on in the next: in an empty column at least a line of it stands.
func (p *page) list(owner string, w words) words {
	n := len(p.s.Items)
	left := p.write(w, 0)
	if len(left) > 0 && !p.layout.room(left[:1], 0) {
		now, later := p.parted(left[0])
		if now.text != "" {
			p.write(words{now}, 0)
		}
		left = append(words{later}, left[1:]...)
	}
	for _, it := range p.s.Items[n:] {
		it.Head().Owner = owner
	}
	p.y -= lettering
	return left
}

// parted breaks a paragraph at the end of the last line that stands in what is
// left of the column. What comes first is empty where not one line does.
func (p *page) parted(q para) (now, later para) {
	lines := wrap(q.text, p.col.W(), q.height, q.bold)
	pitch := q.height * lead
	n := int((p.y - q.height*paraAir - p.foot(0)) / pitch)
	had, text := 0, []rune(q.text)
	for _, l := range lines[:min(max(n, 0), len(lines)-1)] {
		if had += len([]rune(l)); text[had] == ' ' {
			had++
		}
	}
	now, later = q, q
	now.text, later.text = strings.TrimSuffix(string(text[:had]), " "), string(text[had:])
	return now, later
}
