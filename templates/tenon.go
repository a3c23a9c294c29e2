package templates

import (
	"math"

	"pegwright/draw"
	"pegwright/geom"
	"pegwright/geom/vec"
)

// tenonPlan lays out the tenon of a joint on one of its cheeks, the one that
// lies toward the given face of the enterer. The view's origin is where the
// shoulder meets the reference edge.
func tenonPlan(j *geom.Joint, face int, pegs []*geom.Peg) (plan, bool) {
	p := plan{kind: "tenon", joint: j, v: view{t: j.Of, face: face}}
	at, d, ok := p.v.line(j.Bearing)
	if !ok || math.Abs(d.Y) < 1e-6 {
		return plan{}, false
	}
	p.v.x0 = at.X - float64(at.Y/d.Y*d.X)
	body := p.v.dir(j.Bearing.N) // from the tenon into the timber
	for _, g := range pegs {
		m, t := p.v.from(g.Mortise), p.v.from(g.Tenon)
		if m.Dist(t) > 1e-6 {
			p.holes = append(p.holes, hole{peg: g, n: number(j, g), c: m, bore: g.Bore, shadow: true, mark: mark("hole:mortise-on-tenon", j, g)})
		}
		p.holes = append(p.holes, hole{peg: g, n: number(j, g), c: t, other: m, bore: g.Bore, mark: mark("hole:tenon", j, g)})
	}
	name := "tenon"
	if j.Broad {
		name = "lap"
	}
	p.shapes = []shape{{name, p.v.shadow(j.Tenon), draw.Part, mark("outline:tenon", j, nil)}}
	p.tenonLines(d, body)
	p.tenonDims(body)
	p.tenonRoom()
	return p, true
}

// tenonLines adds the shoulder, as long as the timber is deep, and the
// reference edge.
func (p *plan) tenonLines(d, body vec.P) {
	j, s := p.joint, p.v.sign()
	deep := j.Of.Ideal[0]
	if p.v.face == 1 || p.v.face == 3 {
		deep = j.Of.Ideal[1]
	}
	step := d.Mul(s / d.Y)
	name := "SHOULDER: fold up"
	if j.Broad {
		name = "SHOULDER"
	}
	shoulder := guide{name: name, class: draw.Register, mark: mark("line:shoulder", j, nil)}
	shoulder.a, shoulder.b = step.Mul(-6), step.Mul(deep)
	if shoulder.b.Sub(shoulder.a).Left().Dot(body) < 0 {
		shoulder.below = true // the words stand on the timber's side
	}
	edge := guide{name: "reference edge", class: draw.Register, mark: mark("line:edge", j, nil), below: s > 0}
	edge.a, edge.b = vec.P{X: -far}, vec.P{X: far}
	p.guides = append(p.guides, shoulder, edge)
}

// tenonDims asks for the distances of the tenon holes, the offset, the relish
// and the broad arrow.
func (p *plan) tenonDims(body vec.P) {
	seen := map[string]bool{}
	grain := vec.P{X: math.Copysign(1, -body.X)} // out to the tenon's end
	mid := draw.NoBox().With(p.shapes[0].pts...).Mid()
	for _, h := range p.holes {
		if h.shadow {
			continue
		}
		r := h.bore / 2
		out := sideOf(mid.Sub(h.c), body.Left()) // along the shoulder, toward the wider part
		foot := p.foot(h.c, body)
		p.once(seen, "B", dimension{a: foot, b: h.c, off: offToward(foot, h.c, body.Left().Mul(out), r+14), word: "shoulder "})
		p.once(seen, "Y", dimension{a: vec.P{X: h.c.X}, b: h.c, off: offToward(vec.P{X: h.c.X}, h.c, grain, r+9+9*float64(h.n-1))})
		end := h.c.Add(grain.Mul(h.peg.Relish))
		p.once(seen, "R", dimension{a: h.c, b: end, off: offToward(h.c, end, vec.P{Y: sideOf(h.c.Sub(mid), vec.P{Y: 1})}, r+5), word: "relish "})
		if h.c.Dist(h.other) < 1e-6 {
			continue
		}
		p.offset(seen, h, body, out)
	}
}

// foot returns the point of the shoulder that a tenon hole is measured from:
// square to the shoulder, which passes through the origin, or where that slopes
// to the receiver's face, square to the face.
func (p *plan) foot(c, body vec.P) vec.P {
	up := body
	if n := p.joint.Bearing.N.Dot(p.joint.Axes.W); !p.joint.Broad && n > 0.5 && n < 1-1e-9 {
		up = p.v.dir(p.joint.Axes.W)
	}
	return c.Sub(up.Mul(body.Dot(c) / body.Dot(up)))
}

// offset dimensions how far the two holes stand apart, between their edges, so
// that nothing marks the centre of the mortise hole.
func (p *plan) offset(seen map[string]bool, h hole, body vec.P, out float64) {
	r := h.bore / 2
	d := h.c.Sub(h.other).Unit()
	a, b := h.other.Sub(d.Mul(r)), h.c.Sub(d.Mul(r))
	p.once(seen, "E", dimension{a: a, b: b, off: offToward(a, b, body.Left().Mul(out), r+5), word: "offset "})
	if p.arrow == nil {
		reach := -body.Dot(h.c) / math.Max(d.Dot(body), 0.2)
		p.arrow = &arrow{base: h.c.Add(d.Mul(reach + 8)), d: d, word: h.peg.Words}
	}
}

// once adds a dimension unless one of the same sort and size is there.
func (p *plan) once(seen map[string]bool, sort string, d dimension) {
	key := sort + draw.Number(d.b.Dist(d.a), 2)
	if seen[key] || d.b.Dist(d.a) < 0.01 {
		return
	}
	seen[key] = true
	p.dims = append(p.dims, d)
}

// sideOf is +1 where d points along n, else -1.
func sideOf(d, n vec.P) float64 {
	if d.Dot(n) < 0 {
		return -1
	}
	return 1
}

// offToward returns the signed distance off the way from a to b that lies in
// the direction d.
func offToward(a, b, d vec.P, by float64) float64 {
	return by * sideOf(d, b.Sub(a).Unit().Left())
}

// shortWay is how long a dimension is that should show to its ends, mm: all but
// those of tongues that run on, which break off where the paper does.
const shortWay = 80.0

// tenonRoom says which part of the view must show (the holes, the shoulder
// before them and the reference edge), which should (the whole tenon), and
// which may (the arrow beside it).
func (p *plan) tenonRoom() {
	edge := vec.P{Y: -9 * p.v.sign()}
	for _, h := range p.holes {
		body := p.v.dir(p.joint.Bearing.N)
		foot := h.c.Add(body.Mul(-body.Dot(h.c)))
		r := h.bore/2 + 4
		p.need = append(p.need, h.c.Sub(vec.P{X: r, Y: r}), h.c.Add(vec.P{X: r, Y: r}))
		p.need = append(p.need, foot.Sub(vec.P{X: 4, Y: 4}), foot.Add(vec.P{X: 4, Y: 4}))
		p.ends = append(p.ends, foot.Add(body.Mul(10)))
	}
	for _, d := range p.dims {
		if d.b.Dist(d.a) < shortWay {
			n := d.b.Sub(d.a).Unit().Left().Mul(d.off)
			b := grown(draw.NoBox().With(d.a.Add(n), d.b.Add(n)), tornWide+1)
			p.ends = append(p.ends, b.Min, b.Max)
		}
	}
	p.need = append(p.need, vec.P{X: p.holes[0].c.X, Y: edge.Y})
	p.ends = append(p.ends, p.need...)
	p.most = append(p.most, p.need...)
	p.most = append(p.most, p.shapes[0].pts...)
	p.most = append(p.most, edge, p.guides[0].a, p.guides[0].b)
	b := grown(draw.NoBox().With(p.most...), 3)
	p.most = append(p.most, b.Min, b.Max)
	p.want = append(p.want, p.most...)
	if p.arrow != nil {
		tip := p.arrow.base.Add(p.arrow.d.Mul(arrowLong + 3))
		p.want = append(p.want, tip.Add(vec.P{X: 3, Y: 9}), tip.Sub(vec.P{X: 3, Y: 22}))
	}
}
