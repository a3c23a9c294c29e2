package timber

import (
	"fmt"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/view"
	"pegwright/geom"
	"pegwright/geom/vec"
)

// endCamera looks at an end of a timber in its own axes with face 1 on top.
func endCamera(last bool) view.Camera {
	out := vec.V{X: -1}
	if last {
		out = vec.V{X: 1}
	}
	up := vec.V{Y: -1}
	return view.Camera{Right: up.Cross(out), Up: up, Toward: out}
}

// endScale returns the scale of the end views in a band of the given height.
func endScale(f *geom.Frame, t *geom.Timber, high float64) float64 {
	y, z := t.BlankSize()
	for _, n := range stickScales(f.Units) {
		if y/n <= high-20 && z/n <= 38 {
			return 1 / n
		}
	}
	return 1 / 32.0
}

// endViews draws both ends with the numbers of the faces round them and a dot
// at the reference arris.
func endViews(f *geom.Frame, t *geom.Timber, s *draw.Sheet, field block.Field, k float64) {
	y, z := t.BlankSize()
	part := view.Part{Owner: t.ID, Body: t.Net}
	for i, name := range []string{"start end", "other end"} {
		c := endCamera(i == 1)
		mid := vec.At(field.X0+field.W()*(0.25+0.5*float64(i)), field.Y0+6+y*k/2)
		o := mid.Sub(c.Project(vec.V{Y: y / 2, Z: z / 2}).Mul(k))
		s.Add(view.Render(c, []view.Part{part}, view.Options{Scale: k, At: o})...)
		a := s.Circle(draw.Part, o, 1)
		a.Filled, a.Mark = true, "reference arris"
		h := s.Text(vec.At(mid.X, mid.Y+y*k/2+5.6), dim.Small, name)
		h.Anchor, h.Bold = draw.Middle, true
		for n := 1; n <= 4; n++ {
			d := c.Project(t.IdealPlane(n).N)
			q := mid.Add(vec.At(d.X*(z*k/2+2.6), d.Y*(y*k/2+2.6)))
			x := s.Text(vec.At(q.X, q.Y-dim.Small/2), dim.Small, fmt.Sprint(n))
			x.Anchor = draw.Middle
		}
	}
}
