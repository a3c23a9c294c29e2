package joint

import (
	"math"

	"pegwright/geom"
	"pegwright/geom/peg"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// An angled mortise and tenon: a brace or strut leans toward the corner. Its
// outer (long) edge crosses the receiver's ideal face at the nose line N. The
// mortise end, the housing end and the cut across the brace's nose all lie in
// the plane through N square to the face; the shoulder and the tenon end are
// parallel to the face. Depths are square to the face.

func fitsAngled(s Site) string {
	if s.End == geom.Mid {
		return "the enterer needs an end at the joint"
	}
	n := s.entered()
	a := frameOf(s.R, n)
	d := s.away()
	switch {
	case math.Abs(d.Dot(a.V)) > 1e-6:
		return "the enterer leans sideways across the receiver's face"
	case d.Dot(a.W) < math.Sin(15*math.Pi/180):
		return "the enterer lies flatter than 15° to the receiver"
	case math.Abs(d.Dot(a.U)) < 1e-6:
		return "the enterer meets the receiver square; use a square mortise and tenon"
	}
	return ""
}

type angledShape struct {
	a            geom.Axes
	n            int
	lean         float64 // +1 or -1: the corner lies toward lean*U
	sin, cos     float64 // of the angle between brace and receiver
	nose         float64 // u of the nose line
	outer, inner int     // the enterer's faces
	r0, r1       float64
	v0, v1       float64
	tip          float64 // w of the tenon end
	across       float64
	depth        float64
}

func shapeAngled(s Site) angledShape {
	n := s.entered()
	q := angledShape{a: frameOf(s.R, n), n: n, lean: 1}
	q.across, q.depth = sizes(s.R, n)
	d := s.away()
	if d.Dot(q.a.U) < 0 {
		q.lean = -1
	}
	q.sin, q.cos = d.Dot(q.a.W), math.Abs(d.Dot(q.a.U))
	q.outer = s.E.FaceToward(q.a.U.Mul(-q.lean))
	q.inner = geom.Opposite(q.outer)
	// u where the outer plane meets w = 0.
	pl := ideal(s.E, q.outer)
	q.nose = -pl.Height(q.a.O) / pl.N.Dot(q.a.U)
	q.v0, q.v1 = span(s.E, 0, q.a.O, q.a.V)
	q.r0, q.r1 = s.Set.FromRef, s.Set.FromRef+s.Set.Thickness
	q.tip = s.tenonEnd(q.depth)
	return q
}

func reachAngled(s Site) Tips {
	q := shapeAngled(s)
	return Tips{R: math.NaN(), E: s.tip(q.a.Point(q.nose, 0, q.tip))}
}

// noseSide keeps what lies on the corner's side of N.
func (q angledShape) noseSide(role string) solid.Side {
	return half(q.a, q.a.U, -q.lean, q.nose, role)
}

func cutAngled(s Site) Result {
	q := shapeAngled(s)
	a, h := q.a, s.Set.Housing
	res := base(s, a, q.n, "Angled mortise and tenon")
	j := &res.Joint
	reach := s.E.Ideal[0] + s.E.Ideal[1]
	j.LetIn = letIn(s, a, q.n, q.nose, q.nose+q.lean*reach/q.sin, q.v0, q.v1)
	foot := q.nose + q.lean*s.E.Across(q.inner)/q.sin
	j.Bearing = q.bearing(s, foot).Plane
	mortise := q.mortise(s, foot)
	res.R, res.E = q.receiverCuts(s, j, mortise), q.entererCuts(s, j)

	mid := a.Point(q.nose, (q.r0+q.r1)/2, -h)
	j.Tenon = frameBlock(mid, q.noseSide(geom.RoleNose), q.slope(s), solid.Side{Plane: j.Bearing, Role: geom.RoleShoulder}, half(a, a.W, -1, q.tip, geom.RoleEnd),
		half(a, a.V, -1, q.r0, geom.RoleCheek), half(a, a.V, 1, q.r1, geom.RoleCheek))
	j.Mortise = frameBlock(mid, append(mortise, half(a, a.W, 1, j.LetIn-h+open, ""))...)
	j.Moves = []geom.Move{{Direction: a.W.Neg(), Distance: -q.tip - h + j.LetIn}}
	j.Lines = []geom.Line{{Name: "nose line of " + s.E.ID, X: q.nose, Main: true}, {Name: "inner edge of " + s.E.ID + " on the ideal face", X: foot}}
	face := solid.Plane{N: a.W, D: a.W.Dot(a.O)}
	j.Places = []geom.Place{{On: s.E, Label: "nose line on the outer edge", X: crossAt(s.E, q.outer, face)},
		{On: s.E, Label: "shoulder on the outer edge", X: crossAt(s.E, q.outer, j.Bearing)},
		{On: s.E, Label: "shoulder on the inner edge", X: crossAt(s.E, q.inner, j.Bearing)}}
	q.pegs(s, &res)
	q.dims(s, j, foot)
	return res
}

// slope is the side of the enterer's inner edge.
func (q angledShape) slope(s Site) solid.Side {
	return solid.Side{Plane: ideal(s.E, q.inner), Role: geom.RoleEnd}
}

// mortise bounds the mortise; its mouth is open. The inner end follows the
// enterer, or stands square to the face through the inner edge, foot.
func (q angledShape) mortise(s Site, foot float64) []solid.Side {
	a, end := q.a, q.slope(s)
	if s.Set.SquareEnd {
		end = half(a, a.U, q.lean, foot, geom.RoleEnd)
	}
	return []solid.Side{q.noseSide(geom.RoleNose), end, half(a, a.W, -1, q.tip-s.Set.Deeper, geom.RoleFloor),
		half(a, a.V, -1, q.r0, geom.RoleWall), half(a, a.V, 1, q.r1+s.Set.Clearance, geom.RoleWall)}
}

// receiverCuts takes the housing, where the enterer is let in, and the mortise.
func (q angledShape) receiverCuts(s Site, j *geom.Joint, mortise []solid.Side) []geom.Cut {
	a, c := q.a, &carver{t: s.R, id: s.ID}
	if j.LetIn > 1e-3 {
		sides := []solid.Side{q.noseSide(geom.RoleNose), {Plane: j.Bearing.Flip(), Role: geom.RoleBearing}, q.slope(s)}
		if q.v0 > tol {
			sides = append(sides, half(a, a.V, -1, q.v0, geom.RoleWall))
		}
		if q.v1 < q.across-tol {
			sides = append(sides, half(a, a.V, 1, q.v1, geom.RoleWall))
		}
		c.take("housing", sides...)
	}
	c.take("mortise", mortise...)
	return c.cuts
}

// entererCuts brings the end to its ideal section and leaves the tenon.
func (q angledShape) entererCuts(s Site, j *geom.Joint) []geom.Cut {
	a, c := q.a, &carver{t: s.E, id: s.ID}
	upto := -s.Set.Housing
	if j.LetIn > 1e-3 {
		upto = j.LetIn - s.Set.Housing + entry
	}
	bring(c, a, upto)
	below := solid.Side{Plane: j.Bearing, Role: geom.RoleShoulder}
	c.take("cheek", below, half(a, a.V, 1, q.r0, geom.RoleCheek))
	c.take("cheek", below, half(a, a.V, -1, q.r1, geom.RoleCheek))
	c.take("nose", half(a, a.U, q.lean, q.nose, geom.RoleNose), half(a, a.W, 1, 0, ""))
	c.take("tenon end", half(a, a.W, 1, q.tip, geom.RoleEnd))
	return c.cuts
}

// bearing is the plane on which the shoulder lands, facing the enterer. The
// floor of a diminished housing runs from its depth at the nose to nothing at
// the inner edge, foot.
func (q angledShape) bearing(s Site, foot float64) solid.Side {
	a, h := q.a, s.Set.Housing
	if !s.Set.Diminished || h == 0 {
		return half(a, a.W, 1, -h, "")
	}
	n := a.W.Mul(math.Abs(foot - q.nose)).Add(a.U.Mul(-q.lean * h))
	return solid.Side{Plane: tidy(solid.PlaneAt(a.Point(q.nose, 0, -h), n))}
}

// floorAt is the w of the bearing plane at u.
func (q angledShape) floorAt(s Site, j *geom.Joint, u float64) float64 {
	if !s.Set.Diminished {
		return -s.Set.Housing
	}
	return -j.Bearing.Height(q.a.Point(u, 0, 0)) / j.Bearing.N.Dot(q.a.W)
}

// crossAt returns the coordinate along timber t where its ideal face n meets the
// frame plane pl, which must be parallel to that face's width.
func crossAt(t *geom.Timber, n int, pl solid.Plane) float64 {
	f := ideal(t, n)
	at := t.Place.O.Add(f.N.Mul(-f.Height(t.Place.O)))
	return t.Place.In(at).X - pl.Height(at)/pl.N.Dot(t.Place.X)
}

// pegs bores the pegs along the receiver.
func (q angledShape) pegs(s Site, res *Result) {
	set, a := s.Set, q.a
	d := s.away()
	for i := range set.Pegs {
		along := set.Along + float64(i)*3*set.Bore
		shift := d.Mul(set.Offset)
		p := geom.Peg{
			A: set.OffShoulder, P: along, PFrom: "nose line", AlongBrace: !set.Square,
			B: set.OffShoulder - set.Offset*q.sin, Words: "back up the " + s.E.Name(), Draw: d.Neg(),
		}
		if set.Square {
			shift, p.B, p.Words, p.Draw = a.W.Mul(set.Offset), set.OffShoulder-set.Offset, "toward the shoulder", a.W.Neg()
		}
		u := q.nose + q.lean*along
		w := q.floorAt(s, &res.Joint, u) - set.OffShoulder
		hole{s: s, a: a, n: q.n, u: u, w: w, v: (q.r0 + q.r1) / 2, shift: shift}.bore(&p, i, res)
		tu, _, tw := a.Of(p.Tenon)
		if set.Diminished {
			p.B = q.floorAt(s, &res.Joint, tu) - tw
		}
		p.Relish = min((tw-q.tip)/q.sin, math.Abs(tu-q.nose)/q.cos)
		grain := vec.P{X: -q.lean * q.cos, Y: -q.sin}
		end := rule(s.E, set, "tenon end", peg.End, vec.P{Y: -1}, -q.tip)
		nose := rule(s.E, set, "nose", peg.End, vec.P{X: -q.lean}, -q.lean*q.nose)
		end.Grain, nose.Grain = grain, grain
		p.Rules = append([]peg.Rule{q.bearingRule(s, &res.Joint)}, farRules(s, q.depth)...)
		p.Rules = append(p.Rules, end, nose,
			q.edge(s, q.outer, "outer edge"), q.edge(s, q.inner, "inner edge"))
		res.Joint.Pegs = append(res.Joint.Pegs, p)
	}
}

// bearingRule is the rule for the bearing, the first free surface of the receiver
// over a hole. Where the floor slopes it is measured as the hole is laid out: from
// the hole itself up to the floor over it, square to the receiver's grain.
func (q angledShape) bearingRule(s Site, j *geom.Joint) peg.Rule {
	pl := j.Bearing
	n := vec.P{X: pl.N.Dot(q.a.U), Y: pl.N.Dot(q.a.W)}
	r := rule(s.R, s.Set, "bearing face", peg.Edge, n, -pl.Height(q.a.O))
	if math.Abs(n.X) > tol {
		r.Grain = vec.P{Y: 1}
	}
	return r
}

// edge is the rule for an edge of the brace, square to its grain.
func (q angledShape) edge(s Site, face int, name string) peg.Rule {
	pl := ideal(s.E, face)
	n := vec.P{X: pl.N.Dot(q.a.U), Y: pl.N.Dot(q.a.W)}
	return rule(s.E, s.Set, name, peg.Edge, n, -pl.Height(q.a.O))
}

// dims asks for the dimensions that an angled joint is scribed with.
func (q angledShape) dims(s Site, j *geom.Joint, foot float64) {
	a, h := q.a, s.Set.Housing
	d := dimmer{j: j, a: a}
	at, square := "", " square to shoulder"
	if s.Set.Diminished && h > 0 {
		at, square = " at the nose", " at the nose, square to the receiver"
	}
	d.on(s.R, geom.Cutter)
	d.add("mortise from reference face", a.V, a.Point(q.nose, 0, -h), a.Point(q.nose, q.r0, -h))
	d.add("mortise width", a.V, a.Point(q.nose, q.r0, -h), a.Point(q.nose, q.r1+s.Set.Clearance, -h))
	d.add("nose line to inner edge on ideal face", a.U, a.Point(q.nose, q.r0, 0), a.Point(foot, q.r0, 0))
	d.add("mortise depth below bearing"+at, a.W, a.Point(q.nose, q.r0, -h), a.Point(q.nose, q.r0, q.tip-s.Set.Deeper))
	if j.LetIn > 1e-3 {
		d.add("housing depth below face"+at, a.W, a.Point(q.nose, q.r0, -h), a.Point(q.nose, q.r0, j.LetIn-h))
		d.housed(a.Point(q.nose, 0, -h), q.v0, q.v1, q.across)
	}
	d.on(s.E, geom.Cutter)
	d.add("tenon length"+square, a.W, a.Point(q.nose, q.r0, q.tip), a.Point(q.nose, q.r0, -h))
	d.add("tenon thickness", a.V, a.Point(q.nose, q.r0, q.tip), a.Point(q.nose, q.r1, q.tip))
	d.add("tenon from reference face", a.V, a.Point(q.nose, q.v0, -h), a.Point(q.nose, q.r0, -h))
	if j.LetIn > 1e-3 && s.rough() {
		d.reduced(a.Point(q.nose, q.r0, -h), a.W, j.LetIn+entry)
	}
	for _, p := range j.Pegs {
		u, v, w := a.Of(p.Mortise)
		d.on(s.R, geom.Borer)
		d.add("bearing to hole", a.W, a.Point(u, v, q.floorAt(s, j, u)), a.Point(u, v, w))
		d.add("nose line to hole", a.U, a.Point(q.nose, v, w), a.Point(u, v, w))
		u, v, w = a.Of(p.Tenon)
		d.on(s.E, geom.Borer)
		d.add("shoulder to hole", a.W, a.Point(u, v, q.floorAt(s, j, u)), a.Point(u, v, w))
		d.add("nose to hole", a.U, a.Point(q.nose, v, w), a.Point(u, v, w))
	}
}
