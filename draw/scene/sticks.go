package scene

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"pegwright/draw"
	"pegwright/geom"
	"pegwright/geom/measure"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// Sticks are timbers that are cut alike: one set of timber sheets serves them
// all. The first is the one drawn.
type Sticks struct{ Timbers []*geom.Timber }

// First returns the timber that is drawn.
func (g Sticks) First() *geom.Timber { return g.Timbers[0] }

// same is how far blanks, cuts and bores of timbers on one sheet may differ, mm.
const sameStick = 0.01

// AllSticks puts the timbers of a frame that are identical together, in frame
// order: role and wood are equal, and blank, cuts and bores agree to 0.01 mm
// in the timbers' own axes. Timbers without wood are left out.
func AllSticks(f *geom.Frame) []Sticks {
	type shape struct {
		points []vec.V
		group  int
	}
	var out []Sticks
	byWord := map[string][]shape{}
	for _, t := range f.Timbers {
		if t.Net == nil {
			continue
		}
		word, pts := likeness(t)
		found := -1
		for _, s := range byWord[word] {
			if agree(s.points, pts) {
				found = s.group
				break
			}
		}
		if found < 0 {
			found = len(out)
			out = append(out, Sticks{})
			byWord[word] = append(byWord[word], shape{pts, found})
		}
		out[found].Timbers = append(out[found].Timbers, t)
	}
	return out
}

// likeness writes what must be equal for timbers on one sheet, and gathers the
// points that must agree: corners of blank and cuts, ends of bores. Cuts and
// bores come in the order of their places, whatever joint made them first.
func likeness(t *geom.Timber) (word string, points []vec.V) {
	type block struct {
		word string
		pts  []vec.V
	}
	bs := make([]block, 0, len(t.Cuts)+len(t.Bores))
	for _, c := range t.Cuts {
		bs = append(bs, block{c.Name + rolesOf(c.Solid), settled(c.Solid.V)})
	}
	for _, b := range t.Bores {
		word := "bore " + strconv.Itoa(b.Entry) + " " + strconv.Itoa(b.Exit)
		bs = append(bs, block{word, []vec.V{b.From, b.To, {X: b.Diameter}}})
	}
	slices.SortStableFunc(bs, func(a, b block) int {
		if a.word != b.word || len(a.pts) == 0 || len(b.pts) == 0 {
			return cmp.Compare(a.word, b.word)
		}
		return inOrder(vec.Middle(a.pts), vec.Middle(b.pts))
	})
	words := []string{t.Role, t.Wood.Name, t.Species}
	points = append(points, vec.V{X: t.Section[0], Y: t.Section[1], Z: t.Trim}, vec.V{X: t.Moisture})
	points = append(points, settled(t.Blank.V)...)
	for _, b := range bs {
		words = append(words, b.word+" "+strconv.Itoa(len(b.pts)))
		points = append(points, b.pts...)
	}
	return strings.Join(words, "|"), points
}

// rolesOf writes the roles of a cut's faces, sorted.
func rolesOf(c solid.Convex) string {
	ws := make([]string, len(c.Faces))
	for i, f := range c.Faces {
		ws[i] = f.Role
	}
	slices.Sort(ws)
	return strings.Join(ws, ",")
}

// settled returns points in their order.
func settled(pts []vec.V) []vec.V {
	out := slices.Clone(pts)
	slices.SortStableFunc(out, inOrder)
	return out
}

// inOrder compares two points by their order.
func inOrder(a, b vec.V) int {
	switch {
	case a.Before(b):
		return -1
	case b.Before(a):
		return 1
	}
	return 0
}

func agree(a, b []vec.V) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if d := a[i].Sub(b[i]); math.Abs(d.X) > sameStick || math.Abs(d.Y) > sameStick || math.Abs(d.Z) > sameStick {
			return false
		}
	}
	return true
}

// Dark returns the timbers of the group for a key view.
func (g Sticks) Dark() map[string]bool {
	d := map[string]bool{}
	for _, t := range g.Timbers {
		d[t.ID] = true
	}
	return d
}

// Word returns the word of face n, "" where it differs from stick to stick.
func (g Sticks) Word(n int) string {
	w := g.First().FaceNames[n-1]
	for _, t := range g.Timbers[1:] {
		if t.FaceNames[n-1] != w {
			return ""
		}
	}
	return w
}

// Shows says in a line which timbers a sheet is for.
func (g Sticks) Shows() string {
	t := g.First()
	s := t.ID
	if t.Mark != "" {
		s = "no. " + t.Mark + " " + s
	}
	if n := len(g.Timbers); n > 1 {
		s += fmt.Sprintf(" (%d alike)", n)
	}
	return s
}

// SectionWords shows the two sizes across a timber, mm, in decimal inches or in
// millimetres without the unit, the smaller first.
func SectionWords(u measure.Units, s [2]float64) string {
	show := func(mm float64) string {
		if u == measure.Metric {
			return draw.Number(mm, 1)
		}
		return draw.Number(mm/25.4, 4)
	}
	return show(min(s[0], s[1])) + " x " + show(max(s[0], s[1]))
}
