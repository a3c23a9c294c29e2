package solve

import (
	"fmt"

	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/joint"
	"pegwright/geom/peg"
	"pegwright/geom/wood"
)

// slip reckons how far a tapered tail slides before it bites in service, and
// puts it in words.
func (s *solver) slip(p *settled, j *geom.Joint, tail joint.Tail) {
	if tail.Width == 0 {
		return
	}
	e := p.E.Timber
	shrunk := e.Wood.Shrinkage(wood.Tangential, e.Moisture, s.Frame.Stock.Service)
	j.Slip = joint.Slip(tail.Width, shrunk, tail.Run)
	if j.Slip < 0.5 {
		return
	}
	f := s.Frame.Units.FormatJoint
	j.Words = append(j.Words, fmt.Sprintf("The tail of %s narrows by up to %s as it dries to %g %% and then slips %s along itself before it bites: use dry stock, or let the peg carry it.",
		e.ID, f(tail.Width*shrunk), s.Frame.Stock.Service, f(j.Slip)))
	if len(j.Pieces) > 0 {
		j.Words = append(j.Words, "Drive the wedge again after the first winter.")
	}
}

// holds tells how far a wedged tenon will draw before it bites again once wood
// and wedge have dried, and stops a flare that dries out of its hold.
func (s *solver) holds(p *settled, j *geom.Joint) {
	if p.Kind != "wedged through tenon" {
		return
	}
	st, show := s.Frame.Stock, s.Frame.Units.FormatJoint
	tenon := peg.Drying(p.E.Timber.Wood, p.E.Timber.Moisture, st.Service)
	wedge := peg.Drying(st.PegWood, st.PegMC, st.Service)
	loss, drop, length := p.site().WedgedLoss(tenon.Tangential, wedge.Tangential)
	if loss < drop {
		j.Slip = joint.Slip(loss, 1, length/drop)
		if j.Slip >= 0.5 {
			j.Words = append(j.Words, fmt.Sprintf("The tenon of %s loses up to %s of height as it dries to %g %% and could then draw %s before it bites: use dry stock, or drive the wedge again after the first winter.",
				p.E.Timber.ID, show(loss), st.Service, show(j.Slip)))
		}
		return
	}
	s.Frame.Notes = append(s.Frame.Notes, finding.Finding{Severity: finding.Stop, Rule: "slip", At: p.At, Joints: []string{p.ID}, Timbers: []string{p.E.Timber.ID, p.R.Timber.ID},
		Text: fmt.Sprintf("the wedged tenon of %s loses %s of height as it dries, as much as its drop of %s: nothing would hold it in %s", p.E.Timber.ID, show(loss), show(drop), p.R.Timber.ID),
		Mend: "give it a greater drop, or use dry stock"})
}
