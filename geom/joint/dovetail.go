package joint

import (
	"math"

	"pegwright/geom"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// A half-dovetail lap: the enterer's end is lapped into the receiver, and one
// edge of its tail runs in from the full width at the tip by a flare, so that
// the tail cannot be drawn out along its own length. The other edge is
// straight; where a wedge is asked for, the notch has room for it there. The
// joint closes square to the plane of both timbers.

// Slip returns how far a tail slides along its timber before its flare bites:
// the width it has lost across the grain times the run of the flare for a rise
// of one, in the unit of width (similar triangles). shrinkage is the part of
// its width that the tail loses, as wood.Shrinkage gives it.
func Slip(width, shrinkage, run float64) float64 { return width * max(shrinkage, 0) * run }

// The wedge of a half-dovetail lap (common practice, no source): its thickness
// at the thin end, its taper, and how far it stands proud at the thick end.
const (
	wedgeThin  = inch / 4
	wedgeTaper = 1.0 / 12
	wedgeProud = inch
)

// tailShape is a half-dovetail lap.
type tailShape struct {
	lapShape
	straightN int         // face of the enterer
	straight  solid.Plane // the tail's straight edge, outward
	flared    solid.Plane // its flared edge, outward
	room      solid.Plane // the notch's side beyond the wedge; straight without one
	narrow    float64     // how much narrower the tail is at the shoulder
}

func fitsDovetail(s Site) string {
	if bad := fitsHalfLap(s); bad != "" {
		return bad
	}
	q := shapeTail(s)
	w := q.width(s)
	if q.narrow > 0.5*w {
		return "the flare leaves less than half of the tail at the shoulder; make it slighter, or the receiver narrower"
	}
	return ""
}

// width is the enterer's ideal size in the plane of the lap.
func (q tailShape) width(s Site) float64 {
	w, _ := sizes(s.E, s.E.FaceToward(q.a.W))
	return w
}

// shapeTail lays the flare on the tail's lower side, or off the reference face
// where the lap lies level, so that a wedge is driven on the other.
func shapeTail(s Site) tailShape {
	t := tailShape{lapShape: shapeLap(s)}
	t.meet = t.tailMeet(s)
	t.straightN, t.flared, t.straight = t.inN, t.out, t.in
	swap := t.in.N.Z < t.out.N.Z-1e-6
	if math.Abs(t.in.N.Z-t.out.N.Z) <= 1e-6 {
		swap = geom.IsReference(t.outN)
	}
	if swap {
		t.straightN, t.flared, t.straight = t.outN, t.in, t.out
	}
	e := s.away().Neg()
	face := t.face()
	run := s.Set.Flare
	tip := solid.Meet(t.far, t.flared, face)
	full := t.flared
	t.flared = solid.PlaneAt(tip, full.N.Mul(run).Sub(e))
	t.narrow = -full.Height(solid.Meet(t.near, t.flared, face))
	t.room = t.straight
	if s.Set.Wedge {
		thin := solid.Meet(t.far, t.straight, face).Add(t.straight.N.Mul(wedgeThin))
		t.room = solid.PlaneAt(thin, t.straight.N.Add(e.Mul(wedgeTaper)))
	}
	return t
}

// tailMeet keeps the usual depth of a tail between a third and a half of the
// receiver.
func (q lapShape) tailMeet(s Site) float64 {
	if s.Set.LapDepth > 0 {
		return q.meet
	}
	m := min(max(q.meet, -q.depth/2), -q.depth/3)
	return max(m, q.bottom)
}

func cutDovetail(s Site) Result {
	t := shapeTail(s)
	q := t.lapShape
	// The notch is the tail as it lies, with the wedge's room.
	res := q.start(s, "Half-dovetail lap", []solid.Side{inside(t.flared, geom.RoleCheek), inside(t.room, geom.RoleEnd)})
	j := &res.Joint
	ec := &carver{t: s.E, id: s.ID, cuts: res.E}
	ec.take("flare", outside(t.flared, geom.RoleCheek), inside(q.near, geom.RoleShoulder))
	more := entry
	if s.Set.Wedge {
		more = wedgeProud + entry
		t.wedge(s, j)
	}
	q.bring(ec, s, more)
	res.E = ec.cuts
	res.Tail = Tail{Width: t.width(s), Run: s.Set.Flare}
	j.Lines, j.Places = t.tailLines(s), q.places(s)
	u := q.crossings(false)
	if q.square() {
		j.Places = append(j.Places, geom.Place{On: s.R, Label: "near edge of the tail's tip", X: u[0]}, geom.Place{On: s.R, Label: "far edge of the tail's tip", X: u[1]})
	}
	q.pegs(s, &res, t.tailCorners())
	t.dims(s, j)
	return res
}

// wedge is driven from the near side along the tail's straight edge.
func (t tailShape) wedge(s Site, j *geom.Joint) {
	a, e := t.a, s.away().Neg()
	mid := solid.Meet(t.near, t.straight, t.face())
	outer := outermost(s.R, t.nearN)
	p := geom.Piece{ID: s.ID + "-wedge", Kind: "wedge", Solid: frameBlock(mid,
		outside(t.straight, geom.RoleCheek), inside(t.room, geom.RoleCheek),
		half(a, a.W, -1, t.meet, geom.RoleTable), half(a, a.W, 1, min(t.top, 0), ""),
		inside(outer.Offset(wedgeProud), geom.RoleEnd), inside(t.far, geom.RoleEnd))}
	lo, hi := p.Solid.Extent(e)
	p.Moves = []geom.Move{{Direction: e, Distance: hi - lo}}
	j.Pieces = append(j.Pieces, p)
}

// tailCorners are the tail's corners in the plane of the entered face.
func (t tailShape) tailCorners() [4]vec.V {
	f := t.face()
	return [4]vec.V{solid.Meet(t.near, t.flared, f), solid.Meet(t.near, t.straight, f),
		solid.Meet(t.far, t.straight, f), solid.Meet(t.far, t.flared, f)}
}

// tailLines are where the enterer's own sides cross the receiver's reference
// side: the straight one is the main line.
func (t tailShape) tailLines(s Site) []geom.Line {
	at := func(pl solid.Plane) float64 {
		u, _, _ := t.a.Of(solid.Meet(pl, t.refSide(), t.face()))
		return u
	}
	full := t.in
	if t.straightN == t.inN {
		full = t.out
	}
	return []geom.Line{{Name: "straight edge of " + s.E.ID, X: at(t.straight), Main: true}, {Name: "flared side of " + s.E.ID, X: at(full)}}
}

func (t tailShape) dims(s Site, j *geom.Joint) {
	a := t.a
	c := t.tailCorners()
	down := func(p vec.V, w float64) vec.V { return p.Add(a.W.Mul(w)) }
	d := dimmer{j: j, a: a}
	d.on(s.R, geom.Cutter)
	d.add("notch depth below "+faceName(s.R, a.W), a.W, down(c[1], t.meet), c[1])
	d.add("notch at the shoulder, tail alone", a.U, c[1], c[0])
	d.add("notch at the tip, tail alone", a.U, c[2], c[3])
	if s.Set.Wedge {
		f := t.face()
		d.add("wedge room at the shoulder", a.U, c[1], solid.Meet(t.near, t.room, f))
		d.add("wedge room at the tip", a.U, c[2], solid.Meet(t.far, t.room, f))
	}
	if !t.square() {
		d.add("straight edge runs on across the stick by", a.U, c[1], c[2])
	}
	t.letIn(s, &d)
	t.sideDims(s, &d)
	more := entry
	if s.Set.Wedge {
		more += wedgeProud
	}
	t.entererDims(s, &d, more)
	side := t.straight.N
	d.add("tail narrower at the shoulder", side, c[0], c[0].Sub(side.Mul(t.narrow)))
	d.add("tail at the shoulder", side, c[0], c[0].Add(side.Mul(t.width(s)-t.narrow)))
	d.add("tail at the tip", side, c[3], c[3].Add(side.Mul(t.width(s))))
	t.holeDims(j, &d)
}
