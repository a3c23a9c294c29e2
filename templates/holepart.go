package templates

import (
	"cmp"
	"math"
	"slices"

	"pegwright/draw"
	"pegwright/geom"
	"pegwright/geom/measure"
	"pegwright/geom/vec"
)

// room is how much of a timber's length the paper of a frame has room for.
type room struct {
	most float64 // on a page with few words, mm
	sure float64 // on a page with many, mm
	step float64 // lines of parts stand off line J in whole numbers of this, mm
}

// roomOf returns the room on the templates of a frame.
func roomOf(f *geom.Frame) room {
	ways := layouts(f)
	r := room{sure: ways[0].win.W(), step: 25.4} // as is read off a tape without a fraction
	if f.Units == measure.Metric {
		r.step = 10
	}
	for _, l := range ways {
		r.most = max(r.most, l.win.W())
	}
	return r
}

// holeParts returns a template of holes as it is, or in parts where the holes lie
// too far from line J, or from each other, for a page. Nothing but bare wood lies
// between them, and a tape is truer than paper that is taped together: each part
// is laid on a line of its own, if line J is not near. Set puts into a plan what
// hangs on its line.
func holeParts(whole plan, set func(*plan), r room) []plan {
	groups := holeGroups(whole.holes, r.sure/2)
	reach := 0.0
	for _, h := range whole.holes {
		reach = max(reach, math.Abs(h.c.X)+holeAir(h)+lineAir)
	}
	if reach <= r.most && len(groups) == 1 || whole.housed {
		return []plan{whole}
	}
	var out []plan
	for i, holes := range groups {
		p := plan{kind: whole.kind, joint: whole.joint, v: whole.v, holes: slices.Clone(holes), part: part{n: i + 1, of: len(groups), off: " (" + whole.endName + ")"}}
		if p.reaches(r.sure) {
			set(&p)
			out = append(out, p)
			continue
		}
		first := holes[0] // nearest to line J
		p.part.own = true
		p.part.from = math.Copysign(math.Floor(math.Abs(first.c.X)/r.step+1e-6)*r.step, first.c.X)
		p.v.x0 += p.part.from
		for k := range p.holes {
			p.holes[k].c.X -= p.part.from
		}
		set(&p)
		out = append(out, p)
	}
	return out
}

// lineAir is how much of a page line J takes beside it, mm.
const lineAir = 3.0

// holeAir is how far from its middle a hole needs paper, mm.
func holeAir(h hole) float64 { return h.bore/2 + 3 }

// reaches reports whether line J and all holes of the plan show within wide mm.
func (p plan) reaches(wide float64) bool {
	lo, hi := -lineAir, lineAir
	for _, h := range p.holes {
		lo, hi = min(lo, h.c.X-holeAir(h)), max(hi, h.c.X+holeAir(h))
	}
	return hi-lo <= wide
}

// holeGroups puts holes together that lie less than apart mm from the next along
// the timber: each group in order from line J, and the groups likewise.
func holeGroups(holes []hole, apart float64) [][]hole {
	sorted := slices.Clone(holes)
	slices.SortStableFunc(sorted, func(a, b hole) int { return cmp.Compare(a.c.X, b.c.X) })
	var out [][]hole
	for i, h := range sorted {
		if i == 0 || h.c.X-sorted[i-1].c.X > apart {
			out = append(out, nil)
		}
		out[len(out)-1] = append(out[len(out)-1], h)
	}
	nearer := func(a, b hole) int { return cmp.Compare(math.Abs(a.c.X), math.Abs(b.c.X)) }
	for _, g := range out {
		slices.SortStableFunc(g, nearer)
	}
	slices.SortStableFunc(out, func(a, b []hole) int { return nearer(a[0], b[0]) })
	return out
}

// ownLine is the guide that a part with a line of its own is laid on.
func (p *plan) ownLine() guide {
	return guide{name: p.lineName("square round"), class: draw.Part, mark: mark("line:joint", p.joint, nil),
		a: vec.P{Y: -far}, b: vec.P{Y: far}, below: p.holes[0].c.X < 0}
}
