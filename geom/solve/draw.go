package solve

import (
	"fmt"
	"math"

	"pegwright/geom"
	"pegwright/geom/peg"
	"pegwright/geom/scheme"
)

// undrawn reports the kinds whose holes are bored in line unless asked
// otherwise: a drawn peg would lift a scarf off its table, and a wedge already
// draws its tenon.
func undrawn(kind string) bool { return scheme.IsScarf(kind) || kind == "wedged through tenon" }

// draw chooses the offset of a joint that leaves it to the program, and says
// why.
func (s *solver) draw(p *settled) {
	set := &p.set
	if !set.Auto {
		p.why = "offset as given in the description"
		if set.Offset == 0 {
			p.why = "not drawn: the holes are in line"
		}
		return
	}
	if set.Pegs == 0 || p.End == geom.Mid || p.Kind == "bridle" || undrawn(p.Kind) {
		return
	}
	f, step := s.Frame.Units.Small, s.Std.DrawStep
	choice, left := s.drawChoice(p)
	usual, _ := peg.Caps(set.Bore, p.R.Timber.Wood.Hard)
	top := math.Floor(usual/step+1e-9) * step
	switch {
	case choice.Verdict == peg.Usual && choice.Reason == peg.Serves:
		set.Offset = choice.Offset
		p.why = fmt.Sprintf("least step that leaves %s after drying in the worst of the ring directions; it leaves %s", f(s.Std.DrawLeft), f(choice.Left))
	case top > 0 && left(top) >= 0:
		set.Offset = top
		p.why = fmt.Sprintf("largest usual offset for this bore; at worst it leaves %s after drying, short of %s", f(left(top)), f(s.Std.DrawLeft))
	case choice.Reason == peg.Serves:
		set.Offset = choice.Offset
		p.why = fmt.Sprintf("above the usual %s for this bore: nothing smaller still draws after drying", f(usual))
	default:
		set.Offset = top
		p.why = fmt.Sprintf("no offset serves: %v; drawn %s, which goes slack as the timber dries", choice.Reason, f(top))
	}
}

// drawChoice returns the offset that serves best, and what an offset leaves
// after drying at worst, both in mm.
func (s *solver) drawChoice(p *settled) (choice peg.Choice, left func(offset float64) float64) {
	set, st, hard := p.set, s.Frame.Stock, p.R.Timber.Wood.Hard
	receiver, enterer := peg.Drying(p.R.Timber.Wood, p.R.Timber.Moisture, st.Service), peg.Drying(p.E.Timber.Wood, p.E.Timber.Moisture, st.Service)
	if p.Kind == "brace mortise and tenon" {
		b := peg.Brace{Bearing: set.OffShoulder, Along: set.Along, Angle: s.angle(p)}
		if set.Square {
			b.Way = peg.SquareToShoulder
		}
		return b.Auto(set.Bore, hard, s.Std.DrawStep, s.Std.DrawLeft, receiver, enterer),
			func(e float64) float64 { b.Offset = e; return peg.Worst(b.Bounds(receiver, enterer)) }
	}
	pegs := peg.Drying(st.PegWood, st.PegMC, st.Service)
	q := peg.Square{Bearing: set.OffShoulder, Bore: set.Bore, Peg: set.Bore}
	return q.Auto(hard, s.Std.DrawStep, s.Std.DrawLeft, receiver, pegs),
		func(e float64) float64 { q.Offset = e; return peg.Worst(q.Bounds(receiver, pegs)) }
}

// angle is between an angled enterer and its receiver, in radians.
func (s *solver) angle(p *settled) float64 {
	c := math.Abs(p.E.Timber.Place.X.Dot(p.R.Timber.Place.X))
	return math.Acos(math.Min(c, 1))
}
