package drawbore

import (
	"math"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/font"
	"pegwright/draw/view"
	"pegwright/geom"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// Sizes of the section, mm of wood.
const (
	stubAbove  = 38.0 // of the enterer above the receiver's face
	stubLeast  = 22.0 // the same where room is short
	woodBelow  = 22.0 // of the receiver kept below the mortise's floor
	woodLeast  = 12.0 // the same where room is short
	hatchPitch = 2.0  // paper mm
	beforeBy   = 6.0  // from the peg's tip to the entry face, paper mm
	underPeg   = 18.0 // from the peg to the words under its dimensions, paper mm
	pegFree    = 62.0 // least of the peg left of the receiver, paper mm
)

// cut is the section on paper. Its origin is the middle of the mortise hole.
type cut struct {
	*bored
	s              *draw.Sheet
	k              float64
	at             vec.P   // of the middle of the mortise hole
	left, right    float64 // of the receiver, along the peg
	west, east     float64 // of all wood that is cut
	low, top, face float64 // of the wood, along up from the hole
	broken         bool    // the receiver is broken off at low
}

// paper returns the place of a point x along the peg and y along up from the
// middle of the mortise hole, both mm of wood.
func (c *cut) paper(x, y float64) vec.P { return c.at.Add(vec.P{X: c.k * x, Y: c.k * y}) }

// sectionSheet draws the section with its dimensions, the peg before it is
// driven, and the words beside it.
func (d *bored) sectionSheet() *draw.Sheet {
	c := d.newCut()
	title := d.title("Drawbore, section through the peg", "")
	foot := func(s *draw.Sheet, f block.Field) block.Field {
		f = block.Boxed(s, f, "CAUTION", boringCautions())
		return d.drawServed(s, d.drawWays(s, f))
	}
	room := foot(scratch(d.f))
	reqs := func(k float64) []dim.Request { c.k, c.at = k, vec.P{}; return c.upright() }
	low, top := c.low, c.top
	k, scale := d.scaleFor(func(k float64) bool {
		c.low, c.top = low, top
		wide := d.pegRoom(k) - c.left*k + max(c.right*k+dim.Depth(dim.RightOf, reqs(k)), c.east*k)
		if wide > room.W() || !c.trim((room.H()-3)/k) {
			return false
		}
		c.settle(room)
		return c.wordsFit(room)
	})
	title.Scale = scale
	s, f := block.ForFrame(d.f, "drawbore", "drawbore-"+d.j.ID, title)
	f = foot(s, f)
	c.s, c.k = s, k
	c.settle(f)
	c.wood()
	c.peg(f)
	c.lines()
	dim.Stack(s, dim.RightOf, c.paper(c.right, 0).X, c.upright())
	d.besideSection(c, f)
	return s
}

// scratch returns a sheet to measure on, and the free field of one.
func scratch(f *geom.Frame) (*draw.Sheet, block.Field) {
	return draw.NewSheet("", "", "", 1, 1), block.FieldFor(f)
}

// newCut measures what the section shows: the receiver from side to side and
// from its face to some way under the mortise.
func (d *bored) newCut() *cut {
	c := &cut{bored: d}
	m := d.p.Mortise
	x := func(p vec.V) float64 { return d.dir.Dot(p.Sub(m)) }
	c.left, c.right = x(d.p.From), x(d.p.To)
	c.face = d.bearing() + d.j.LetIn/d.sin
	c.top = c.face + stubAbove
	c.low = math.Inf(1)
	deepest := math.Inf(1)
	for _, l := range d.j.Into.NetInFrame().Section(d.plane()) {
		for _, p := range l {
			y := d.up.Dot(p.Sub(m))
			if y < c.face+1 {
				c.low = math.Min(c.low, y)
			}
		}
	}
	if !d.j.Mortise.Empty() {
		lo, _ := d.j.Mortise.Extent(d.out)
		deepest = (lo - d.out.Dot(m)) / d.sin
	}
	if keep := deepest - woodBelow; c.low < keep && !math.IsInf(deepest, 0) {
		c.low, c.broken = keep, true
	}
	if math.IsInf(c.low, 0) {
		c.low = -c.face
	}
	if d.p.Relish > 0 {
		c.low = math.Min(c.low, d.p.Offset-d.p.Relish)
	}
	c.west, c.east = c.left, c.right
	for _, l := range d.j.Of.NetInFrame().Section(d.plane()) {
		for _, p := range l {
			if y := d.up.Dot(p.Sub(m)); y > c.low-1 && y < c.top+1 {
				c.west, c.east = math.Min(c.west, x(p)), math.Max(c.east, x(p))
			}
		}
	}
	return c
}

// plane is the plane of the section.
func (d *bored) plane() solid.Plane {
	return solid.PlaneAt(d.p.Mortise, d.dir.Cross(d.up))
}

// wood draws the two cut timbers.
func (c *cut) wood() {
	m := c.p.Mortise
	above := solid.PlaneAt(m.Add(c.up.Mul(c.top)), c.up)
	end := c.low - 5 // nothing is there unless the receiver is broken off
	if c.broken {
		end = c.low
	}
	below := solid.PlaneAt(m.Add(c.up.Mul(end)), c.up.Neg())
	cam := c.cutCamera()
	o := view.Options{Scale: c.k, At: c.at.Sub(cam.Project(m).Mul(c.k))}
	parts := []view.Part{
		shown(c.j.Into, view.Clipped(c.j.Into.NetInFrame(), below, above)),
		shown(c.j.Of, view.Clipped(c.j.Of.NetInFrame(), above, below)),
	}
	figs := view.Section(parts, c.plane(), cam, o)
	for _, f := range figs {
		angle := 45.0
		if f.Owner == c.j.Of.ID {
			angle = 135
		}
		for _, h := range f.Hatch(angle, hatchPitch) {
			c.s.Add(h)
		}
	}
	for _, f := range figs {
		c.s.Add(f.Outline()...)
	}
	for _, f := range figs {
		c.name(f)
	}
}

// name writes which timber a figure is, on white over its hatching.
func (c *cut) name(f view.Figure) {
	b := draw.NoBox()
	for _, l := range f.Loops {
		b = b.With(l...)
	}
	word, p := "receiver", c.paper((c.left+c.right)/2, 0)
	if f.Owner == c.j.Of.ID {
		word = "enterer"
		p = vec.P{X: b.Mid().X, Y: b.Max.Y - 11.5}
		if c.p.Offset != 0 {
			p.X += b.W() * 0.16
			a := dim.Broad(c.s, vec.P{X: b.Mid().X - b.W()*0.24, Y: b.Max.Y - 2.5}, vec.P{Y: -1}, 15)
			a.Filled, a.Grey, a.Mark = true, 1, "pull"
		}
	} else {
		p.Y = b.Min.Y + 3.2
		if b.W() < font.Measure(word, dim.Small, false)+4 {
			return
		}
	}
	t := c.s.Text(p, dim.Small, word)
	t.Anchor, t.Halo = draw.Middle, true
}

// lines draws the axes of the two holes.
func (c *cut) lines() {
	over := 4 / c.k
	a := c.paper(c.left-over, 0)
	c.s.Line(draw.Centre, a, c.paper(c.right+over, 0)).Mark = "axis:mortise"
	if c.p.Offset == 0 {
		return
	}
	x0, x1 := c.tenonSpan()
	c.s.Line(draw.Centre, c.paper(x0-over/2, c.p.Offset), c.paper(x1+over/2, c.p.Offset)).Mark = "axis:tenon"
}

// tenonSpan returns where the tenon's cheeks lie along the peg.
func (c *cut) tenonSpan() (x0, x1 float64) {
	if c.j.Tenon.Empty() {
		return c.left, c.right
	}
	lo, hi := c.j.Tenon.Extent(c.dir)
	o := c.dir.Dot(c.p.Mortise)
	return lo - o, hi - o
}

// upright returns the dimensions along the direction of draw, by letter.
func (c *cut) upright() []dim.Request {
	p, x := c.p, c.right
	b := c.bearing()
	end := p.Offset - p.Relish
	req := func(y0, y1, v float64, letter string) dim.Request {
		return dim.Request{From: c.paper(x, y0), To: c.paper(x, y1), Text: letter + " " + c.show(v), Owner: c.j.ID}
	}
	var out []dim.Request
	if !c.slanted() && math.Abs(b-p.A) < 0.05 {
		out = append(out, req(0, b, p.A, "A"))
		if p.Offset != 0 {
			out = append(out, req(p.Offset, b, p.B, "B"))
		}
	}
	if p.Offset != 0 {
		out = append(out, req(0, p.Offset, p.Offset, "e"))
	}
	if p.Relish > 0.05 {
		out = append(out, req(p.Offset, end, p.Relish, "R"))
	}
	return out
}
