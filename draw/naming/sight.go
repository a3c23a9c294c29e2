package naming

import (
	"cmp"
	"math"
	"slices"

	"pegwright/draw"
	"pegwright/draw/view"
	"pegwright/geom"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// Sight tells whose wood is seen at a point of a picture.
type Sight struct {
	cam   view.Camera
	cells []sightCell         // the nearest to the viewer first
	box   map[string]draw.Box // of each part in the picture, full size
	squares
}

// sightCell is a cell of a part's wood with its box in the picture and how near it
// comes to the viewer.
type sightCell struct {
	owner string
	wood  solid.Convex
	box   draw.Box
	near  float64
}

// NewSight returns the sight of parts from a camera.
func NewSight(cam view.Camera, parts []view.Part) *Sight {
	v := &Sight{cam: cam, box: map[string]draw.Box{}}
	var cells []sightCell
	for _, p := range parts {
		whole := draw.NoBox()
		for _, c := range p.Placed() {
			b, near := draw.NoBox(), math.Inf(-1)
			for _, q := range c.V {
				b, near = b.With(cam.Project(q)), max(near, cam.Depth(q))
			}
			cells = append(cells, sightCell{p.Owner, c, b, near})
			whole = whole.With(b.Min, b.Max)
		}
		v.box[p.Owner] = whole
	}
	order := make([]int, len(cells))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(a, b int) int { return cmp.Or(cmp.Compare(cells[b].near, cells[a].near), a-b) })
	v.cells = make([]sightCell, len(cells))
	for i, n := range order {
		v.cells[i] = cells[n]
	}
	v.squares = squaresOf(v.cells)
	return v
}

// Box returns the box that a part takes in the picture at full size; an empty one
// for a part that is not there.
func (v *Sight) Box(owner string) draw.Box {
	if b, ok := v.box[owner]; ok {
		return b
	}
	return draw.NoBox()
}

// farther is how much farther from the viewer than what is seen a cell must begin
// to be passed over, mm.
const farther = 1e-3

// Owner returns the id of the part seen at a point of the picture at full size,
// "" where nothing is.
func (v *Sight) Owner(p vec.P) string {
	best, id := math.Inf(-1), ""
	from := v.cam.Flat(p)
	for _, i := range v.at(p) {
		c := &v.cells[i]
		if c.near < best-farther {
			break // and so do all that follow
		}
		if !covers(c.box, p) {
			continue
		}
		if d, ok := front(c.wood, from, v.cam.Toward); ok && d > best {
			best, id = d, c.owner
		}
	}
	return id
}

// front returns how far along d, from a point, a line leaves a cell; ok is
// false where it misses the cell.
func front(c solid.Convex, from, d vec.V) (far float64, ok bool) {
	lo, hi := math.Inf(-1), math.Inf(1)
	for _, f := range c.Faces {
		h, k := f.Plane.Height(from), f.Plane.N.Dot(d)
		switch {
		case math.Abs(k) < 1e-12:
			if h > 0 {
				return 0, false
			}
		case k > 0:
			hi = min(hi, -h/k)
		default:
			lo = max(lo, -h/k)
		}
	}
	return hi, lo < hi-1e-6
}

func covers(b draw.Box, p vec.P) bool {
	return p.X > b.Min.X && p.X < b.Max.X && p.Y > b.Min.Y && p.Y < b.Max.Y
}

// Spot is a place in the wood of a timber at which a name may point to it.
type Spot struct {
	// At is the place on the paper, mm, and Owner the timber whose wood shows there.
	At    vec.P
	Owner string
	// How the timber lies there on the paper; neither where it lies aslant.
	level, upright bool
	wood           draw.Box // of the whole timber, on paper
}

// sharesAlong are the places along a timber at which a name may point to it,
// the middle first.
var sharesAlong = [...]float64{0.5, 0.42, 0.58, 0.33, 0.67, 0.25, 0.75, 0.17, 0.83, 0.08, 0.92}

// Spots returns places on the faces of a timber that show in the picture at scale
// k, about the picture's own origin, the middle of its length first. shift is how
// far the timber is carried from its place in the frame.
func (v *Sight) Spots(t *geom.Timber, shift vec.V, k float64) []Spot {
	return v.spots(t, shift, k, math.MaxInt)
}

// Points reports whether there are such places.
func (v *Sight) Points(t *geom.Timber, shift vec.V, k float64) bool {
	return len(v.spots(t, shift, k, 1)) > 0
}

// spots returns at most so many of the places.
func (v *Sight) spots(t *geom.Timber, shift vec.V, k float64, most int) []Spot {
	d := v.cam.Project(t.Place.X)
	base := Spot{Owner: t.ID, wood: grown(v.box[t.ID], k)}
	if l := d.Len(); l > 0.05 {
		base.level, base.upright = math.Abs(d.Y) < 1e-6*l, math.Abs(d.X) < 1e-6*l
	}
	w, h := t.Ideal[0], t.Ideal[1]
	var out []Spot
	add := func(q vec.V) {
		if len(out) == most {
			return
		}
		p := v.cam.Project(t.Place.Out(q).Add(shift))
		for _, off := range []vec.P{{}, {X: 0.4}, {X: -0.4}, {Y: 0.4}, {Y: -0.4}} {
			if v.Owner(p.Add(off.Mul(1/k))) != t.ID {
				return
			}
		}
		s := base
		s.At = p.Mul(k)
		out = append(out, s)
	}
	toward := func(n vec.V) bool { return t.Place.OutDir(n).Dot(v.cam.Toward) > 0.2 }
	for _, x := range sharesAlong {
		x *= t.Length
		for _, f := range []struct{ n, q vec.V }{
			{vec.V{Y: -1}, vec.V{X: x, Z: h / 2}}, {vec.V{Z: -1}, vec.V{X: x, Y: w / 2}},
			{vec.V{Y: 1}, vec.V{X: x, Y: w, Z: h / 2}}, {vec.V{Z: 1}, vec.V{X: x, Y: w / 2, Z: h}},
		} {
			if toward(f.n) {
				add(f.q)
			}
		}
	}
	for _, e := range []struct{ n, x float64 }{{-1, 0}, {1, t.Length}} {
		if toward(vec.V{X: e.n}) {
			add(vec.V{X: e.x, Y: w / 2, Z: h / 2})
		}
	}
	return out
}

// grown returns a box scaled about the origin.
func grown(b draw.Box, k float64) draw.Box {
	return draw.Box{Min: b.Min.Mul(k), Max: b.Max.Mul(k)}
}

// MovedSpots returns places moved by so many mm on the paper.
func MovedSpots(list []Spot, by vec.P) []Spot {
	out := make([]Spot, len(list))
	for i, f := range list {
		f.At = f.At.Add(by)
		f.wood = draw.Box{Min: f.wood.Min.Add(by), Max: f.wood.Max.Add(by)}
		out[i] = f
	}
	return out
}
