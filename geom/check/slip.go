package check

import (
	"fmt"

	"pegwright/geom"
	"pegwright/geom/finding"
)

// slip notes how far a tapered tail slides before it bites, once its timber has
// dried to service moisture. What must hold tension is warned of.
func (p *proof) slip(j *geom.Joint) {
	if j.Slip <= Thick {
		return
	}
	s := finding.Note
	if j.Tension {
		s = finding.Warn
	}
	p.add(s, "slip", finding.Finding{Timbers: []string{j.Of.ID, j.Into.ID}, Joints: []string{j.ID}, At: j.At,
		Text: fmt.Sprintf("the tail of %s will slip %s in %s before it bites, once the wood has dried to %g %%", j.Of.ID, p.show(j.Slip), j.Into.ID, p.f.Stock.Service),
		Mend: "cut it from dry stock, or let a peg carry the pull; drive a wedge again after the first winter"})
}
