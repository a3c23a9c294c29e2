package templates

import (
	"math"

	"pegwright/draw"
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
	return c.place(letter(text, height, bold), passes, spots)
}

// place is search for lettering that is measured already.
func (c *canvas) place(b *lettered, passes []pass, spots []spot) bool {
	for _, pass := range passes {
		for _, s := range spots {
			if c.try(b, s, pass.off) {
				return true
			}
		}
		for ring := 1; ring <= pass.rings; ring++ {
			ways := 16 * (1 + ring/8)
			for step := range ways {
				s := spots[0]
				sin, cos := math.Sincos(2 * math.Pi * float64(step) / float64(ways))
				s.p = s.p.Add(vec.P{X: cos, Y: sin}.Mul(1.5 * float64(ring)))
				if c.try(b, s, pass.off) {
					return true
				}
			}
		}
	}
	return false
}

// try writes lettering at one spot if it may stand there.
func (c *canvas) try(b *lettered, s spot, off free) bool {
	b.stand(s.anchor, s.rot)
	q := b.at(c.at(s.p))
	if !within(q.box, c.win) || c.taken(q) || c.crossed(b, s.p, off) {
		return false
	}
	if c.aim != nil && off != ofNothing && c.struck(q) {
		return false
	}
	c.busy, c.texts = append(c.busy, q), append(c.texts, q)
	for i, r := range b.rows {
		t := c.s.Text(c.at(s.p.Add(b.down(i))), b.height, r.text)
		t.Owner, t.Bold, t.Anchor, t.Rot, t.Halo = c.owner, b.bold, s.anchor, s.rot, true
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
	for i := range c.texts {
		if c.texts[i].crossed(from, to) {
			return true
		}
	}
	return false
}

// taken reports whether lettering or a hole has a part of the patch.
func (c *canvas) taken(q patch) bool {
	for i := range c.busy {
		if q.meets(&c.busy[i]) {
			return true
		}
	}
	return false
}

// crossed reports whether a line that lettering of a level keeps off runs through
// a row of the block, its first row standing at a point of the view.
func (c *canvas) crossed(b *lettered, p vec.P, off free) bool {
	lines := c.off(off)
	for i := range b.rows {
		q := b.rowAt(i, c.at(p.Add(b.down(i))))
		for k := range lines {
			if q.crossed(lines[k][0], lines[k][1]) {
				return true
			}
		}
	}
	return false
}

// cut reports whether a line that is kept off on a level runs through a box on
// paper.
func (c *canvas) cut(box draw.Box, off free) bool {
	for _, l := range c.off(off) {
		if _, _, hit := clipSegment(box, l[0], l[1]); hit {
			return true
		}
	}
	return false
}
