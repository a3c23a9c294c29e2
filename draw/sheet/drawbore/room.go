package drawbore

import (
	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/page"
	"pegwright/geom/vec"
)

// settle places the section at the right of the field, high enough for the words
// under the peg.
func (c *cut) settle(f block.Field) {
	c.at = vec.P{}
	right := max(dim.Depth(dim.RightOf, c.upright())+c.k*c.right, c.k*c.east)
	c.at = vec.P{X: f.X1 - right, Y: f.Mid().Y - c.k*(c.top+c.low)/2}
	if short := c.underShort(f); short > 0 {
		c.at.Y += max(0, min(short, f.Y1-1-c.k*c.top-c.at.Y))
	}
}

// underShort returns how much too little room there is for the words under the
// peg, paper mm.
func (c *cut) underShort(f block.Field) float64 {
	under := c.legendHeight(c.paper(c.west, 0).X - 8 - f.X0)
	return f.Y0 + under + underPeg + c.k*c.p.Bore/2 - c.at.Y
}

// trim shortens what is shown of the timbers to the height given, mm of wood,
// and reports whether that leaves enough.
func (c *cut) trim(height float64) bool {
	over := c.top - c.low - height
	if over <= 0 {
		return true
	}
	above := min(over, stubAbove-stubLeast)
	below := 0.0
	if c.broken {
		below = min(over-above, woodBelow-woodLeast)
	}
	if over-above-below > 1e-9 {
		return false
	}
	c.top, c.low = c.top-above, c.low+below
	return true
}

// overPeg is the height of the words at the peg's diameters above its bore,
// paper mm.
const overPeg = 12.5

// wordsFit reports whether the words left of the receiver find room in the
// field: above the peg which way, below it the letters.
func (c *cut) wordsFit(f block.Field) bool {
	wide := c.paper(c.west, 0).X - 6 - f.X0 - keyWide - 5
	if wide < 25 {
		return false
	}
	w := page.Pen{S: draw.NewSheet("", "", "", 1, 1), W: wide}
	c.wayWords(&w)
	return f.Y1+w.Y > c.paper(0, c.p.Bore/2).Y+overPeg && c.underShort(f) < 0.01
}
