package plan

import (
	"math"
	"slices"
	"strings"

	"pegwright/draw/naming"
	"pegwright/draw/setout"
	"pegwright/draw/view"
	"pegwright/geom"
	"pegwright/geom/vec"
)

// A height is told of wood that is there: of the net timber, not of the stick that
// it is cut from. The rough side of a stick lies nowhere exact, so there the line
// is told that shoulders bear on, which a framer scribes and tapes.

// edge is the upper or the lower side of a timber.
type edge struct {
	timber *geom.Timber
	word   string  // before the timber's name
	z      float64 // frame mm
	up     bool    // the upper one
}

// Words before a timber's name in the column of heights.
const (
	topOf     = "top of "
	under     = "under "
	bearingOf = "bearing of "
)

// heightsSeen returns the heights of those timbers that are to be told and whose
// wood shows at that height. A reader who asks for sizes is told of the room that
// rough wood leaves, not of bearing lines.
func (v *survey) heightsSeen(f *geom.Frame) []level {
	s := v.stood()
	s.height.Do(func() {
		s.levels, s.sizes = v.levelsSeen(f, bearings), v.levelsSeen(f, ends)
	})
	if v.bySize {
		return s.sizes
	}
	return s.levels
}

func (v *survey) levelsSeen(f *geom.Frame, sides sideOf) []level {
	z0, _ := setout.Datum(f)
	var seen []edge
	var at []vec.P
	for _, t := range v.leveled {
		for _, e := range edgesOf(t, z0, sides) {
			if p, ok := seenAt(v.cam, v.stood().sight, e); ok {
				seen, at = append(seen, e), append(at, p)
			}
		}
	}
	return levelsOf(f, seen, at)
}

// edgesOf returns the edges whose heights are told of a timber: the top of a level
// one, and of a rafter; the underside of a level one that something passes under.
func edgesOf(t *geom.Timber, z0 float64, sides sideOf) []edge {
	if t.Net == nil {
		return nil
	}
	rise := math.Abs(t.Place.X.Z)
	lo, hi := netHeights(t)
	switch {
	case rise < 1e-6:
		out := []edge{sides(t, vec.V{Z: 1}, hi)}
		if low := sides(t, vec.V{Z: -1}, lo); lo > z0+1 && passedUnder(t) {
			out = append(out, low)
		}
		return out
	case rise > 0.05 && rise < 0.99 && hi > z0+1 && strings.Contains(t.Role, "rafter"):
		return []edge{ends(t, vec.V{Z: 1}, hi)}
	}
	return nil
}

// netHeights returns between which heights the wood of a timber lies, frame mm.
func netHeights(t *geom.Timber) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, c := range t.Net.Cells() {
		a, b := c.Extent(t.Place.InDir(vec.V{Z: 1}))
		lo, hi = min(lo, a+t.Place.O.Z), max(hi, b+t.Place.O.Z)
	}
	return lo, hi
}

// sideOf returns the edge of a timber whose wood ends at a height, toward d: up or
// down.
type sideOf func(t *geom.Timber, d vec.V, end float64) edge

// ends tells the wood's own end.
func ends(t *geom.Timber, d vec.V, end float64) edge {
	if d.Z > 0 {
		return edge{t, topOf, end, true}
	}
	return edge{t, under, end, false}
}

// bearings tells the bearing line where a rough face lies there.
func bearings(t *geom.Timber, d vec.V, end float64) edge {
	e := ends(t, d, end)
	n := t.FaceToward(d)
	pl := t.IdealPlane(n).Moved(t.Place)
	if i := (n + 1) % 2; geom.IsReference(n) || pl.N.Dot(d) < 1-1e-6 || t.Section[i]-t.Ideal[i] < 0.01 {
		return e
	}
	e.word, e.z = bearingOf, pl.D/pl.N.Z
	if e.up {
		e.word = "upper " + bearingOf
	}
	return e
}

// passedUnder reports whether people pass under a timber, or look out: the room
// there is what they ask for.
func passedUnder(t *geom.Timber) bool {
	return !slices.Contains([]string{"ridge", "girt", "rail", "purlin", "straining beam"}, t.Role)
}

// How far inside the wood it is looked for at an edge, how far and how finely about
// a peak, mm, and at how many places along a level timber.
const (
	edgeDeep  = 2.0
	edgeReach = 30.0
	edgeStep  = 0.5
	edgeTries = 96
)

// seenAt returns the rightmost of the places along an edge at which its wood shows
// in an elevation.
func seenAt(cam view.Camera, sight *naming.Sight, e edge) (vec.P, bool) {
	y := e.z + edgeDeep
	if e.up {
		y = e.z - edgeDeep
	}
	b := sight.Box(e.timber.ID)
	if b.Empty() || y <= b.Min.Y || y >= b.Max.Y {
		return vec.P{}, false
	}
	from, to, step := b.Max.X, b.Min.X, b.W()/edgeTries
	if math.Abs(e.timber.Place.X.Z) > 1e-6 {
		from, step = peakOf(cam, e)+edgeReach, edgeStep
		to = from - 2*edgeReach
	}
	for x := from - step/2; x > to; x -= step {
		if sight.Owner(vec.At(x, y)) != e.timber.ID {
			continue
		}
		if x+step > b.Max.X {
			x = b.Max.X
		}
		return vec.At(x, e.z), true
	}
	return vec.P{}, false
}

// peakOf returns where the highest wood of a timber lies across a picture.
func peakOf(cam view.Camera, e edge) float64 {
	best := vec.P{Y: math.Inf(-1)}
	for _, c := range e.timber.Net.Cells() {
		for _, q := range c.V {
			if p := cam.Project(e.timber.Place.Out(q)); p.Y > best.Y {
				best = p
			}
		}
	}
	return best.X
}
