package joint

import (
	"math"

	"pegwright/geom"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// lapShape is two timbers that cross flat on each other: both have a face
// square to W, the direction in which the enterer lies over the receiver. All
// planes are in frame axes and of the ideal timbers.
type lapShape struct {
	a           geom.Axes
	n           int         // face of the receiver that is let into
	depth       float64     // of the receiver along W
	top, bottom float64     // w of the enterer's two broad faces
	meet        float64     // w at which the halves meet
	near, far   solid.Plane // the receiver's sides, outward: near toward the enterer's body
	nearN, farN int         // their faces
	in, out     solid.Plane // the enterer's sides, outward: in toward the receiver's body (or its finish end)
	inN, outN   int
}

// flat reports whether the two timbers lie flat on each other, and returns the
// receiver's two faces that are square to the plane of both.
func flatFaces(s Site) (n, m int, ok bool) {
	square := s.R.Place.X.Cross(s.E.Place.X)
	if square.Len() < math.Sin(15*math.Pi/180) {
		return 0, 0, false
	}
	square = square.Unit()
	n = s.R.FaceToward(square)
	e := s.E.FaceToward(square)
	if ideal(s.R, n).N.Dot(square) < 1-1e-9 || ideal(s.E, e).N.Dot(square) < 1-1e-9 {
		return 0, 0, false
	}
	return n, geom.Opposite(n), true
}

// lapFace chooses the face of the receiver that the enterer is let into: the
// one that is asked for; else the one that the enterer stands nearer to; else
// the upper one, or the reference face where none looks up.
func lapFace(s Site, n, m int) int {
	if s.Set.IntoFace == n || s.Set.IntoFace == m {
		return s.Set.IntoFace
	}
	a := frameOf(s.R, n)
	_, depth := sizes(s.R, n)
	lo, hi := span(s.E, 0, a.O, a.W)
	const step = 0.5
	if math.Abs(a.W.Z) > 0.5 { // from above, unless the enterer's upper face lies lower
		if lower := a.W.Z > 0 && hi < -step || a.W.Z < 0 && lo > -depth+step; lower == (a.W.Z > 0) {
			return m
		}
		return n
	}
	switch {
	case hi > -step && lo > -depth-step && (hi > step || lo > -depth+step):
		return n
	case hi < step && lo < -depth+step && (hi < -step || lo < -depth-step):
		return m
	case !geom.IsReference(n):
		return m
	}
	return n
}

func shapeLap(s Site) lapShape {
	n, m, _ := flatFaces(s)
	n = lapFace(s, n, m)
	q := lapShape{a: frameOf(s.R, n), n: n}
	_, q.depth = sizes(s.R, n)
	q.bottom, q.top = span(s.E, 0, q.a.O, q.a.W)
	lo := max(q.bottom, -q.depth)
	q.meet = (lo + min(q.top, 0)) / 2
	if s.Set.LapDepth > 0 {
		q.meet = max(-s.Set.LapDepth, q.bottom)
	}
	q.nearN = s.R.FaceToward(s.away())
	q.farN = geom.Opposite(q.nearN)
	q.near, q.far = ideal(s.R, q.nearN), ideal(s.R, q.farN)
	along := s.R.Place.X
	if s.REnd == geom.Finish {
		along = along.Neg()
	}
	q.inN = s.E.FaceToward(along)
	q.outN = geom.Opposite(q.inN)
	q.in, q.out = ideal(s.E, q.inN), ideal(s.E, q.outN)
	return q
}

// fits says what is wrong with the place of two lapped timbers, "" for nothing.
func (q lapShape) fits(s Site) string {
	lo, hi := max(q.bottom, -q.depth), min(q.top, 0)
	switch {
	case hi-lo < 10:
		return "the two timbers do not lie in one another's depth where they cross"
	case q.meet < -q.depth+10:
		return "the lap goes through the receiver; make the lap depth less"
	case q.meet > hi-5:
		return "the enterer does not reach down to the depth of the lap; make the lap deeper or move it"
	case s.Set.LapDepth > 0 && -s.Set.LapDepth < q.bottom-tol:
		return "the lap is deeper than the enterer reaches; make the lap depth less"
	}
	return ""
}

// corners are the four places, in the plane of the entered face, where the
// sides of the two timbers cross: near in, near out, far out, far in.
func (q lapShape) corners() [4]vec.V {
	face := solid.Plane{N: q.a.W, D: q.a.W.Dot(q.a.O)}
	m := func(r, e solid.Plane) vec.V { return solid.Meet(r, e, face) }
	return [4]vec.V{m(q.near, q.in), m(q.near, q.out), m(q.far, q.out), m(q.far, q.in)}
}

// tipHolding is where an end of timber t must lie to hold all four corners that
// it shares with another.
func tipHolding(t *geom.Timber, end geom.End, corners [4]vec.V) float64 {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, c := range corners {
		x := t.Place.In(c).X
		lo, hi = min(lo, x), max(hi, x)
	}
	if end == geom.Finish {
		return hi
	}
	return lo
}

func (q lapShape) square() bool { return math.Abs(q.near.N.Dot(q.in.N)) < 1e-9 }

// outermost is the plane parallel to the ideal face n of a timber through the
// farthest corner of its blank on that side.
func outermost(t *geom.Timber, n int) solid.Plane {
	pl := ideal(t, n)
	_, pl.D = t.Blank.Moved(t.Place).Extent(pl.N)
	return pl
}

func inside(pl solid.Plane, role string) solid.Side { return solid.Side{Plane: pl, Role: role} }

func outside(pl solid.Plane, role string) solid.Side {
	return solid.Side{Plane: pl.Flip(), Role: role}
}

// ofIdeal is the word that a dimension off a timber's face in the direction d
// needs where the real face is not the ideal one.
func ofIdeal(t *geom.Timber, d vec.V, word string) string {
	n := t.FaceToward(d)
	if outermost(t, n).D-ideal(t, n).D > 1e-3 {
		return word
	}
	return ""
}

// faceName names the receiver's face that a depth is measured from.
func faceName(t *geom.Timber, d vec.V) string {
	return ofIdeal(t, d, "the ideal ") + "face"
}

// house brings the receiver's near side (and its far side where the enterer
// runs on) to its ideal face over the enterer's section.
func (q lapShape) house(rc *carver, s Site, sides ...solid.Side) {
	low, _ := s.E.Blank.Moved(s.E.Place).Extent(q.a.W)
	floor := half(q.a, q.a.W, -1, low-q.a.W.Dot(q.a.O), geom.RoleEnd)
	house := func(pl solid.Plane, n int, role string) {
		if outermost(s.R, n).D-pl.D > 1e-3 {
			rc.take("housing", append([]solid.Side{outside(pl, role), floor}, sides...)...)
		}
	}
	house(q.near, q.nearN, geom.RoleBearing)
	if s.End == geom.Mid {
		house(q.far, q.farN, geom.RoleButt)
	}
}

// bring brings the enterer's two sides to its ideal section as far as the
// receiver is wide, and the given length more.
func (q lapShape) bring(ec *carver, s Site, more float64) {
	bounds := []solid.Side{inside(outermost(s.R, q.nearN).Offset(more), geom.RoleReduced)}
	if s.End == geom.Mid {
		bounds = append(bounds, inside(outermost(s.R, q.farN).Offset(more), geom.RoleReduced))
	}
	for i, pl := range []solid.Plane{q.in, q.out} {
		if outermost(s.E, []int{q.inN, q.outN}[i]).D-pl.D > 1e-3 {
			ec.take("reduction", append(bounds[:len(bounds):len(bounds)], outside(pl, geom.RoleReduced))...)
		}
	}
}
