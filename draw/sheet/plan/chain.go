package plan

import (
	"cmp"
	"math"
	"slices"

	"pegwright/draw/setout"
	"pegwright/geom"
	"pegwright/geom/vec"
)

// Where timbers of which many lie side by side stand is told by chains of
// dimensions along both sides of a plan; of a frame that has no grid lines, where
// all its timbers stand.

// set chains the timbers of some roles that a plan names.
func (b building) set(s *survey, roles ...string) {
	var list []*geom.Timber
	for _, t := range s.named {
		if slices.Contains(roles, t.Role) {
			list = append(list, t)
		}
	}
	s.across = append(s.across, s.chain(setout.Rows(list, vec.V{X: 1}), b.xs)...)
	s.up = append(s.up, s.chain(setout.Rows(list, vec.V{Y: 1}), b.ys)...)
}

// chain returns the dimensions of rows, and notes which faces they are taken from.
func (s *survey) chain(rows []setout.Row, lines []setout.Line) []setout.Stretch {
	var out []setout.Stretch
	for _, r := range rows {
		out = append(out, r.Chain(lines)...)
		if r.Faces == "" {
			continue
		}
		note := r.Name + " by their " + r.Faces
		if s.note != "" {
			note = s.note + "; " + note
		}
		s.note = note
	}
	return out
}

// postLines returns where the posts of a frame stand along an axis.
func postLines(f *geom.Frame, axis vec.V) []setout.Line {
	var at []setout.Line
	for _, t := range f.Timbers {
		if x, ok := setout.Reference(t, axis); ok && t.Role == "post" && !slices.ContainsFunc(at, func(l setout.Line) bool { return math.Abs(l.At-x) < 1 }) {
			at = append(at, setout.Line{At: x})
		}
	}
	return at
}

// postSteps returns the distances between the posts along an axis, and from them to
// the frame's ends.
func postSteps(f *geom.Frame, axis vec.V, lo, hi float64) []setout.Stretch {
	lines := postLines(f, axis)
	var at []float64
	for _, l := range lines {
		at = append(at, l.At)
	}
	return append(setout.Named(setout.EqualSteps(at), "posts"), toEnds(lines, lo, hi)...)
}

// toEnds returns the distances from the outermost lines to the frame's ends.
func toEnds(lines []setout.Line, lo, hi float64) []setout.Stretch {
	if len(lines) == 0 {
		return nil
	}
	byPlace := func(a, b setout.Line) int { return cmp.Compare(a.At, b.At) }
	return []setout.Stretch{{From: lo, To: slices.MinFunc(lines, byPlace).At}, {From: slices.MaxFunc(lines, byPlace).At, To: hi}}
}

// setSticks chains the posts of a frame that has no grid lines with all level
// timbers that show in a plan, and tells where sticks are scarfed to each other.
func (s *survey) setSticks(f *geom.Frame) {
	var list []*geom.Timber
	for _, t := range f.Timbers {
		if t.Role == "post" {
			list = append(list, t)
		}
	}
	for _, t := range f.Timbers {
		if t.Net != nil && math.Abs(t.Place.X.Z) < 1e-6 && s.stood().sight.Points(t, vec.V{}, 1) {
			list = append(list, t)
		}
	}
	for _, axis := range []vec.V{{X: 1}, {Y: 1}} {
		out := &s.across
		if axis.Y > 0 {
			out = &s.up
		}
		lines := postLines(f, axis)
		*out = append(*out, s.chain(setout.Rows(list, axis), lines)...)
		*out = append(*out, scarfs(f, axis, lines)...)
	}
}

// scarfs returns where sticks that lie in one line along an axis overlap, from the
// nearest lines on both sides.
func scarfs(f *geom.Frame, axis vec.V, lines []setout.Line) []setout.Stretch {
	var out []setout.Stretch
	for _, j := range f.Joints {
		if math.Abs(j.Of.Place.X.Dot(axis)) < 1-1e-6 || math.Abs(j.Into.Place.X.Dot(axis)) < 1-1e-6 {
			continue
		}
		a0, a1 := reach(j.Of, axis)
		b0, b1 := reach(j.Into, axis)
		lo, hi := max(a0, b0), min(a1, b1)
		if hi-lo < 1 {
			continue
		}
		r := setout.Row{At: []float64{lo, hi}}
		list := r.Chain(lines)
		for i := range list {
			if math.Abs(list[i].From-lo) < 1e-6 {
				list[i].What = "scarf of " + stem([]string{j.Of.ID, j.Into.ID})
			} else {
				list[i].What = ""
			}
		}
		out = append(out, list...)
	}
	return out
}

// reach returns between which places along an axis the wood of a timber lies.
func reach(t *geom.Timber, axis vec.V) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, c := range t.Net.Cells() {
		a, b := c.Extent(t.Place.InDir(axis))
		lo, hi = min(lo, a+t.Place.O.Dot(axis)), max(hi, b+t.Place.O.Dot(axis))
	}
	return lo, hi
}
