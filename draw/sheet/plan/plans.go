package plan

import (
	"fmt"
	"math"
	"slices"

	"pegwright/draw/scene"
	"pegwright/draw/setout"
	"pegwright/draw/view"
	"pegwright/geom"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// cutHeight is how far over the datum the plan at the sills is cut, mm.
const cutHeight = 304.8

// plans returns the plan at the sills, the plan at the plates and ties, and the
// roof's framing plan.
func plans(f *geom.Frame, all []view.Part) []*survey {
	xs, _ := setout.BentLines(f)
	ys := setout.WallLines(f)
	if len(xs) < 2 || len(ys) < 2 {
		return nil
	}
	z, from := setout.Datum(f)
	up := vec.V{Z: 1}
	base := func(id, title, shows string, cuts []solid.Plane) *survey {
		s := &survey{kind: "plan", id: "plan-" + id, title: title, shows: shows, cam: view.Top(), whole: all, cuts: cuts, grid: xs, side: ys,
			stations: xs, beyond: 2 * widest(f, func(t *geom.Timber) bool { return t.Role == "post" })}
		seen := setout.Sawn(all, cuts...)
		a, b, _ := setout.BandOf(f, vec.V{X: 1}, func(t *geom.Timber) bool { return scene.HasPart(seen, t.ID) })
		c, d, _ := setout.BandOf(f, vec.V{Y: 1}, func(t *geom.Timber) bool { return scene.HasPart(seen, t.ID) })
		s.across, s.up = setout.GridDims(xs, a, b), setout.GridDims(ys, c, d)
		s.named = inSlab(f, all, cuts[1:])
		var named []*geom.Timber
		for _, t := range s.named {
			if scene.HasPart(seen, t.ID) {
				named = append(named, t)
			}
		}
		s.named = named
		return s
	}
	title, corner := "Plan at the sills", "outer corner of the sills"
	if _, _, ok := setout.Heights(f, "sill"); !ok {
		title, corner = "Plan at the posts' feet", "outer corner of the posts"
	}
	low := math.Inf(-1)
	for _, p := range all {
		a, _ := setout.Extent(p, solid.Plane{N: up})
		if math.IsInf(low, -1) || a < low {
			low = a
		}
	}
	sills := base("sills", title, fmt.Sprintf("cut %s %s", f.Units.Format(cutHeight), from), setout.Slab(up, low-1, z+cutHeight))
	sills.squares = func(lines []setout.Line) []setout.Diagonal { return setout.PlanDiagonals(lines, ys, z, corner) }
	sills.diagonals = sills.squares(xs)
	out := []*survey{sills}
	_, plate, ok := setout.Heights(f, "plate")
	if !ok {
		return out
	}
	under, _, tie := setout.Heights(f, "tie")
	if !tie {
		under, _, _ = setout.Heights(f, "plate")
	}
	everything := all
	all = notOver(all, plate.Hi+1)
	plates := base("plates", "Plan at the plates and ties", "seen from above, the roof taken away", setout.Slab(up, under.Lo-1, plate.Hi+1))
	all = everything
	plates.squares = func(lines []setout.Line) []setout.Diagonal {
		return setout.PlanDiagonals(lines, ys, plate.Hi, "plates, outer top arris at")
	}
	plates.diagonals = plates.squares(xs)
	out = append(out, plates)
	roof := base("roof", "Roof framing plan", "seen from above", setout.Slab(up, plate.Hi+1, 1e6))
	roof.cuts = roof.cuts[1:]
	roof.whole = atLeast(all, plate.Lo-1)
	roof.named = nil
	for _, p := range roof.whole {
		roof.named = append(roof.named, f.Timber(p.Owner))
	}
	a, b, _ := setout.BandOf(f, vec.V{X: 1}, func(t *geom.Timber) bool { return scene.HasPart(roof.whole, t.ID) })
	c, d, _ := setout.BandOf(f, vec.V{Y: 1}, func(t *geom.Timber) bool { return scene.HasPart(roof.whole, t.ID) })
	if t := setout.Pitches(f); t != "" {
		roof.note = "roof pitch " + t
	}
	roof.cuts, roof.across, roof.up = nil, setout.GridDims(xs, a, b), setout.GridDims(ys, c, d)
	for _, d := range spacings(f, roof.named) {
		roof.across = append(roof.across, d)
		roof.beyond = max(roof.beyond, (d.To-d.From)/float64(max(d.N, 1))*1.1)
	}
	return append(out, roof)
}

// atLeast returns the parts whose top lies over a height.
func atLeast(parts []view.Part, z float64) []view.Part {
	var out []view.Part
	for _, p := range parts {
		if _, hi := setout.Extent(p, solid.Plane{N: vec.V{Z: 1}, D: z}); hi > 1 {
			out = append(out, p)
		}
	}
	return out
}

// notOver returns the parts whose top lies no higher than a height.
func notOver(parts []view.Part, z float64) []view.Part {
	var out []view.Part
	for _, p := range parts {
		if _, hi := setout.Extent(p, solid.Plane{N: vec.V{Z: 1}, D: z}); hi < 0.1 {
			out = append(out, p)
		}
	}
	return out
}

// spacings returns the distances between the reference planes of neighbouring
// rafters of one side of the roof; equal ones that follow each other are told
// at once.
func spacings(f *geom.Frame, timbers []*geom.Timber) []setout.Stretch {
	var at []float64
	for _, t := range timbers {
		if t.Place.X.Z > 0.2 && t.Place.X.Y > 0.05 && math.Abs(t.Place.X.X) < 1e-6 {
			if x, ok := setout.Reference(t, vec.V{X: 1}); ok {
				at = append(at, x)
			}
		}
	}
	return equalSteps(at)
}

// equalSteps returns the distances between neighbouring places, equal ones that
// follow each other at once.
func equalSteps(at []float64) []setout.Stretch {
	at = slices.Sorted(slices.Values(at))
	var out []setout.Stretch
	for i := 1; i < len(at); i++ {
		lo, hi := at[i-1], at[i]
		if hi-lo < 1 {
			continue
		}
		if k := len(out) - 1; k >= 0 && math.Abs((out[k].To-out[k].From)/float64(out[k].N)-(hi-lo)) < 0.1 && math.Abs(out[k].To-lo) < 1 {
			out[k].To, out[k].N = hi, out[k].N+1
			continue
		}
		out = append(out, setout.Stretch{From: lo, To: hi, N: 1})
	}
	return out
}

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
		cam: view.Left(), whole: all, cuts: setout.Slab(vec.V{X: -1}, -hi-1, -x), grid: flipped(setout.WallLines(f)), slope: true}
	s.note = fmt.Sprintf("cut %s east of line %s", f.Units.Format(x-xs[0].At), xs[0].Name)
	var inside []*geom.Timber
	for _, t := range f.Timbers {
		if t.Net != nil && math.Abs(t.Place.X.X) > 1-1e-6 {
			inside = append(inside, t)
		}
	}
	a, b, _ := setout.BandOf(f, vec.V{Y: 1}, func(t *geom.Timber) bool { return t.Net != nil })
	s.across = setout.GridDims(s.grid, -b, -a)
	s.levels = levelsOf(f, append(carried(f), inSlab(f, all, s.cuts)...), vec.V{Y: -1})
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
	for i := range 41 {
		x := a + (b-a)*(0.3+0.4*float64(i)/40)
		n := math.Abs(x-(a+b)/2) / (b - a)
		for _, p := range all {
			lo, hi := setout.Extent(p, solid.Plane{N: vec.V{X: 1}, D: x})
			if lo < 5 && hi > -5 && hi-lo < 0.5*(b-a) {
				n++
			}
		}
		if n < least-1e-9 {
			best, least = x, n
		}
	}
	return best
}

// showsWhole is said of a view of all timbers.
const showsWhole = "the whole frame"

// allRound returns views of a frame that has no bents: from its four sides and
// from above.
func allRound(f *geom.Frame, all []view.Part) []*survey {
	var out []*survey
	for _, v := range []struct {
		kind, id, title string
		cam             view.Camera
	}{
		{"elevation", "from-south", "Elevation from the south", view.Front()},
		{"elevation", "from-north", "Elevation from the north", view.Back()},
		{"elevation", "from-west", "Elevation from the west", view.Left()},
		{"elevation", "from-east", "Elevation from the east", view.Right()},
		{"plan", "from-above", "Plan", view.Top()},
	} {
		s := &survey{kind: v.kind, id: "view-" + v.id, title: v.title, shows: showsWhole, cam: v.cam, whole: all}
		for _, p := range all {
			s.named = append(s.named, f.Timber(p.Owner))
		}
		s.stations, s.beyond = setout.PostLines(f, v.cam), 2*widest(f, func(t *geom.Timber) bool { return t.Role == "post" })
		every := func(t *geom.Timber) bool { return t.Net != nil }
		a, b, _ := setout.BandOf(f, v.cam.Right, every)
		s.across = []setout.Stretch{{From: a, To: b}}
		if v.kind == "plan" {
			c, d, _ := setout.BandOf(f, v.cam.Up, every)
			s.up = []setout.Stretch{{From: c, To: d}}
		} else {
			s.levels = levelsOf(f, s.named, v.cam.Right)
		}
		out = append(out, s)
	}
	return out
}
