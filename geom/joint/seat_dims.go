package joint

import (
	"fmt"

	"pegwright/geom"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// edge is the point of the plate's outer top arris, run inward by y, in the
// rafter's reference side.
func (q seatShape) edge(s Site, y float64) vec.V {
	u, _, _ := q.a.Of(s.E.Place.O)
	at := q.u0
	if u-q.u0 > q.u1-u {
		at = q.u1
	}
	return q.outer.Add(q.a.U.Mul(at)).Add(q.in.Mul(y))
}

// plumbTo runs p plumb to a plane.
func (q seatShape) plumbTo(p vec.V, pl solid.Plane) vec.V {
	return p.Sub(q.a.W.Mul(pl.Height(p) / pl.N.Dot(q.a.W)))
}

// heelDims asks for the rafter's seat of the given name and length: its heel
// from both edges, plumb and square, and how far its underside is reduced up
// the slope from the place where the plate's top would cross it, y inward.
func (q seatShape) heelDims(s Site, res *Result, name string, length, y float64) {
	d := dimmer{j: &res.Joint, a: q.a}
	d.on(s.E, geom.Cutter)
	p := q.edge(s, 0)
	top := ideal(s.E, geom.Opposite(q.uFace))
	d.add(name, q.in, p, p.Add(q.in.Mul(length)))
	d.add("heel, plumb", q.a.W, q.plumbTo(p, q.under), p)
	d.add("top to heel's corner, plumb", q.a.W, p, q.plumbTo(p, top))
	d.add("top to heel's corner, square", top.N, p, p.Sub(top.N.Mul(top.Height(p))))
	d.add("notch depth square to rafter", q.under.N, p, p.Sub(q.under.N.Mul(q.under.Height(p))))
	if extra := q.extra(s); extra > 1e-3 {
		from := q.edge(s, y)
		from = from.Sub(q.under.N.Mul(q.under.Height(from)))
		to := q.plumbTo(q.edge(s, q.cross+(entry+extra)/q.sin), q.under)
		d.add("underside reduced past the seat", q.up, from, to)
	}
	if len(res.R) > 0 {
		d.on(s.R, geom.Cutter)
		d.add("notch along the stick", q.a.U, q.a.Point(q.n0, 0, 0), q.a.Point(q.n1, 0, 0))
	}
}

// stepDims asks for the steps of a step lap, from the inner one outward.
func (q seatShape) stepDims(s Site, res *Result, steps int, run float64) {
	d := dimmer{j: &res.Joint, a: q.a}
	p := q.edge(s, 0)
	for i := range steps {
		which := ""
		if steps > 1 {
			which = fmt.Sprintf(" %d", i+1)
		}
		end := q.edge(s, q.cross-float64(i)*run)
		butt := end.Sub(q.in.Mul(run))
		low := end.Sub(q.up.Mul(run * q.cos))
		d.on(s.R, geom.Cutter)
		d.add("outer face to butt"+which, q.in, p, butt)
		d.add("outer face to bottom of notch"+which, q.in, p, low)
		d.add("notch depth below top", q.a.W, end, low)
		if i == 0 {
			d.add("outer face to notch end", q.in, p, end)
		}
		d.on(s.E, geom.Cutter)
		d.add("butt square to rafter", q.under.N, low, butt)
		if i > 0 {
			d.add("table along rafter"+which, q.up, low, low.Add(q.up.Mul(run*q.cos)))
		}
	}
}

// holeDims asks for the places of a seat's peg holes: in the plate's top, or in
// the notch, and in the rafter's top.
func (q seatShape) holeDims(s Site, res *Result) {
	d := dimmer{j: &res.Joint, a: q.a}
	for _, p := range res.Joint.Pegs {
		d.on(s.R, geom.Borer)
		mouth := p.Mortise // in the plate's top, or in the table that is cut there
		if res.R != nil && q.under.Height(mouth) < 0 && q.a.W.Dot(mouth.Sub(q.outer)) < -tol {
			mouth = mouth.Sub(q.under.N.Mul(q.under.Height(mouth)))
		}
		_, v, w := q.a.Of(mouth)
		u, _, _ := q.a.Of(q.edge(s, 0))
		side := q.a.Point(u, v, w)
		d.add("outer face to hole", q.in, mouth.Sub(q.in.Mul(q.in.Dot(mouth.Sub(q.outer)))), mouth)
		d.add("rafter's reference side to hole", q.a.U, side, mouth)
		d.add("hole deep, along the peg", q.under.N, mouth, p.To)
		d.on(s.E, geom.Borer)
		d.add("heel's corner to hole along the top", q.up, q.edge(s, 0), p.From)
		d.add("reference side to hole", q.a.U, side, mouth)
	}
}
