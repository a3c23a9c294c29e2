package templates

import (
	"math"

	"pegwright/draw"
	"pegwright/geom"
	"pegwright/geom/vec"
)

// throughPlan lays out a blind peg on the timber that it is bored through, on
// the face that the bit enters. It registers on the line of the joint's own
// seat that is nearest to the hole, squared round from the face that the bit
// leaves. It reports false where the timber has no such bore or line.
func throughPlan(j *geom.Joint, g *geom.Peg) (plan, bool) {
	for _, b := range j.Of.Bores {
		if b.Joint != j.ID || b.Peg != g.ID || b.Exit == 0 {
			continue
		}
		x, name, ok := seatLine(j, b)
		if !ok {
			return plan{}, false
		}
		p := plan{kind: "through", joint: j, v: view{t: j.Of, face: b.Entry, x0: x}}
		p.holes = []hole{{peg: g, n: number(j, g), c: p.v.local(b.From), bore: b.Diameter, mark: mark("hole:through", j, g)}}
		register := guide{name: "lay on " + p.v.arris() + " (fold here)", class: draw.Register, mark: mark("line:register", j, nil),
			a: vec.P{X: -far}, b: vec.P{X: far}, below: p.v.sign() > 0}
		line := guide{name: p.lineName(name), class: draw.Part, mark: mark("line:joint", j, nil),
			a: vec.P{Y: -far}, b: vec.P{Y: far}, below: p.holes[0].c.X < 0}
		p.guides = []guide{register, line}
		p.holeDims()
		p.holeRoom()
		return p, true
	}
	return plan{}, false
}

// seatLine finds the corner that the joint cuts into the face that the bore
// leaves, nearest to the bore: its place along the timber, and what it is.
func seatLine(j *geom.Joint, b geom.Bore) (x float64, name string, ok bool) {
	face := j.Of.IdealPlane(b.Exit)
	best := math.Inf(1)
	for _, e := range j.Of.Net.Edges() {
		own, role := false, ""
		for _, t := range e.Tags {
			if t.Joint == j.ID && t.Role != geom.RoleReduced && t.Role != "" {
				own, role = true, t.Role
			}
		}
		square := math.Abs(e.A.X-e.B.X) < 1e-6
		onFace := math.Abs(face.Height(e.A)) < 1e-6 && math.Abs(face.Height(e.B)) < 1e-6
		if !own || !square || !onFace {
			continue
		}
		if d := math.Abs(e.A.X - b.From.X); d < best {
			best, x, name, ok = d, e.A.X, "where the "+role+" meets the underside", true
		}
	}
	return x, name, ok
}
