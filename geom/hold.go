package geom

import "pegwright/geom/peg"

// Blind reports whether the peg's hole ends in the wood of the last timber.
func (g *Peg) Blind() bool { return g.Exit == 0 }

// Taper returns the thinned end of the peg; ok is false where no tip could
// enter the two holes.
func (g *Peg) Taper() (lead peg.Lead, ok bool) {
	if g.Blind() {
		return peg.BlindLead(g.Bore), true
	}
	return peg.LeadFor(g.Bore, g.Bore, g.Offset)
}

// Grip returns how much of the peg's full body, its taper not counted, stands in
// the last timber of a blind hole, in mm along the peg: 0 for a peg that goes
// through, and below zero where the taper begins before that timber.
func (g *Peg) Grip() float64 {
	if !g.Blind() {
		return 0
	}
	lead, _ := g.Taper()
	return g.Length - g.Head - g.From.Dist(g.Mortise) - lead.Length
}
