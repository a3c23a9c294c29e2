package scene

import (
	"math"
	"sort"

	"pegwright/draw"
	"pegwright/draw/view"
	"pegwright/geom"
	"pegwright/geom/vec"
)

// Register makes the lines that lie on the timber's reference arris register
// lines, in a view to which one of the two reference faces is turned. A line
// that only looks as if it lay there, such as the edge of a tenon beyond the
// shoulder, stays as it is.
func Register(items []draw.Item, cam view.Camera, t *geom.Timber) []draw.Item {
	if t.Place.Y.Dot(cam.Toward) > -1e-6 && t.Place.Z.Dot(cam.Toward) > -1e-6 {
		return items
	}
	o, d := cam.Project(t.Place.O), cam.Project(t.Place.X)
	if d.Len() < 1e-6 {
		return items
	}
	long, d := d.Len(), d.Unit()
	out := make([]draw.Item, 0, len(items))
	for _, it := range items {
		p, ok := it.(*draw.Path)
		if !ok || p.Class != draw.Part || len(p.Pts) != 2 ||
			math.Abs(d.Cross(p.Pts[0].Sub(o))) > 0.02 || math.Abs(d.Cross(p.Pts[1].Sub(o))) > 0.02 {
			out = append(out, it)
			continue
		}
		a, b := d.Dot(p.Pts[0].Sub(o))/long, d.Dot(p.Pts[1].Sub(o))/long
		for _, s := range arris(t, min(a, b), max(a, b)) {
			q := *p
			q.Pts = []vec.P{o.Add(d.Mul(s.from * long)), o.Add(d.Mul(s.to * long))}
			if s.wood {
				q.Class = draw.Register
			}
			out = append(out, &q)
		}
	}
	return out
}

// stretch is a part of a timber's length, mm from its start end, that has its
// reference arris or has lost it.
type stretch struct {
	from, to float64
	wood     bool
}

// arris divides the timber from one coordinate along it to another where its
// reference arris comes and goes.
func arris(t *geom.Timber, from, to float64) []stretch {
	const in = 1e-3 // from the arris into the wood, mm
	xs := []float64{from, to}
	for _, c := range t.Net.Cells() {
		for _, v := range c.V {
			if math.Abs(v.Y)+math.Abs(v.Z) < 0.01 && v.X > from+0.01 && v.X < to-0.01 {
				xs = append(xs, v.X)
			}
		}
	}
	sort.Float64s(xs)
	var out []stretch
	for i, x := range xs[1:] {
		if x-xs[i] < 0.01 {
			continue
		}
		wood := t.Net.Contains(vec.V{X: (xs[i] + x) / 2, Y: in, Z: in}, 1e-4)
		if n := len(out); n > 0 && out[n-1].wood == wood {
			out[n-1].to = x
			continue
		}
		out = append(out, stretch{xs[i], x, wood})
	}
	return out
}

// Span is a stretch of a timber along its length, mm from its start end.
type Span struct{ From, To float64 }

// Long is the length of the span, mm.
func (s Span) Long() float64 { return s.To - s.From }
