package plan

import (
	"fmt"
	"math"
	"slices"
	"sort"
	"strings"

	"pegwright/draw"
	"pegwright/draw/scene"
	"pegwright/draw/setout"
	"pegwright/draw/view"
	"pegwright/geom"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// survey is one plan, elevation or section: what is seen, from where, and what
// is told about it. Coordinates are those of the frame, mm.
type survey struct {
	kind, id, title, shows string
	note                   string
	cam                    view.Camera
	whole                  []view.Part      // before the cut
	cuts                   []solid.Plane    // the first is the one that the viewer looks at
	grid                   []setout.Line    // square to the paper's x
	side                   []setout.Line    // square to the paper's y
	across, up             []setout.Stretch // dimensions along the paper's x and y
	levels                 []level
	diagonals              []setout.Diagonal
	openings               []opening
	slope                  bool
	named                  []*geom.Timber
	bySize                 bool // timbers of one role and section share a name that tells them

	stations []setout.Line                               // where a long view may be parted, along the paper's x
	beyond   float64                                     // how much is seen past a station at which it is parted
	squares  func(lines []setout.Line) []setout.Diagonal // the diagonals between lines across the paper; nil for none
	bays     *setout.Bays                                // the part of a long view that this is, nil for the whole
	key      []setout.Bays                               // the parts of an overview
	index    []string                                    // what each holds
}

// level is a height to be told, with what lies there.
type level struct {
	z    float64
	what string
	at   vec.V
}

// Surveys returns the plans, the bents and walls in elevation, the roof's
// framing plan and a section. Bents that are alike share a sheet.
func Sheets(f *geom.Frame) []*draw.Sheet {
	return surveySheets(f, surveys(f))
}

// surveySheets draws surveys on sheets, from the last: the roof's plan is the
// first to share one.
func surveySheets(f *geom.Frame, list []*survey) []*draw.Sheet {
	if len(list) == 0 {
		return nil
	}
	last := len(list) - 1
	if last > 0 {
		if s := paired(f, list[last-1], list[last]); s != nil {
			return append(surveySheets(f, list[:last-1]), s)
		}
	}
	return append(surveySheets(f, list[:last]), list[last].sheets(f)...)
}

// surveys returns what Surveys draws.
func surveys(f *geom.Frame) []*survey {
	all := scene.FrameParts(f)
	if len(all) == 0 {
		return nil
	}
	var list []*survey
	list = append(list, wideTurned(f, plans(f, all))...)
	list = append(list, bents(f, all)...)
	list = append(list, walls(f, all)...)
	if s := sectionOf(f, all); s != nil {
		list = append(list, s)
	}
	if _, bents := setout.BentLines(f); len(bents) < 2 {
		list = append(list, allRound(f, all)...)
	}
	return list
}

// inSlab returns the timbers that lie wholly between the planes.
func inSlab(f *geom.Frame, parts []view.Part, planes []solid.Plane) []*geom.Timber {
	var out []*geom.Timber
	for _, p := range parts {
		in := true
		for _, pl := range planes {
			_, hi := setout.Extent(p, pl)
			in = in && hi < 1.5
		}
		if t := f.Timber(p.Owner); in && t != nil {
			out = append(out, t)
		}
	}
	return out
}

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
			grid: flipped(setout.WallLines(f)), named: named, slope: true}
		a, b, _ := setout.BandOf(f, vec.V{Y: 1}, func(t *geom.Timber) bool { return slices.Contains(named, t) })
		s.across = setout.GridDims(flipped(setout.WallLines(f)), -b, -a)
		s.across = append(s.across, clears(f, named, vec.V{Y: -1})...)
		s.levels = levelsOf(f, append(carried(f), named...), vec.V{Y: -1})
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

// flipped turns coordinates round for a view in which they run to the left.
func flipped(lines []setout.Line) []setout.Line {
	out := append([]setout.Line(nil), lines...)
	for i := range out {
		out[i].At = -out[i].At
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
		ws = append(ws, fmt.Sprintf("%d %s %s %s %v %v", shape[t.ID], scene.Tenths(o.X), scene.Tenths(o.Y), scene.Tenths(o.Z), scene.Direction(t.Place.X), scene.Direction(t.Place.Y)))
	}
	sort.Strings(ws)
	return strings.Join(ws, "|")
}

// clears returns the clear distances between neighbouring timbers that stand on
// the floor or the sills, along a direction, each once: bays and openings as a
// tape finds them between ideal faces.
func clears(f *geom.Frame, timbers []*geom.Timber, dir vec.V) []setout.Stretch {
	z, _ := setout.Datum(f)
	var spans []scene.Span
	for _, t := range timbers {
		if math.Abs(t.Place.X.Z) < 1-1e-6 || t.Place.O.Z > z+cutHeight {
			continue
		}
		lo, hi := math.Inf(1), math.Inf(-1)
		for n := 1; n <= 4; n++ {
			pl := t.IdealPlane(n).Moved(t.Place)
			if c := pl.N.Dot(dir); math.Abs(c) > 1-1e-6 {
				lo, hi = min(lo, pl.D/c), max(hi, pl.D/c)
			}
		}
		if lo < hi {
			spans = append(spans, scene.Span{From: lo, To: hi})
		}
	}
	sort.Slice(spans, func(i, k int) bool { return spans[i].From < spans[k].From })
	var out []setout.Stretch
	for i := 1; i < len(spans); i++ {
		if spans[i].From > spans[i-1].To+1 {
			out = append(out, setout.Stretch{From: spans[i-1].To, To: spans[i].From})
		}
	}
	return out
}

// levelsOf returns the heights of the level timbers of a view: tops, and the
// undersides of those that something passes under.
func levelsOf(f *geom.Frame, timbers []*geom.Timber, dir vec.V) []level {
	z0, _ := setout.Datum(f)
	var out []level
	said := map[string]bool{}
	add := func(what string, t *geom.Timber, z float64) {
		key := what + f.Units.Plain(z-z0)
		if said[key] {
			return
		}
		said[key] = true
		out = append(out, level{z, what, tipOf(t, dir, z)})
	}
	for _, t := range timbers {
		lo, hi := t.Blank.Extent(t.Place.InDir(vec.V{Z: 1}))
		lo, hi = lo+t.Place.O.Z, hi+t.Place.O.Z
		switch {
		case math.Abs(t.Place.X.Z) < 1e-6:
			add("top of "+t.Role, t, hi)
			if lo > z0+1 && passedUnder(t) {
				add("under "+t.Role, t, lo)
			}
		case math.Abs(t.Place.X.Z) > 0.05 && math.Abs(t.Place.X.Z) < 0.99 && hi > z0+1 && strings.Contains(t.Role, "rafter"):
			add("top of "+t.Role, t, hi)
		}
	}
	return out
}

// passedUnder reports whether people pass under a timber, or look out: the room
// there is what they ask for.
func passedUnder(t *geom.Timber) bool {
	switch t.Role {
	case "ridge", "girt", "rail", "purlin", "straining beam":
		return false
	}
	return true
}

// tipOf returns the corner of a timber's wood at a height that lies farthest
// along a direction; at the nearest height to it where none lies there.
func tipOf(t *geom.Timber, dir vec.V, z float64) vec.V {
	var best vec.V
	near, far := math.Inf(1), math.Inf(-1)
	for _, c := range t.Net.Cells() {
		for _, q := range c.V {
			q = t.Place.Out(q)
			off, along := math.Abs(q.Z-z), q.Dot(dir)
			if off < near-0.1 || off < near+0.1 && along > far {
				best, near, far = q, min(near, off), along
			}
		}
	}
	return best
}

// carried returns the level timbers along the building that carry the roof: the
// plates and what lies higher.
func carried(f *geom.Frame) []*geom.Timber {
	_, plate, ok := setout.Heights(f, "plate")
	var out []*geom.Timber
	for _, t := range f.Timbers {
		if _, hi := t.Blank.Extent(t.Place.InDir(vec.V{Z: 1})); ok && t.Net != nil && math.Abs(t.Place.X.X) > 1-1e-6 && hi+t.Place.O.Z > plate.Lo-1 {
			out = append(out, t)
		}
	}
	return out
}
