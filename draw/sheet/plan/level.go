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
	at   vec.P   // where it is seen, at full size
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
		tips[i] = o.Add(l.at.Mul(p.k))
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

// levelsOf names edges that are seen at some places, those of one role at one
// height together, at the rightmost of them. Where a role has several heights
// each is told by what its timbers are called.
func levelsOf(f *geom.Frame, seen []edge, at []vec.P) []level {
	type key struct{ word, role, height string }
	z0, _ := setout.Datum(f)
	ids := map[key][]string{}
	heights := map[[2]string][]string{}
	several := map[string]bool{}
	index := map[key]int{}
	var keys []key
	var out []level
	for i, e := range seen {
		k := key{e.word, e.timber.Role, f.Units.Plain(e.z - z0)}
		if n, ok := index[k]; ok {
			if at[i].X > out[n].at.X {
				out[n].at = at[i]
			}
		} else {
			index[k] = len(out)
			keys, out = append(keys, k), append(out, level{z: e.z, at: at[i]})
			w := [2]string{k.word, k.role}
			heights[w] = append(heights[w], k.height)
			several[k.role] = several[k.role] || len(heights[w]) > 1
		}
		ids[k] = append(ids[k], e.timber.ID)
	}
	for i, k := range keys {
		name := k.role
		if several[k.role] {
			name = stem(ids[k])
		}
		out[i].what = k.word + name
	}
	return out
}

// stem is what some ids begin with, to a hyphen; the first of them where they have
// nothing in common.
func stem(ids []string) string {
	words := strings.Split(ids[0], "-")
	n := len(words)
	for _, id := range ids[1:] {
		k, other := 0, strings.Split(id, "-")
		for k < min(n, len(other)) && other[k] == words[k] {
			k++
		}
		n = k
	}
	if n == 0 {
		return ids[0]
	}
	return strings.Join(words[:n], "-")
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
