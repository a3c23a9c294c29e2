package drawbore

import (
	"math"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/page"
	"pegwright/draw/view"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// Sizes of the view along the peg, mm of wood.
const (
	faceBeside = 14.0 // of the receiver either side of the joint
	faceBelow  = 20.0 // of the receiver below the mortise's floor
	faceAbove  = 32.0 // of the enterer above the receiver's face
)

// face is the view along the peg. Its origin is the middle of the mortise hole.
type face struct {
	*bored
	s                      *draw.Sheet
	cam                    view.Camera
	k                      float64
	at                     vec.P
	left, right, low, high float64     // of what is shown, mm of wood
	broken                 bool        // the receiver is broken off at low
	first, last            float64     // of the receiver shown
	edge, bearing          float64     // of the bearing edge, and of the plane over the mortise hole
	enterer                *solid.Body // broken off above
}

func (v *face) paper(x, y float64) vec.P { return v.at.Add(vec.P{X: v.k * x, Y: v.k * y}) }

// flat returns the place of a point in the view, mm of wood.
func (v *face) flat(p vec.V) vec.P { return v.cam.Project(p.Sub(v.p.Mortise)) }

// newFace measures what the view along the peg shows.
func (d *bored) newFace() *face {
	v := &face{bored: d, cam: d.faceCamera()}
	m := d.p.Mortise
	v.bearing = d.under(m, v.out)
	v.left, v.right = math.Inf(1), math.Inf(-1)
	grow := func(x float64) { v.left, v.right = math.Min(v.left, x), math.Max(v.right, x) }
	if !d.j.Mortise.Empty() {
		lo, hi := d.j.Mortise.Extent(v.cam.Right)
		grow(lo - v.cam.Right.Dot(m))
		grow(hi - v.cam.Right.Dot(m))
	}
	u0, _, _ := d.j.Axes.Of(m)
	sense := math.Copysign(1, v.cam.Right.Dot(d.j.Axes.U))
	for _, l := range d.j.Lines {
		grow(sense * (l.X - u0))
	}
	for _, p := range d.pegs {
		grow(v.flat(p.Mortise).X)
	}
	v.edge = v.bearingEdge(u0, sense)
	v.high = v.bearing + d.j.LetIn + faceAbove
	v.enterer = view.Clipped(d.j.Of.NetInFrame(), v.above())
	for _, c := range v.enterer.Cells() {
		lo, hi := c.Extent(v.cam.Right)
		grow(lo - v.cam.Right.Dot(m) + faceBeside - 4)
		grow(hi - v.cam.Right.Dot(m) - faceBeside + 4)
	}
	v.left, v.right = v.left-faceBeside, v.right+faceBeside
	lo, hi := v.reach(v.cam.Right)
	v.first, v.last = math.Max(v.left, lo), math.Min(v.right, hi)
	v.low, _ = v.reach(v.out)
	if !d.j.Mortise.Empty() {
		lo, _ := d.j.Mortise.Extent(v.out)
		if keep := lo - v.out.Dot(m) - faceBelow; v.low < keep {
			v.low, v.broken = keep, true
		}
	}
	return v
}

// above is the plane at which the enterer is broken off.
func (v *face) above() solid.Plane {
	return solid.PlaneAt(v.p.Mortise.Add(v.out.Mul(v.high)), v.out)
}

// reach returns how far the receiver reaches along a direction, from the
// mortise hole.
func (d *bored) reach(dir vec.V) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, c := range d.j.Into.NetInFrame().Cells() {
		a, b := c.Extent(dir)
		lo, hi = math.Min(lo, a), math.Max(hi, b)
	}
	o := dir.Dot(d.p.Mortise)
	return lo - o, hi - o
}

// bearingEdge returns where the edge that P is measured from lies: on the one
// of two sides where a line or an end of the mortise is.
func (v *face) bearingEdge(u0, sense float64) float64 {
	var known []float64
	for _, l := range v.j.Lines {
		known = append(known, sense*(l.X-u0))
	}
	if !v.j.Mortise.Empty() {
		lo, hi := v.j.Mortise.Extent(v.cam.Right)
		o := v.cam.Right.Dot(v.p.Mortise)
		known = append(known, lo-o, hi-o)
	}
	for _, x := range known {
		if math.Abs(math.Abs(x)-v.p.P) < 0.02 {
			return x
		}
	}
	return math.NaN()
}

// draw draws the view with its dimensions into a column of the sheet.
func (v *face) draw(s *draw.Sheet, f block.Field) {
	v.s = s
	m := v.p.Mortise
	r := v.cam.Right
	sides := []solid.Plane{
		solid.PlaneAt(m.Add(r.Mul(v.right)), r), solid.PlaneAt(m.Add(r.Mul(v.left)), r.Neg()),
	}
	if v.broken {
		sides = append(sides, solid.PlaneAt(m.Add(v.out.Mul(v.low)), v.out.Neg()))
	}
	parts := []view.Part{shown(v.j.Into, view.Clipped(v.j.Into.NetInFrame(), sides...)), shown(v.j.Of, v.enterer)}
	o := view.Options{Scale: v.k, ShowHidden: true, At: v.at.Sub(v.cam.Project(m).Mul(v.k))}
	s.Add(view.Render(v.cam, parts, o)...)
	for _, p := range v.pegs {
		v.cross(p.Mortise, p.Bore)
	}
	v.toStart()
	dim.Stack(s, dim.RightOf, v.paper(v.right, 0).X, v.upright())
	dim.Stack(s, dim.Below, v.paper(0, v.low).Y, v.along())
}

// toStart shows on which hand the receiver's start end lies.
func (v *face) toStart() {
	x, d := v.first, vec.P{X: -1}
	if v.cam.Right.Dot(v.j.Into.Place.X) < 0 {
		x, d = v.last, vec.P{X: 1}
	}
	tip := v.paper(x, v.low).Add(vec.P{X: -4 * d.X, Y: 4})
	v.s.Line(draw.Dimension, tip, tip.Sub(d.Mul(9)))
	dim.Arrow(v.s, tip, d).Mark = "to start"
	t := v.s.Text(tip.Sub(d.Mul(10.5)).Sub(vec.P{Y: dim.Small / 2}), dim.Small, "start end")
	t.Halo = true
	if d.X > 0 {
		t.Anchor = draw.End
	}
}

// cross draws the centre lines of a mortise hole.
func (v *face) cross(at vec.V, bore float64) {
	p, l := v.flat(at), bore/2+3/v.k
	v.s.Line(draw.Centre, v.paper(p.X-l, p.Y), v.paper(p.X+l, p.Y))
	v.s.Line(draw.Centre, v.paper(p.X, p.Y-l), v.paper(p.X, p.Y+l))
}

// upright returns the dimensions square to the entered face.
func (v *face) upright() []dim.Request {
	x := v.right
	t := v.flat(v.p.Tenon)
	req := func(y, top, val float64, letter string) dim.Request {
		return dim.Request{From: v.paper(x, y), To: v.paper(x, top), Text: letter + " " + v.show(val), Owner: v.j.ID}
	}
	return []dim.Request{req(0, v.bearing, v.p.A, "A"), req(t.Y, t.Y+v.under(v.p.Tenon, v.out), v.p.B, "B")}
}

// along returns the dimensions along the receiver from the bearing edge.
func (v *face) along() []dim.Request {
	if math.IsNaN(v.edge) {
		return nil
	}
	req := func(x float64, letter string) dim.Request {
		return dim.Request{From: v.paper(v.edge, v.low), To: v.paper(x, v.low), Text: letter + " " + v.show(math.Abs(x-v.edge)), Owner: v.j.ID}
	}
	var out []dim.Request
	for i, p := range v.pegs {
		out = append(out, req(v.flat(p.Mortise).X, []string{"P", "P2", "P3", "P4"}[min(i, 3)]))
	}
	if t := v.flat(v.p.Tenon); math.Abs(t.X) > 0.05 {
		out = append(out, req(t.X, "N"))
	}
	return out
}

// legend says what the letters of the view are.
func (v *face) legend() string {
	from := v.p.PFrom
	out := "A bearing plane to mortise hole, B shoulder to tenon hole, both square to the shoulder."
	if v.sloping() {
		out = "A bearing plane to mortise hole, B shoulder to tenon hole, each straight above its hole and square to the receiver's face: the shoulder slopes."
	}
	if !math.IsNaN(v.edge) {
		out += "\nP " + from + " to mortise hole"
		if len(v.pegs) > 1 {
			out += ", P2 to the second"
		}
		out += "."
	}
	if t := v.flat(v.p.Tenon); math.Abs(t.X) > 0.05 {
		out += " N " + from + " to tenon hole."
	}
	if m := v.g.MirrorWords("with the section"); m != "" {
		out += "\n" + m
	}
	return out
}

// legendHeight returns the height of the legend at a width.
func (v *face) legendHeight(width float64) float64 {
	return (&page.Pen{W: width}).ParaHeight(v.legend())
}
