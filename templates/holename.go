package templates

import (
	"fmt"
	"strings"

	"pegwright/draw"
	"pegwright/geom/measure"
	"pegwright/geom/vec"
)

// holeNames writes the bore beside every hole that shows, and on a tenon once
// which of the two circles is which.
func (p plan) holeNames(c *canvas, u measure.Units) {
	said := map[bool]bool{}
	for _, h := range p.holes {
		if !within(grown(draw.NoBox().With(c.at(h.c)), h.bore/2), c.win) || h.shadow && said[true] {
			continue
		}
		c.holeName(p, h, p.holeText(h, u, said[h.shadow]))
		said[h.shadow] = true
	}
}

// pegs counts the pegs that the template shows.
func (p plan) pegs() int {
	n := 0
	for _, h := range p.holes {
		if !h.shadow {
			n++
		}
	}
	return n
}

// holeText is what stands beside a hole; again says that a hole of its sort on
// the same sheet has its words.
func (p plan) holeText(h hole, u measure.Units, again bool) string {
	text := "Ø " + u.PlainJoint(h.bore)
	switch {
	case h.shadow && p.pegs() > 1:
		return "mortise holes (dashed): do not bore here"
	case h.shadow:
		return "mortise hole: do not bore here"
	case p.kind == "tenon" && again:
		text += ": bore here"
	case p.kind == "tenon":
		text += ": bore here, at the cross"
	}
	if len(p.joint.Pegs) > 1 {
		text = fmt.Sprintf("hole %d  %s", h.n, text)
	}
	return text
}

// besideHole returns the spots around a hole, away from line J first.
func besideHole(h hole) []spot {
	r := h.bore/2 + 5
	out := vec.P{X: 1}
	if h.c.X < 0 {
		out.X = -1
	}
	y := 1.0
	if h.shadow {
		y = -1
	}
	spots := make([]spot, 0, 48)
	for _, k := range [...]float64{1, 1.4, 1.8, 2.4} {
		for _, s := range [...][2]float64{{out.X, y}, {-out.X, y}, {out.X, -y}, {-out.X, -y}} {
			a := draw.Start
			if s[0] < 0 {
				a = draw.End
			}
			for _, t := range []float64{0.55, 0.85, 0.25} {
				at := h.c.Add(vec.P{X: s[0] * r * k * (1.1 - t), Y: s[1]*r*k*(0.35+t) - lettering/2})
				spots = append(spots, spot{at, a, 0})
			}
		}
	}
	return spots
}

// holeName puts a text near a hole and leads a line from it to the rim.
func (c *canvas) holeName(p plan, h hole, text string) {
	spots := besideHole(h)
	c.aim = func(q patch) (foot, rim vec.P) {
		mid := c.at(h.c)
		foot = q.nearest(mid)
		return foot, mid.Add(foot.Sub(mid).Unit().Mul(h.bore / 2))
	}
	aim := c.aim
	short := strings.ReplaceAll(text, ", at", ",\nat")
	two, narrow := strings.ReplaceAll(short, ": do", ":\ndo"), strings.ReplaceAll(short, ": ", ":\n")
	ok := c.search([]pass{{8, ofAll}, {0, ofHeavy}}, text, lettering, !h.shadow, spots) ||
		c.search([]pass{{20, ofAll}, {60, ofHeavy}, {60, ofFirm}}, two, lettering, !h.shadow, spots) ||
		c.search([]pass{{60, ofHeavy}, {60, ofFirm}}, narrow, lettering, !h.shadow, spots)
	c.aim = nil
	if !ok && !c.label(narrow, lettering, !h.shadow, spots...) {
		return
	}
	foot, rim := aim(c.busy[len(c.busy)-1])
	if rim.Dist(foot) < 4 {
		return
	}
	c.s.Line(draw.Dimension, foot, rim).Mark = "leader:" + p.joint.ID
	c.led(foot, rim)
	c.head(rim.Sub(c.o), rim.Sub(foot).Unit(), 2.5, 1)
}
