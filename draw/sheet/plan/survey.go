package plan

import (
	"math"
	"sort"
	"sync"

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
	leveled                []*geom.Timber   // whose heights are told where they show
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

	seen *shot
}

// Set is the plans, elevations and sections of a frame. What they show is found
// once, for all who draw them.
type Set struct {
	f    *geom.Frame
	list func() []*survey
}

// Of returns the views of a frame. Nothing is drawn until they are asked for.
func Of(f *geom.Frame) *Set {
	return &Set{f, sync.OnceValue(func() []*survey {
		list := surveys(f)
		for _, v := range list {
			v.shot()
		}
		return list
	})}
}

// Sheets returns the plans, the bents and walls in elevation, the roof's
// framing plan and a section. Bents that are alike share a sheet.
func (s *Set) Sheets() []*draw.Sheet { return surveySheets(s.f, s.list()) }

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

// surveys returns what Sheets draws.
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

// flipped turns coordinates round for a view in which they run to the left.
func flipped(lines []setout.Line) []setout.Line {
	out := append([]setout.Line(nil), lines...)
	for i := range out {
		out[i].At = -out[i].At
	}
	return out
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
