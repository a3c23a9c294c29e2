package solve

import (
	"fmt"
	"math"

	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/joint"
	"pegwright/geom/peg"
	"pegwright/geom/spec"
	"pegwright/geom/vec"
)

func isScarf(kind string) bool { return kind == "half-lap scarf" || kind == "splayed scarf" }

// undrawn reports the kinds whose holes are bored in line unless asked
// otherwise: a drawn peg would lift a scarf off its table, and a wedge already
// draws its tenon.
func undrawn(kind string) bool { return isScarf(kind) || kind == "wedged through tenon" }

// endToEnd settles which end of the receiver a scarf stands at.
func (s *solver) endToEnd(p *pact) {
	if isScarf(p.kind) && p.rEnd == geom.Mid {
		p.rEnd = s.nearEnd(p.r, p.e, p.end)
	}
}

// meeting is the point midway between the ends of the lines of a joint end to
// end, as they were planned.
func (p *pact) meeting() vec.V {
	at := func(st *stick, end geom.End) vec.V {
		x := st.lo
		if end == geom.Finish {
			x = st.hi
		}
		return st.t.Place.Out(vec.V{X: x})
	}
	return at(p.r, p.rEnd).Lerp(at(p.e, p.end), 0.5)
}

// usualPegs is how many pegs a joint has where nothing is written: two in a
// scarf and in a deep angled enterer, else one.
func (s *solver) usualPegs(p *pact) int {
	if isScarf(p.kind) {
		return 2
	}
	if p.kind == "brace mortise and tenon" && p.e.t.Role != "brace" && p.e.t.Section[p.e.depthAxis()] > s.std.deep-1e-6 {
		return 2
	}
	return 1
}

// Undercut and key of a half-lap scarf where nothing is written: 1 in 5, and a
// sixth of the depth (common practice, no source).
const (
	usualUndercut = 5
	keyShare      = 1.0 / 6
)

// shapes settles the numbers of scarfs, wedged tenons and the variants of the
// mortise and tenon.
func (s *solver) shapes(p *pact, u spec.JointSettings, set *joint.Settings) {
	set.Haunch, set.Proud = u.Haunch.Or(0), u.Proud.Or(0)
	set.Diminished, set.SquareEnd = u.Diminished.Or(false), u.SquareEnd.Or(false)
	c := u.Scarf
	set.Scarf = joint.Scarf{Length: c.Length.Or(0), Butt: c.Butt.Or(0), Upright: c.Upright.Or(false), Squint: 0}
	if n := c.Undercut.Or(usualUndercut); n > 0 {
		set.Scarf.Squint = 1 / n
	}
	if k := c.Key.Or("none"); k != "none" {
		set.Scarf.Key = c.KeySize.Or(keyShare * min(p.r.t.Section[0], p.r.t.Section[1]))
		set.Scarf.Wedges = k == "wedges"
	}
	set.Drop = u.Drop.Or(0)
	if p.kind == "wedged through tenon" && !u.Drop.Set {
		run := s.between(p.r, outOf(p)) - set.Housing + set.Proud
		set.Drop = max(math.Round(run/6/s.std.shop), 1) * s.std.shop
	}
	if n := u.Taper.Or(0); n > 0 {
		set.Taper = 1 / n
	}
	set.Centred = p.kind == "wedged through tenon"
}

// holds tells how far a wedged tenon will draw before it bites again once wood
// and wedge have dried, and stops a flare that dries out of its hold.
func (s *solver) holds(p *pact, j *geom.Joint) {
	if p.kind != "wedged through tenon" {
		return
	}
	st, show := s.f.Stock, s.f.Units.FormatJoint
	tenon := peg.Drying(p.e.t.Wood, p.e.t.Moisture, st.Service)
	wedge := peg.Drying(s.pegs, st.PegMC, st.Service)
	loss, drop, length := p.site().WedgedLoss(tenon.Tangential, wedge.Tangential)
	if loss < drop {
		j.Slip = joint.Slip(loss, 1, length/drop)
		if j.Slip >= 0.5 {
			j.Words = append(j.Words, fmt.Sprintf("The tenon of %s loses up to %s of height as it dries to %g %% and could then draw %s before it bites: use dry stock, or drive the wedge again after the first winter.",
				p.e.t.ID, show(loss), st.Service, show(j.Slip)))
		}
		return
	}
	s.f.Notes = append(s.f.Notes, finding.Finding{Severity: finding.Stop, Rule: "slip", At: p.at, Joints: []string{p.id}, Timbers: []string{p.e.t.ID, p.r.t.ID},
		Text: fmt.Sprintf("the wedged tenon of %s loses %s of height as it dries, as much as its drop of %s: nothing would hold it in %s", p.e.t.ID, show(loss), show(drop), p.r.t.ID),
		Mend: "give it a greater drop, or use dry stock"})
}
