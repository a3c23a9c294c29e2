package templates

import (
	"fmt"

	"pegwright/draw"
	"pegwright/geom"
	"pegwright/geom/vec"
)

// longestRoll is how long a page of a roll may be, mm: a PDF page ends at
// 14400 points, 5080 mm.
const longestRoll = 4900.0

// poleSheets draws the story poles: on sheets strip under strip, to be cut out
// and taped; on a roll in one piece, pole beside pole.
func poleSheets(f *geom.Frame, all []pole) []*draw.Sheet {
	if !f.Paper.Poles {
		return nil
	}
	if roll, ok := draw.RollNamed(f.Paper.Templates); ok {
		return rollPoles(f, roll, all)
	}
	var out []*draw.Sheet
	for n, p := range all {
		out = append(out, stackPoles(f, p, n+1)...)
	}
	return out
}

// poleLayout divides a page: strips at the top, the words and the lying bar in
// a strip of the given height at the foot, the upright bar at the right.
func poleLayout(p draw.Paper, foot float64) layout {
	b := fieldOf(p)
	l := layout{paper: p, win: b.Box(), col: b.Box()}
	l.barX = vec.P{X: b.X0 + 1, Y: b.Y0 + 1}
	l.barY = vec.P{X: b.X1 - barRoom, Y: b.Y0 + 1}
	l.win.Max.X = l.barY.X - 3
	l.win.Min.Y = b.Y0 + foot
	l.col = draw.Box{Min: vec.P{X: l.barX.X + long + 4, Y: b.Y0}, Max: vec.P{X: l.win.Max.X, Y: l.win.Min.Y - 3}}
	l.above = b.Y1
	return l
}

// footHigh is the height of the foot of a page of strips, mm.
const footHigh = 38.0

// stackPoles draws one pole on sheets, strip under strip.
func stackPoles(f *geom.Frame, p pole, number int) []*draw.Sheet {
	l := poleLayout(paperOf(f).Landscape(), footHigh)
	if p.high() > l.win.H() {
		l = poleLayout(paperOf(f).Portrait(), footHigh)
	}
	all := p.strips(l.win.W())
	rows := max(1, int(l.win.H()/p.high()))
	pages := (len(all) + rows - 1) / rows
	var out []*draw.Sheet
	for i := range pages {
		id, title := "pole-"+p.t.ID, "Story pole"
		if pages > 1 {
			id, title = fmt.Sprintf("%s-page-%d", id, i+1), fmt.Sprintf("Story pole, page %d of %d", i+1, pages)
		}
		pg := newPage(f, l, "pole", id, title, p.shows())
		pg.write(p.words(f.Units), 0)
		y := l.win.Max.Y
		for _, k := range all[i*rows : min(len(all), (i+1)*rows)] {
			k.left, k.y = l.win.Min.X, y-p.high()+poleFoot
			k.draw(pg.s, number)
			y -= p.high()
		}
		out = append(out, pg.s)
	}
	return out
}

func (p pole) shows() string {
	s := p.t.ID
	if n := len(p.also); n > 0 {
		s += fmt.Sprintf(" and %d more", n)
	}
	return s
}

// nameHigh is the height of a pole's words over its strip on a roll: that on
// the shortest page.
func (p pole) nameHigh(f *geom.Frame) float64 { return p.words(f.Units).height(240, nil) + 2 }

// rollPoles draws poles on a roll, side by side while they fit across it.
func rollPoles(f *geom.Frame, roll draw.Paper, all []pole) []*draw.Sheet {
	var out []*draw.Sheet
	room := poleLayout(draw.Paper{W: roll.W, H: roll.W}, footHigh).win.H()
	for from := 0; from < len(all); {
		to, used, most := from, 0.0, 0.0
		for to < len(all) && (to == from || used+all[to].high()+all[to].nameHigh(f) <= room) {
			used += all[to].high() + all[to].nameHigh(f)
			most = max(most, all[to].t.Length)
			to++
		}
		out = append(out, rollPage(f, roll, all[from:to], from, most)...)
		from = to
	}
	return out
}

// rollPage draws some poles on pages as long as the longest of them.
func rollPage(f *geom.Frame, roll draw.Paper, some []pole, before int, most float64) []*draw.Sheet {
	paper := draw.Paper{Name: roll.Name, W: max(min(most+60, longestRoll), 280), H: roll.W}
	if abs(paper.W-roll.W) < 1 {
		paper.W += 5 // a page's own sides tell which way the roll runs
	}
	l := poleLayout(paper, footHigh)
	pages := tiles(most+8, l.win.W())
	var out []*draw.Sheet
	for i := range pages {
		id, title := "pole-"+some[0].t.ID, "Story poles"
		if pages > 1 {
			id, title = fmt.Sprintf("%s-page-%d", id, i+1), fmt.Sprintf("%s, page %d of %d", title, i+1, pages)
		}
		shows := some[0].shows()
		if len(some) > 1 {
			shows = fmt.Sprintf("%d poles, from %s", len(some), some[0].t.ID)
		}
		pg := newPage(f, l, "pole", id, title, shows)
		y := l.win.Max.Y
		for n, p := range some {
			pg.named(p, y, f)
			y -= p.nameHigh(f) + p.high()
			if parts := p.strips(l.win.W()); i < len(parts) {
				k := parts[i]
				k.left, k.y = l.win.Min.X, y+poleFoot
				k.draw(pg.s, before+n+1)
			}
		}
		out = append(out, pg.s)
	}
	return out
}

// named writes a pole's words over its strip, from height y down.
func (p *page) named(q pole, y float64, f *geom.Frame) {
	l := layout{col: p.win}
	l.col.Max.Y = y
	l.flow(q.words(f.Units), endless, p.line)
}
