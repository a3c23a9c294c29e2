package sheet

import (
	"fmt"
	"math"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/view"
	"pegwright/geom/peg"
	"pegwright/geom/vec"
)

// holesSheet draws the holes as they are seen along the peg, the two circles
// enlarged with the opening between them, and what drying leaves.
func (d *bored) holesSheet() *draw.Sheet {
	v := d.newFace()
	field := paperField(d.f.Paper.Sheets, d.title("", ""))
	foot := d.dryingHeight(field.W())
	room := field.H() - foot - 4
	big, bigText := d.detailScale(field.W()*0.56, room)
	wide := field.W() - d.detailWidth(big) - 8
	depth := func(k float64) (x, y float64) {
		v.k, v.at = k, vec.P{}
		return dim.Depth(dim.RightOf, v.upright()), dim.Depth(dim.Below, v.along())
	}
	k, text := d.scaleFor(func(k float64) bool {
		dx, dy := depth(k)
		return (v.right-v.left)*k+dx <= wide && (v.high-v.low)*k+dy <= room-23
	}, d.faceScales()...)
	v.k = k
	s, f := fresh(d.f, "drawbore", "drawbore-holes-"+d.j.ID, d.title("Drawbore, holes along the peg", text+", detail "+bigText))
	f = d.drawDrying(s, f, foot)
	left, right := split(f, f.X0+wide+4, 8)
	dx, dy := depth(k)
	v.at = vec.P{
		X: (left.X0+left.X1-dx)/2 - k*(v.left+v.right)/2,
		Y: left.Y1 - 11 - k*v.high,
	}
	if spare := v.paper(0, v.low).Y - dy - left.Y0 - 14; spare > 0 {
		v.at.Y -= spare / 2
	}
	w := pen{s: s, x: left.X0, y: left.Y1, w: left.W()}
	w.head("Seen from the entry side, " + d.faceName(d.p.Entry))
	v.draw(s, left)
	w.y = v.paper(0, v.low).Y - dy - 2
	w.para(v.legend())
	d.detail(s, right, big, bigText)
	return s
}

// faceScales are the scales of the view along the peg.
func (d *bored) faceScales() []float64 { return []float64{2, 2.5, 3, 4, 5} }

const detailSide = 20.0 // room right of the circles for two dimensions, paper mm

// detailWidth returns the width that the detail takes at scale k.
func (d *bored) detailWidth(k float64) float64 {
	return k*(d.p.Bore+math.Abs(d.shift().X)) + 2*detailSide
}

// detailHeight returns the height that the detail takes at scale k, words
// apart.
func (d *bored) detailHeight(k float64) float64 {
	return k*(d.p.Bore+math.Abs(d.shift().Y)) + 4
}

// detailScale returns the largest enlargement, 10 to 4, that fits; 4 in any
// case.
func (d *bored) detailScale(w, h float64) (k float64, text string) {
	k = 4
	for _, n := range []float64{10, 8, 6, 5} {
		if d.detailWidth(n) <= w && d.detailHeight(n)+24 <= h {
			k = n
			break
		}
	}
	return k, fmt.Sprintf("%g:1", k)
}

// shift is the place of the tenon hole from the mortise hole as it is seen
// along the peg, mm.
func (d *bored) shift() vec.P {
	return d.faceCamera().Project(d.p.Tenon.Sub(d.p.Mortise))
}

// detail draws the two circles enlarged with the opening hatched, the offset,
// the clear width and the arrow.
func (d *bored) detail(s *draw.Sheet, f block.Field, k float64, scale string) {
	w := pen{s: s, x: f.X0, y: f.Y1, w: f.W()}
	w.head("Detail " + scale + ": tenon hole " + d.toward())
	sh := d.shift().Mul(k)
	r := d.p.Bore / 2 * k
	mid := vec.P{X: (f.X0+f.X1)/2 - detailSide/2 + 2, Y: w.y - 1 - r - math.Abs(sh.Y)/2}
	m := mid.Sub(sh.Mul(0.5))
	t := m.Add(sh)
	for _, h := range view.Hatch([][]vec.P{lensLoop(m, t, r)}, 45, 3) {
		h.Mark = "lens"
		s.Add(h)
	}
	c := s.Circle(draw.Part, m, r)
	c.Mark, c.Owner = "hole:mortise:"+d.j.ID, d.j.ID
	c = s.Circle(draw.Hidden, t, r)
	c.Mark, c.Owner = "hole:tenon:"+d.j.ID, d.j.ID
	o := sh.Unit()
	n := o.Left().Mul(-1) // dimensions stand on this side
	for _, x := range []vec.P{m, t} {
		s.Line(draw.Centre, x.Sub(n.Mul(r+3)), x.Add(n.Mul(r+3)))
	}
	s.Line(draw.Centre, m.Sub(o.Mul(r+3)), t.Add(o.Mul(r+3)))
	on := m.Add(n.Mul(r + 6))
	dim.Linear(s, o, on, dim.Request{From: m.Add(n.Mul(r + 2)), To: t.Add(n.Mul(r + 2)), Text: d.show(d.p.Offset), Owner: "offset"})
	lens := peg.Through(d.p.Bore, d.p.Offset)
	dim.Linear(s, o, on.Add(n.Mul(8)), dim.Request{From: t.Sub(o.Mul(r)), To: m.Add(o.Mul(r)), Text: d.show(lens.Width) + " clear", Owner: "clear"})
	a := dim.Broad(s, mid.Sub(n.Mul(r*0.55)).Sub(o.Mul(r*0.3)), o, r*0.6)
	a.Filled, a.Grey, a.Mark = true, 1, "toward"
	w.y = mid.Y - r - math.Abs(sh.Y)/2 - 4
	w.para(fmt.Sprintf("Full circle: hole through the cheeks of %s. Dashed circle: hole through the tenon of %s. Hatched: what is open through both, Ø %s less the offset. Arrow: the tenon hole is set %s; %s.",
		d.j.Into.ID, d.j.Of.ID, d.say(d.p.Bore), d.toward(), d.leadWords()))
}

// leadWords says that the peg finds its way through the opening.
func (d *bored) leadWords() string {
	if !d.enters {
		return "no lead that could enter is left: bore larger or offset less"
	}
	return fmt.Sprintf("the lead, Ø %s at its tip, finds its way through", d.say(d.lead.Tip))
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
