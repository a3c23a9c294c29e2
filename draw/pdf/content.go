package pdf

import (
	"math"
	"slices"
	"strconv"

	"pegwright/draw"
	"pegwright/draw/font"
	"pegwright/geom/vec"
)

// content writes the items of one sheet. Shapes gather in buf, in millimetres,
// under the scaling matrix, until a text or the end of the page.
type content struct {
	page   *writer
	sheet  *draw.Sheet
	buf    []byte
	scaled bool // the scaling matrix is set
	ink    ink  // what buf has set, while scaled
}

// ink is a pen and the tone of a filling.
type ink struct {
	pen    draw.Pen
	filled bool
	grey   float64
}

// same reports whether two inks are set by the same words.
func (a ink) same(b ink) bool {
	return a.pen.Width == b.pen.Width && a.pen.Grey == b.pen.Grey && slices.Equal(a.pen.Dash, b.pen.Dash) &&
		a.filled == b.filled && a.grey == b.grey
}

// flush ends the shapes written so far.
func (c *content) flush() {
	if c.scaled {
		c.buf = append(c.buf, "Q\n"...)
		c.scaled = false
	}
}

// decimal writes a number of a matrix.
func decimal(x float64) string { return draw.Number(x, 9) }

// point writes a point and a sign after it.
func (c *content) point(p vec.P, places int, after string) {
	c.buf = append(draw.AppendNumber(c.buf, p.X, places), ' ')
	c.buf = append(draw.AppendNumber(c.buf, p.Y, places), after...)
}

// fine is how many places the points of a curve have: control points are not
// coordinates that anybody measures, and rounding them as such would dent the
// curve.
const fine = 6

func (c *content) item(it draw.Item) {
	pen := it.Head().PenAt(c.sheet.Step)
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

func (c *content) path(t *draw.Path, pen draw.Pen) {
	if len(t.Pts) == 0 || !c.begin(pen, t.Filled, t.Grey) {
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
	if !c.begin(pen, e.Filled, e.Grey) {
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

// begin sets the pen and the tone; it reports false if nothing would be drawn.
func (c *content) begin(pen draw.Pen, filled bool, grey float64) bool {
	if pen.Width == 0 && !filled {
		return false
	}
	want := ink{pen, filled, grey}
	if c.scaled && c.ink.same(want) {
		return true
	}
	if !c.scaled {
		k := decimal(ptPerMM)
		c.buf = append(c.buf, "q "+k+" 0 0 "+k+" 0 0 cm\n"...)
		c.scaled = true
	}
	c.ink = want
	if pen.Width > 0 {
		c.stroke(pen)
	}
	if filled {
		c.buf = append(draw.AppendNumber(c.buf, grey, 3), " g"...)
	}
	c.buf = append(c.buf, '\n')
	return true
}

// stroke sets a pen.
func (c *content) stroke(pen draw.Pen) {
	c.buf = append(draw.AppendNumber(c.buf, pen.Width, 4), " w "...)
	c.buf = append(draw.AppendNumber(c.buf, pen.Grey, 3), " G "...)
	ends := "1 J 1 j ["
	if len(pen.Dash) > 0 {
		ends = "0 J 1 j ["
	}
	c.buf = append(c.buf, ends...)
	for i, d := range pen.Dash {
		if i > 0 {
			c.buf = append(c.buf, ' ')
		}
		c.buf = draw.AppendNumber(c.buf, d, 4)
	}
	c.buf = append(c.buf, "] 0 d "...)
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

// text writes a line of text. Each run has a matrix of its own, which carries
// size and place; the library keeps account of the glyphs that are used.
func (c *content) text(t *draw.Text, pen draw.Pen) {
	runs := font.Layout(t.S, t.Height, t.Bold)
	if len(runs) == 0 || t.Height == 0 {
		return
	}
	along := vec.P{X: math.Cos(t.Rot), Y: math.Sin(t.Rot)}
	place := func(x, y float64) vec.P { return t.At.Add(along.Mul(x)).Add(along.Left().Mul(y)) }
	if t.Halo {
		c.halo(t, place)
	}
	c.flush()
	shift := font.Shift(t)
	for _, run := range runs {
		o := place(run.X-shift, run.Y)
		k := font.Size(run.Height, run.Bold) * ptPerMM / emSize
		c.buf = append(draw.AppendNumber(c.buf, pen.Grey, 3), " g BT "...)
		c.buf = append(append(c.buf, fontName(t.Bold)...), ' ')
		c.buf = append(strconv.AppendInt(c.buf, emSize, 10), " Tf "...)
		for _, x := range [6]float64{k * along.X, k * along.Y, -k * along.Y, k * along.X,
			draw.Round(o.X, c.sheet.Places()) * ptPerMM, draw.Round(o.Y, c.sheet.Places()) * ptPerMM} {
			c.buf = append(draw.AppendNumber(c.buf, x, 9), ' ')
		}
		c.buf = append(c.buf, "Tm "...)
		c.glyphs(run.S)
		c.buf = append(c.buf, " Tj ET\n"...)
		c.page.uses(run.S, t.Bold)
	}
}

// glyphs writes a text as a string of two bytes for each rune, as the library
// encodes its fonts (ISO 32000-1, 7.3.4.2 for what is escaped). Runs have no
// runes beyond U+FFFF.
func (c *content) glyphs(s string) {
	c.buf = append(c.buf, '(')
	for _, r := range s {
		for _, b := range [2]byte{byte(r >> 8), byte(r)} {
			switch b {
			case '\r':
				c.buf = append(c.buf, '\\', 'r')
				continue
			case '(', ')', '\\':
				c.buf = append(c.buf, '\\')
			}
			c.buf = append(c.buf, b)
		}
	}
	c.buf = append(c.buf, ')')
}

// halo backs a text with white.
func (c *content) halo(t *draw.Text, place func(x, y float64) vec.P) {
	b := font.Box(&draw.Text{Height: t.Height, S: t.S, Bold: t.Bold, Anchor: t.Anchor})
	c.path(&draw.Path{
		Pts:    []vec.P{place(b.Min.X, b.Min.Y), place(b.Max.X, b.Min.Y), place(b.Max.X, b.Max.Y), place(b.Min.X, b.Max.Y)},
		Closed: true, Filled: true, Grey: 1,
	}, draw.Pen{})
}
