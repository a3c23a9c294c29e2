package check

import (
	"fmt"

	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/peg"
)

// grip warns of a peg in a blind hole that ends with too little of its full
// body in the last timber to hold there.
func (p *proof) grip(j *geom.Joint, g *geom.Peg) {
	if !g.Blind() || g.Grip() >= peg.LeastGrip*g.Bore-0.01 {
		return
	}
	lead, _ := g.Taper()
	p.add(finding.Warn, "peg grip", finding.Finding{Timbers: []string{j.Of.ID, j.Into.ID}, Joints: []string{j.ID}, At: j.At,
		Text: fmt.Sprintf("%s holds by %s of full body in %s, its taper of %s not counted: %.2g times its bore, where %.2g is the least and %.2g is usual",
			g.ID, p.show(max(g.Grip(), 0)), j.Into.ID, p.show(lead.Length), max(g.Grip(), 0)/g.Bore, peg.LeastGrip, peg.Grip),
		Mend: fmt.Sprintf("give %s more depth, make the tenons under it shorter, seat %s deeper, or make the bore smaller", j.Into.ID, j.Of.ID)})
}
