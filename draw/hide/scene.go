// Package hide finds which parts of straight edges are hidden by convex cells
// in a parallel view, exactly and in object space.
//
// The method is the interval method on convex pieces (L. G. Roberts, "Machine
// Perception of Three-Dimensional Solids", MIT, 1963): what a convex cell
// hides is that cell swept away from the viewer, again a convex volume with a
// handful of planes, and a straight edge meets it in one interval. The hidden
// part of an edge is the union of these intervals; edges are independent of
// each other.
//
// Guarantees:
//  1. A span is hidden where cells cover the edge on its left side and, cell
//     for cell independently, on its right side in the picture; so an edge
//     behind a seam of touching cells is hidden, and an edge that lies behind
//     an outer contour is visible and falls on that contour's line.
//  2. An edge that lies on a cell's face is not hidden by that cell.
//  3. Ends of spans are exact to rounding; no sampling is done.
//  4. Parts shorter than 2e-6 mm are not told apart from nothing.
package hide

import (
	"math"
	"slices"

	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// gap is the length in millimetres of visible or hidden parts that are closed
// up: twice the distance at which a point lies on a plane.
const gap = 2e-6

// Scene is a set of opaque convex cells and a direction of view. It is built
// with AddCells and AddGhost and then asked. A Scene must not be used by two
// goroutines at a time.
type Scene struct {
	caster
	u, v    vec.V
	batches []batch // added since the shadows were made
	shadows []shadow
	grid    *grid

	lefts, rights, both []interval // room for one query at a time
	found               []Span
}

// NewScene returns an empty scene for a viewer who looks along w (any length
// but zero; it points from the viewer into the picture).
func NewScene(w vec.V) *Scene {
	w = w.Unit()
	u := vec.V{X: 1}.Cross(w)
	for _, k := range []vec.V{{Y: 1}, {Z: 1}} {
		if c := k.Cross(w); c.Len() > u.Len()+1e-9 {
			u = c
		}
	}
	u = u.Unit()
	return &Scene{caster: caster{w: w}, u: u, v: w.Cross(u)}
}

// AddCells adds cells that hide every edge. The cells of one timber or of
// several may touch; owner is any number the caller chooses.
func (s *Scene) AddCells(owner int, cells []solid.Convex) { s.add(batch{owner, false, cells}) }

// AddGhost adds cells that hide only edges of the same owner: a part drawn as
// if it were of glass to all others.
func (s *Scene) AddGhost(owner int, cells []solid.Convex) { s.add(batch{owner, true, cells}) }

// batch is cells that were added at a time.
type batch struct {
	owner int
	ghost bool
	cells []solid.Convex
}

func (s *Scene) add(b batch) { s.batches, s.grid = append(s.batches, b), nil }

// settle makes the shadows of all cells and spreads them over the picture.
func (s *Scene) settle() {
	n := 0
	for _, b := range s.batches {
		n += len(b.cells)
	}
	s.shadows = slices.Grow(s.shadows, n)
	s.block = make([]wall, 0, min(blockOf, wallsOf*n))
	for _, b := range s.batches {
		for _, c := range b.cells {
			if c.Empty() {
				continue
			}
			sh := s.cast(c)
			sh.owner, sh.ghost = b.owner, b.ghost
			sh.across = nowhere()
			for _, p := range c.V {
				sh.across.add(p.Dot(s.u), p.Dot(s.v))
			}
			s.shadows = append(s.shadows, sh)
		}
	}
	s.batches, s.grid = nil, newGrid(s.shadows)
}

// Span is a part of an edge from a to b, given as fractions of its length from
// a (0 to 1).
type Span struct {
	From, To float64
	Hidden   bool // behind a cell
}

// Visible splits the edge from a to b (millimetres) into visible and hidden
// spans, in order, without gaps, from 0 to 1. An edge that is seen as a point
// (shorter than 1e-5 mm in the picture) has none. Ghosts hide nothing here. The
// spans are good until the next question.
func (s *Scene) Visible(a, b vec.V) []Span { return s.spans(a, b, 0, false) }

// VisibleOf is like Visible for an edge of the given owner: ghost cells of the
// same owner hide it too. The spans are good until the next question.
func (s *Scene) VisibleOf(owner int, a, b vec.V) []Span { return s.spans(a, b, owner, true) }

func (s *Scene) spans(a, b vec.V, owner int, owned bool) []Span {
	left := b.Sub(a).Cross(s.w)
	if left.Len() < shortest {
		return nil
	}
	if s.grid == nil {
		s.settle()
	}
	far := max(a.Dot(s.w), b.Dot(s.w))
	lefts, rights, whole := s.lefts[:0], s.rights[:0], false
	tol, look := gap/a.Dist(b), 16
	ax, ay, bx, by := a.Dot(s.u), a.Dot(s.v), b.Dot(s.u), b.Dot(s.v)
	edge := nowhere()
	edge.add(ax, ay)
	edge.add(bx, by)
	s.grid.along(ax, ay, bx, by, func(i int) bool {
		sh := &s.shadows[i]
		if sh.near >= far || sh.ghost && !(owned && sh.owner == owner) || sh.across.misses(&edge) {
			return true
		}
		iv, l, r := sh.cover(a, b, left)
		if l {
			lefts = append(lefts, iv)
		}
		if r {
			rights = append(rights, iv)
		}
		whole = l && r && iv == interval{0, 1}
		if n := len(lefts) + len(rights); n >= look {
			lefts, rights = union(lefts, tol), union(rights, tol)
			whole = whole || full(lefts) && full(rights)
			look = 16 + 2*(len(lefts)+len(rights))
		}
		return !whole // nothing is left to hide
	})
	s.lefts, s.rights = lefts, rights
	if whole {
		s.found = append(s.found[:0], Span{From: 0, To: 1, Hidden: true})
		return s.found
	}
	s.both = common(s.both[:0], union(lefts, tol), union(rights, tol))
	s.found = split(s.found[:0], s.both, tol)
	return s.found
}

// full reports whether merged intervals leave nothing of an edge.
func full(iv []interval) bool { return len(iv) == 1 && iv[0] == interval{0, 1} }

// union merges intervals in place, closing gaps up to tol.
func union(iv []interval, tol float64) []interval {
	if len(iv) < 2 {
		return iv
	}
	slices.SortFunc(iv, func(a, b interval) int {
		switch {
		case a.lo < b.lo || a.lo == b.lo && a.hi < b.hi:
			return -1
		case a == b:
			return 0
		}
		return 1
	})
	out := iv[:0]
	for _, v := range iv {
		if n := len(out); n > 0 && v.lo <= out[n-1].hi+tol {
			out[n-1].hi = math.Max(out[n-1].hi, v.hi)
			continue
		}
		out = append(out, v)
	}
	return out
}

// common appends to out what two sorted lists of disjoint intervals share.
func common(out, a, b []interval) []interval {
	for i, j := 0, 0; i < len(a) && j < len(b); {
		lo, hi := max(a[i].lo, b[j].lo), min(a[i].hi, b[j].hi)
		if lo < hi {
			out = append(out, interval{lo, hi})
		}
		if a[i].hi < b[j].hi {
			i++
		} else {
			j++
		}
	}
	return out
}

// split appends to out, which is empty, the hidden intervals as spans from 0 to
// 1, leaving out hidden and visible parts up to tol long.
func split(out []Span, hidden []interval, tol float64) []Span {
	at := 0.0
	put := func(to float64, h bool) {
		if to <= at {
			return
		}
		if n := len(out); n > 0 && (to-at <= tol || out[n-1].Hidden == h) {
			out[n-1].To, at = to, to
			return
		} else if n == 0 && to-at <= tol && to < 1 {
			return // the next span starts at 0 instead
		}
		out = append(out, Span{at, to, h})
		at = to
	}
	for _, h := range hidden {
		put(h.lo, false)
		put(h.hi, true)
	}
	put(1, false)
	return out
}
