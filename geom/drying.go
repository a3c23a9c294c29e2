package geom

import (
	"math"

	"pegwright/geom/peg"
	"pegwright/geom/wood"
)

// NoseLine is what a brace's peg is measured from along the receiver.
const NoseLine = "nose line"

// NotOffset are the Words of a peg whose two holes line up by rule, as in laps,
// scarfs, seats and bridles.
const NotOffset = "not offset"

// seasoned returns the moisture of wood cut at moisture start when its
// neighbours have come to moisture mc on the way to service: a dry stick does
// not take up water from a wet one.
func (s Stock) seasoned(start, mc float64) float64 {
	if start <= s.Service {
		return s.Service
	}
	return min(start, mc)
}

// DrawLeft returns what is left of the draw of peg p of joint j when the
// timbers have dried to moisture mc, percent, for the pairings of ring
// directions: four for a brace, two for a square joint.
func (f *Frame) DrawLeft(j *Joint, p *Peg, mc float64) []peg.Bound {
	st := f.Stock
	receiver := peg.Drying(j.Into.Wood, j.Into.Moisture, st.seasoned(j.Into.Moisture, mc))
	if p.PFrom == NoseLine {
		enterer := peg.Drying(j.Of.Wood, j.Of.Moisture, st.seasoned(j.Of.Moisture, mc))
		return j.brace(p).Bounds(receiver, enterer)
	}
	q := peg.Square{Offset: p.Offset, Bearing: p.A, Bore: p.Bore, Peg: p.Bore}
	return q.Bounds(receiver, peg.Drying(st.PegWood, st.PegMC, st.Service))
}

// brace is the peg of an angled joint as the drying laws see it.
func (j *Joint) brace(p *Peg) peg.Brace {
	b := peg.Brace{Offset: p.Offset, Bearing: p.A, Along: p.P, Angle: j.Angle(), Width: j.Of.Section[1]}
	if math.Abs(j.Of.Place.Z.Dot(p.To.Sub(p.From).Unit())) > 0.5 {
		b.Width = j.Of.Section[0] // the peg runs along z, so the joint lies along y
	}
	if !p.AlongBrace {
		b.Way = peg.SquareToShoulder
	}
	return b
}

// Angle is between the lines of the two timbers, radians, up to a right angle.
func (j *Joint) Angle() float64 {
	return math.Acos(math.Min(1, math.Abs(j.Of.Place.X.Dot(j.Into.Place.X))))
}

// DrawCurve follows DrawLeft from the first shrinkage of the wetter timber to
// service, in n steps. It is empty where nothing dries.
func (f *Frame) DrawCurve(j *Joint, p *Peg, n int) peg.Curve {
	wettest := max(j.Into.Moisture, j.Of.Moisture)
	first := max(j.Into.Wood.Saturation, j.Of.Wood.Saturation)
	return peg.CurveOf(min(first, wettest), f.Stock.Service, n, func(mc float64) []peg.Bound { return f.DrawLeft(j, p, mc) })
}

// ToeGap returns how far the shoulder of a brace gapes at its toe once it has
// dried to service, mm, for tangential and for radial rings; zero for a joint
// that is not a brace's.
func (f *Frame) ToeGap(j *Joint, p *Peg) (tangential, radial float64) {
	if p.PFrom != NoseLine {
		return 0, 0
	}
	dried := peg.Drying(j.Of.Wood, j.Of.Moisture, f.Stock.Service)
	b := j.brace(p)
	return b.Toe(dried.Of(wood.Tangential)), b.Toe(dried.Of(wood.Radial))
}
