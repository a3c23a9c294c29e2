package templates

import (
	"fmt"

	"pegwright/draw"
	"pegwright/geom"
	"pegwright/geom/measure"
	"pegwright/geom/vec"
)

// title returns the sheet's title and the word that its id ends in.
func (p plan) title() (title, word string) {
	title, word = p.wholeTitle()
	if p.part.of > 1 {
		title = fmt.Sprintf("%s, part %d of %d", title, p.part.n, p.part.of)
		word = fmt.Sprintf("%s-part-%d", word, p.part.n)
	}
	return title, word
}

// wholeTitle is title for a template that does not come in parts.
func (p plan) wholeTitle() (title, word string) {
	switch p.kind {
	case "near":
		return "Hole, near face", "near"
	case "far":
		return "Hole, FAR FACE", "far"
	case "through":
		if len(p.joint.Pegs) > 1 {
			return "Hole, peg from above", fmt.Sprintf("through-%d", p.holes[0].n)
		}
		return "Hole, peg from above", "through"
	case "mate":
		return "Hole, the other timber", "mate"
	case "flap":
		return "Flap, entered face", "flap"
	case "end":
		if p.v.t == p.joint.Into {
			return "End pattern", "into-" + string(p.end)
		}
		return "End pattern", "of-" + string(p.end)
	}
	if p.joint.Broad {
		return "Lap template", fmt.Sprintf("tenon-%d", p.v.face)
	}
	return "Tenon template", fmt.Sprintf("tenon-%d", p.v.face)
}

// sheetKind is the kind that goes into file names.
func (p plan) sheetKind() string {
	switch p.kind {
	case "tenon", "flap", "end":
		return p.kind
	}
	return "hole"
}

// render puts a template on as many pages as it takes, divided in one of the ways
// given, and returns the list of the joints that it serves where that found no
// room on them.
func render(f *geom.Frame, p plan, ways []layout) (pages []*draw.Sheet, served words) {
	title, word := p.title()
	id := p.joint.ID + "-" + word
	extra := 0.0
	if p.arrow != nil {
		extra = moverHigh
	}
	head, list := p.words(f.Units), p.members(f.Units)
	k := fit(p, head, list, extra, ways)
	parts := []tile{{cols: 1, rows: 1, o: k.win.Mid().Sub(k.win.Min).Sub(k.middle(p))}}
	if k.tiled {
		parts = cut(p, k.box, k.win)
		extra += keyHigh(parts[0].rows)
	}
	var out []*draw.Sheet
	var left words
	for i, t := range parts {
		name, heading := id, title
		if len(parts) > 1 {
			name = fmt.Sprintf("%s-tile-%d", id, i+1)
			heading = fmt.Sprintf("%s, tile %d of %d", title, i+1, len(parts))
		}
		pg := newPage(f, k.layout, p.sheetKind(), name, heading, p.shows())
		pg.canvas = &canvas{s: pg.s, win: k.win, o: k.win.Min.Add(t.o), owner: p.joint.ID}
		if rest := pg.write(k.column(i, len(parts)), extra); i == 0 || k.how != overflowing {
			left = append(left, rest...)
		}
		if len(k.strip) > 0 {
			pg.under(k.strip)
		}
		pg.put(p, t, f.Units)
		out = append(out, pg.s)
	}
	return append(out, more(f, k.layout, p, id, left)...), k.later
}

// put draws the template and what belongs to it on the page.
func (pg *page) put(p plan, t tile, u measure.Units) {
	if p.kind == "tenon" {
		pg.canvas.breakOff(p.shapes[0].pts, t)
	}
	if t.one() {
		p.dims = inView(pg.canvas.seen(), p.dims, p.holes)
	}
	p.draw(pg.canvas)
	if !t.one() {
		pg.seams(t, p.wide())
	}
	p.letter(pg.canvas, u)
	if p.kind == "tenon" && t.col == 0 && t.row == 0 {
		pg.mover(p, u)
	}
}

// more prints the words that found no room, on sheets of their own.
func more(f *geom.Frame, l layout, p plan, id string, left words) []*draw.Sheet {
	var out []*draw.Sheet
	for n := 1; len(left) > 0 && n < 100; n++ {
		title, _ := p.title()
		pg := newPage(f, l, p.sheetKind(), fmt.Sprintf("%s-list-%d", id, n), title+", more words", p.shows())
		pg.col, pg.wide, pg.above = l.win, 0, 0
		pg.y = pg.col.Max.Y
		before := len(left)
		left = pg.write(left, 0)
		out = append(out, pg.s)
		if len(left) == before {
			break
		}
	}
	return out
}

// shows says which joints the template serves, for the title block.
func (p plan) shows() string {
	s := fmt.Sprintf("%s, %s", p.joint.ID, p.v.t.ID)
	if n := len(p.serves); n > 1 {
		s += fmt.Sprintf(" and %d more", n-1)
	}
	return s
}

// draw puts the template on the canvas without its lettering: areas first, then
// what is behind the face, the lines, the holes, and the lines of dimensions.
func (p plan) draw(c *canvas) {
	for _, w := range p.windows {
		c.tone(0.93, w)
		c.loop(draw.Meta{Class: draw.Hatch, Mark: "window:" + p.joint.ID}, w)
	}
	if p.kind == "flap" {
		c.tone(0.93, p.shapes[0].pts)
	}
	p.drawShapes(c)
	for _, q := range p.strokes {
		c.line(draw.Meta{Class: q.class, Mark: q.mark}, q.a, q.b)
	}
	for _, g := range p.guides {
		c.line(draw.Meta{Class: g.class, Mark: g.mark}, g.a, g.b)
	}
	for _, h := range p.holes {
		p.drawHole(c, h)
	}
	for _, d := range p.dims {
		c.dim(d)
	}
}

// letter writes on the canvas what the lines and the holes are, what must be
// seen from afar first.
func (p plan) letter(c *canvas, u measure.Units) {
	if p.kind != "tenon" {
		p.start(c)
	}
	p.guideNames(c, true)
	for _, d := range p.dims {
		c.dimText(d, d.word+u.PlainJoint(d.b.Dist(d.a)))
	}
	p.holeNames(c, u)
	if p.arrow != nil {
		p.arrow.draw(c)
	}
	p.guideNames(c, false)
	p.names(c)
}

// guideNames writes the names of the heavy guides, or of the others.
func (p plan) guideNames(c *canvas, heavy bool) {
	for _, g := range p.guides {
		if heavy == (g.class == draw.Register || g.class == draw.Part) {
			c.name(g)
		}
	}
}

// drawShapes draws the outlines. Where the tenon's runs along the mortise's,
// only the mortise's is drawn.
func (p plan) drawShapes(c *canvas) {
	for i, s := range p.shapes {
		if i == 0 || p.kind == "flap" {
			c.loop(draw.Meta{Class: s.class, Mark: s.mark}, s.pts)
			continue
		}
		for k, a := range s.pts {
			b := s.pts[(k+1)%len(s.pts)]
			if !along(p.shapes[0].pts, a, b) {
				c.line(draw.Meta{Class: s.class, Mark: s.mark}, a, b)
			}
		}
	}
}

// along reports whether the line from a to b runs along a side of the outline.
func along(loop []vec.P, a, b vec.P) bool {
	for i, p := range loop {
		q := loop[(i+1)%len(loop)]
		if abs(turn(p, q, a)) < 0.3 && abs(turn(p, q, b)) < 0.3 {
			return true
		}
	}
	return false
}

func abs(x float64) float64 { return max(x, -x) }

// drawHole draws a hole: the mortise's on a tenon as a dashed circle without a
// centre; any other with cross-hairs to the edge of the sheet and a pricked
// centre. On a tenon the cross is short, so that it is the only one.
func (p plan) drawHole(c *canvas, h hole) {
	r := h.bore / 2
	if h.shadow {
		pen := draw.PenFor(draw.Hidden, c.s.Step)
		pen.Dash = []float64{2, 1}
		c.circle(draw.Meta{Class: draw.Hidden, Mark: h.mark, Pen: &pen}, h.c, r)
		return
	}
	if !c.circle(draw.Meta{Class: draw.Part, Mark: h.mark}, h.c, r) {
		return
	}
	c.circle(draw.Meta{Class: draw.Dimension, Mark: "prick:" + p.joint.ID}, h.c, 0.7)
	x, y := vec.P{X: r - 1.5}, vec.P{Y: r - 1.5}
	cross := draw.Meta{Class: draw.Dimension, Mark: "cross:" + p.joint.ID}
	c.line(cross, h.c.Sub(x), h.c.Add(x))
	c.line(cross, h.c.Sub(y), h.c.Add(y))
	if p.kind == "tenon" {
		return
	}
	hair := draw.Meta{Class: draw.Centre, Mark: "hair:" + p.joint.ID}
	for _, d := range []vec.P{{X: 1}, {X: -1}, {Y: 1}, {Y: -1}} {
		c.line(hair, h.c.Add(d.Mul(r+1)), h.c.Add(d.Mul(far)))
	}
}
