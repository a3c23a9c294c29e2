package plan

import (
	"fmt"
	"slices"
	"sort"
	"strings"

	"pegwright/draw"
	"pegwright/draw/scene"
	"pegwright/draw/setout"
	"pegwright/draw/view"
	"pegwright/geom"
	"pegwright/geom/vec"
)

// bents returns the bents in elevation, like ones together.
func bents(f *geom.Frame, all []view.Part) []*survey {
	lines, numbers := setout.BentLines(f)
	group := map[string]*survey{}
	like := map[string][]string{}
	var order []string
	shape := shapes(f)
	for i, n := range numbers {
		lo, hi, ok := setout.BandOf(f, vec.V{X: 1}, func(t *geom.Timber) bool { return t.Bent == n && t.Role == "post" })
		if !ok {
			continue
		}
		cuts := setout.Slab(vec.V{X: -1}, -hi-1, -lo+1)
		named := inSlab(f, all, cuts)
		key := likeBent(f, named, lines[i].At, shape)
		like[key] = append(like[key], lines[i].Name)
		if group[key] != nil {
			continue
		}
		order = append(order, key)
		s := &survey{kind: "elevation", id: fmt.Sprintf("bent-%d", n), cam: view.Left(), whole: all, cuts: cuts,
			grid: flipped(setout.AllLines(f)), named: named, slope: true}
		a, b, _ := setout.BandOf(f, vec.V{Y: 1}, func(t *geom.Timber) bool { return slices.Contains(named, t) })
		s.across = setout.GridDims(flipped(setout.AllLines(f)), -b, -a)
		s.across = append(s.across, clears(f, named, vec.V{Y: -1})...)
		s.leveled = append(carried(f), named...)
		s.diagonals = setout.BentDiagonals(f, n)
		group[key] = s
	}
	var out []*survey
	for _, k := range order {
		s := group[k]
		s.title = "Bent " + strings.Join(like[k], ", ")
		if len(like[k]) > 1 {
			s.title = "Bents " + strings.Join(like[k], ", ")
		}
		s.shows = "seen from the west"
		if len(like[k]) > 1 {
			s.shows += ", names of bent " + like[k][0]
		}
		out = append(out, s)
	}
	return out
}

// shapes numbers the groups of like timbers.
func shapes(f *geom.Frame) map[string]int {
	out := map[string]int{}
	for i, g := range scene.AllSticks(f) {
		for _, t := range g.Timbers {
			out[t.ID] = i
		}
	}
	return out
}

// likeBent writes what must agree for two bents to share a sheet: the shapes of
// their timbers and how they stand to the bent line.
func likeBent(f *geom.Frame, timbers []*geom.Timber, x float64, shape map[string]int) string {
	var ws []string
	for _, t := range timbers {
		o := t.Place.O.Sub(vec.V{X: x})
		ws = append(ws, fmt.Sprintf("%d %s %s %s %v %v", shape[t.ID], draw.Tenths(o.X), draw.Tenths(o.Y), draw.Tenths(o.Z), draw.Direction(t.Place.X), draw.Direction(t.Place.Y)))
	}
	sort.Strings(ws)
	return strings.Join(ws, "|")
}
