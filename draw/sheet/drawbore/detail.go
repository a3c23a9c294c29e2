package drawbore

import (
	"fmt"
	"math"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/font"
	"pegwright/draw/page"
	"pegwright/draw/view"
	"pegwright/geom/measure"
	"pegwright/geom/peg"
	"pegwright/geom/vec"
)

// holesSheet draws the holes as they are seen along the peg, the two circles
// enlarged with the opening between them, and what drying leaves.
func (d *bored) holesSheet() *draw.Sheet {
	v := d.newFace()
	title := d.title("Drawbore, holes along the peg", "")
	room := d.drawDrying(scratch(d.f))
	big, box := d.detailScale(room.W()*0.56, room.H())
	wide := room.W() - max(box.W(), detailLeast) - 8
	depth := func(k float64) (x, y float64) {
		v.k, v.at = k, vec.P{}
		return dim.Depth(dim.RightOf, v.upright()), dim.Depth(dim.Below, v.along())
	}
	k, scale := d.scaleFor(func(k float64) bool {
		dx, dy := depth(k)
		return (v.right-v.left)*k+dx <= wide && (v.high-v.low)*k+dy <= room.H()-dim.Text*page.Pitch-4-v.legendHeight(wide)
	}, d.faceScales()...)
	title.Scale = fmt.Sprintf("%s, detail %g:1", scale, big)
	s, f := block.ForFrame(d.f, "drawbore", "drawbore-holes-"+d.j.ID, title)
	f = d.drawDrying(s, f)
	left, right := page.Split(f, f.X0+wide+4, 8)
	dx, dy := depth(k)
	w := page.Pen{S: s, X: left.X0, Y: left.Y1, W: left.W()}
	w.Head("Seen from the entry side, " + d.faceName(d.p.Entry))
	spare := max(0, w.Y-4-left.Y0-v.legendHeight(left.W())-dy-(v.high-v.low)*k)
	v.k = k
	v.at = vec.P{X: (left.X0+left.X1-dx)/2 - k*(v.left+v.right)/2, Y: w.Y - 2 - k*v.high - spare/2}
	v.draw(s, left)
	w.Y = v.paper(0, v.low).Y - dy - 2
	w.Para(v.legend())
	d.detail(s, right, big, box)
	return s
}

// faceScales are the scales of the view along the peg.
func (d *bored) faceScales() []float64 {
	if d.f.Units == measure.Metric {
		return []float64{2, 2.5, 5, 10}
	}
	return []float64{2, 3, 4, 6, 8}
}

// detailScale returns the largest enlargement, 10 to 1, at which both circles
// with their dimensions, the heading and the words under them fit, 1 in any case;
// and the box of the circles about the mortise hole.
func (d *bored) detailScale(w, h float64) (k float64, box draw.Box) {
	for _, k = range []float64{10, 8, 6, 5, 4, 3, 2.5, 2, 1.5, 1} {
		box = d.circles(draw.NewSheet("", "", "", 1, 1), vec.P{}, k)
		if box.W() <= w && box.H()+dim.Text*page.Pitch+d.detailWordsHeight(max(box.W(), detailLeast))+2.5 <= h {
			break
		}
	}
	return k, box
}

const detailLeast = 95.0 // width of the detail's column, paper mm

// detailText says what the lines of the detail are.
func (d *bored) detailText() string {
	return fmt.Sprintf("Full circle: mortise hole. Dashed: tenon hole, set %s (arrow). Hatched: %s.", d.toward(), d.leadWords())
}

// detailWordsHeight is the room that the words take at a width, paper mm.
func (d *bored) detailWordsHeight(width float64) float64 {
	h := dim.Together("", d.detailText()).Height
	return float64(len(font.Wrap(d.detailText(), width, h)))*h*page.Pitch + 2
}

// shift is the place of the tenon hole from the mortise hole as it is seen
// along the peg, mm.
func (d *bored) shift() vec.P {
	return d.faceCamera().Project(d.p.Tenon.Sub(d.p.Mortise))
}

// detail draws the circles, which take a box about the mortise hole, with a heading
// over them and words under them.
func (d *bored) detail(s *draw.Sheet, f block.Field, k float64, box draw.Box) {
	w := page.Pen{S: s, X: f.X0, Y: f.Y1, W: f.W()}
	w.Head(fmt.Sprintf("Detail %g:1, seen along the peg", k))
	under := d.detailWordsHeight(f.W())
	spare := max(0, w.Y-f.Y0-under-box.H())
	m := vec.P{X: f.Mid().X - box.Mid().X, Y: w.Y - spare/2 - box.Max.Y}
	d.lens(s, m, k)
	d.circles(s, m, k)
	w.Y = m.Y + box.Min.Y - 2
	w.Para(d.detailText())
}

// lens hatches the opening that the two holes leave.
func (d *bored) lens(s *draw.Sheet, m vec.P, k float64) {
	for _, h := range view.Hatch([][]vec.P{lensLoop(m, m.Add(d.shift().Mul(k)), d.p.Bore/2*k)}, 45, 3) {
		h.Mark = "lens"
		s.Add(h)
	}
}

// circles draws the two holes about the mortise hole at m with the offset, the
// clear width and the arrow, and returns the box of it all.
func (d *bored) circles(s *draw.Sheet, m vec.P, k float64) draw.Box {
	first := len(s.Items)
	r := d.p.Bore / 2 * k
	t := m.Add(d.shift().Mul(k))
	c := s.Circle(draw.Part, m, r)
	c.Mark, c.Owner = "hole:mortise:"+d.j.ID, d.j.ID
	c = s.Circle(draw.Hidden, t, r)
	c.Mark, c.Owner = "hole:tenon:"+d.j.ID, d.j.ID
	o := t.Sub(m).Unit()
	n := o.Left().Mul(-1) // the offset stands on this side
	other := n.Mul(r + 14)
	if d.slanted() {
		other = n.Mul(-r - 6)
	}
	s.Line(draw.Centre, m.Sub(n.Mul(r+2.5)), m.Add(n.Mul(r+2.5)))
	s.Line(draw.Centre, t.Sub(n.Mul(r+2.5)), t.Add(n.Mul(r+2.5)))
	s.Line(draw.Centre, m.Sub(o.Mul(r+1)), t.Add(o.Mul(r+1)))
	dim.Linear(s, o, m.Add(n.Mul(r+6)), dim.Request{From: m.Add(n.Mul(r + 2.5)), To: t.Add(n.Mul(r + 2.5)), Text: "e " + d.show(d.p.Offset), Owner: "offset"})
	clear := peg.Through(d.p.Bore, d.p.Offset).Width
	dim.Linear(s, o, m.Add(other), dim.Request{From: t.Sub(o.Mul(r)), To: m.Add(o.Mul(r)), Text: d.show(clear) + " clear", Owner: "clear"})
	a := dim.Broad(s, m.Lerp(t, 0.5).Sub(n.Mul(r*0.5)).Sub(o.Mul(r*0.3)), o, r*0.6)
	a.Filled, a.Grey, a.Mark = true, 1, "toward"
	b := draw.NoBox()
	for _, it := range s.Items[first:] {
		e := draw.ItemBounds(it)
		if x, ok := it.(*draw.Text); ok {
			e = font.Turned(x)
		}
		b = b.With(e.Min, e.Max)
	}
	return b
}

// leadWords says that the peg finds its way through the opening.
func (d *bored) leadWords() string {
	if !d.enters {
		return "no lead that could enter is left: bore larger or offset less"
	}
	return "open for the lead"
}

// lensLoop returns the border of what two circles of radius r about m and t
// share, as many short sides.
func lensLoop(m, t vec.P, r float64) []vec.P {
	d := t.Sub(m)
	half := math.Acos(math.Min(1, d.Len()/2/r))
	to := math.Atan2(d.Y, d.X)
	var out []vec.P
	const n = 90
	for _, c := range []struct {
		at vec.P
		to float64
	}{{m, to}, {t, to + math.Pi}} {
		for i := range n {
			s, k := math.Sincos(c.to - half + 2*half*float64(i)/n)
			out = append(out, c.at.Add(vec.P{X: r * k, Y: r * s}))
		}
	}
	return out
}
