package templates

import (
	"math"

	"pegwright/draw"
	"pegwright/geom"
	"pegwright/geom/measure"
	"pegwright/geom/vec"
)

// matePlan lays out the holes of the enterer of a joint that has no shoulder to
// fold a tenon template at, such as a scarf: on the face that the bit enters,
// on the first place of layout that the joint gives there.
func matePlan(j *geom.Joint, pegs []*geom.Peg) (plan, bool) {
	x, name, ok := endPlace(j, j.Of)
	if !ok {
		return plan{}, false
	}
	dir := pegs[0].To.Sub(pegs[0].From).Unit()
	p := plan{kind: "mate", joint: j, v: view{t: j.Of, face: j.Of.FaceToward(dir.Neg()), x0: x}}
	if math.Abs(p.v.t.Place.OutDir(p.v.t.IdealPlane(p.v.face).N).Dot(dir)) < 1-1e-6 {
		return plan{}, false // bored aslant
	}
	for i, g := range pegs {
		p.holes = append(p.holes, hole{peg: g, n: i + 1, c: p.v.from(g.Tenon), bore: g.Bore, mark: mark("hole:mate", j, g)})
	}
	register := guide{name: "lay on " + p.v.arris() + " (fold here)", class: draw.Register, mark: mark("line:register", j, nil),
		a: vec.P{X: -far}, b: vec.P{X: far}, below: p.v.sign() > 0}
	line := guide{name: p.lineName(role(j, name)), class: draw.Part, mark: mark("line:joint", j, nil),
		a: vec.P{Y: -far}, b: vec.P{Y: far}, below: p.holes[0].c.X < 0}
	p.guides = []guide{register, line}
	p.holeDims()
	p.holeRoom()
	return p, true
}

// mateWords are the words of the enterer's holes.
func (p plan) mateWords(w *words, u measure.Units) {
	p.registerWords(w)
	w.add(lettering, true, p.positionWords(u))
	w.add(lettering, false, "Line J on its scribed line, squared round from faces\u00a01\u00a0and\u00a02.",
		"Not offset: the holes of both timbers lie in line. Better than this sheet: close the joint, clamp it, and bore through both at once by the sheet of the other timber.")
}
