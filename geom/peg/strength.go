package peg

import "math"

// Reference strength of one peg through a tenon between two cheeks, by the
// yield limit equations for double shear of the National Design Specification
// for Wood Construction (NDS 2018, Table 12.3.1A and B, quoted in public notes)
// with the peg's own bearing, bending and shear figures after the Timber Frame
// Engineering Council's standard TFEC 1 (recalled, not read). The equations are
// in inches, pounds and pounds per square inch; this file takes and gives
// millimetres, newtons and megapascals.

// Exact factors of the units: the pound-force is 0.45359237 kg x 9.80665 m/s².
const (
	inchMM = 25.4
	poundN = 0.45359237 * 9.80665
	psiMPa = poundN / (inchMM * inchMM)
)

// Mode is a way in which a pegged joint yields in double shear.
type Mode int

// The modes of double shear. Modes II and IIIm cannot occur there.
const (
	Im   Mode = iota // the tenon crushes under the peg
	Is               // the cheeks crush
	IIIs             // the peg bends in the tenon and turns in the cheeks
	IV               // the peg bends in the tenon and in each cheek
	V                // the peg shears across
)

// String returns the name of the mode, such as "IIIs".
func (m Mode) String() string {
	names := [...]string{"Im", "Is", "IIIs", "IV", "V"}
	if m < 0 || int(m) >= len(names) {
		return "unknown"
	}
	return names[m]
}

// Words returns what yields in a few words.
func (m Mode) Words() string {
	names := [...]string{
		"the tenon crushes under the peg", "the cheeks crush under the peg", "the peg bends in the tenon",
		"the peg bends in tenon and cheeks", "the peg shears",
	}
	if m < 0 || int(m) >= len(names) {
		return "unknown"
	}
	return names[m]
}

// Shear is one peg in double shear: a tenon (the main member) between two
// cheeks (the side members).
type Shear struct {
	Diameter       float64 // mm
	Tenon, Cheek   float64 // thickness of the tenon and of the thinner cheek along the peg, mm
	TenonAngle     float64 // load to the grain of the tenon, radians, 0 to a right angle
	CheekAngle     float64 // load to the grain of the cheeks, radians, 0 to a right angle
	TenonG, CheekG float64 // oven-dry specific gravities of the timbers
	PegG           float64 // the same of the peg
}

// Yield is one mode's answer.
type Yield struct {
	Mode   Mode
	Load   float64 // yield load, N
	Factor float64 // reduction term Rd
	Z      float64 // reference value Load/Rd of one peg, N
}

// Modes returns the five modes in the order Im, Is, IIIs, IV, V.
func (s Shear) Modes() []Yield {
	tenon, cheek := s.bearing()
	d := dowel{s.Diameter / inchMM, s.Tenon / inchMM, s.Cheek / inchMM, tenon, cheek, Bending(s.PegG) / psiMPa}
	k := 1 + 0.25*math.Max(s.TenonAngle, s.CheekAngle)/(math.Pi/2)
	loads := d.yields()
	shear := math.Pi * d.diameter * d.diameter / 2 * Shearing(s.PegG, math.Min(s.TenonG, s.CheekG)) / psiMPa
	rd := [...]float64{4 * k, 4 * k, 3.2 * k, 3.2 * k, shearFactor}
	var out []Yield
	for m, load := range [...]float64{loads[0], loads[1], loads[2], loads[3], shear} {
		out = append(out, Yield{Mode(m), load * poundN, rd[m], load * poundN / rd[m]})
	}
	return out
}

// shearFactor is Rd of mode V (TFEC 1, recalled).
const shearFactor = 3.5

// Governing returns the mode with the least reference value.
func (s Shear) Governing() Yield {
	all := s.Modes()
	least := all[0]
	for _, y := range all[1:] {
		if y.Z < least.Z {
			least = y
		}
	}
	return least
}

// bearing returns the bearing strengths along the load, psi.
func (s Shear) bearing() (tenon, cheek float64) {
	d := s.Diameter / inchMM
	at := func(timber, angle float64) float64 {
		par, perp := bearings(s.PegG, timber, d)
		return Hankinson(par, perp, angle)
	}
	return at(s.TenonG, s.TenonAngle), at(s.CheekG, s.CheekAngle)
}

// bearings returns the bearing strength of a timber under a peg along and
// across its grain, psi: the smaller of the peg's expression (TFEC 1, recalled,
// 4770 Gp^1.32 and 4900 Gp sqrt(Gt)) and of that for a metal dowel (NDS Table
// 12.3.3, 11200 G and 6100 G^1.45/sqrt(D)). Tests found less than under steel.
func bearings(peg, timber, inches float64) (along, across float64) {
	along = math.Min(4770*math.Pow(peg, 1.32), 11200*timber)
	across = math.Min(4900*peg*math.Sqrt(timber), 6100*math.Pow(timber, 1.45)/math.Sqrt(inches))
	return along, across
}

// Hankinson returns a bearing strength at an angle to the grain, in radians,
// from those along and across it (NDS Eq. 12.3-11).
func Hankinson(along, across, angle float64) float64 {
	sin, cos := math.Sincos(angle)
	return along * across / (along*sin*sin + across*cos*cos)
}

// Bending returns the bending yield strength of a peg of oven-dry specific
// gravity g, MPa: 24850 g^1.13 psi (Wood Handbook Table 5-11b, modulus of
// rupture of hardwoods at 12 %, recalled).
func Bending(g float64) float64 { return 24850 * math.Pow(g, 1.13) * psiMPa }

// Shearing returns the shear yield strength of a peg in a timber, MPa, by their
// oven-dry specific gravities: 4850 Gp Gt^0.75 psi (TFEC 1, recalled).
func Shearing(peg, timber float64) float64 {
	return 4850 * peg * math.Pow(timber, 0.75) * psiMPa
}

// dowel is a dowel in double shear in inches and psi.
type dowel struct{ diameter, main, side, mainBearing, sideBearing, bending float64 }

// yields returns the yield loads of modes Im, Is, IIIs and IV in pounds, before
// the reduction term (NDS Eq. 12.3-7 to 12.3-10).
func (d dowel) yields() [4]float64 {
	re := d.mainBearing / d.sideBearing
	k3 := -1 + math.Sqrt(2*(1+re)/re+2*d.bending*(2+re)*d.diameter*d.diameter/(3*d.mainBearing*d.side*d.side))
	return [4]float64{
		d.diameter * d.main * d.mainBearing,
		2 * d.diameter * d.side * d.sideBearing,
		2 * k3 * d.diameter * d.side * d.mainBearing / (2 + re),
		2 * d.diameter * d.diameter * math.Sqrt(2*d.mainBearing*d.bending/(3*(1+re))),
	}
}
