package view

import (
	"pegwright/draw"
	"pegwright/draw/hide"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// Options say how a view is put on paper.
type Options struct {
	// ShowHidden draws hidden edges and bore walls dashed.
	ShowHidden bool
	// Scale is paper millimetres for a millimetre of wood; 0 is 1.
	Scale float64
	// At is where the origin of the parts' axes comes to lie on paper.
	At vec.P
}

// paper returns the place on paper of the point p seen by cam.
func (o Options) paper(cam Camera, p vec.V) vec.P {
	return o.At.Add(cam.Project(p).Mul(o.scale()))
}

func (o Options) scale() float64 {
	if o.Scale == 0 {
		return 1
	}
	return o.Scale
}

// same is the distance on paper, in millimetres, under which lines are one:
// the rounding of a drawing.
const same = 1e-3

// Ranks of lines that lie on each other: the first is drawn.
const (
	seen = iota
	broken
	ghost
	unseen
)

// Render draws the parts seen by cam. Hidden lines are found in object space
// (see draw/hide); where pieces of line fall on each other on paper one is
// drawn, visible before hidden and of equal ones that of the earlier part.
// Edges seen as points are left out. Bores are opaque: their rims are drawn as
// true ellipses, and nothing is seen through them. The items are in a fixed
// order: hidden lines first, then phantom lines, break lines and visible lines
// part by part.
func Render(cam Camera, parts []Part, o Options) []draw.Item {
	r := &renderer{cam: cam, parts: parts, o: o, scene: hide.NewScene(cam.Toward.Neg())}
	r.cells = make([][]solid.Convex, len(parts))
	for i := range parts {
		r.cells[i] = parts[i].Placed()
		if parts[i].Ghost {
			r.scene.AddGhost(i, r.cells[i])
		} else {
			r.scene.AddCells(i, r.cells[i])
		}
	}
	edges, n := make([][]solid.Edge, len(parts)), 0
	for i := range parts {
		edges[i] = parts[i].edges()
		n += len(edges[i])
	}
	r.lines = make([]hide.Line, 0, n)
	for i := range parts {
		for _, e := range edges[i] {
			r.edge(i, e)
		}
		r.bores(i)
	}
	return r.items()
}

// renderer gathers what Render draws.
type renderer struct {
	cam   Camera
	parts []Part
	o     Options
	scene *hide.Scene
	cells [][]solid.Convex
	lines []hide.Line
	rims  []rim
	near  map[[2]int][]int // rims by the square of paper that holds their centre
}

// edge adds the visible and, where asked for, the hidden pieces of an edge of
// part i.
func (r *renderer) edge(i int, e solid.Edge) {
	rank := seen
	switch {
	case isBreak(e):
		rank = broken
	case r.parts[i].Ghost:
		rank = ghost
	}
	for _, s := range r.scene.VisibleOf(i, e.A, e.B) {
		if s.Hidden && (rank != seen || !r.o.ShowHidden) {
			continue
		}
		k := rank
		if s.Hidden {
			k = unseen
		}
		r.line(i, k, e.A.Lerp(e.B, s.From), e.A.Lerp(e.B, s.To))
	}
}

// line adds one piece of line of part i.
func (r *renderer) line(i, rank int, a, b vec.V) {
	r.lines = append(r.lines, hide.Line{
		A: r.o.paper(r.cam, a), B: r.o.paper(r.cam, b), Rank: rank, Owner: i})
}

// items merges the lines on paper and returns everything drawn.
func (r *renderer) items() []draw.Item {
	lines := hide.Merge(r.lines, same)
	var out []draw.Item
	for _, rank := range []int{unseen, ghost, broken, seen} {
		out = append(out, r.paths(lines, rank)...)
		out = append(out, r.arcs(rank)...)
	}
	return out
}

// paths returns the lines of a rank, part by part.
func (r *renderer) paths(lines []hide.Line, rank int) []draw.Item {
	// first is per part, and one more, where its lines begin in those of the rank.
	first := make([]int, len(r.parts)+1)
	n := 0
	for _, l := range lines {
		if l.Rank == rank {
			first[l.Owner+1]++
			n++
		}
	}
	if n == 0 {
		return nil
	}
	for i := range r.parts {
		first[i+1] += first[i]
	}
	out, paths, ends := make([]draw.Item, n), make([]draw.Path, n), make([]vec.P, 2*n)
	for _, l := range lines {
		if l.Rank != rank {
			continue
		}
		i := first[l.Owner]
		first[l.Owner]++
		pts := append(ends[2*i:2*i:2*i+2], l.A, l.B)
		if rank == broken {
			pts = Zigzag(l.A, l.B)
		}
		paths[i] = draw.Path{Meta: r.meta(l.Owner, rank), Pts: pts}
		out[i] = &paths[i]
	}
	return out
}

// meta returns the class, owner and pen of lines of part i.
func (r *renderer) meta(i, rank int) draw.Meta {
	p := &r.parts[i]
	m := draw.Meta{Class: p.class(), Owner: p.Owner, Pen: p.Pen}
	switch rank {
	case unseen:
		m.Class, m.Pen = draw.Hidden, nil
	case broken:
		m.Class, m.Pen = Break, nil
	}
	return m
}
