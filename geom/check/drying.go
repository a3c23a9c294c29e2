package check

import (
	"fmt"
	"math"

	"pegwright/geom"
	"pegwright/geom/finding"
)

// dryingRule is the rule of every finding about what drying leaves of a draw.
const dryingRule = "drawbore drying"

// undrawnRule is the rule of the note on tenons whose pegs draw nothing home.
const undrawnRule = "peg not drawn"

// undrawn notes tenons that are pegged without draw though drying opens their
// shoulders: by what the receiver loses between its bearing plane and the peg,
// as geom.Frame.DrawLeft tells of an offset of nothing. A gap below 0.05 mm is
// none.
func (p *proof) undrawn() {
	var s slackened
	for _, j := range p.f.Joints {
		worst := 0.0
		for i := range j.Pegs {
			g := &j.Pegs[i]
			if g.Offset > 0 || g.Words == geom.NotOffset {
				continue
			}
			for _, b := range p.f.DrawLeft(j, g, p.f.Stock.Service) {
				worst = min(worst, b.Left.Shoulder)
			}
		}
		if worst < -0.05 {
			s.joints, s.worst = append(s.joints, j.ID), min(s.worst, worst)
		}
	}
	if len(s.joints) == 0 {
		return
	}
	p.add(finding.Note, undrawnRule, finding.Finding{Joints: s.joints, Mend: "draw them, as drawbore: auto does, or cut from drier wood",
		Text: fmt.Sprintf("the pegs of %s are not drawn: the shoulder will open by up to %s as the wood dries", counted(len(s.joints), "joint"), p.f.Units.Small(-s.worst))})
}

// slackened gathers the joints that end dry without draw in the same way.
type slackened struct {
	joints []string
	worst  float64 // least draw left, mm, below zero
	first  float64 // moisture at which the first goes slack, percent
}

// add adds a joint and what drying leaves of its draw, mm.
func (s *slackened) add(p *proof, j *geom.Joint, left float64) {
	s.joints, s.worst = append(s.joints, j.ID), min(s.worst, left)
	if c := p.f.DrawCurve(j, &j.Pegs[0], 8); c.Goes {
		s.first = max(s.first, c.Slack)
	}
}

// drying warns of pegs that drying leaves without draw: braces drawn square to
// the shoulder only, whose nose nothing draws home; braces whose draw toward the
// nose is used up; and joints whose draw toward the shoulder is.
func (p *proof) drying() {
	var square, nose, shoulder slackened
	for _, j := range p.f.Joints {
		switch toNose, toShoulder := p.left(j); {
		case toNose < 0 && !j.Pegs[0].AlongBrace:
			square.add(p, j, toNose)
		case toNose < 0:
			nose.add(p, j, toNose)
		case toShoulder < 0:
			shoulder.add(p, j, toShoulder)
		}
	}
	const larger = ", use a larger bore that takes a larger offset, or cut from drier wood"
	if len(square.joints) > 0 {
		p.slack(square, "draw these along the brace, or cut from drier wood",
			fmt.Sprintf("%s drawn square to the shoulder only: nothing draws the nose home as the brace shrinks, and the dry peg holds it off by up to %s",
				counted(len(square.joints), "brace joint"), p.f.Units.Small(-square.worst)))
	}
	if len(nose.joints) > 0 {
		p.slack(nose, "bring the holes nearer the nose line"+larger,
			fmt.Sprintf("%s: the offset is used up toward the nose as the brace shrinks, in the first from %.0f %% moisture on, and the dry peg holds the nose off by up to %s",
				counted(len(nose.joints), "brace joint"), nose.first, p.f.Units.Small(-nose.worst)))
	}
	if len(shoulder.joints) > 0 {
		p.slack(shoulder, "bring the holes nearer the shoulder"+larger,
			fmt.Sprintf("%s: the offset is used up as the timbers dry, in the first from %.0f %% moisture on, and the peg may hold the shoulder open by up to %s",
				counted(len(shoulder.joints), "joint"), shoulder.first, p.f.Units.Small(-shoulder.worst)))
	}
}

func (p *proof) slack(s slackened, mend, text string) {
	p.add(finding.Warn, dryingRule, finding.Finding{Joints: s.joints, Text: text, Mend: mend})
}

// left returns the least draw left in service over the drawn pegs of a joint,
// toward the nose and toward the shoulder; both +Inf where none is drawn. What
// is less than a thousandth of a millimetre below zero counts as none.
func (p *proof) left(j *geom.Joint) (nose, shoulder float64) {
	nose, shoulder = math.Inf(1), math.Inf(1)
	for i := range j.Pegs {
		g := &j.Pegs[i]
		if g.Offset == 0 {
			continue
		}
		for _, b := range p.f.DrawLeft(j, g, p.f.Stock.Service) {
			nose, shoulder = min(nose, b.Left.Nose+1e-3), min(shoulder, b.Left.Shoulder+1e-3)
		}
	}
	return nose, shoulder
}
