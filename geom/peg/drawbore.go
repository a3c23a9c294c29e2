// Package peg holds what is known of pegs and of the holes they are driven
// through: how far the two holes of a joint are set off, what drying leaves of
// that offset, how large the opening through both is, where in a joint a hole
// may be, and what stock a peg is made from. Everything here is plane geometry
// and arithmetic in millimetres; angles are radians.
//
// Names used throughout: a is the distance from the bearing plane (the floor of
// a housing, or the ideal face) to the hole through the mortise, across the
// receiver's grain; b from the shoulder to the hole through the tenon; p from
// the bearing edge (the nose line of a brace) along the receiver to the hole
// through the mortise; e is the offset between the two holes.
package peg

import (
	"math"

	"pegwright/geom/wood"
)

// Square describes the pegged joint of a timber that enters square to the
// receiver. Its tenon hole lies nearer the shoulder than the mortise hole by
// Offset, so a driven peg draws the shoulder home.
type Square struct {
	Offset  float64 // e = a - b, mm, positive when it draws
	Bearing float64 // a, mm
	Bore    float64 // D, mm
	Peg     float64 // d, mm, the thickness of the peg where it bears
}

// TenonHole returns b, the distance from the shoulder to the hole through the
// tenon, in mm.
func (s Square) TenonHole() float64 { return s.Bearing - s.Offset }

// Left returns the draw left after drying, in mm; below zero the peg holds the
// shoulder open. The receiver has shrunk by the fraction receiver across its
// grain and the peg by the fraction peg. Reckoned between the edges that the
// peg bears on, with the peg filling the bore when it is driven:
// e - (a - D/2) S_r - d S_p.
func (s Square) Left(receiver, peg float64) float64 {
	return s.Offset - float64((s.Bearing-s.Bore/2)*receiver) - float64(s.Peg*peg)
}

// Way is the direction in which the tenon hole of a brace is set off.
type Way int

// The two ways of setting off the hole of a brace. Only AlongBrace draws the
// nose against its bearing too, so it is the usual one.
const (
	AlongBrace       Way = iota // back up the brace, away from its end
	SquareToShoulder            // toward the shoulder only
)

// String returns the shop words for the way.
func (w Way) String() string {
	if w == SquareToShoulder {
		return "toward the shoulder"
	}
	return "back up the brace"
}

// Brace describes the pegged foot or head of a brace or strut at an angle.
type Brace struct {
	Offset  float64 // e, mm, along Way
	Way     Way
	Angle   float64 // brace to receiver, radians, above 0 and up to a right angle
	Bearing float64 // a, mm
	Along   float64 // p, mm, nose line to mortise hole
	Width   float64 // of the brace in the plane of the joint, mm, for the toe
}

// Left is the draw left after drying in the two directions of a brace joint, in
// mm: below zero toward the shoulder, the peg holds the shoulder open; below
// zero toward the nose, it holds the nose off its bearing.
type Left struct{ Shoulder, Nose float64 }

// Least returns the smaller of the two.
func (l Left) Least() float64 { return math.Min(l.Shoulder, l.Nose) }

// Components returns the parts of the offset toward the shoulder and away from
// the nose, in mm: e sin θ and e cos θ along the brace, e and 0 square to the
// shoulder.
func (b Brace) Components() (shoulder, nose float64) {
	if b.Way == SquareToShoulder {
		return b.Offset, 0
	}
	sin, cos := math.Sincos(b.Angle)
	return float64(b.Offset * sin), float64(b.Offset * cos)
}

// TenonHole returns where the hole through the tenon lies: its distance from
// the shoulder, square to it, and from the nose line along the receiver, in mm.
func (b Brace) TenonHole() (fromShoulder, fromNose float64) {
	shoulder, nose := b.Components()
	return b.Bearing - shoulder, b.Along + nose
}

// ToOuter returns q, the distance from the tenon hole to the outer line of the
// brace, square to its grain, in mm: p_t sin θ + b cos θ. The outer line leaves
// the bearing plane at the nose line.
func (b Brace) ToOuter() float64 {
	fromShoulder, fromNose := b.TenonHole()
	sin, cos := math.Sincos(b.Angle)
	return float64(fromNose*sin) + float64(fromShoulder*cos)
}

// Left returns the draw left after the receiver has shrunk by the fraction
// receiver across its grain and the brace by the fraction brace across its own.
// Toward the shoulder: e_s - a S_r + q S_b cos θ. Toward the nose:
// e_n - q S_b sin θ. Hole centres are used, so a dry peg is assumed.
func (b Brace) Left(receiver, brace float64) Left {
	shoulder, nose := b.Components()
	sin, cos := math.Sincos(b.Angle)
	drift := float64(b.ToOuter() * brace)
	return Left{
		Shoulder: shoulder - float64(b.Bearing*receiver) + float64(drift*cos),
		Nose:     nose - float64(drift*sin),
	}
}

// Toe returns how far the shoulder gapes at the toe, the inner corner of the
// brace, after the brace has shrunk by the fraction brace while its nose stays
// home, in mm: width S_b cos θ.
func (b Brace) Toe(brace float64) float64 {
	return float64(float64(b.Width*brace) * math.Cos(b.Angle))
}

// Bound is the draw left for one pairing of ring directions.
type Bound struct {
	Receiver wood.Kind // how the receiver's face moves
	Enterer  wood.Kind // how the enterer moves in the plane of the joint
	Left     Left      // a square joint leaves Nose at +Inf: it has no nose
}

// Shrunk is the shrinkage of one timber from cutting to service, as fractions,
// in the two directions across its grain.
type Shrunk struct{ Tangential, Radial float64 }

// Drying returns the shrinkage of wood w from moisture from to moisture to,
// both in percent.
func Drying(w wood.Wood, from, to float64) Shrunk {
	return Shrunk{
		Tangential: w.Shrinkage(wood.Tangential, from, to),
		Radial:     w.Shrinkage(wood.Radial, from, to),
	}
}

// Of returns the fraction in direction k.
func (s Shrunk) Of(k wood.Kind) float64 {
	if k == wood.Radial {
		return s.Radial
	}
	return s.Tangential
}

// Bounds returns the draw left for a tangential and for a radial receiver, with
// the peg shrunk by the larger of its two directions. A face of a timber with
// boxed heart lies between the two, nearer the radial one.
func (s Square) Bounds(receiver, peg Shrunk) []Bound {
	worst := math.Max(peg.Tangential, peg.Radial)
	var out []Bound
	for _, r := range [...]wood.Kind{wood.Tangential, wood.Radial} {
		left := Left{Shoulder: s.Left(receiver.Of(r), worst), Nose: math.Inf(1)}
		out = append(out, Bound{Receiver: r, Left: left})
	}
	return out
}

// Bounds returns the draw left for the four pairings of ring directions, in the
// order T/T, T/R, R/T, R/R (receiver/brace).
func (b Brace) Bounds(receiver, brace Shrunk) []Bound {
	var out []Bound
	for _, r := range [...]wood.Kind{wood.Tangential, wood.Radial} {
		for _, k := range [...]wood.Kind{wood.Tangential, wood.Radial} {
			left := b.Left(receiver.Of(r), brace.Of(k))
			out = append(out, Bound{Receiver: r, Enterer: k, Left: left})
		}
	}
	return out
}

// Worst returns the least draw left over all bounds and both directions, in mm,
// +Inf when there are none.
func Worst(bounds []Bound) float64 {
	least := math.Inf(1)
	for _, b := range bounds {
		least = math.Min(least, b.Left.Least())
	}
	return least
}
