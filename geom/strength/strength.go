// Package strength gives a joint its reference value: what its pegs hold when
// the timbers are pulled apart, where the published equations apply. It is no
// verification: the figures are for an engineer to judge.
package strength

import (
	"fmt"
	"math"

	"pegwright/geom"
	"pegwright/geom/peg"
)

// Words stand wherever a reference value is shown.
const Words = "reference value, not verified against the standard; for your engineer"

// Duration is the load duration factor C_D that is used: 1.0, ten years of load
// (NDS 2018 Table 2.3.2). Another duration is the engineer's to choose.
const Duration = 1.0

// Capacity is the reference value of a joint in tension, pulled apart along the
// timber that enters.
type Capacity struct {
	Pegs      int         // pegs that cross both cheeks
	Modes     []peg.Yield // of the weakest peg, Im to V; nil where the equations do not apply
	Governing peg.Yield   // the least of them
	Wet       float64     // factor for moisture C_M
	Tension   float64     // N, all pegs: the sum of their values, C_D and C_M; 0 where Reason is set
	Reason    string      // why there is no reference value, "" where there is one
	Distances []Distance  // end, edge and spacing where known, in that order
}

// Distance is the shortest distance of one kind over all pegs of a joint, in
// bores, and what full strength asks for.
type Distance struct {
	Kind         string  // "end", "edge" or "spacing"
	Bores, Least float64 // bores
}

// Short reports whether the distance is short of full strength.
func (d Distance) Short() bool { return d.Bores < d.Least-1e-3 }

// String returns the distance as it is printed, such as "edge 1.5D of 4D".
func (d Distance) String() string {
	return d.Kind + " " + d.Of()
}

// Of returns the figures alone, such as "1.5D of 4D".
func (d Distance) Of() string {
	return fmt.Sprintf("%sD of %sD", tenth(d.Bores), tenth(d.Least))
}

// tenth writes x to a tenth, rounded down so that a short distance never looks
// long enough.
func tenth(x float64) string {
	return fmt.Sprintf("%g", math.Floor(x*10+1e-6)/10)
}

// Of returns the reference value of joint j.
func Of(f *geom.Frame, j *geom.Joint) Capacity {
	c := Capacity{Wet: 1}
	if !Applies(j) {
		c.Reason = "no reference value: not a pegged tenon between two cheeks"
		return c
	}
	c.Distances = distances(j)
	least := math.Inf(1)
	sum := 0.0
	for i := range j.Pegs {
		s := shearOf(f, j, &j.Pegs[i])
		if why := s.Outside(); why != "" {
			c.Reason = "no reference value: " + why
			return c
		}
		y := s.Governing()
		if sum += y.Z; y.Z < least {
			least, c.Governing, c.Modes = y.Z, y, s.Modes()
		}
		c.Pegs++
	}
	if short := governs(c.Distances); short.Short() {
		c.Reason = "no reference value: " + short.String()
		return c
	}
	made := max(j.Into.Moisture, j.Of.Moisture)
	c.Wet = peg.WetFactor(made, f.Stock.Service, c.Pegs)
	c.Tension = sum * Duration * c.Wet
	return c
}

// Applies reports whether joint j is a pegged tenon or tongue, with its cheeks
// square to the pegs: laps and seats are not, whatever pegs they have.
func Applies(j *geom.Joint) bool {
	if len(j.Pegs) == 0 {
		return false
	}
	dir, cheeks := j.Pegs[0].To.Sub(j.Pegs[0].From).Unit(), 0
	for _, w := range j.Tenon.Faces {
		if w.Role == geom.RoleCheek && math.Abs(w.Plane.N.Dot(dir)) > 1-1e-6 {
			cheeks++
		}
	}
	return cheeks == 2
}

// governs returns the distance that is shortest against what is asked for.
func governs(all []Distance) Distance {
	worst := Distance{Bores: 1, Least: 0}
	for i, d := range all {
		if i == 0 || d.Bores/d.Least < worst.Bores/worst.Least {
			worst = d
		}
	}
	return worst
}

// shearOf returns a peg of the joint as the equations see it. A blind bore
// leaves no second cheek.
func shearOf(f *geom.Frame, j *geom.Joint, p *geom.Peg) peg.Shear {
	dir := p.To.Sub(p.From).Unit()
	lo, hi := j.Tenon.Extent(dir)
	cheek := min(lo-p.From.Dot(dir), p.To.Dot(dir)-hi)
	if p.Exit == 0 {
		cheek = 0
	}
	along := math.Acos(min(1, math.Abs(j.Of.Place.X.Dot(j.Into.Place.X))))
	return peg.Shear{
		Diameter: p.Bore, Tenon: hi - lo, Cheek: cheek, CheekAngle: along,
		TenonG: j.Of.Wood.Oven, CheekG: j.Into.Wood.Oven, PegG: f.Stock.PegWood.Oven,
	}
}

// distances returns the shortest end, edge and spacing of the joint's pegs
// against what full strength asks for.
func distances(j *geom.Joint) []Distance {
	found := map[string]Distance{}
	keep := func(d Distance) {
		if old, ok := found[d.Kind]; !ok || d.Bores/d.Least < old.Bores/old.Least {
			found[d.Kind] = d
		}
	}
	for i := range j.Pegs {
		p := &j.Pegs[i]
		for _, m := range p.Window.Margins {
			kind := "edge"
			if m.Rule.Kind == peg.End {
				kind = "end"
			}
			if m.Rule.Full > 0 {
				keep(Distance{kind, m.Distance / p.Bore, m.Rule.Full / p.Bore})
			}
		}
		apart := max(peg.FullStrength(j.Of.Wood).Apart, peg.FullStrength(j.Into.Wood).Apart)
		for k := range j.Pegs[:i] {
			keep(Distance{"spacing", p.Mortise.Dist(j.Pegs[k].Mortise) / p.Bore, apart})
		}
	}
	var out []Distance
	for _, kind := range []string{"end", "edge", "spacing"} {
		if d, ok := found[kind]; ok {
			out = append(out, d)
		}
	}
	return out
}
