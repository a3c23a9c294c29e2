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
	p := plan{kind: "mate", joint: j, v: view{t: j.Of, face: j.Of.FaceToward(dir.Neg()), x0: x}, endName: role(j, name)}
	if math.Abs(p.v.t.Place.OutDir(p.v.t.IdealPlane(p.v.face).N).Dot(dir)) < 1-1e-6 {
		return plan{}, false // bored aslant
	}
	for _, g := range pegs {
		p.holes = append(p.holes, hole{peg: g, n: number(j, g), c: p.v.from(g.Tenon), bore: g.Bore, mark: mark("hole:mate", j, g)})
	}
	p.setMate()
	return p, true
}

// setMate adds what a template of the enterer's holes shows beside them.
func (p *plan) setMate() {
	j := p.joint
	register := guide{name: "lay on " + p.v.arris() + " (fold here)", class: draw.Register, mark: mark("line:register", j, nil),
		a: vec.P{X: -far}, b: vec.P{X: far}, below: p.v.sign() > 0}
	line := p.ownLine()
	if !p.part.own {
		line.name = p.lineName(p.endName)
	}
	p.guides = []guide{register, line}
	p.holeDims()
	p.holeRoom()
}

// mateWords are the words of the enterer's holes.
func (p plan) mateWords(w *words, u measure.Units) {
	p.registerWords(w)
	w.add(lettering, true, p.positionWords(u))
	p.partWords(w, u)
	w.add(lettering, false, p.scribedWords()+".",
		"Not offset: the holes of both timbers lie in line. Better than this sheet: close the joint, clamp it, and bore through both at once by the sheet of the other timber.")
}
