package assembly

import (
	"fmt"
	"slices"

	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// end is what of a driven peg stands out of the timber at one end.
type end struct {
	j     *geom.Joint
	g     geom.Peg
	prism solid.Convex
	box   box
	step  int // in which it is driven
	what  string
}

// reach proves that each peg can be driven at the step that closes its joint.
// Timbers are only ever added after that, so that a peg that cannot be driven
// then never can. It also tells which pegs must be sawn before what comes later.
func (w *writer) reach() []finding.Finding {
	var r []finding.Finding
	var ends []end
	when := w.when()
	for _, j := range w.p.s.f.Joints {
		step, ok := w.at[j.ID]
		if !ok {
			continue
		}
		for _, g := range j.Pegs {
			if f, bad := w.driven(j, g, step, when); bad {
				r = append(r, f)
			}
			ends = append(ends, endsOf(j, g, step)...)
		}
		r = append(r, w.wedged(j, step, when)...)
	}
	return append(r, w.sawn(ends, when)...)
}

// when returns the step of the standing frame from which each timber is there.
func (w *writer) when() []int {
	r := make([]int, len(w.placed))
	for i := range r {
		r[i] = -1 // trapped: there from the first
	}
	for k, m := range w.made {
		if m.pool == nil {
			for _, i := range m.members {
				r[i] = k
			}
		}
	}
	return r
}

// there reports whether timber i is about when step k is done.
func (w *writer) there(i, k int, when []int) bool {
	if pool := w.made[k].pool; pool != nil {
		_, in := slices.BinarySearch(pool, i)
		return in
	}
	return when[i] <= k
}

// driven proves one peg: nothing that is about when its joint closes stands in
// the clear lines that it needs. A trapped timber has no step of its own, which is
// a finding already: whether it stands before a peg is not known.
func (w *writer) driven(j *geom.Joint, g geom.Peg, step int, when []int) (finding.Finding, bool) {
	for _, b := range w.p.s.before(j, g) {
		if !w.there(b.timber, step, when) || w.made[step].pool == nil && when[b.timber] < 0 {
			continue
		}
		t := w.p.s.f.Timbers[b.timber]
		return finding.Finding{Severity: finding.Stop, Rule: "peg reach", Timbers: []string{j.Into.ID, t.ID}, Joints: []string{j.ID}, At: j.At, Also: []finding.Pos{t.At},
			Text: fmt.Sprintf("%s cannot be driven when its joint closes (step %d): %s stands before its %s, and has to be there by then", g.ID, step+1, t.ID, b.what),
			Mend: "drive it from the other face, or move the hole clear of that timber"}, true
	}
	return finding.Finding{}, false
}

// inBody reports whether a convex shares wood with body i.
func (s *scene) inBody(c solid.Convex, i int) bool {
	sw := swept(c, vec.V{})
	return s.meets(&sw, i)
}

// wedged proves that the wedges and keys of a joint can be driven when it is
// closed.
func (w *writer) wedged(j *geom.Joint, step int, when []int) []finding.Finding {
	var r []finding.Finding
	for _, q := range j.Pieces {
		n, from := w.p.s.piece[q.ID], vec.V{}
		for k := len(q.Moves) - 1; k >= 0; k-- {
			way := q.Moves[k].Direction.Mul(-max(q.Moves[k].Distance, 50))
			for _, i := range w.p.s.hit(n, from, way) {
				b := w.p.s.bodies[i]
				if b.a == b.b && w.there(i, step, when) {
					t := w.p.s.f.Timbers[i]
					r = append(r, finding.Finding{Severity: finding.Stop, Rule: "assembly", Timbers: []string{j.Into.ID, j.Of.ID, t.ID}, Joints: []string{j.ID}, At: j.At,
						Text: fmt.Sprintf("%s cannot be driven when its joint is closed (step %d): %s stands in its way", q.ID, step+1, t.ID),
						Mend: "drive it from the other side, or give it room"})
					return r
				}
			}
			from = from.Add(way)
		}
	}
	return r
}

// endsOf returns what stands out of the timber once a peg is driven.
func endsOf(j *geom.Joint, g geom.Peg, step int) []end {
	if g.Flush {
		return nil
	}
	dir := g.To.Sub(g.From).Unit()
	var r []end
	add := func(from, to vec.V, what string) {
		if to.Sub(from).Dot(dir) < 1 {
			return
		}
		prism := solid.Bore{From: from, To: to, Diameter: g.Bore}.Prism()
		r = append(r, end{j, g, prism, boxOf(prism), step, what})
	}
	add(g.From.Sub(dir.Mul(g.Head)), g.From.Sub(dir), "head")
	if g.Exit != 0 {
		add(g.To.Add(dir), g.To.Add(dir.Mul(g.Lead)), "lead")
	}
	return r
}

// sawn tells which pegs stand where a later timber goes (a warning each) or
// only in its way there (one note for all).
func (w *writer) sawn(ends []end, when []int) []finding.Finding {
	var r []finding.Finding
	grid := map[[3]int][]int{}
	for n, e := range ends {
		each(e.box, func(k [3]int) { grid[k] = append(grid[k], n) })
	}
	note := finding.Finding{Severity: finding.Note, Rule: "peg reach"}
	var told []string
	for k, m := range w.made {
		seen := map[string]bool{}
		for _, i := range m.members {
			for _, n := range w.met(grid, ends, i, k, m) {
				e, t := ends[n], w.p.s.f.Timbers[i]
				a, b := w.p.s.index[e.j.Into], w.p.s.index[e.j.Of]
				with := slices.Contains(m.members, a) || !w.there(a, k, when) || !w.there(b, k, when)
				if seen[e.g.ID] || with {
					continue
				}
				seen[e.g.ID] = true
				if w.p.s.inBody(e.prism, i) {
					r = append(r, standsIn(e, t, k))
					continue
				}
				told = append(told, fmt.Sprintf("%s before %s goes in", e.g.ID, t.ID))
				note.Joints = append(note.Joints, e.j.ID)
			}
		}
	}
	if len(told) > 0 {
		note.At = w.p.s.f.Joint(note.Joints[0]).At
		note.Text = fmt.Sprintf("%s of driven pegs stand in the way of a timber that goes in later: %s", plural(len(told), "end"), few(told))
		note.Mend = "saw each flush before that timber goes in"
		r = append(r, note)
	}
	return r
}

// standsIn warns that the end of a peg stands where timber t goes in step k.
func standsIn(e end, t *geom.Timber, k int) finding.Finding {
	return finding.Finding{Severity: finding.Warn, Rule: "peg reach", Timbers: []string{e.j.Into.ID, t.ID}, Joints: []string{e.j.ID}, At: e.j.At,
		Text: fmt.Sprintf("the %s of %s would stand in %s", e.what, e.g.ID, t.ID),
		Mend: fmt.Sprintf("saw the peg flush before %s goes in (step %d), drive it from another face, or give a shorter head or lead", t.ID, k+1)}
}

// met returns the ends driven before step k that timber i runs into then.
func (w *writer) met(grid map[[3]int][]int, ends []end, i, k int, m made) []int {
	var r []int
	from := vec.V{}
	for _, leg := range m.exit.legs {
		way := leg.Direction.Mul(leg.Distance)
		b := w.p.s.bodies[i].box.shift(from)
		each(b.join(b.shift(way)), func(c [3]int) {
			for _, n := range grid[c] {
				e := ends[n]
				own := e.j.Into == w.p.s.f.Timbers[i] || e.j.Of == w.p.s.f.Timbers[i]
				if e.step < k && !own && !slices.Contains(r, n) && w.p.s.passes(i, from, way, e) {
					r = append(r, n)
				}
			}
		})
		from = from.Add(way)
	}
	slices.Sort(r)
	return r
}

// passes reports whether body i runs into a peg's end on its way.
func (s *scene) passes(i int, from, way vec.V, e end) bool {
	for k, c := range s.bodies[i].cells {
		b := s.bodies[i].boxes[k].shift(from)
		if b.join(b.shift(way)).apart(e.box) {
			continue
		}
		sw := swept(shifted(c, from), way)
		if sw.hits(e.prism, e.box) {
			return true
		}
	}
	return false
}
