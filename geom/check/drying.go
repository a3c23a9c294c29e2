package check

import (
	"fmt"
	"math"

	"pegwright/geom"
	"pegwright/geom/finding"
)

// drying warns of pegs that drying leaves without draw: the nose of a brace
// that is drawn square to its shoulder only, and joints of which the peg goes
// slack or holds the shoulder open.
func (p *proof) drying() {
	var noses, slack []string
	var lift, open float64
	driest := 0.0
	for _, j := range p.f.Joints {
		nose, shoulder := p.left(j)
		switch {
		case nose < 0:
			noses, lift = append(noses, j.ID), min(lift, nose)
		case shoulder < 0:
			slack, open = append(slack, j.ID), min(open, shoulder)
			if c := p.f.DrawCurve(j, &j.Pegs[0], 8); c.Goes {
				driest = max(driest, c.Slack)
			}
		}
	}
	if len(noses) > 0 {
		p.add(finding.Warn, dryingRule, finding.Finding{Joints: noses,
			Text: fmt.Sprintf("once dry, the pegs of %s hold the nose off its bearing, by up to %s: nothing draws it home as the brace shrinks", counted(len(noses), "brace joint"), p.fine(-lift)),
			Mend: "draw these along the brace, or cut them from drier wood"})
	}
	if len(slack) > 0 {
		at := ""
		if driest > 0 {
			at = fmt.Sprintf(", the first from %.0f %% moisture on", driest)
		}
		p.add(finding.Warn, dryingRule, finding.Finding{Joints: slack,
			Text: fmt.Sprintf("the draw of %s is used up as the timbers dry%s: the peg may hold the shoulder open by up to %s", counted(len(slack), "joint"), at, p.fine(-open)),
			Mend: "bring the hole nearer the shoulder, use a larger bore so that a larger offset drives, or cut from drier wood"})
	}
}

const dryingRule = "drawbore drying"

// fine shows a length that the steps of a joint's dimensions would blur.
func (p *proof) fine(mm float64) string { return p.f.Units.Small(mm) }

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
