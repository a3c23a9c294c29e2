package setout

import (
	"fmt"
	"math"
	"sort"

	"pegwright/draw/view"
	"pegwright/geom"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// Line is a line that a building is set out from: the reference plane of a
// bent (1, 2, 3) or of a wall (A, B), at a frame coordinate along its axis.
type Line struct {
	Name string
	At   float64 // mm
}

// BentLines returns the bent lines, coordinates along x, in order. bents holds
// the number of each.
func BentLines(f *geom.Frame) (lines []Line, bents []int) {
	at := map[int]float64{}
	for _, t := range f.Timbers {
		if _, ok := at[t.Bent]; ok || t.Role != "post" || t.Bent < 1 {
			continue
		}
		if x, ok := Reference(t, vec.V{X: 1}); ok {
			at[t.Bent] = x
			bents = append(bents, t.Bent)
		}
	}
	sort.Ints(bents)
	for _, n := range bents {
		lines = append(lines, Line{fmt.Sprint(n), at[n]})
	}
	return lines, bents
}

// WallLines returns the lines of the south and the north wall, coordinates
// along y.
func WallLines(f *geom.Frame) []Line {
	var out []Line
	for i, wall := range []string{"south", "north"} {
		for _, t := range f.Timbers {
			if t.Wall != wall || t.Role != "post" {
				continue
			}
			if y, ok := Reference(t, vec.V{Y: 1}); ok {
				out = append(out, Line{string(rune('A' + i)), y})
				break
			}
		}
	}
	return out
}

// LeanToLines returns the lines of the rows of posts outside the walls, named after
// these, coordinates along y.
func LeanToLines(f *geom.Frame) []Line {
	walls := WallLines(f)
	if len(walls) < 2 {
		return nil
	}
	var at []float64
	for _, t := range f.Timbers {
		y, ok := Reference(t, vec.V{Y: 1})
		if ok && t.Role == "post" && t.Bent > 0 && (y < walls[0].At-1 || y > walls[1].At+1) {
			at = append(at, y)
		}
	}
	var out []Line
	for i, y := range apart(at) {
		out = append(out, Line{string(rune('A' + len(walls) + i)), y})
	}
	return out
}

// AllLines returns the lines of the walls, then those of the lean-tos.
func AllLines(f *geom.Frame) []Line { return append(WallLines(f), LeanToLines(f)...) }

// Reference returns where the reference face of a timber that is square to a
// frame axis lies along it.
func Reference(t *geom.Timber, axis vec.V) (float64, bool) {
	for n := 1; n <= 2; n++ {
		pl := t.IdealPlane(n).Moved(t.Place)
		if c := pl.N.Dot(axis); math.Abs(c) > 1-1e-9 {
			return pl.D / c, true
		}
	}
	return 0, false
}

// Datum returns the height that heights are told from, and what lies there: the
// tops of the sills, or the posts' feet where there are no sills.
func Datum(f *geom.Frame) (z float64, from string) {
	if _, top, ok := Heights(f, "sill"); ok {
		return top.Hi, "over the sills"
	}
	if under, _, ok := Heights(f, "post"); ok {
		return under.Lo, "over the posts' feet"
	}
	return 0, ""
}

// Sawn returns the parts as the planes leave them, the wood before each plane
// taken away; parts of which nothing is left are dropped.
func Sawn(parts []view.Part, planes ...solid.Plane) []view.Part {
	var out []view.Part
	for _, p := range parts {
		keep := true
		for _, pl := range planes {
			lo, hi := Extent(p, pl)
			if lo > -1e-3 {
				keep = false
				break
			}
			if hi > 1e-3 {
				p.Body = view.Behind(p.Body, pl)
			}
		}
		if keep && len(p.Body.Cells()) > 0 {
			out = append(out, p)
		}
	}
	return out
}

// Extent returns between which heights over a plane a part lies.
func Extent(p view.Part, pl solid.Plane) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, c := range p.Body.Cells() {
		a, b := c.Extent(pl.N)
		lo, hi = min(lo, a-pl.D), max(hi, b-pl.D)
	}
	return lo, hi
}

// Slab returns the planes that bound a slab of the frame along an axis.
func Slab(axis vec.V, lo, hi float64) []solid.Plane {
	return []solid.Plane{{N: axis, D: hi}, {N: axis.Neg(), D: -lo}}
}

// BandOf returns the extent along an axis of the timbers that are chosen.
func BandOf(f *geom.Frame, axis vec.V, choose func(t *geom.Timber) bool) (lo, hi float64, ok bool) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, t := range f.Timbers {
		if !choose(t) {
			continue
		}
		a, b := t.Blank.Extent(t.Place.InDir(axis))
		o := t.Place.O.Dot(axis)
		lo, hi, ok = min(lo, a+o), max(hi, b+o), true
	}
	return lo, hi, ok
}
