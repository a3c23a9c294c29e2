package setout

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"pegwright/draw/view"
	"pegwright/geom"
	"pegwright/geom/solid"
)

// Bays is a part of a long view of a building: the bays from one of its lines to
// another, with what is seen beyond them.
type Bays struct {
	// First and Last are the lines that the part shows at its ends, in the order
	// of the paper.
	First, Last Line
	// Lo and Hi bound what is seen, mm along the paper's x: without end where the
	// building ends.
	Lo, Hi float64
	// Open tells at Lo and at Hi whether more of the building follows.
	Open [2]bool
	// N is the number of the part, from 1, and Of how many there are.
	N, Of int
}

// Between says which bents, or what else the lines stand for, it lies between.
func (x Bays) Between(what string) string {
	return fmt.Sprintf("%s %s to %s", what, x.First.Name, x.Last.Name)
}

// InBays parts the bays between some lines, two or more, into n parts of as nearly
// as can be the same number of bays, those with more of them first; n is at most
// the number of bays. beyond is how much is seen past a line at which two parts
// meet, mm.
func InBays(lines []Line, beyond float64, n int) []Bays {
	st := slices.Clone(lines)
	slices.SortStableFunc(st, func(a, b Line) int { return cmp.Compare(a.At, b.At) })
	bays := len(st) - 1
	var out []Bays
	i := 0
	for k := range n {
		j := i + bays/n
		if k < bays%n {
			j++
		}
		x := Bays{First: st[i], Last: st[j], Lo: math.Inf(-1), Hi: math.Inf(1), N: k + 1, Of: n}
		if i > 0 {
			x.Lo, x.Open[0] = st[i].At-beyond, true
		}
		if j < bays {
			x.Hi, x.Open[1] = st[j].At+beyond, true
		}
		out = append(out, x)
		i = j
	}
	return out
}

// Planes returns the planes at which longer timbers are cut off at its ends, in
// a view by the camera given.
func (x Bays) Planes(cam view.Camera) []solid.Plane {
	var out []solid.Plane
	if x.Open[0] {
		out = append(out, solid.Plane{N: cam.Right.Neg(), D: -x.Lo})
	}
	if x.Open[1] {
		out = append(out, solid.Plane{N: cam.Right, D: x.Hi})
	}
	return out
}

// Holds reports whether a place along the paper, mm, is seen in the part.
func (x Bays) Holds(at float64) bool { return at > x.Lo-1 && at < x.Hi+1 }

// Timbers returns those of a list that belong to the part: they lie in its bays
// for half their length, or for half of the bays.
func (x Bays) Timbers(list []*geom.Timber, cam view.Camera) []*geom.Timber {
	a, b := x.Lo, x.Hi
	var out []*geom.Timber
	for _, t := range list {
		lo, hi := t.Blank.Extent(t.Place.InDir(cam.Right))
		o := t.Place.O.Dot(cam.Right)
		lo, hi = lo+o, hi+o
		core := [2]float64{max(lo, x.core(a, x.First)), min(hi, x.core(b, x.Last))}
		if 2*(core[1]-core[0]) >= min(hi-lo, x.Last.At-x.First.At)-1e-6 {
			out = append(out, t)
		}
	}
	return out
}

// core is where the bays of the part end: with all of the bent that stands at a
// match line, or at the end of the building.
func (x Bays) core(end float64, at Line) float64 {
	if math.IsInf(end, 0) {
		return end
	}
	return (at.At + end) / 2
}

// PostLines returns the places of the posts along a view of a frame that has
// no bents, each named by the post that stands nearest to the viewer.
func PostLines(f *geom.Frame, cam view.Camera) []Line {
	var out []Line
	var near []float64
	for _, t := range f.Timbers {
		x, ok := Reference(t, cam.Right)
		if t.Role != "post" || !ok {
			continue
		}
		d := cam.Depth(t.Place.O)
		i := slices.IndexFunc(out, func(l Line) bool { return math.Abs(l.At-x) < 1 })
		switch {
		case i < 0:
			out, near = append(out, Line{Name: t.ID, At: x}), append(near, d)
		case d > near[i]+1:
			out[i].Name, near[i] = t.ID, d
		}
	}
	slices.SortStableFunc(out, func(a, b Line) int { return cmp.Compare(a.At, b.At) })
	return out
}
