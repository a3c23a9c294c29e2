package templates

import (
	"math"
	"slices"
	"strings"

	"pegwright/draw"
	"pegwright/draw/font"
	"pegwright/geom/vec"
)

// spot is a wanted place of lettering, in the view: the anchor of its first
// line.
type spot struct {
	p      vec.P
	anchor draw.Anchor
	rot    float64
}

// free says what a text keeps off, besides lettering and holes.
type free int

const (
	ofNothing free = iota
	ofFirm         // the lines that a template registers on, and its outlines
	ofHeavy        // these, and dimension lines and leaders
	ofAll          // every line
)

// pass is one round of the search for a place: rings around the first of the
// wanted spots, 1.5 mm apart, with places at most some 5 mm apart on each.
type pass struct {
	rings int
	off   free
}

// label writes text (its lines parted by newlines) at the first of the wanted
// spots that is free, shows, and is not crossed by a line; else near the first
// of them; else where thin lines run behind it; else where any do. It reports
// false, and writes nothing, when there is no room.
func (c *canvas) label(text string, height float64, bold bool, spots ...spot) bool {
	return c.search([]pass{{8, ofAll}, {0, ofHeavy}, {20, ofAll}, {12, ofHeavy}, {40, ofAll}, {60, ofHeavy}, {60, ofFirm}, {60, ofNothing}}, text, height, bold, spots)
}

// search tries the passes one after another.
func (c *canvas) search(passes []pass, text string, height float64, bold bool, spots []spot) bool {
	set := c.letter(text, height, bold)
	for _, pass := range passes {
		for _, s := range spots {
			if c.try(set, s, pass.off) {
				return true
			}
		}
		for ring := 1; ring <= pass.rings; ring++ {
			ways := 16 * (1 + ring/8)
			for step := range ways {
				s := spots[0]
				sin, cos := math.Sincos(2 * math.Pi * float64(step) / float64(ways))
				s.p = s.p.Add(vec.P{X: cos, Y: sin}.Mul(1.5 * float64(ring)))
				if c.try(set, s, pass.off) {
					return true
				}
			}
		}
	}
	return false
}

// lettered is a line of text that is tried at many places, and its width, mm.
type lettered struct {
	draw.Text
	wide float64
}

// letter parts a text into its lines.
func (c *canvas) letter(text string, height float64, bold bool) []lettered {
	var set []lettered
	for _, l := range strings.Split(text, "\n") {
		t := draw.Text{Meta: draw.Meta{Class: draw.TextClass, Owner: c.owner}, Height: height, S: l, Bold: bold, Halo: true}
		set = append(set, lettered{t, wide(&t)})
	}
	return set
}

// try writes the lines at one spot if they may stand there.
func (c *canvas) try(set []lettered, s spot, off free) bool {
	down := vec.P{X: math.Sin(s.rot), Y: -math.Cos(s.rot)}
	for i := range set {
		t := &set[i]
		t.Anchor, t.Rot = s.anchor, s.rot
		t.At = c.at(s.p.Add(down.Mul(float64(i) * t.Height * lead)))
	}
	q := patchOf(set)
	if !within(q.box, c.win) || c.taken(q) {
		return false
	}
	for i := range set {
		if through(c.off(off), &set[i].Text, set[i].wide) {
			return false
		}
	}
	if c.aim != nil && off != ofNothing && c.struck(q) {
		return false
	}
	c.busy, c.texts = append(c.busy, q), append(c.texts, q)
	for _, t := range set {
		c.s.Add(&t.Text)
	}
	return true
}

// struck reports whether the leader of lettering would run through other
// lettering, or through a hole that it does not lead to.
func (c *canvas) struck(q patch) bool {
	from, to := c.aim(q)
	for _, o := range c.rims {
		if _, _, ok := clipSegment(o, from, to); ok && !within(draw.NoBox().With(to), grown(o, 2)) {
			return true
		}
	}
	return slices.ContainsFunc(c.texts, func(o patch) bool { return o.crossed(from, to) })
}

// taken reports whether lettering or a hole has a part of the patch.
func (c *canvas) taken(q patch) bool { return slices.ContainsFunc(c.busy, q.meets) }

// crossed reports whether one of the lines runs through one of the texts.
func crossed(lines [][2]vec.P, set []*draw.Text) bool {
	return slices.ContainsFunc(set, func(t *draw.Text) bool { return through(lines, t, wide(t)) })
}

// through reports whether one of the lines runs through a text of a width.
func through(lines [][2]vec.P, t *draw.Text, w float64) bool {
	q := patchOf([]lettered{{*t, w}})
	return slices.ContainsFunc(lines, func(l [2]vec.P) bool { return q.crossed(l[0], l[1]) })
}

// wide is how wide a text is set, mm.
func wide(t *draw.Text) float64 { return font.Measure(t.S, t.Height, t.Bold) }
