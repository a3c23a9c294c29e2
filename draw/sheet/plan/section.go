package plan

import (
	"fmt"
	"math"

	"pegwright/draw/scene"
	"pegwright/draw/setout"
	"pegwright/draw/view"
	"pegwright/geom"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// sectionOf returns the section across the building through the first bay,
// looking east.
func sectionOf(f *geom.Frame, all []view.Part) *survey {
	xs, numbers := setout.BentLines(f)
	if len(xs) < 2 {
		return nil
	}
	x := clearCut(all, xs[0].At, xs[1].At)
	_, hi, _ := setout.BandOf(f, vec.V{X: 1}, func(t *geom.Timber) bool { return t.Bent == numbers[1] && t.Role == "post" })
	s := &survey{kind: "elevation", id: "section", title: "Section through bay 1", shows: "looking east, to bent " + xs[1].Name,
		cam: view.Left(), whole: all, cuts: setout.Slab(vec.V{X: -1}, -hi-1, -x), grid: flipped(setout.AllLines(f)), slope: true}
	s.note = fmt.Sprintf("cut %s east of line %s", f.Units.Format(x-xs[0].At), xs[0].Name)
	var inside []*geom.Timber
	for _, t := range f.Timbers {
		if t.Net != nil && math.Abs(t.Place.X.X) > 1-1e-6 {
			inside = append(inside, t)
		}
	}
	a, b, _ := setout.BandOf(f, vec.V{Y: 1}, func(t *geom.Timber) bool { return t.Net != nil })
	s.across = setout.GridDims(s.grid, -b, -a)
	s.leveled = append(carried(f), inSlab(f, all, s.cuts)...)
	for _, t := range inside {
		lo, hi := t.Blank.Extent(t.Place.InDir(vec.V{X: 1}))
		if o := t.Place.O.X; lo+o < x && hi+o > x {
			s.named = append(s.named, t)
		}
	}
	return s
}

// clearCut returns a place between two bent lines, near the middle, that cuts
// as few timbers that do not run along the building as can be.
func clearCut(all []view.Part, a, b float64) float64 {
	best, least := (a+b)/2, math.Inf(1)
	short := make([]scene.Span, 0, len(all)) // along the building, of timbers across it
	for _, p := range all {
		if lo, hi := setout.Extent(p, solid.Plane{N: vec.V{X: 1}}); hi-lo < 0.5*(b-a) {
			short = append(short, scene.Span{From: lo, To: hi})
		}
	}
	for i := range 41 {
		x := a + (b-a)*(0.3+0.4*float64(i)/40)
		n := math.Abs(x-(a+b)/2) / (b - a)
		for _, s := range short {
			if s.From-x < 5 && s.To-x > -5 {
				n++
			}
		}
		if n < least-1e-9 {
			best, least = x, n
		}
	}
	return best
}
