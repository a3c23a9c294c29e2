package joint

import (
	"math"

	"pegwright/geom"
)

// A plain bearing: the enterer's end lies against the receiver's face and
// nothing is let in. It holds by weight alone.

func fitsBearing(s Site) string {
	if s.End == geom.Mid {
		return "the enterer needs an end at the joint"
	}
	n := s.entered()
	if s.R.Place.OutDir(s.R.IdealPlane(n).N).Dot(s.away()) < math.Sin(15*math.Pi/180) {
		return "the enterer lies flatter than 15° to the receiver"
	}
	return ""
}

// reachBearing runs the enterer on to its farthest corner at the receiver's
// nominal face. Where the receiver was measured larger, the end cut takes the
// difference off.
func reachBearing(s Site) Tips {
	n := s.entered()
	face := s.R.IdealPlane(n)
	if !geom.IsReference(n) {
		face.D = s.R.Section[(n+1)%2]
	}
	pl := face.Moved(s.R.Place)
	d := s.away()
	far := math.Inf(1)
	for i := range 4 {
		p := s.E.Place.O
		if i&1 == 1 {
			p = p.Add(s.E.Place.Y.Mul(s.E.Section[0]))
		}
		if i>>1 == 1 {
			p = p.Add(s.E.Place.Z.Mul(s.E.Section[1]))
		}
		far = min(far, d.Dot(p.Add(d.Mul(-pl.Height(p)/pl.N.Dot(d)))))
	}
	tip := s.E.Place.O.Add(d.Mul(far - d.Dot(s.E.Place.O)))
	return Tips{R: math.NaN(), E: s.tip(tip)}
}

func cutBearing(s Site) Result {
	n := s.entered()
	a := frameOf(s.R, n)
	res := base(s, a, n, "Plain bearing")
	pl := s.R.BlankPlane(n).Moved(s.R.Place)
	j := &res.Joint
	j.Bearing = pl
	ec := &carver{t: s.E, id: s.ID}
	ec.take("end", half(a, a.W, 1, a.W.Dot(pl.N)*(pl.D-pl.N.Dot(a.O)), geom.RoleBearing))
	u0, u1 := span(s.E, 0, a.O, a.U)
	j.Lines = []geom.Line{{Name: "near edge of " + s.E.ID, X: u0, Main: true}, {Name: "far edge of " + s.E.ID, X: u1}}
	j.Moves = []geom.Move{{Direction: a.W.Neg(), Distance: 0}}
	res.E = ec.cuts
	return res
}
