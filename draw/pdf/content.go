package pdf

import (
	"math"
	"slices"

	"pegwright/draw"
	"pegwright/draw/font"
	"pegwright/geom/vec"
)

// content writes the items of one sheet after the other, in millimetres, under one
// scaling matrix. What is set already is not set again.
type content struct {
	sheet *draw.Sheet
	buf   []byte
	set   state
	class draw.Class // of the items just written, and its pen
	usual draw.Pen
	runs  []font.Run // of the text just written
	used  usedRunes  // of all sheets
}

// state is what the content so far has set of the graphics state.
type state struct {
	pen  draw.Pen
	cap  byte    // ends of lines: '0' butt, '1' round
	tone float64 // of fillings and of lettering
	face face
}

// face is a font in a size; a size of 0 stands for none.
type face struct {
	bold bool
	size float64 // of the em, millimetres
}

// write returns the content of a sheet, good until the next call.
func (c *content) write(s *draw.Sheet) []byte {
	c.sheet, c.buf = s, c.buf[:0]
	c.begin()
	for _, l := range s.Layers() {
		for _, it := range l.Items {
			c.item(it)
		}
	}
	c.buf = append(c.buf, "Q\n"...)
	return c.buf
}

// begin sets the matrix, and the joins that all lines have.
func (c *content) begin() {
	c.set = state{pen: draw.Pen{Width: 1}, cap: '0'} // ISO 32000-1, table 52
	c.usual = draw.PenFor(c.class, c.sheet.Step)
	c.buf = append(c.buf, "q "...)
	c.number(ptPerMM, 9, " 0 0 ")
	c.number(ptPerMM, 9, " 0 0 cm 1 j\n")
}

// number writes a number and a sign after it.
func (c *content) number(x float64, places int, after string) {
	c.buf = append(draw.AppendNumber(c.buf, x, places), after...)
}

// point writes a point and a sign after it.
func (c *content) point(p vec.P, places int, after string) {
	c.number(p.X, places, " ")
	c.number(p.Y, places, after)
}

// fine is how many places the points of a curve have: control points are not
// coordinates that anybody measures, and rounding them as such would dent the
// curve.
const fine = 6

func (c *content) item(it draw.Item) {
	pen := c.pen(it.Head())
	switch t := it.(type) {
	case *draw.Path:
		c.path(t, pen)
	case *draw.Circle:
		c.curve(&draw.Ellipse{C: t.C, RX: t.R, RY: t.R, Filled: t.Filled, Grey: t.Grey}, pen)
	case *draw.Arc:
		c.curve(t.Ellipse(), pen)
	case *draw.Ellipse:
		c.curve(t, pen)
	case *draw.Text:
		c.text(t, pen)
	}
}

// pen returns the pen of an item. Most come after another of their class.
func (c *content) pen(m *draw.Meta) draw.Pen {
	if m.Pen != nil {
		return *m.Pen
	}
	if m.Class != c.class {
		c.class, c.usual = m.Class, draw.PenFor(m.Class, c.sheet.Step)
	}
	return c.usual
}

func (c *content) path(t *draw.Path, pen draw.Pen) {
	if len(t.Pts) == 0 || !c.ready(pen, t.Filled, t.Grey) {
		return
	}
	c.loop(t.Pts, t.Closed || len(t.Holes) > 0)
	for _, h := range t.Holes {
		if len(h) > 0 {
			c.loop(h, true)
		}
	}
	c.paint(pen, t.Filled)
}

func (c *content) loop(pts []vec.P, closed bool) {
	for i, p := range pts {
		op := " l\n"
		if i == 0 {
			op = " m\n"
		}
		c.point(p, c.sheet.Places(), op)
	}
	if closed {
		c.buf = append(c.buf, "h\n"...)
	}
}

// curve writes an ellipse or a part of one as Bézier curves of at most an
// eighth of a turn, which leave a circle by less than 5 millionths of its
// radius. (Control points at 4/3 tan(angle/4): the usual construction.)
func (c *content) curve(e *draw.Ellipse, pen draw.Pen) {
	if !c.ready(pen, e.Filled, e.Grey) {
		return
	}
	from, to, whole := e.Span()
	n := max(1, int(math.Ceil((to-from)/(math.Pi/4)-1e-9)))
	step := (to - from) / float64(n)
	reach := 4.0 / 3 * math.Tan(step/4)
	c.point(e.At(from), fine, " m\n")
	for i := range n {
		a, b := from+float64(i)*step, from+float64(i+1)*step
		pa, pb := e.At(a), e.At(b)
		ca := pa.Add(tangent(e, a).Mul(reach))
		cb := pb.Sub(tangent(e, b).Mul(reach))
		c.point(ca, fine, " ")
		c.point(cb, fine, " ")
		c.point(pb, fine, " c\n")
	}
	if whole {
		c.buf = append(c.buf, "h\n"...)
	}
	c.paint(pen, e.Filled)
}

// tangent returns the derivative of e.At at parameter t.
func tangent(e *draw.Ellipse, t float64) vec.P {
	u := vec.P{X: math.Cos(e.Rot), Y: math.Sin(e.Rot)}
	return u.Mul(-e.RX * math.Sin(t)).Add(u.Left().Mul(e.RY * math.Cos(t)))
}

// ready sets the pen and the tone; it reports false if nothing would be drawn.
func (c *content) ready(pen draw.Pen, filled bool, grey float64) bool {
	if pen.Width > 0 {
		c.stroke(pen)
	}
	if filled {
		c.tone(grey)
	}
	return filled || pen.Width > 0
}

// tone sets the tone of fillings.
func (c *content) tone(grey float64) {
	if grey != c.set.tone {
		c.number(grey, 3, " g\n")
		c.set.tone = grey
	}
}

// stroke sets the pen of lines. Dashes end where they end, other lines are round.
func (c *content) stroke(pen draw.Pen) {
	was := c.set.pen
	if pen.Width != was.Width {
		c.number(pen.Width, 4, " w\n")
	}
	if pen.Grey != was.Grey {
		c.number(pen.Grey, 3, " G\n")
	}
	if !slices.Equal(pen.Dash, was.Dash) {
		c.buf = append(c.buf, '[')
		for i, d := range pen.Dash {
			if i > 0 {
				c.buf = append(c.buf, ' ')
			}
			c.number(d, 4, "")
		}
		c.buf = append(c.buf, "] 0 d\n"...)
	}
	ends := byte('1')
	if len(pen.Dash) > 0 {
		ends = '0'
	}
	if ends != c.set.cap {
		c.buf = append(c.buf, ends, ' ', 'J', '\n')
	}
	c.set.pen, c.set.cap = pen, ends
}

// paint ends a path.
func (c *content) paint(pen draw.Pen, filled bool) {
	switch {
	case filled && pen.Width > 0:
		c.buf = append(c.buf, "B*\n"...)
	case filled:
		c.buf = append(c.buf, "f*\n"...)
	default:
		c.buf = append(c.buf, "S\n"...)
	}
}

// text writes a line of text, run by run.
func (c *content) text(t *draw.Text, pen draw.Pen) {
	c.runs = font.AppendLayout(c.runs[:0], t.S, t.Height, t.Bold)
	if len(c.runs) == 0 || t.Height == 0 {
		return
	}
	sin, cos := math.Sincos(t.Rot)
	along := vec.P{X: cos, Y: sin}
	place := func(x, y float64) vec.P { return t.At.Add(along.Mul(x)).Add(along.Left().Mul(y)) }
	wide := 0.0
	if t.Halo || t.Anchor != draw.Start {
		wide = font.Measure(t.S, t.Height, t.Bold)
	}
	if t.Halo {
		c.halo(font.BoxOf(&draw.Text{Height: t.Height, Anchor: t.Anchor}, wide), place)
	}
	c.tone(pen.Grey)
	shift := font.Before(t.Anchor, wide)
	for _, run := range c.runs {
		c.face(face{t.Bold, font.Size(run.Height, run.Bold)})
		c.buf = append(c.buf, "BT "...)
		op := " Td"
		if t.Rot != 0 {
			op = " Tm"
			for _, x := range [4]float64{cos, sin, -sin, cos} {
				c.number(x, 9, " ")
			}
		}
		c.point(place(run.X-shift, run.Y), c.sheet.Places(), op)
		c.glyphs(run.S, c.used.of(t.Bold))
		c.buf = append(c.buf, "Tj ET\n"...)
	}
}

// face sets the font and its size.
func (c *content) face(f face) {
	if f != c.set.face {
		c.buf = append(append(c.buf, fontName(f.bold)...), ' ')
		c.number(f.size, 6, " Tf\n")
		c.set.face = f
	}
}

// glyphs writes a text as a string of two bytes for each rune, as the library
// encodes its fonts (ISO 32000-1, 7.3.4.2 for what is escaped), and keeps account
// of the runes. Runs have none beyond U+FFFF.
func (c *content) glyphs(s string, used *runeSet) {
	c.buf = append(c.buf, '(')
	for _, r := range s {
		used.add(r)
		c.octet(byte(r >> 8))
		c.octet(byte(r))
	}
	c.buf = append(c.buf, ')')
}

// octet writes a byte of a string.
func (c *content) octet(b byte) {
	switch b {
	case '\r':
		c.buf = append(c.buf, '\\', 'r')
		return
	case '(', ')', '\\':
		c.buf = append(c.buf, '\\')
	}
	c.buf = append(c.buf, b)
}

// halo backs a text with white; b is its box, which place turns and puts there.
func (c *content) halo(b draw.Box, place func(x, y float64) vec.P) {
	c.path(&draw.Path{
		Pts:    []vec.P{place(b.Min.X, b.Min.Y), place(b.Max.X, b.Min.Y), place(b.Max.X, b.Max.Y), place(b.Min.X, b.Max.Y)},
		Closed: true, Filled: true, Grey: 1,
	}, draw.Pen{})
}
