package templates

import (
	"fmt"

	"pegwright/draw"
	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/list"
	"pegwright/geom/measure"
	"pegwright/geom/peg"
	"pegwright/geom/vec"
)

// pegSize is one size of peg: all in mm.
type pegSize struct {
	bore, length, head, beyond float64
	lead                       peg.Lead
	enters                     bool // a taper passes both holes
	blind                      bool // its hole ends in the wood
	count, spares              int
}

// flats is what the finished peg measures across its flats: the middle of what
// is allowed.
func (p pegSize) flats() float64 {
	o := peg.OctagonFor(p.bore)
	return (o.LeastFlats + o.MostFlats) / 2
}

// pegSizes returns the sizes of peg to make, as the list of pegs has them.
func pegSizes(f *geom.Frame, finds []finding.Finding) []pegSize {
	var out []pegSize
	for _, s := range list.PegSizes(f, list.Stopped(f, finds)) {
		if s.Finding > 0 {
			continue
		}
		p := pegSize{bore: s.Bore, length: s.Length, head: s.Head, beyond: s.Lead, count: s.Count, spares: s.Spares(), blind: s.Blind}
		p.lead, p.enters = s.Taper()
		out = append(out, p)
	}
	return out
}

// pegLayout divides a lying page: the peg across the whole of it, below it the
// end views, the words, and the bars.
func pegLayout(f *geom.Frame) layout {
	p := paperOf(f)
	if roll, ok := draw.RollNamed(f.Paper.Templates); ok {
		p = draw.Paper{Name: roll.Name, W: roll.W, H: rollCuts[0]}
	} else {
		p = p.Landscape()
	}
	b := fieldOf(p)
	l := layout{paper: p, win: b.Box(), col: b.Box()}
	l.barX = vec.P{X: b.X0 + 1, Y: b.Y0 + 1}
	l.barY = vec.P{X: b.X1 - barRoom, Y: b.Y0 + 1}
	l.win.Min.Y = b.Y0 + long + 3
	l.col = draw.Box{Min: vec.P{X: b.X0 + 128, Y: b.Y0}, Max: vec.P{X: l.barY.X - 3, Y: l.win.Min.Y - 3}}
	l.above = b.Y1
	return l
}

// ends draws the square stock with the lines to strike, the octagon, and the
// tip, side by side under the peg.
func (p pegSize) ends(pg *page, u measure.Units) {
	side := p.flats()
	k := peg.CornerLine(side)
	h := side / 2
	mid := vec.P{X: pg.win.Min.X + h + 8, Y: pg.win.Min.Y - 16 - h}
	step := max(42, side+12)
	square := []vec.P{{X: -h, Y: -h}, {X: h, Y: -h}, {X: h, Y: h}, {X: -h, Y: h}}
	var eight []vec.P
	for i, a := range square {
		b := square[(i+1)%4]
		eight = append(eight, a.Lerp(b, k/side), b.Lerp(a, k/side))
	}
	at := func(c vec.P, pts []vec.P, by float64) []vec.P {
		out := make([]vec.P, len(pts))
		for i, q := range pts {
			out[i] = c.Add(q.Mul(by))
		}
		return out
	}
	one, two, three := mid, mid.Add(vec.P{X: step}), mid.Add(vec.P{X: 2 * step})
	pg.s.Poly(draw.Part, true, at(one, square, 1)...).Mark = "peg:square"
	for i := range 4 {
		a, b := eight[(2*i+1)%8], eight[(2*i+2)%8]
		pg.s.Line(draw.Hidden, one.Add(a), one.Add(b)).Mark = "peg:strike"
	}
	pg.s.Poly(draw.Part, true, at(two, eight, 1)...).Mark = "peg:octagon"
	pg.s.Poly(draw.Dimension, true, at(three, eight, 1)...).Mark = "peg:finished"
	if p.enters {
		pg.s.Poly(draw.Part, true, at(three, eight, p.lead.Tip/side)...).Mark = "peg:tip"
	}
	for i, t := range []string{"1. square", "2. octagon", "3. tip"} {
		x := pg.s.Text(vec.P{X: mid.X + float64(i)*step, Y: mid.Y + h + 3}, lettering, t)
		x.Anchor = draw.Middle
	}
	// Which end view is which; the corner line is struck from each arris.
	c := &canvas{s: pg.s, win: draw.Box{Min: vec.P{X: pg.win.Min.X, Y: pg.barX.Y + barRoom + 3}, Max: vec.P{X: pg.col.Min.X - 1, Y: pg.win.Min.Y}}}
	d := dimension{a: one.Add(vec.P{X: -h, Y: -h}), b: one.Add(vec.P{X: -h + k, Y: -h}), off: -8}
	c.dim(d)
	c.dimText(d, "strike "+u.PlainJoint(k))
}

// words say how many to make, and how.
func (p pegSize) words(f *geom.Frame) words {
	var w words
	o := peg.OctagonFor(p.bore)
	u := f.Units
	w.add(7, true, fmt.Sprintf("PEG Ø %s", u.PlainJoint(p.bore)))
	w.add(5, true, fmt.Sprintf("make %d: %d and %d spare", p.count+p.spares, p.count, p.spares))
	per, unit, places := 25.4, "in", 3
	if u == measure.Metric {
		per, unit, places = 1, "mm", 1
	}
	w.add(lettering, false,
		fmt.Sprintf("1. Split and shave straight-grained %s square, dry. 2. Strike a line along every face, %s from each arris; plane the arrises down to the lines.", f.Stock.Peg, unbroken(u.FormatJoint(peg.CornerLine(p.flats())))),
		fmt.Sprintf("Across the flats %s to %s %s, measured dry: the corners are to bite.", draw.Number(o.LeastFlats/per, places), draw.Number(o.MostFlats/per, places), unit))
	if p.enters {
		w.add(lettering, false, fmt.Sprintf("3. Taper the last %s to Ø %s, without a shoulder.", unbroken(u.FormatJoint(p.lead.Length)), unbroken(u.PlainJoint(p.lead.Tip))))
	} else {
		w.add(lettering, true, "No taper passes an offset so large for its bore.")
	}
	if p.blind {
		w.add(lettering, false, "For a hole that ends in the wood: no longer, and no longer a taper, or it holds too little. Dashed: the face that it enters when it is home.")
	} else {
		w.add(lettering, false, "Dashed: the timber's faces when the peg is home.")
	}
	return w
}
