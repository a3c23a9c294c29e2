package templates

import (
	"fmt"
	"math"
	"strings"

	"pegwright/draw"
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
		for _, k := range []float64{0.5, 0.35, 0.65, 0.25, 0.75, 0.3, 0.7, 0.4, 0.6, 0.2, 0.8, 0.15, 0.85, 0.1, 0.9} {
			spots = append(spots, spot{a.Lerp(b, k).Add(near(s)), draw.Middle, rot})
		}
	}
	bold := g.class == draw.Register || g.class == draw.Part
	at := []pass{{0, ofAll}, {0, ofHeavy}, {2, ofHeavy}}
	if c.search(at, g.name, lettering, bold, spots) || c.nameInTwo(g, spots, up, bold) {
		return
	}
	if c.nameFlat(g, a, b, bold) || c.label(g.name, lettering, bold, spots...) {
		c.leader(a.Lerp(b, 0.5)) // it found no place at its line
	}
}

// nameInTwo writes a long name in two lines along its line, where no heavy line
// crosses them.
func (c *canvas) nameInTwo(g guide, spots []spot, up vec.P, bold bool) bool {
	two := inTwo(g.name)
	if two == g.name {
		return false
	}
	high := append([]spot(nil), spots...)
	for i := range high { // the second line stands below the first
		if up.Dot(high[i].p.Sub(g.a)) > 0 {
			high[i].p = high[i].p.Add(up.Mul(lettering * lead))
		}
	}
	return c.search([]pass{{0, ofAll}, {0, ofHeavy}, {2, ofHeavy}}, two, lettering, bold, high)
}

// inTwo breaks a name after its colon, else at the space nearest to its middle.
func inTwo(name string) string {
	if i := strings.Index(name, ": "); i > 0 {
		return name[:i+1] + "\n" + name[i+2:]
	}
	if i := strings.Index(name, " ("); i > 0 {
		return name[:i] + "\n" + name[i+1:]
	}
	best := -1
	for i, r := range name {
		if r == ' ' && (best < 0 || abs(float64(2*i-len(name))) < abs(float64(2*best-len(name)))) {
			best = i
		}
	}
	if best < 0 {
		return name
	}
	return name[:best] + "\n" + name[best+1:]
}

// nameWide is how wide a name stands that finds no room in two lines, mm.
const nameWide = 30.0

// nameFlat writes a name level beside its line, where no heavy line crosses it,
// in as many lines as it takes.
func (c *canvas) nameFlat(g guide, a, b vec.P, bold bool) bool {
	var spots []spot
	for _, k := range []float64{0.5, 0.35, 0.65, 0.2, 0.8, 0.1, 0.9} {
		p := a.Lerp(b, k).Sub(vec.P{Y: lettering / 2})
		spots = append(spots, spot{p.Add(vec.P{X: 4}), draw.Start, 0}, spot{p.Sub(vec.P{X: 4}), draw.End, 0})
	}
	return c.search([]pass{{0, ofAll}, {0, ofHeavy}}, g.name, lettering, bold, spots) ||
		c.search([]pass{{0, ofHeavy}, {40, ofHeavy}}, inTwo(g.name), lettering, bold, spots) ||
		c.search([]pass{{40, ofHeavy}, {60, ofFirm}}, strings.Join(wrap(g.name, nameWide, lettering, bold), "\n"), lettering, bold, spots)
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
	return spots
}

// holeName puts a text near a hole and leads a line from it to the rim.
func (c *canvas) holeName(p plan, h hole, text string) {
	spots := besideHole(h)
	c.aim = func(b draw.Box) (foot, rim vec.P) {
		mid := c.at(h.c)
		foot = nearest(b, mid)
		return foot, mid.Add(foot.Sub(mid).Unit().Mul(h.bore / 2))
	}
	aim := c.aim
	two := strings.NewReplacer(", at", ",\nat", ": do", ":\ndo").Replace(text)
	narrow := strings.NewReplacer(", at", ",\nat", ": ", ":\n").Replace(text)
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
		spots, text := inside(area), "peg window (tone)"
		at := []pass{{0, ofAll}, {0, ofHeavy}, {3, ofHeavy}, {0, ofFirm}}
		if !c.search(at, text, lettering, false, spots) && c.label(text, lettering, false, spots...) {
			c.leader(spots[len(spots)-1].p) // the middle
		}
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
	switch at := startPlace(t); at {
	case "":
		return "toward the start end"
	case "foot", "lower end":
		return "toward the " + at
	default:
		return "toward the start end, " + at
	}
}

// startWords says where the start end lies, in words that hold for all timbers
// that the template serves.
func (p plan) startWords() string {
	if s := p.agreed(func(q plan) string { return startWords(q.v.t) }); s != "" {
		return s
	}
	return "toward the start end"
}

// start draws the arrow to the start end, on the side away from the arris where
// nothing crosses it or its words, else where least does.
func (p plan) start(c *canvas) {
	one := p.startWords()
	two := strings.Replace(one, "toward the ", "toward the\n", 1)
	beside := func(text string) startText {
		return startText{text, vec.P{X: 28, Y: -2.5 + 5*lead*float64(strings.Count(text, "\n"))/2}}
	}
	ways := []startText{beside(one), beside(two), {two, vec.P{Y: -10}}, {two, vec.P{Y: 13}}}
	spots := p.startSpots(c.seen())
	for _, off := range []free{ofAll, ofHeavy, ofFirm, ofNothing} {
		for _, w := range ways {
			for _, a := range spots {
				if c.startAt(a, w, off) {
					return
				}
			}
		}
	}
}

// startText is what stands by the arrow, and where from its tip.
type startText struct {
	text string
	at   vec.P
}

// startSpots returns places for the arrow's tip: along the edge of the window
// that is away from the arris, then farther in, then along the other edge.
func (p plan) startSpots(seen draw.Box) []vec.P {
	var out []vec.P
	for _, in := range []float64{6, 14, 24, 34, 46, 60} {
		for x := seen.Min.X + 3; x < seen.Max.X-30; x += 6 {
			for _, side := range []float64{1, -1} {
				y := seen.Max.Y - in
				if p.v.sign()*side < 0 {
					y = seen.Min.Y + in
				}
				out = append(out, vec.P{X: x, Y: y})
			}
		}
	}
	return out
}

// startAt draws the arrow with its tip at a, and its words beside it, where both
// keep off the lines that are said.
func (c *canvas) startAt(a vec.P, w startText, off free) bool {
	box := grown(draw.NoBox().With(c.at(a), c.at(a.Add(vec.P{X: 26}))), 2.5)
	if !within(box, c.win) || c.taken(box) {
		return false
	}
	for _, l := range c.off(off) {
		if _, _, hit := clipSegment(box, l[0], l[1]); hit {
			return false
		}
	}
	if !c.search([]pass{{0, off}}, w.text, 5, true, []spot{{a.Add(w.at), draw.Start, 0}}) {
		return false
	}
	c.line(draw.Meta{Class: draw.Part, Mark: "arrow:start"}, a.Add(vec.P{X: 4}), a.Add(vec.P{X: 24}))
	c.head(a, vec.P{X: -1}, 7, 4.5)
	c.busy = append(c.busy, box)
	return true
}
