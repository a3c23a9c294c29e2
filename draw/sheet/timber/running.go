package timber

import (
	"math"

	"pegwright/draw"
	"pegwright/draw/dim"
	"pegwright/geom/vec"
)

// running draws the running dimension along the foot: every place that these
// sheets' faces show, its true distance from the start end.
func (p *facePage) running(faces []int) {
	y := p.low - footLine
	var wants []dim.Want
	var xs, vals []float64
	for _, x := range p.places {
		if q, ok := p.x(x); ok {
			wants = append(wants, dim.Want{At: q, Size: 1.45 * dim.Text})
			xs, vals = append(xs, q), append(vals, x)
		}
	}
	spots, _ := dim.Spread(wants, 0.5, p.x0, p.field.X1)
	fine := draw.PenFor(draw.Hatch, p.s.Step)
	for i, x := range xs {
		for k, r := range p.rows {
			next := y
			if k+1 < len(p.rows) {
				next = p.rows[k+1].top
			}
			if p.starts(vals[i], p.rows[:k+1]) || k+1 == len(p.rows) {
				l := p.s.Line(draw.Dimension, vec.At(x, p.bottom(r)-1), vec.At(x, next+1))
				l.Pen = &fine
			}
		}
		p.s.Poly(draw.Dimension, false, vec.At(x, y+1), vec.At(x, y), vec.At(spots[i], y-4), vec.At(spots[i], y-4.8))
		dim.Arrow(p.s, vec.At(x, y), vec.At(1, 0))
		t := p.s.Text(vec.At(spots[i]+0.42*dim.Text, y-5.5), dim.Text, p.f.Units.PlainJoint(vals[i]))
		t.Anchor, t.Rot, t.Mark = draw.End, math.Pi/2, "running"
	}
	p.runningLine(y, xs)
}

// starts reports whether a cut or bore of one of the rows' faces has a corner at
// the place.
func (p *facePage) starts(x float64, rows []faceRow) bool {
	for _, f := range p.feats {
		for _, r := range rows {
			if f.face != r.n {
				continue
			}
			if math.Abs(f.from-x) < 0.3 || math.Abs(f.to-x) < 0.3 {
				return true
			}
			for _, q := range f.mouth {
				if math.Abs(q.X-x) < 0.3 {
					return true
				}
			}
		}
	}
	return false
}

// runningLine draws the line of the running dimension, broken where the stick
// is, with a ring at the start end.
func (p *facePage) runningLine(y float64, xs []float64) {
	if len(xs) == 0 {
		return
	}
	from := p.x0 + p.st.pieces[0].x
	if p.st.match == 0 {
		p.s.Circle(draw.Dimension, vec.At(from, y), 1)
	}
	p.s.Line(draw.Dimension, vec.At(from, y), vec.At(xs[len(xs)-1], y))
	for _, s := range p.st.pieces[1:] {
		m := p.x0 + s.x - tornGap/2
		p.s.Line(draw.Dimension, vec.At(m-1, y-1.2), vec.At(m, y+1.2))
		p.s.Line(draw.Dimension, vec.At(m, y-1.2), vec.At(m+1, y+1.2))
	}
}
