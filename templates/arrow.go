package templates

import (
	"math"
	"strings"

	"pegwright/draw"
	"pegwright/draw/font"
	"pegwright/geom/vec"
)

// Sizes of the broad arrow, mm.
const (
	arrowLong  = 24.0
	arrowWide  = 11.0
	arrowShaft = 4.5
	wordWide   = 40.0 // of the word beside it, at its height of 5 mm
)

// outline returns the arrow's outline with its tail at base.
func (a *arrow) outline(base vec.P) [7]vec.P {
	n := a.d.Left()
	at := func(x, y float64) vec.P { return base.Add(a.d.Mul(x)).Add(n.Mul(y)) }
	neck, s, w := arrowLong-9, arrowShaft/2, arrowWide/2
	return [7]vec.P{at(0, s), at(neck, s), at(neck, w), at(arrowLong, 0), at(neck, -w), at(neck, -s), at(0, -s)}
}

// draw draws the broad arrow where it is whole and nothing lies under it, as
// near as may be to its wanted place, with its word beside it.
func (a *arrow) draw(c *canvas) {
	words := [2]*lettered{a.letter(5), a.letter(lettering)}
	for _, off := range [][2]free{{ofAll, ofAll}, {ofAll, ofHeavy}, {ofHeavy, ofHeavy}, {ofFirm, ofFirm}, {ofNothing, ofFirm}, {ofNothing, ofNothing}} {
		for _, word := range words {
			if a.near(c, word, off) {
				return
			}
		}
	}
}

// letter sets the arrow's word in lines of the given height.
func (a *arrow) letter(high float64) *lettered {
	return letter(strings.Join(font.WrapFace(a.word, wordWide*high/5, high, true), "\n"), high, true)
}

// near draws the arrow with its word in rings about its wanted place, and reports
// whether there was room.
func (a *arrow) near(c *canvas, word *lettered, off [2]free) bool {
	for ring := range 70 {
		for step := range 16 {
			sin, cos := math.Sincos(2 * math.Pi * float64(step) / 16)
			base := a.base.Add(vec.P{X: cos, Y: sin}.Mul(2 * float64(ring)))
			if a.at(c, base, word, off) {
				return true
			}
		}
	}
	return false
}

// at draws the arrow at one place if there is room for it and its word, which
// keep off the lines that are said.
func (a *arrow) at(c *canvas, base vec.P, word *lettered, off [2]free) bool {
	pts := a.outline(base)
	b := draw.NoBox()
	for _, p := range pts {
		b = b.With(c.at(p))
	}
	b = grown(b, 1)
	if !within(b, c.ink()) || c.taken(upright(b)) || c.cut(b, off[0]) {
		return false
	}
	n := len(c.busy)
	c.busy = append(c.busy, upright(b))
	if !a.name(c, base, b, word, off[1]) {
		c.busy = c.busy[:n]
		return false
	}
	c.loop(draw.Meta{Class: draw.Register, Mark: "arrow:draw"}, pts[:])
	return true
}

// name writes the arrow's word below, above or beside the arrow, whose box on
// paper is b.
func (a *arrow) name(c *canvas, base vec.P, b draw.Box, word *lettered, off free) bool {
	mid := base.Add(a.d.Mul(arrowLong / 2))
	drop, side, high := b.H()/2+2, b.W()/2+2, word.height
	more := float64(len(word.rows)-1) * high * lead
	level := vec.P{Y: more/2 - 0.4*high}
	for _, s := range [...]spot{
		{mid.Sub(vec.P{Y: drop + 1.2*high}), draw.Middle, 0},
		{mid.Add(vec.P{Y: drop + more + 0.4*high}), draw.Middle, 0},
		{mid.Add(vec.P{X: side}).Add(level), draw.Start, 0},
		{mid.Sub(vec.P{X: side}).Add(level), draw.End, 0},
	} {
		if c.try(word, s, off) {
			return true
		}
	}
	return false
}
