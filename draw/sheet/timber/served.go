package timber

import (
	"fmt"
	"sort"
	"strings"

	"pegwright/draw/dim"
	"pegwright/draw/font"
	"pegwright/draw/page"
	"pegwright/draw/scene"
	"pegwright/geom"
	"pegwright/geom/vec"
)

// letter is a joint of the drawn stick with the word that stands for it: its
// mark, or a letter where several sticks bear different marks.
type letter struct {
	joint *geom.Joint
	word  string
}

// letters returns the joints of the drawn stick along it.
func letters(f *geom.Frame, g scene.Sticks) []letter {
	var out []letter
	for i, j := range along(f, g.First()) {
		l := letter{j, j.Mark}
		if len(g.Timbers) > 1 {
			l.word = string(rune('a' + i%26))
			if i >= 26 {
				l.word += fmt.Sprint(i / 26)
			}
		}
		out = append(out, l)
	}
	return out
}

// along returns the joints of a timber by the places and faces of what they
// take from it.
func along(f *geom.Frame, t *geom.Timber) []*geom.Joint {
	js := append([]*geom.Joint(nil), f.JointsOf(t)...)
	at := map[string]vec.V{}
	for _, j := range js {
		var pts []vec.V
		for _, c := range t.Cuts {
			if c.Joint == j.ID {
				pts = append(pts, vec.Middle(c.Solid.V))
			}
		}
		if len(pts) > 0 {
			at[j.ID] = vec.Middle(pts)
		} else {
			at[j.ID] = t.Place.In(j.Axes.O)
		}
	}
	sort.SliceStable(js, func(i, k int) bool { return at[js[i].ID].Before(at[js[k].ID]) })
	return js
}

// servedLines says which sticks are cut alike, with the marks of their joints,
// wrapped to a width; none for a single stick.
func servedLines(f *geom.Frame, g scene.Sticks, width float64) []string {
	if len(g.Timbers) < 2 {
		return nil
	}
	words := letters(f, g)
	var out []string
	for _, t := range g.Timbers {
		var ms []string
		for i, j := range along(f, t) {
			if i < len(words) {
				ms = append(ms, words[i].word+" "+j.Mark)
			}
		}
		out = append(out, font.Wrap(fmt.Sprintf("no. %s %s: %s", t.Mark, t.ID, strings.Join(ms, ", ")), width, dim.Small)...)
	}
	return out
}

// served sets blocks of the lines about the sticks that are cut alike; the
// first block holds the heading and two lines.
func (w *cutTable) served(p page.Pen, from, to int) {
	first, last, more := from+1, min(to+1, len(w.lines)), ", continued"
	if from == 0 {
		p.Y -= 3
		first, more = 0, ""
	}
	p.Head("Sticks cut alike, with the marks of their joints" + more)
	for _, line := range w.lines[first:last] {
		p.Line(line, dim.Small, false)
	}
}
