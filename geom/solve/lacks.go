package solve

import (
	"fmt"
	"slices"

	"pegwright/geom"
	"pegwright/geom/spec"
)

// What a joint lacks, so that a setting has no effect on it. Each of these
// returns nothing where the setting has one.

// unpegged is about what only a peg shows.
func unpegged(p *settled, _ spec.JointSettings) string {
	if len(p.made.Pegs) == 0 {
		return "the joint has no peg"
	}
	return ""
}

// fewerPegs is about pegs beyond those that the kind of joint has room for.
func fewerPegs(p *settled, s spec.JointSettings) string {
	if has := len(p.made.Pegs); int(s.Pegs.V) > has && p.set.Pegs == int(s.Pegs.V) {
		return fmt.Sprintf("a %s takes no more than %d", p.Kind, has)
	}
	return ""
}

// blind is about the far end of pegs.
func blind(p *settled, s spec.JointSettings) string {
	through := func(g geom.Peg) bool { return g.Exit != 0 }
	if why := unpegged(p, s); why != "" || slices.ContainsFunc(p.made.Pegs, through) {
		return why
	}
	return "the peg ends in the wood"
}

// otherEntry is about the face of the receiver by which pegs enter.
func otherEntry(p *settled, s spec.JointSettings) string {
	asked := func(g geom.Peg) bool { return g.Entry == int(s.FromFace.V) }
	if why := unpegged(p, s); why != "" || slices.ContainsFunc(p.made.Pegs, asked) {
		return why
	}
	g := p.made.Pegs[0]
	if g.Exit == 0 {
		return fmt.Sprintf("the peg of a %s can only enter by face %d", p.Kind, g.Entry)
	}
	return fmt.Sprintf("the peg runs between faces %d and %d of %s", min(g.Entry, g.Exit), max(g.Entry, g.Exit), p.R.Timber.ID)
}

// inLine is about an offset between the holes.
func inLine(p *settled, s spec.JointSettings) string {
	drawn := func(g geom.Peg) bool { return g.Offset > 0 }
	if why := unpegged(p, s); why != "" || slices.ContainsFunc(p.made.Pegs, drawn) {
		return why
	}
	return fmt.Sprintf("a %s is not drawn: its holes are in line", p.Kind)
}

// otherFace is about the face that a lap or pocket is let into: a lap into one
// of the two that the joint is seen from, a pocket into one beside the face that
// is entered.
func otherFace(p *settled, s spec.JointSettings) string {
	low := min(p.made.Entered, geom.Opposite(p.made.Entered))
	if p.Kind == "drop-in pocket" {
		low = 3 - low
	}
	if v := int(s.IntoFace.V); v != low && v != low+2 {
		return fmt.Sprintf("here it can be let into face %d or %d of %s", low, low+2, p.R.Timber.ID)
	}
	return ""
}

// stopped is about the end of a tenon that stands out of the receiver.
func stopped(p *settled, _ spec.JointSettings) string {
	if p.Kind != "wedged through tenon" && !p.set.Through {
		return "the tenon does not go through"
	}
	return ""
}

// unhoused is about the shape of a housing.
func unhoused(p *settled, _ spec.JointSettings) string {
	if p.set.Housing == 0 {
		return "there is no housing"
	}
	return ""
}

// broad is about wood left where a tenon is held back.
func broad(p *settled, _ spec.JointSettings) string {
	if p.set.HoldStart == 0 && p.set.HoldEnd == 0 {
		return "the tenon is not held back"
	}
	return ""
}
