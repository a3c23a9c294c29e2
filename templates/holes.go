package templates

import (
	"fmt"
	"math"
	"strings"

	"pegwright/draw"
	"pegwright/geom"
	"pegwright/geom/vec"
)

// holePlan lays out the holes of one joint on one side face of the receiver.
func holePlan(j *geom.Joint, kind string, face int, pegs []*geom.Peg) plan {
	main := mainLine(j)
	p := plan{kind: kind, joint: j, v: view{t: j.Into, face: face, x0: main.X}, endName: role(j, main.Name)}
	for _, g := range pegs {
		p.holes = append(p.holes, hole{peg: g, n: number(j, g), c: p.v.from(g.Mortise), bore: g.Bore, mark: mark("hole:"+kind, j, g)})
	}
	p.setHoles()
	return p
}

// setHoles adds what a template of the receiver's holes shows beside them.
func (p *plan) setHoles() {
	j := p.joint
	for _, h := range p.holes {
		p.window(h.peg)
	}
	mortise := j.Mortise
	for _, f := range j.Into.Blank.Faces { // open sides lie outside the wood
		mortise = mortise.Clip(f.Plane.Moved(j.Into.Place), "")
	}
	void, tail := "mortise", "tenon"
	if j.Broad {
		void, tail = "notch", "lap"
	}
	p.shapes = append(p.shapes,
		shape{void + " (dashed)", p.v.shadow(mortise), draw.Hidden, mark("outline:mortise", j, nil)},
		shape{tail + " (dash-dot)", p.v.shadow(j.Tenon), draw.Phantom, mark("outline:tenon", j, nil)})
	p.lines(mainLine(j))
	p.holeDims()
	p.holeRoom()
}

// mainLine returns the line that templates register on.
func mainLine(j *geom.Joint) geom.Line {
	for _, l := range j.Lines {
		if l.Main {
			return l
		}
	}
	if len(j.Lines) > 0 {
		return j.Lines[0]
	}
	return geom.Line{Name: "start end"}
}

// window adds the region in which the mortise hole may lie. Its coordinates
// are the joint's u and w.
func (p *plan) window(g *geom.Peg) {
	if len(g.Window.Workable) < 3 {
		return
	}
	out := make([]vec.P, len(g.Window.Workable))
	for i, q := range g.Window.Workable {
		out[i] = p.v.from(p.joint.Raised(q, g.Mortise))
	}
	p.windows = append(p.windows, out)
}

// lines adds the register line, the joint's lines and the bearing.
func (p *plan) lines(main geom.Line) {
	j, s := p.joint, p.v.sign()
	register := guide{name: "lay on " + p.v.arris() + " (fold here)", class: draw.Register, mark: mark("line:register", j, nil), below: s > 0}
	register.a, register.b = vec.P{X: -far}, vec.P{X: far}
	p.guides = append(p.guides, register)
	if p.part.own {
		p.guides = append(p.guides, p.ownLine())
	}
	for _, l := range j.Lines {
		x := l.X - p.v.x0
		g := guide{name: role(j, l.Name), class: draw.Dimension, mark: mark("line:other", j, nil), below: x > 0}
		if l == main && !p.part.own {
			g.name, g.class, g.mark = p.lineName(g.name), draw.Part, mark("line:joint", j, nil)
		}
		g.a, g.b = vec.P{X: x, Y: -far}, vec.P{X: x, Y: far}
		p.guides = append(p.guides, g)
	}
	if at, d, ok := p.v.line(j.Bearing); ok && (abs(at.Y) > same || abs(d.Y) > same) { // else it is the register
		g := guide{name: "bearing: the shoulder lands here", class: draw.Dimension, mark: mark("line:bearing", j, nil)}
		g.a, g.b = infinite(at, d)
		if g.b.X < g.a.X {
			g.a, g.b = g.b, g.a
		}
		p.guides = append(p.guides, g)
	}
	p.housing()
}

// housing finds a housing that takes the register arris away: the register
// line is then wanted for 3 in past it on both sides.
func (p *plan) housing() {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, c := range p.joint.Into.Cuts {
		if c.Joint != p.joint.ID || c.Name != "housing" {
			continue
		}
		for _, q := range c.Solid.V {
			l := p.v.local(q)
			if l.Y*p.v.sign() < -1e-3 || math.Abs(l.Y) < 1e-3 {
				lo, hi = min(lo, l.X), max(hi, l.X)
			}
		}
	}
	if lo > hi || p.joint.Entered != p.v.side() {
		return
	}
	p.housed = true
	const past = 3 * 25.4
	p.need = append(p.need, vec.P{X: lo - past}, vec.P{X: hi + past})
}

// holeDims asks for the two distances of every hole, none of them twice.
func (p *plan) holeDims() {
	away := 1.0 // the side of the holes that is away from the joint line
	if p.holes[0].c.X < 0 {
		away = -1
	}
	seenX, seenY := map[string]bool{}, map[string]bool{}
	for i, h := range p.holes {
		r, s := h.bore/2, p.v.sign()
		kx, ky := fmt.Sprintf("%.2f", h.c.X), fmt.Sprintf("%.2f", h.c.Y)
		if !seenY[ky] {
			last := p.holes[len(p.holes)-1]
			x := away*(math.Max(away*h.c.X, away*last.c.X)+last.bore/2+9+9*float64(len(seenY))) - h.c.X
			// From the arris to the hole, set off along x.
			p.dims = append(p.dims, dimension{a: vec.P{X: h.c.X}, b: h.c, off: -x * s})
			seenY[ky] = true
		}
		if !seenX[kx] && math.Abs(h.c.X) > 0.01 {
			d := r + 8 + 9*float64(i)
			if d > math.Abs(h.c.Y)-5 { // too near the arris: to the other side
				d = -d
			}
			// From line J to the hole, set off toward the arris.
			p.dims = append(p.dims, dimension{a: vec.P{Y: h.c.Y}, b: h.c, off: -d * s * math.Copysign(1, h.c.X)})
			seenX[kx] = true
		}
	}
}

// holeRoom says which part of the view must show, and which should.
func (p *plan) holeRoom() {
	s := p.v.sign()
	for _, h := range p.holes {
		r := h.bore / 2
		p.need = append(p.need, h.c.Add(vec.P{X: r + 3, Y: r + 3}), h.c.Sub(vec.P{X: r + 3, Y: r + 3}))
	}
	p.need = append(p.need, vec.P{X: -3}, vec.P{X: 3}, vec.P{Y: -s * 7})
	p.want = append(p.want, vec.P{X: -8}, vec.P{X: 8}, vec.P{Y: -s * 9})
	p.want = append(p.want, p.need...)
	for _, d := range p.dims {
		n := d.b.Sub(d.a).Unit().Left().Mul(d.off)
		n = n.Add(n.Unit().Mul(8))
		p.want = append(p.want, d.a.Add(n), d.b.Add(n))
	}
	p.most = append(p.most, p.want...)
	b := draw.NoBox().With(p.want...)
	for _, g := range p.guides {
		if strings.HasPrefix(g.mark, "line:bearing") {
			if a, q, ok := clipSegment(draw.Box{Min: vec.P{X: b.Min.X, Y: -far}, Max: vec.P{X: b.Max.X, Y: far}}, g.a, g.b); ok {
				p.want = append(p.want, a.Add(vec.P{Y: 8 * s}), q.Add(vec.P{Y: 8 * s}))
			}
		}
	}
	for _, sh := range p.shapes {
		p.want = append(p.want, sh.pts...)
	}
	b = draw.NoBox().With(p.want...)
	p.want = append(p.want, b.Min.Sub(vec.P{X: 3, Y: 3}), b.Max.Add(vec.P{X: 3, Y: 3}))
}
