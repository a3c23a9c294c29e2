package templates

import (
	"fmt"
	"math"
	"strings"

	"pegwright/draw"
	"pegwright/draw/font"
	"pegwright/geom"
	"pegwright/geom/measure"
	"pegwright/geom/vec"
)

// name writes the meaning of a line beside it, along the line.
func (c *canvas) name(g guide) {
	a, b, ok := clipSegment(c.seen(), g.a, g.b)
	if !ok {
		return
	}
	d := b.Sub(a).Unit()
	rot := math.Atan2(d.Y, d.X)
	side := 1.0 // to the left of the way from a to b
	if g.below {
		side = -1
	}
	if rot > math.Pi/2+1e-6 || rot <= -math.Pi/2+1e-6 {
		rot -= math.Copysign(math.Pi, rot)
		side = -side
	}
	up := vec.P{X: -math.Sin(rot), Y: math.Cos(rot)}
	near := func(s float64) vec.P {
		if s > 0 {
			return up.Mul(1.2 + 0.35*lettering)
		}
		return up.Mul(-1.2 - 1.2*lettering)
	}
	var spots []spot
	for _, s := range []float64{side, -side} {
		for _, k := range []float64{0.5, 0.35, 0.65, 0.25, 0.75, 0.3, 0.7, 0.4, 0.6, 0.2, 0.8} {
			spots = append(spots, spot{a.Lerp(b, k).Add(near(s)), draw.Middle, rot})
		}
	}
	c.label(g.name, lettering, g.class == draw.Register || g.class == draw.Part, spots...)
}

// holeNames writes the bore beside every hole that shows, and on a tenon which
// of the two circles is which.
func (p plan) holeNames(c *canvas, u measure.Units) {
	crossing := 0
	for _, h := range p.holes {
		if !h.shadow {
			crossing++
		}
	}
	for _, h := range p.holes {
		r := h.bore / 2
		if !within(grown(draw.NoBox().With(c.at(h.c)), r), c.win) {
			continue
		}
		text := "Ø " + u.PlainJoint(h.bore)
		switch {
		case h.shadow:
			text = "mortise hole: do not bore here"
		case p.kind == "tenon":
			text += ": bore here, at the cross"
		}
		if crossing > 1 {
			text = fmt.Sprintf("peg %d  %s", h.n, text)
		}
		c.holeName(p, h, text)
	}
}

// holeName puts a text near a hole and leads a line from it to the rim.
func (c *canvas) holeName(p plan, h hole, text string) {
	r := h.bore/2 + 5
	out := vec.P{X: 1}
	if h.c.X < 0 {
		out.X = -1
	}
	y := 1.0
	if h.shadow {
		y = -1
	}
	var spots []spot
	for _, k := range []float64{1, 1.4, 1.8, 2.4} {
		for _, s := range [][2]float64{{out.X, y}, {-out.X, y}, {out.X, -y}, {-out.X, -y}} {
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
	if !c.label(text, lettering, !h.shadow, spots...) {
		return
	}
	b := c.busy[len(c.busy)-1]
	mid := c.at(h.c)
	foot := vec.P{X: min(max(mid.X, b.Min.X), b.Max.X), Y: min(max(mid.Y, b.Min.Y), b.Max.Y)}
	rim := mid.Add(foot.Sub(mid).Unit().Mul(h.bore / 2))
	if rim.Dist(foot) < 4 {
		return
	}
	c.s.Line(draw.Dimension, foot, rim).Mark = "leader:" + p.joint.ID
	c.lines = append(c.lines, [2]vec.P{foot, rim})
	c.head(rim.Sub(c.o), rim.Sub(foot).Unit(), 2.5, 1)
}

// names writes what the outlines and the window are.
func (p plan) names(c *canvas) {
	for _, s := range p.shapes {
		if area := clipArea(c.seen(), s.pts); len(area) > 2 {
			c.label(s.name, lettering, false, inside(area)...)
		}
	}
	for i, w := range p.windows {
		area := clipArea(c.seen(), w)
		if i > 0 || len(area) < 3 {
			continue
		}
		c.label("peg window (tone)", lettering, false, inside(area)...)
	}
}

// inside returns spots for a name within an area: toward its corners first,
// where the name is least in the way.
func inside(area []vec.P) []spot {
	var mid vec.P
	for _, p := range area {
		mid = mid.Add(p.Mul(1 / float64(len(area))))
	}
	low := vec.P{Y: -lettering / 2}
	var out []spot
	for _, k := range []float64{0.7, 0.55, 0.85, 0.4, 0.25, 0} {
		for i, p := range area {
			q := area[(i+1)%len(area)]
			out = append(out, spot{mid.Lerp(p.Lerp(q, 0.5), k).Add(low), draw.Middle, 0},
				spot{mid.Lerp(p, k).Add(low), draw.Middle, 0})
		}
	}
	return out
}

// startWords says in shop words where the start end of a timber lies.
func startWords(t *geom.Timber) string {
	switch d := t.Place.X; {
	case d.Z > 0.99:
		return "toward the foot"
	case d.Z > 0.05:
		return "toward the lower end"
	case d.X > 0.7:
		return "toward the start end, west"
	case d.Y > 0.7:
		return "toward the start end, south"
	}
	return "toward the start end"
}

// start draws the arrow to the start end, on the side away from the arris.
func (p plan) start(c *canvas) {
	seen := c.seen()
	y := seen.Max.Y - 6
	if p.v.sign() < 0 {
		y = seen.Min.Y + 6
	}
	a := vec.P{X: seen.Min.X + 3, Y: y}
	box := draw.NoBox().With(c.at(a), c.at(a.Add(vec.P{X: 26})))
	for range 30 {
		if !c.taken(grown(box, 2)) {
			break
		}
		a.X += 4
		box = draw.NoBox().With(c.at(a), c.at(a.Add(vec.P{X: 26})))
	}
	c.line(draw.Meta{Class: draw.Part, Mark: "arrow:start"}, a.Add(vec.P{X: 4}), a.Add(vec.P{X: 24}))
	c.head(a, vec.P{X: -1}, 7, 4.5)
	c.busy = append(c.busy, grown(box, 2))
	c.label(startWords(p.v.t), 5, true, spot{a.Add(vec.P{X: 28, Y: -2.5}), draw.Start, 0})
}

// Sizes of the broad arrow, mm.
const (
	arrowLong  = 24.0
	arrowWide  = 11.0
	arrowShaft = 4.5
	wordWide   = 40.0 // of the word beside it
)

// outline returns the arrow's outline with its tail at base.
func (a *arrow) outline(base vec.P) []vec.P {
	n := a.d.Left()
	at := func(x, y float64) vec.P { return base.Add(a.d.Mul(x)).Add(n.Mul(y)) }
	neck, s, w := arrowLong-9, arrowShaft/2, arrowWide/2
	return []vec.P{at(0, s), at(neck, s), at(neck, w), at(arrowLong, 0), at(neck, -w), at(neck, -s), at(0, -s)}
}

// draw draws the broad arrow where it is whole and nothing lies under it, as
// near as may be to its wanted place, and its word beside it.
func (a *arrow) draw(c *canvas) {
	for _, clear := range []bool{true, false} {
		for ring := range 40 {
			for step := range 16 {
				sin, cos := math.Sincos(2 * math.Pi * float64(step) / 16)
				base := a.base.Add(vec.P{X: cos, Y: sin}.Mul(2 * float64(ring)))
				if a.at(c, base, clear) {
					return
				}
			}
		}
	}
}

func (a *arrow) at(c *canvas, base vec.P, clear bool) bool {
	pts := a.outline(base)
	b := draw.NoBox()
	for _, p := range pts {
		b = b.With(c.at(p))
	}
	b = grown(b, 1)
	if !within(b, c.win) || c.taken(b) {
		return false
	}
	for _, l := range c.lines {
		if _, _, hit := clipSegment(b, l[0], l[1]); hit && clear {
			return false
		}
	}
	c.loop(draw.Meta{Class: draw.Register, Mark: "arrow:draw"}, pts)
	c.busy = append(c.busy, b)
	mid := base.Add(a.d.Mul(arrowLong / 2))
	drop := b.H()/2 + 2
	lines := font.WrapFace(a.word, wordWide, 5, true)
	high := float64(len(lines)-1) * 5 * lead
	c.label(strings.Join(lines, "\n"), 5, true, spot{mid.Sub(vec.P{Y: drop + 6}), draw.Middle, 0},
		spot{mid.Add(vec.P{Y: drop + high + 1}), draw.Middle, 0})
	return true
}
