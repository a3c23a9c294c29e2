package view

import (
	"math"
	"sort"

	"pegwright/draw"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// A rim is divided into straight chords to find what hides it; it is drawn as
// an ellipse. There are as many chords as keep each within sagitta millimetres
// of the rim on paper, at least leastChords.
const (
	sagitta     = 0.005
	leastChords = 16
	mostChords  = 192
)

// chordsFor returns how many chords a full rim of radius r (millimetres on
// paper) is divided into: a chord of n lies r(1 − cos(π/n)) ≈ rπ²/2n² inside.
func chordsFor(r float64) int {
	n := int(math.Ceil(math.Pi * math.Sqrt(r/(2*sagitta))))
	return min(max(n, leastChords), mostChords)
}

// bores adds the rims of the bores of part i and, with hidden lines, the two
// outermost lines of each bore's wall.
func (r *renderer) bores(i int) {
	p := &r.parts[i]
	if len(p.Bores) == 0 || p.Body == nil {
		return
	}
	faces := p.Body.Boundary()
	for _, b := range p.Bores {
		for _, f := range faces {
			away := f.Plane.N.Dot(r.cam.Toward) <= 0
			e, ok := rimOn(b, f.Plane)
			if !ok || away && !r.o.ShowHidden {
				continue
			}
			turns := rimIn(b, e, f)
			for _, t := range turns {
				r.rim(i, e, t)
			}
			if len(turns) > 0 {
				r.pierced(i, f, e)
			}
		}
	}
	if r.o.ShowHidden && !p.Ghost {
		for _, b := range p.bores() {
			r.boreWall(i, b)
		}
	}
}

// pierced adds the line in which a peg passes through the flat face f of part
// i, where the rim e of a bore lies: the cells of peg and timber overlap there,
// and neither has an edge.
func (r *renderer) pierced(i int, f solid.Polygon, e ellipse) {
	shift := r.parts[i].Shift
	pl := solid.PlaneAt(e.C.Add(shift), f.Plane.N)
	loops := [][]vec.V{shifted(f.Outer, shift)}
	for _, h := range f.Holes {
		loops = append(loops, shifted(h, shift))
	}
	for k := range r.parts {
		p := &r.parts[k]
		if p.Body != nil || p.Ghost || !holds(r.cells[k], e.C.Add(shift)) {
			continue
		}
		for _, l := range cellLoops(r.cells[k], pl) {
			for n, a := range l {
				b := l[(n+1)%len(l)]
				if within(a, pl.N, loops) && within(b, pl.N, loops) {
					r.edge(k, solid.Edge{A: a, B: b})
				}
			}
		}
	}
}

// holds reports whether p lies in one of the cells.
func holds(cells []solid.Convex, p vec.V) bool {
	for _, c := range cells {
		if c.Contains(p, solid.Snap) {
			return true
		}
	}
	return false
}

// rim tests a part of a rim, chord by chord where it is not all seen or all
// hidden at once, and keeps what is seen and what is not.
func (r *renderer) rim(i int, e ellipse, t turn) {
	e.C = e.C.Add(r.parts[i].Shift)
	size := r.onPaper(i, seen, e, t)
	if size.RY < same {
		return // seen edge-on, it lies on its face's line
	}
	var shown, not []turn
	switch hidden, sure := r.scene.Oval(i, e.C, e.U, e.V); {
	case !sure:
		shown, not = r.chords(i, e, t, chordsFor(size.RX))
	case hidden:
		not = []turn{t}
	default:
		shown = []turn{t}
	}
	rank := seen
	if r.parts[i].Ghost {
		rank = ghost
	}
	for _, piece := range shown {
		r.rims = append(r.rims, r.onPaper(i, rank, e, piece))
	}
	if r.o.ShowHidden && rank == seen {
		for _, piece := range not {
			r.rims = append(r.rims, r.onPaper(i, unseen, e, piece))
		}
	}
}

// chords divides a part of a rim, of which a full turn has so many chords, into
// what is seen and what is not.
func (r *renderer) chords(i int, e ellipse, t turn, round int) (shown, not []turn) {
	n := max(1, int(math.Ceil((t.to-t.from)/full*float64(round)-1e-9)))
	step := (t.to - t.from) / float64(n)
	for k := range n {
		a := t.from + step*float64(k)
		for _, s := range r.scene.VisibleOf(i, e.at(a), e.at(a+step)) {
			piece := turn{a + step*s.From, a + step*s.To}
			if s.Hidden {
				not = joined(not, piece)
			} else {
				shown = joined(shown, piece)
			}
		}
	}
	return shown, not
}

// joined adds a turn to a list, growing the last one where they meet.
func joined(list []turn, t turn) []turn {
	if n := len(list); n > 0 && t.from-list[n-1].to < 1e-9 {
		list[n-1].to = t.to
		return list
	}
	return append(list, t)
}

// boreWall adds the two outermost lines of a bore's wall where they run hidden
// in the wood.
func (r *renderer) boreWall(i int, b Bore) {
	a, _ := axisOf(b)
	side := a.Cross(r.cam.Toward)
	if side.Len() < 1e-6 {
		return
	}
	side = side.Unit().Mul(b.Diameter / 2)
	for _, d := range []vec.V{side, side.Neg()} {
		from, to := b.From.Add(d), b.To.Add(d)
		for _, iv := range inCells(r.cells[i], from, to) {
			p, q := from.Lerp(to, iv.from), from.Lerp(to, iv.to)
			for _, s := range r.scene.VisibleOf(i, p, q) {
				if s.Hidden {
					r.line(i, unseen, p.Lerp(q, s.From), p.Lerp(q, s.To))
				}
			}
		}
	}
}

// inCells returns the parts of the segment that lie in the cells, as fractions
// of its length.
func inCells(cells []solid.Convex, a, b vec.V) []turn {
	var all []turn
	for _, c := range cells {
		t := turn{0, 1}
		for _, f := range c.Faces {
			fa, fb := f.Plane.Height(a), f.Plane.Height(b)
			switch {
			case fa >= 0 && fb >= 0:
				t.to = t.from
			case fb > 0:
				t.to = min(t.to, fa/(fa-fb))
			case fa > 0:
				t.from = max(t.from, fa/(fa-fb))
			}
		}
		if t.from < t.to {
			all = append(all, t)
		}
	}
	sort.Slice(all, func(i, j int) bool { return all[i].from < all[j].from })
	var out []turn
	for _, t := range all {
		if n := len(out); n > 0 && t.from <= out[n-1].to+1e-9 {
			out[n-1].to = max(out[n-1].to, t.to)
			continue
		}
		out = append(out, t)
	}
	return out
}

// rim is a part of an ellipse on paper, of part owner.
type rim struct {
	draw.Ellipse
	owner, rank int
}
