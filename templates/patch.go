package templates

import (
	"pegwright/draw"
	"pegwright/geom/vec"
)

// patch is a rectangle on paper that something takes, turned as lettering is: a
// box in axes of its own that begin at a point and run along u.
type patch struct {
	at, u vec.P
	own   draw.Box
	box   draw.Box // the upright box about it
}

// upright returns the patch of a box that is not turned.
func upright(b draw.Box) patch { return patch{u: vec.P{X: 1}, own: b, box: b} }

// bound finds the upright box about the patch.
func (q *patch) bound() {
	c := q.corners()
	q.box = draw.NoBox().With(c[:]...)
}

// moved returns the patch as far off as p lies from the origin.
func (q patch) moved(p vec.P) patch {
	q.at = q.at.Add(p)
	q.box = draw.Box{Min: q.box.Min.Add(p), Max: q.box.Max.Add(p)}
	return q
}

// in carries a point on paper into the axes of the patch, out the other way.
func (q patch) in(p vec.P) vec.P {
	d := p.Sub(q.at)
	return vec.P{X: d.Dot(q.u), Y: d.Dot(q.u.Left())}
}

func (q patch) out(p vec.P) vec.P { return q.at.Add(q.u.Mul(p.X)).Add(q.u.Left().Mul(p.Y)) }

// corners returns the corners on paper, counter-clockwise.
func (q patch) corners() [4]vec.P {
	b := q.own
	return [4]vec.P{q.out(b.Min), q.out(vec.P{X: b.Max.X, Y: b.Min.Y}), q.out(b.Max), q.out(vec.P{X: b.Min.X, Y: b.Max.Y})}
}

// meets reports whether two patches share an area: they do unless they are apart
// along an axis of one of them.
func (q *patch) meets(o *patch) bool {
	return touch(q.box, o.box) && (q.u == o.u && q.u.Y == 0 || q.reached(o) && o.reached(q))
}

// reached reports whether the box about the other patch, in the axes of this one,
// shares an area with it.
func (q *patch) reached(o *patch) bool {
	b := draw.NoBox()
	for _, p := range o.corners() {
		b = b.With(q.in(p))
	}
	return touch(q.own, b)
}

// crossed reports whether the way from a to b runs through the patch.
func (q *patch) crossed(a, b vec.P) bool {
	const slack = 1e-6 // what is apart by less is decided in the patch's own axes
	if min(a.X, b.X) > q.box.Max.X+slack || max(a.X, b.X) < q.box.Min.X-slack ||
		min(a.Y, b.Y) > q.box.Max.Y+slack || max(a.Y, b.Y) < q.box.Min.Y-slack {
		return false
	}
	_, _, ok := clipSegment(q.own, q.in(a), q.in(b))
	return ok
}

// nearest returns the point of the patch that is nearest to p.
func (q patch) nearest(p vec.P) vec.P {
	p = q.in(p)
	return q.out(vec.P{X: min(max(p.X, q.own.Min.X), q.own.Max.X), Y: min(max(p.Y, q.own.Min.Y), q.own.Max.Y)})
}
