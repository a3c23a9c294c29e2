package templates

import (
	"math"

	"pegwright/draw"
	project "pegwright/draw/view"
	"pegwright/geom"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// endPlans lays out the patterns of the ends that a joint cuts aslant: the
// tenon, shoulder and nose of a brace, the seat and the peak of a rafter, a
// splayed scarf. Those wider than room mm come in parts where they can.
func endPlans(j *geom.Joint, room float64) []plan {
	return append(endParts(j, j.Of, room), endParts(j, j.Into, room)...)
}

// plain is how much uncut wood an end pattern shows past the cuts, and tail how
// near an end must be to be shown with them, mm.
const (
	plainWood = 25.0
	tail      = 60.0
)

// endPlan lays out the end of timber t that joint j cuts aslant, on the
// reference face that shows the slant. It reports false where no cut is aslant,
// or the joint gives no line to register on, or t is only let into; lo and hi are
// the stretch along the timber that it shows.
func endPlan(j *geom.Joint, t *geom.Timber) (p plan, lo, hi float64, ok bool) {
	face, lo, hi := slant(j, t)
	at, name, ok := endPlace(j, t)
	if face == 0 || !ok || t.Net == nil || t == j.Into && lo > tail && hi < t.Length-tail {
		return plan{}, 0, 0, false
	}
	p = plan{kind: "end", joint: j, v: view{t: t, face: face, x0: at}, end: geom.Start, endName: role(j, name)}
	if lo+hi > t.Length {
		p.end = geom.Finish
	}
	lo, hi = lo-plainWood, hi+plainWood
	if lo < tail {
		lo = 0
	}
	if hi > t.Length-tail {
		hi = t.Length
	}
	p.outline(lo, hi)
	p.endLines(lo, hi)
	p.endRoom()
	return p, lo, hi, len(p.strokes)+len(p.guides) > 2
}

// slant returns the reference face that shows the slanted faces that the joint
// cuts into a timber, 0 where there are none, and the stretch that its cuts
// take.
func slant(j *geom.Joint, t *geom.Timber) (face int, lo, hi float64) {
	lo, hi = t.Length, 0
	for _, c := range t.Cuts {
		if c.Joint != j.ID || c.Name == "reduction" {
			continue
		}
		a, b := c.Solid.Extent(vec.V{X: 1})
		lo, hi = min(lo, max(a, 0)), max(hi, min(b, t.Length))
		for _, f := range c.Solid.Faces {
			if n := f.Plane.N; f.Role != "" && f.Role != geom.RoleReduced && math.Abs(n.X) > 0.02 && math.Abs(n.X) < 0.9998 {
				switch {
				case math.Abs(n.Z) < 1e-6:
					face = 2
				case math.Abs(n.Y) < 1e-6:
					face = 1
				}
			}
		}
	}
	return face, lo, hi
}

// endPlace returns the first place of layout that the joint gives on a timber.
func endPlace(j *geom.Joint, t *geom.Timber) (x float64, name string, ok bool) {
	for _, p := range j.Places {
		if p.On == t {
			return p.X, p.Label, true
		}
	}
	return 0, "", false
}

// outline adds what is seen of the timber between two places: full lines for
// what is seen from the face, dashed ones for what lies behind. Lines that a
// role names become guides, each name once, on its longest line.
func (p *plan) outline(lo, hi float64) {
	t := p.v.t
	body := t.Net
	var keep []solid.Plane
	if lo > 0 {
		keep = append(keep, solid.Plane{N: vec.V{X: -1}, D: -lo})
	}
	if hi < t.Length {
		keep = append(keep, solid.Plane{N: vec.V{X: 1}, D: hi})
	}
	if len(keep) > 0 {
		body = project.Clipped(body, keep...)
	}
	out := t.IdealPlane(p.v.face).N
	cam := project.Camera{Right: vec.V{X: 1}, Up: out.Cross(vec.V{X: 1}), Toward: out}
	longest, edges := map[string]int{}, t.Net.Edges()
	for _, it := range project.Render(cam, []project.Part{{Owner: t.ID, Body: body}}, project.Options{ShowHidden: true}) {
		q, ok := it.(*draw.Path)
		if !ok {
			continue
		}
		if q.Class == project.Break {
			p.torn(q)
			continue
		}
		s := stroke{a: q.Pts[0].Sub(vec.P{X: p.v.x0}), b: q.Pts[1].Sub(vec.P{X: p.v.x0}), class: q.Class, mark: mark("edge:"+string(q.Class), p.joint, nil)}
		p.strokes = append(p.strokes, s)
		name := p.edgeRole(edges, q.Pts[0], q.Pts[1])
		if i, ok := longest[name]; name != "" && q.Class == draw.Part && (!ok || s.b.Dist(s.a) > p.strokes[i].b.Dist(p.strokes[i].a)) {
			longest[name] = len(p.strokes) - 1
		}
	}
	p.named(longest)
}

// torn adds the line at which the timber is broken off.
func (p *plan) torn(q *draw.Path) {
	for i := 1; i < len(q.Pts); i++ {
		x := vec.P{X: p.v.x0}
		p.strokes = append(p.strokes, stroke{q.Pts[i-1].Sub(x), q.Pts[i].Sub(x), draw.Dimension, mark("edge:torn", p.joint, nil)})
	}
}

// endRoles are the roles that an end pattern names, with the words for them;
// the first that a line has is its name.
var endRoles = [...][2]string{
	{geom.RoleShoulder, "shoulder"}, {geom.RoleNose, "nose"}, {geom.RoleSeat, "seat"}, {geom.RoleButt, "butt"},
	{geom.RoleTable, "table"}, {geom.RoleBearing, "bearing"}, {geom.RoleFloor, "floor"}, {geom.RoleEnd, "end"},
}

// edgeRole returns the word for a line between two points of the timber's own
// x and the face's y: the role of a face of the joint that is seen edge on
// there, "" where none is.
func (p *plan) edgeRole(edges []solid.Edge, a, b vec.P) string {
	best := len(endRoles)
	for _, e := range edges {
		x0, y0 := vec.P{X: e.A.X, Y: p.v.sign() * p.v.off(e.A)}, vec.P{X: e.B.X, Y: p.v.sign() * p.v.off(e.B)}
		if !onSegment(x0, y0, a) || !onSegment(x0, y0, b) {
			continue
		}
		for i, tag := range e.Tags {
			out := p.v.t.IdealPlane(p.v.face).N
			if tag.Joint != p.joint.ID || math.Abs(e.Planes[i].N.Dot(out)) > 1e-6 {
				continue
			}
			for k, r := range endRoles {
				if r[0] == tag.Role {
					best = min(best, k)
				}
			}
		}
	}
	if best == len(endRoles) {
		return ""
	}
	return endRoles[best][1]
}

// onSegment reports whether p lies on the way from a to b, within 0.01 mm.
func onSegment(a, b, p vec.P) bool {
	const near = 0.01
	l := b.Dist(a)
	if l < near {
		return false
	}
	u := b.Sub(a).Mul(1 / l)
	d := p.Sub(a)
	return math.Abs(u.Cross(d)) < near && u.Dot(d) > -near && u.Dot(d) < l+near
}

// named turns the chosen strokes into guides, in a fixed order.
func (p *plan) named(longest map[string]int) {
	for _, r := range endRoles {
		i, ok := longest[r[1]]
		if !ok {
			continue
		}
		s := p.strokes[i]
		mid := draw.NoBox()
		for _, q := range p.strokes {
			mid = mid.With(q.a, q.b)
		}
		p.guides = append(p.guides, guide{name: r[1], a: s.a, b: s.b, class: s.class, mark: s.mark,
			below: turn(s.a, s.b, mid.Mid()) > 0})
	}
	kept := p.strokes[:0:0]
	for i, s := range p.strokes {
		used := false
		for _, k := range longest {
			used = used || k == i
		}
		if !used {
			kept = append(kept, s)
		}
	}
	p.strokes = kept
}

// endLines adds the register arris and line J, and for the finished end notes how
// far the tip lies from line J; for the start end that is where line J lies.
func (p *plan) endLines(lo, hi float64) {
	j := p.joint
	register := guide{name: "lay on " + p.v.arris(), class: draw.Register, mark: mark("line:register", j, nil),
		a: vec.P{X: -far}, b: vec.P{X: far}, below: p.v.sign() > 0}
	line := guide{name: p.lineName(p.endName), class: draw.Centre, mark: mark("line:joint", j, nil),
		a: vec.P{Y: -far}, b: vec.P{Y: far}}
	p.guides = append(p.guides, register, line)
	if l := p.v.t.Length; p.end == geom.Finish && l > lo-1 && l < hi+1 {
		p.tip = l - p.v.x0
	}
}

// endRoom says what must show: the whole pattern.
func (p *plan) endRoom() {
	for _, s := range p.strokes {
		p.need = append(p.need, s.a, s.b)
	}
	for _, g := range p.guides {
		if g.edge() {
			p.need = append(p.need, g.a, g.b)
		}
	}
	s := p.v.sign()
	p.need = append(p.need, vec.P{X: -2}, vec.P{X: 2}, vec.P{Y: -s * 7})
	p.most = append(p.most, p.need...)
	p.most = append(p.most, vec.P{X: -7, Y: -s * 20}, vec.P{X: 7})
	b := grown(draw.NoBox().With(p.most...), 6)
	p.want = append(append(p.want, p.most...), b.Min, b.Max)
}
