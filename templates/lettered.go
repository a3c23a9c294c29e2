package templates

import (
	"math"
	"strings"

	"pegwright/draw"
	"pegwright/draw/font"
	"pegwright/geom/vec"
)

// lettered is lettering that is tried at many places: its rows, and what they take
// as it stands.
type lettered struct {
	height float64
	bold   bool
	rows   []row
	// How it stands, and the patch that it takes with its anchor at the origin.
	anchor draw.Anchor
	rot    float64
	room   patch
}

// row is a line of a block: its text and width, and the patch that it takes with
// its own anchor at the origin.
type row struct {
	text string
	wide float64
	room patch
}

// letter parts a text into its lines, and measures them.
func letter(text string, height float64, bold bool) *lettered {
	b := &lettered{height: height, bold: bold, rows: make([]row, 0, 1+strings.Count(text, "\n"))}
	for l := range strings.SplitSeq(text, "\n") {
		b.rows = append(b.rows, row{text: l, wide: font.Measure(l, height, bold)})
	}
	return b
}

// stand turns the block.
func (b *lettered) stand(a draw.Anchor, rot float64) {
	if b.room.u != (vec.P{}) && a == b.anchor && rot == b.rot {
		return
	}
	b.anchor, b.rot = a, rot
	u := vec.P{X: math.Cos(rot), Y: math.Sin(rot)}
	b.room = patch{u: u, own: draw.NoBox()}
	for i := range b.rows {
		r := &b.rows[i]
		t := draw.Text{Anchor: a, Height: b.height}
		r.room = patch{u: u, own: font.BoxOf(&t, r.wide)}
		r.room.bound()
		t.At = b.room.in(b.down(i))
		own := font.BoxOf(&t, r.wide)
		b.room.own = b.room.own.With(own.Min, own.Max)
	}
	b.room.bound()
}

// down returns how far row i stands from the first.
func (b *lettered) down(i int) vec.P {
	return vec.P{X: math.Sin(b.rot), Y: -math.Cos(b.rot)}.Mul(float64(i) * b.height * lead)
}

// at returns what the block takes with its anchor at a point on paper.
func (b *lettered) at(p vec.P) patch { return b.room.moved(p) }

// rowAt returns what a row takes with its own anchor at a point on paper.
func (b *lettered) rowAt(i int, p vec.P) patch { return b.rows[i].room.moved(p) }
