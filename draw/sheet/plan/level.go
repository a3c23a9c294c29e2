package plan

import (
	"math"
	"strings"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/setout"
	"pegwright/geom"
	"pegwright/geom/vec"
)

// Heights stand at the right of an elevation in a column of their own, each at
// the end of a line at that height with the open triangle that marks a level on
// a building's elevation (as in ISO 129-1).

// level is a height to be told.
type level struct {
	z    float64 // frame mm
	what string  // lies there
	at   vec.V   // where, frame axes
}

// Sizes of the column of heights, paper mm: from the view to the column, from
// there to where the marks stand, across a mark, and the pitch of the heights
// over their lettering.
const (
	levelGap   = 5.0
	levelJog   = 4.0
	levelMark  = 3.2
	levelPitch = 1.45
)

// levelLetters is the group of the words in the column.
func (p *surveyPage) levelLetters() dim.Group {
	var words []string
	for _, l := range p.levels {
		words = append(words, p.levelText(l))
	}
	return dim.Together("levels", words...)
}

func (p *surveyPage) levelText(l level) string {
	z, _ := setout.Datum(p.f)
	return p.f.Units.Plain(l.z-z) + "  " + l.what
}

// levelRoom is the width that the heights take beside the view.
func (p *surveyPage) levelRoom() float64 {
	if len(p.levels) == 0 {
		return 0
	}
	w, g := 0.0, p.levelLetters()
	for _, l := range p.levels {
		w = max(w, g.Measure(p.levelText(l)))
	}
	return levelGap + levelJog + levelMark + 1 + w
}

// heights sets the heights in their column, as many as it holds, and counts
// them. All stand on every sheet, or are shared out where one column cannot
// hold them.
func (p *surveyPage) heights(s *draw.Sheet, field block.Field, box draw.Box, o vec.P) {
	letters := p.levelLetters()
	h := letters.Height
	low := field.Y0 + p.noteHeight() + 1
	most := max(int((field.Y1-low)/(h*(levelPitch+0.25))), 1)
	list := p.levels
	if len(list) > most {
		list = list[p.told:min(p.told+most, len(list))]
	}
	p.told += len(list)
	wants := make([]dim.Want, len(list))
	tips := make([]vec.P, len(list))
	for i, l := range list {
		tips[i] = o.Add(p.cam.Project(l.at).Mul(p.k))
		tips[i].X = min(tips[i].X, box.Max.X)
		wants[i] = dim.Want{At: tips[i].Y, Size: levelPitch * h}
	}
	places, _ := dim.Spread(wants, 0.15*h, low, field.Y1)
	x := box.Max.X + levelGap
	for i, l := range list {
		y := places[i]
		m := vec.At(x+levelJog+levelMark/2, y)
		if box.Max.X-tips[i].X > 0.6*box.W() { // not through the whole view
			tips[i].X = box.Max.X
		}
		s.Poly(draw.Dimension, false, tips[i].Add(vec.At(1, 0)), vec.At(x, tips[i].Y), vec.At(x+levelJog, y), vec.At(x+levelJog+levelMark, y)).Mark = "level"
		s.Poly(draw.Dimension, false, m.Add(vec.At(-levelMark/2, levelMark/2)), m, m.Add(vec.At(levelMark/2, levelMark/2))).Mark = "level"
		letters.Text(s, vec.At(x+levelJog+levelMark+1, y-h/2), p.levelText(l))
	}
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
