package raise

import (
	"fmt"
	"sort"
	"strings"

	"pegwright/draw"
	"pegwright/geom"
	"pegwright/geom/vec"
)

// alike writes what makes a step what it is to those who do it, wherever in the
// frame it is done and on whichever side: the shape and the weight of what
// moves, the way it goes, the joints that close and what is driven. Mirror
// images are alike, since a crew does the same with them.
func (r *raising) alike(a *act) string {
	best := ""
	for _, mx := range []float64{1, -1} {
		for _, my := range []float64{1, -1} {
			if k := r.mirrored(a, vec.V{X: mx, Y: my, Z: 1}); best == "" || k < best {
				best = k
			}
		}
	}
	for _, t := range a.told {
		best += "|" + t.name + t.common
	}
	return best
}

// mirrored writes a step as seen in mirrors square to x and y.
func (r *raising) mirrored(a *act, m vec.V) string {
	s := a.step
	flip := func(p vec.V) vec.V { return vec.V{X: p.X * m.X, Y: p.Y * m.Y, Z: p.Z} }
	o := flip(middleOf(r.f, s.Move))
	var ws []string
	for _, id := range s.Move {
		t := r.f.Timber(id)
		ws = append(ws, t.Role+" "+stickKey(t, flip, o))
	}
	for _, id := range s.Joints {
		j := r.f.Joint(id)
		p := flip(jointAt(j)).Sub(o)
		ws = append(ws, fmt.Sprintf("%s %s %s %s %s", j.Kind, standing(j, s).Role, draw.Tenths(p.X/10), draw.Tenths(p.Y/10), draw.Tenths(p.Z/10)))
	}
	sort.Strings(ws)
	out := fmt.Sprintf("%v|%s|%v|%s|", s.Group != "", s.Motion, s.Support, draw.Tenths(s.Drop))
	for _, l := range s.Legs {
		out += draw.Direction(flip(l.Direction)) + "|"
	}
	return out + strings.Join(ws, "|")
}

// stickKey writes the size and the place of a timber about o, to a millimetre.
func stickKey(t *geom.Timber, flip func(vec.V) vec.V, o vec.V) string {
	a, b := flip(t.Place.Out(axisPoint(t, 0))).Sub(o), flip(t.Place.Out(axisPoint(t, t.Length))).Sub(o)
	ends := []string{at3(a), at3(b)}
	sort.Strings(ends)
	size := t.Section
	if size[0] > size[1] {
		size[0], size[1] = size[1], size[0]
	}
	return fmt.Sprintf("%s %s %s", draw.Tenths(size[0]), draw.Tenths(size[1]), strings.Join(ends, " "))
}

// at3 writes a point to a millimetre.
func at3(p vec.V) string {
	return draw.Tenths(p.X/10) + "," + draw.Tenths(p.Y/10) + "," + draw.Tenths(p.Z/10)
}

// axisPoint is the middle of a timber's section at x along it, in its own axes.
func axisPoint(t *geom.Timber, x float64) vec.V {
	return vec.V{X: x, Y: t.Section[0] / 2, Z: t.Section[1] / 2}
}

// middleOf is the middle of the boxes of timbers, frame axes.
func middleOf(f *geom.Frame, ids []string) vec.V {
	lo, hi := boxOf(f, ids)
	return lo.Lerp(hi, 0.5)
}

// boxOf is the box around the blanks of timbers, frame axes.
func boxOf(f *geom.Frame, ids []string) (lo, hi vec.V) {
	for i, id := range ids {
		t := f.Timber(id)
		for k, v := range t.Blank.V {
			p := t.Place.Out(v)
			if i == 0 && k == 0 {
				lo, hi = p, p
			}
			lo = vec.V{X: min(lo.X, p.X), Y: min(lo.Y, p.Y), Z: min(lo.Z, p.Z)}
			hi = vec.V{X: max(hi.X, p.X), Y: max(hi.Y, p.Y), Z: max(hi.Z, p.Z)}
		}
	}
	return lo, hi
}

// moving and standing are the two timbers of a joint that closes in a step.
func moving(j *geom.Joint, s geom.Step) *geom.Timber {
	if standing(j, s) == j.Of {
		return j.Into
	}
	return j.Of
}

func standing(j *geom.Joint, s geom.Step) *geom.Timber {
	for _, id := range s.Move {
		if id == j.Into.ID {
			return j.Of
		}
	}
	return j.Into
}

// jointAt is where a joint closes, frame axes: the middle of what it takes from
// the receiver, or else the end of the enterer.
func jointAt(j *geom.Joint) vec.V {
	var sum vec.V
	n := 0.0
	for _, c := range j.Into.Cuts {
		if c.Joint == j.ID && !c.Solid.Empty() {
			sum, n = sum.Add(j.Into.Place.Out(c.Solid.Centroid())), n+1
		}
	}
	if n > 0 {
		return sum.Mul(1 / n)
	}
	x := 0.0
	if j.OfEnd == geom.Finish {
		x = j.Of.Length
	}
	return j.Of.Place.Out(axisPoint(j.Of, x))
}
