package templates

import (
	"iter"
	"strings"

	"pegwright/draw"
	"pegwright/geom"
	"pegwright/geom/vec"
)

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
	three := strings.Replace(two, ", ", ",\n", 1)
	by := func(text string, at vec.P) startText { return startText{letter(text, 5, true), at} }
	beside := func(text string) startText {
		return by(text, vec.P{X: 28, Y: -2.5 + 5*lead*float64(strings.Count(text, "\n"))/2})
	}
	ways := []startText{beside(one), beside(two), by(two, vec.P{Y: -10}), by(two, vec.P{Y: 13}), by(three, vec.P{Y: -10})}
	for _, off := range []free{ofAll, ofHeavy, ofFirm, ofNothing} {
		for _, w := range ways {
			for a := range p.startSpots(c.seen()) {
				if c.startAt(a, w, off) {
					return
				}
			}
		}
	}
}

// startText is what stands by the arrow, and where from its tip.
type startText struct {
	words *lettered
	at    vec.P
}

// startSpots goes through places for the arrow's tip: along the edge of the window
// that is away from the arris, then farther in, then along the other edge.
func (p plan) startSpots(seen draw.Box) iter.Seq[vec.P] {
	return func(yield func(vec.P) bool) {
		for _, in := range [...]float64{6, 14, 24, 34, 46, 60} {
			for x := seen.Min.X + 3; x < seen.Max.X-30; x += 3 {
				for _, side := range [...]float64{1, -1} {
					y := seen.Max.Y - in
					if p.v.sign()*side < 0 {
						y = seen.Min.Y + in
					}
					if !yield(vec.P{X: x, Y: y}) {
						return
					}
				}
			}
		}
	}
}

// startAt draws the arrow with its tip at a, and its words beside it, where both
// keep off the lines that are said.
func (c *canvas) startAt(a vec.P, w startText, off free) bool {
	box := grown(draw.NoBox().With(c.at(a), c.at(a.Add(vec.P{X: 26}))), 2.5)
	if !within(box, c.win) || c.taken(upright(box)) || c.cut(box, off) {
		return false
	}
	if !c.try(w.words, spot{a.Add(w.at), draw.Start, 0}, off) {
		return false
	}
	c.line(draw.Meta{Class: draw.Part, Mark: "arrow:start"}, a.Add(vec.P{X: 4}), a.Add(vec.P{X: 24}))
	c.head(a, vec.P{X: -1}, 7, 4.5)
	c.busy = append(c.busy, upright(box))
	return true
}
