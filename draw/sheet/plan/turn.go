package plan

import (
	"slices"

	"pegwright/draw/setout"
	"pegwright/draw/view"
	"pegwright/geom"
	"pegwright/geom/vec"
)

// wideTurned returns the plans of a building that is wider than long with its width
// along the sheet, if its roof is drawn at a larger scale so; else the plans as
// they are. Plans of one building are turned together.
func wideTurned(f *geom.Frame, plans []*survey) []*survey {
	if len(plans) == 0 {
		return plans
	}
	last := plans[len(plans)-1]
	a, b := &surveyPage{survey: last, f: f}, &surveyPage{survey: last.turn(), f: f}
	if !a.settle() || !b.settle() || a.box.W() > a.box.H() || b.k <= a.k {
		return plans
	}
	out := slices.Clone(plans)
	for i, v := range out {
		out[i] = v.turn()
	}
	return out
}

// turn returns a plan with east up and north at the left, as the bents are seen
// from the west. So it has no parts: it is the width that lies along the sheet.
func (v *survey) turn() *survey {
	s := *v
	s.seen = nil
	s.cam = view.Look(s.cam.Toward.Neg(), vec.V{X: 1})
	s.shows += ", north at the left"
	s.grid, s.side = flipped(v.side), v.grid
	s.across, s.up = nil, v.across
	for _, d := range v.up {
		s.across = append(s.across, setout.Stretch{From: -d.To, To: -d.From, N: d.N, What: d.What})
	}
	s.stations, s.squares = nil, nil
	return &s
}
