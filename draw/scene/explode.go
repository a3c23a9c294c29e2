package scene

import (
	"sync"

	"pegwright/draw"
	"pegwright/draw/view"
	"pegwright/geom"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// Exploded returns the parts of the exploded view: receiver, enterer carried
// back along its moves, pegs drawn out on the side they enter, and the thin
// lines from each part to its seat.
func Exploded(j *geom.Joint) []view.Part {
	n := NearOf(j, 0.75)
	gap := 0.55 * max(j.Into.Section[0], j.Into.Section[1])
	shift := apartBy(j, gap)
	n.Enterer.Shift = shift
	parts := []view.Part{n.Receiver, n.Enterer}
	trace := view.Part{Owner: "path", Class: draw.Trace}
	line := func(a, b vec.V) { trace.Edges = append(trace.Edges, solid.Edge{A: a, B: b}) }
	for _, c := range tips(j) {
		line(c.Add(shift), seatOf(j, c))
	}
	for _, p := range j.Pegs {
		d := direction(p)
		part := pegPart(p)
		back := d.Mul(-(p.Length - p.Head + gap/2))
		mouth := p.From
		if !entersFirst(j, p) {
			back, mouth = back.Add(shift), mouth.Add(shift)
		}
		part.Shift = back
		parts = append(parts, part)
		line(p.From.Add(d.Mul(p.Length-p.Head)).Add(back), mouth)
	}
	parts = append(parts, pieceParts(j, gap/2, line)...)
	return append(parts, trace)
}

// Apart is a joint pulled apart, to be drawn in one field or several. Any number
// may draw it at once.
type Apart struct {
	joint  *geom.Joint
	choose sync.Mutex // held while a camera is chosen
	parts  []view.Part
	stage  *stage
}

// Picture takes the picture of the joint for a field of w by h, hidden edges dashed
// or left out.
func (a *Apart) Picture(w, h float64, hidden bool) Picture {
	return TakePicture(a.camera(w, h), a.parts, hidden)
}

// camera returns the camera for a field of w by h. The first who asks has the joint
// pulled apart.
func (a *Apart) camera(w, h float64) view.Camera {
	a.choose.Lock()
	defer a.choose.Unlock()
	if a.stage == nil {
		a.parts = Exploded(a.joint)
		a.stage = newStage(a.joint, a.parts)
	}
	return a.stage.camera(w, h)
}

// tips returns the corners of the tenon that go in first.
func tips(j *geom.Joint) []vec.V {
	if j.Tenon.Empty() || len(j.Moves) == 0 {
		return nil
	}
	d := j.Moves[0].Direction
	_, far := j.Tenon.Extent(d)
	var out []vec.V
	for _, v := range j.Tenon.V {
		if far-d.Dot(v) < 1 {
			out = append(out, v)
		}
	}
	return out
}

// seatOf returns where the path of a corner of the tenon meets the mouth of the
// mortise: its place drawn back along the move to the bearing plane.
func seatOf(j *geom.Joint, c vec.V) vec.V {
	d := j.Moves[0].Direction
	k := d.Dot(j.Bearing.N)
	if k > -0.05 {
		return c
	}
	return c.Sub(d.Mul(j.Bearing.Height(c) / k))
}
