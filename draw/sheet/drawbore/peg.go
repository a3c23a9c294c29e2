package drawbore

import (
	"math"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/geom/vec"
)

// tip returns where the tip of the peg is drawn, mm of wood: clear of the entry
// face, so that its dimensions keep off the hatching.
func (c *cut) tip() float64 { return c.left - beforeBy/c.k }

// taper returns the request for the dimension of the lead, and whether its
// figures stand between the arrowheads.
func (c *cut) taper() (r dim.Request, fits bool) {
	tip := c.paper(c.tip(), -c.lead.Tip/2)
	from := c.paper(c.tip()-c.lead.Length, -c.p.Bore/2)
	r = dim.Request{From: from, To: tip, Text: "taper " + c.show(c.lead.Length), Owner: c.p.ID}
	_, hi := dim.Reach(dim.Below, []dim.Request{r})
	return r, hi < tip.X+1
}

// pegRoom is the least room left of the receiver at scale k, paper mm: the
// broken shaft, the lead and the gap before the entry face.
func (d *bored) pegRoom(k float64) float64 {
	return max(pegFree, 30+d.lead.Length*k+beforeBy)
}

// peg draws the peg straight, as it stands before it is driven: its axis on
// that of the mortise hole, its lead before the entry face.
func (c *cut) peg(f block.Field) {
	p := c.p
	tip := c.tip()
	r, t, taper := p.Bore/2, c.lead.Tip/2, c.lead.Length
	head := tip - p.Length
	cutAt := math.Inf(1)
	if start := (f.X0 + 2 - c.at.X) / c.k; start > head { // too long for the sheet: break the shaft
		cutAt, head = start+24/c.k, start
	}
	white := c.s.Tone(1, c.paper(head, -r), c.paper(tip-taper, -r), c.paper(tip, -t), c.paper(tip, t), c.paper(tip-taper, r), c.paper(head, r))
	white.Owner = p.ID
	seg := func(x0, y0, x1, y1 float64) { c.s.Line(draw.Part, c.paper(x0, y0), c.paper(x1, y1)).Owner = p.ID }
	gap := 2 / c.k
	for _, s := range []float64{-1, 1} {
		if math.IsInf(cutAt, 0) {
			seg(head, s*r, tip-taper, s*r)
		} else {
			seg(head, s*r, cutAt, s*r)
			seg(cutAt+gap, s*r, tip-taper, s*r)
		}
		seg(tip-taper, s*r, tip, s*t)
	}
	seg(head, -r, head, r)
	seg(tip-taper, -r, tip-taper, r)
	seg(tip, -t, tip, t)
	if !math.IsInf(cutAt, 0) {
		c.tear(cutAt, r)
		c.tear(cutAt+gap, r)
	}
	c.s.Line(draw.Centre, c.paper(head-3/c.k, 0), c.paper(c.left-4/c.k, 0)).Owner = p.ID
	edge := c.paper(0, -r).Y
	at := func(x float64) vec.P { return c.paper(x, -r) }
	reqs := []dim.Request{{From: at(head), To: c.paper(tip, -t), Text: "peg " + c.show(p.Length) + " long", Owner: p.ID}}
	if lead, fits := c.taper(); fits {
		reqs = append(reqs, lead)
	}
	dim.Stack(c.s, dim.Below, edge, reqs)
}

// tear draws a break line across the peg.
func (c *cut) tear(x, r float64) {
	w := 0.8 / c.k
	c.s.Poly(draw.Dimension, false, c.paper(x, -1.15*r), c.paper(x, -0.3*r), c.paper(x-w, -0.1*r), c.paper(x+w, 0.1*r), c.paper(x, 0.3*r), c.paper(x, 1.15*r)).Owner = c.p.ID
}
