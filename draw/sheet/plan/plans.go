package plan

import (
	"fmt"
	"math"
	"strings"

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
	b := building{f, all, xs, setout.WallLines(f), setout.AllLines(f)}
	if len(b.xs) < 2 || len(b.ys) < 2 {
		return nil
	}
	out := []*survey{b.sills()}
	_, plate, ok := setout.Heights(f, "plate")
	if !ok {
		return out
	}
	return append(out, b.plates(plate.Hi), b.roof(plate.Lo))
}

// building is a frame with its grid lines, seen from above.
type building struct {
	f      *geom.Frame
	all    []view.Part
	xs, ys []setout.Line // of the bents and of the walls
	outer  []setout.Line // of the walls and the lean-tos
}

// plan returns a view from above of what planes leave of some parts, the cutting
// plane first, with the names of the timbers that lie wholly under it.
func (b building) plan(id, title, shows string, whole []view.Part, cuts ...solid.Plane) *survey {
	s := &survey{kind: "plan", id: "plan-" + id, title: title, shows: shows, cam: view.Top(), whole: whole, cuts: cuts, grid: b.xs, side: b.ys,
		stations: b.xs, beyond: 2 * widest(b.f, func(t *geom.Timber) bool { return t.Role == "post" })}
	seen := setout.Sawn(whole, cuts...)
	shown := func(t *geom.Timber) bool { return scene.HasPart(seen, t.ID) }
	x0, x1, _ := setout.BandOf(b.f, vec.V{X: 1}, shown)
	y0, y1, _ := setout.BandOf(b.f, vec.V{Y: 1}, shown)
	s.across, s.up = setout.GridDims(b.xs, x0, x1), setout.GridDims(b.ys, y0, y1)
	for _, t := range inSlab(b.f, whole, cuts[min(1, len(cuts)):]) {
		if shown(t) {
			s.named = append(s.named, t)
		}
	}
	return s
}

// widen sets a plan out by the lines of the lean-tos as well as those of the walls.
func (b building) widen(s *survey) {
	if len(b.outer) > len(b.ys) {
		lo, hi := b.outer[0].At, b.outer[0].At
		for _, l := range b.outer {
			lo, hi = min(lo, l.At), max(hi, l.At)
		}
		s.side, s.up = b.outer, append(setout.GridDims(b.outer, lo, hi), s.up...)
	}
}

// square gives a plan the diagonals between its outermost grid lines at a height.
func (b building) square(s *survey, z float64, where string) *survey {
	s.squares = func(lines []setout.Line) []setout.Diagonal { return setout.PlanDiagonals(lines, b.ys, z, where) }
	s.diagonals = s.squares(b.xs)
	return s
}

// sills returns the plan at the sills, or at the feet of posts that stand on none.
func (b building) sills() *survey {
	z, from := setout.Datum(b.f)
	title, corner := "Plan at the sills", "outer corner of the sills"
	if _, _, ok := setout.Heights(b.f, "sill"); !ok {
		title, corner = "Plan at the posts' feet", "outer corner of the posts"
	}
	low := math.Inf(1)
	for _, p := range b.all {
		lo, _ := setout.Extent(p, solid.Plane{N: vec.V{Z: 1}})
		low = min(low, lo)
	}
	shows := fmt.Sprintf("cut %s %s", b.f.Units.Format(cutHeight), from)
	s := b.plan("sills", title, shows, b.all, setout.Slab(vec.V{Z: 1}, low-1, z+cutHeight)...)
	b.set(s, "joist")
	b.widen(s)
	s = b.square(s, z, corner)
	walls := s.squares
	s.squares = func(lines []setout.Line) []setout.Diagonal {
		return append(walls(lines), setout.LeanToDiagonals(b.f, lines, z, strings.Replace(corner, "outer corner", "corner", 1))...)
	}
	s.diagonals = s.squares(b.xs)
	return s
}

// plates returns the plan at the plates and ties, whose tops lie no higher than
// top.
func (b building) plates(top float64) *survey {
	under, _, ok := setout.Heights(b.f, "tie")
	if !ok {
		under, _, _ = setout.Heights(b.f, "plate")
	}
	s := b.plan("plates", "Plan at the plates and ties", "seen from above, the roof taken away",
		notOver(b.all, top+1), setout.Slab(vec.V{Z: 1}, under.Lo-1, top+1)...)
	b.set(s, "joist")
	return b.square(s, top, "plates, outer top arris at")
}

// roof returns the roof's framing plan: what rises over the undersides of the
// plates.
func (b building) roof(under float64) *survey {
	s := b.plan("roof", "Roof framing plan", "seen from above", atLeast(b.all, under-1))
	if t := setout.Pitches(b.f); t != "" {
		s.note = "roof pitch " + t
	}
	b.set(s, "rafter", "purlin")
	b.widen(s)
	for _, d := range s.across {
		if d.What != "" {
			s.beyond = max(s.beyond, (d.To-d.From)/float64(max(d.N, 1))*1.1)
		}
	}
	return s
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
			s.setSticks(f)
			s.across = append(s.across, toEnds(postLines(f, v.cam.Right), a, b)...)
			s.up = append(s.up, toEnds(postLines(f, v.cam.Up), c, d)...)
		} else {
			s.across = append(s.across, postSteps(f, v.cam.Right, a, b)...)
			s.leveled = s.named
		}
		out = append(out, s)
	}
	return out
}
