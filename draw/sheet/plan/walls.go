package plan

import (
	"fmt"
	"slices"
	"strings"

	"pegwright/draw"
	"pegwright/draw/setout"
	"pegwright/draw/view"
	"pegwright/geom"
	"pegwright/geom/vec"
)

// postRow is a row of posts along the building, seen from outside in an
// elevation of its own.
type postRow struct {
	id, title string
	north     bool // seen from the north
	has       func(t *geom.Timber) bool
}

// postRows returns the south and the north wall, then the outer rows of the
// lean-tos.
func postRows(f *geom.Frame) []postRow {
	var out []postRow
	for _, wall := range []string{"south", "north"} {
		out = append(out, postRow{"wall-" + wall, strings.ToUpper(wall[:1]) + wall[1:] + " wall", wall == "north",
			func(t *geom.Timber) bool { return t.Wall == wall && t.Role == "post" }})
	}
	lo, hi, _ := setout.BandOf(f, vec.V{Y: 1}, func(t *geom.Timber) bool { return t.Wall != "" && t.Role == "post" })
	said := map[string]bool{}
	for _, t := range f.Timbers {
		y, ok := setout.Reference(t, vec.V{Y: 1})
		if t.Role != "post" || t.Wall != "" || t.Bent < 1 || !ok || said[draw.Tenths(y)] {
			continue
		}
		said[draw.Tenths(y)] = true
		north := y > (lo+hi)/2
		side := map[bool]string{false: "south", true: "north"}[north]
		id := "wall-lean-to-" + side
		if n := len(said); n > 1 {
			id += fmt.Sprintf("-%d", n)
		}
		out = append(out, postRow{id, "Lean-to, " + side + " wall", north, func(o *geom.Timber) bool {
			at, ok := setout.Reference(o, vec.V{Y: 1})
			return ok && o.Role == "post" && o.Wall == "" && o.Bent > 0 && draw.Tenths(at) == draw.Tenths(y)
		}})
	}
	return out
}

// walls returns the walls in elevation, seen from outside.
func walls(f *geom.Frame, all []view.Part) []*survey {
	lines, _ := setout.BentLines(f)
	var out []*survey
	for _, row := range postRows(f) {
		lo, hi, ok := setout.BandOf(f, vec.V{Y: 1}, row.has)
		if !ok {
			continue
		}
		s := &survey{kind: "elevation", id: row.id, title: row.title, shows: "seen from outside", whole: all}
		right := vec.V{X: 1}
		s.cam, s.cuts, s.grid = view.Front(), setout.Slab(vec.V{Y: -1}, -hi-1, -lo+1), lines
		if row.north {
			right = vec.V{X: -1}
			s.cam, s.cuts, s.grid = view.Back(), setout.Slab(vec.V{Y: 1}, lo-1, hi+1), flipped(lines)
		}
		s.stations, s.beyond = s.grid, 2*widest(f, row.has)
		s.named = inSlab(f, all, s.cuts)
		a, b, _ := setout.BandOf(f, right, func(t *geom.Timber) bool { return slices.Contains(s.named, t) })
		s.across = append(setout.GridDims(s.grid, a, b), clears(f, s.named, right)...)
		s.leveled = s.named
		s.diagonals = setout.WallDiagonals(f, s.named)
		s.openings = openingsOf(f, s.named)
		out = append(out, s)
	}
	return out
}

// widest is the widest section of some timbers, mm.
func widest(f *geom.Frame, choose func(t *geom.Timber) bool) float64 {
	w := 0.0
	for _, t := range f.Timbers {
		if choose(t) {
			w = max(w, t.Section[0], t.Section[1])
		}
	}
	return w
}
