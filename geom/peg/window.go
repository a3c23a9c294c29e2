package peg

import (
	"math"
	"sort"

	"pegwright/geom/vec"
	"pegwright/geom/wood"
)

// Hole says which of the two holes of a pegged joint a rule is about.
type Hole int

// The two holes.
const (
	MortiseHole Hole = iota // through the receiver's cheeks
	TenonHole               // through the tenon, set off from it
)

// Rule keeps a hole away from one straight boundary, in the plane square to the
// peg. Wood is where N·p <= D.
type Rule struct {
	Name     string  // what the boundary is, such as "end of the tenon"
	Timber   string  // id of the timber it belongs to
	Hole     Hole    // the hole it is measured to
	N        vec.P   // unit vector out of the wood
	D        float64 // mm
	Grain    vec.P   // unit direction to measure along; zero: square to the boundary
	Kind     Kind
	Workable float64 // least workable distance from hole centre, mm, measured as Grain says
	Full     float64 // the same for full strength, mm
}

// NewRule returns the rule for a boundary of a timber of wood w with the
// distances of Least. n need not be a unit vector; d then scales with it. To
// measure an end along the grain, set Grain afterwards.
func NewRule(kind Kind, hole Hole, n vec.P, d, bore float64, w wood.Wood) Rule {
	l := n.Len()
	r := Rule{Kind: kind, Hole: hole, N: n.Unit(), D: d}
	if l > 0 {
		r.D = d / l
	}
	r.Workable, r.Full = Least(kind, bore, w)
	return r
}

// slope returns the distance square to the boundary for each millimetre
// measured along the grain.
func (r Rule) slope() float64 {
	if r.Grain == (vec.P{}) {
		return 1
	}
	return math.Abs(r.N.Dot(r.Grain.Unit()))
}

// Distance returns how far hole centre p is from the boundary, measured as
// Grain says, in mm; below zero outside the wood. Along a grain that never
// meets the boundary it is +Inf, or -Inf outside.
func (r Rule) Distance(p vec.P) float64 {
	square, slope := r.D-r.N.Dot(p), r.slope()
	if slope < same {
		return math.Inf(sign(square))
	}
	return square / slope
}

// sign is the sign of x, 1 for zero.
func sign(x float64) int {
	if x < 0 {
		return -1
	}
	return 1
}

// limit returns the boundary moved in by the measured distance w, for the
// mortise hole: N·m <= limit.
func (r Rule) limit(w float64, shift vec.P) half {
	d := r.D - float64(w*r.slope())
	if r.Hole == TenonHole {
		d -= r.N.Dot(shift)
	}
	return half{r.N, d}
}

// Grade says how good the place of a hole is.
type Grade int

// The grades, worst first.
const (
	Breaks   Grade = iota // under 1.0 bore, or the hole breaks out: do not cut
	Short                 // under the workable distance: a warning
	Workable              // workable, but under the distance for full strength
	Strong                // at or over the distance for full strength
)

// String returns "breaks", "short", "workable" or "full strength".
func (g Grade) String() string {
	names := [...]string{"breaks", "short", "workable", "full strength"}
	if g < 0 || int(g) >= len(names) {
		return "unknown"
	}
	return names[g]
}

// near is the slack of a comparison of a hole's place with a least distance, mm.
const near = 0.01

// Margin is one rule held against the hole as it is.
type Margin struct {
	Rule     Rule
	Distance float64 // hole centre to the boundary, mm, measured as the rule says
	Least    float64 // the workable distance, mm
	Grade    Grade
}

// Slack returns the distance beyond the least one, in mm; below zero when short.
func (m Margin) Slack() float64 { return m.Distance - m.Least }

// Place is the question that Window answers: a joint's peg, the two holes and
// all the boundaries around them.
type Place struct {
	Mortise vec.P   // centre of the hole through the mortise, mm
	Shift   vec.P   // from it to the centre of the hole through the tenon, mm
	Bore    float64 // D, mm
	Rules   []Rule
}

// Window is where the centre of the mortise hole may lie, with the tenon hole
// keeping its offset, and how the hole as it is stands.
type Window struct {
	Workable []vec.P  // convex, counter-clockwise, mm; nil when there is no such place
	Full     []vec.P  // the same for full strength; lies inside Workable
	Centre   vec.P    // of the largest circle inside Workable, mm
	Radius   float64  // of that circle, mm; 0 when Workable is nil
	Margins  []Margin // tightest first; equal ones in the order of the rules
	Grade    Grade    // the worst of all margins; Strong when there are no rules
}

// Reach is half the side of the square round the mortise hole, in mm, outside
// which the window is not looked for.
const Reach = 2000.0

// Window returns the window of the place. Rules on the tenon apply to the
// offset hole. Distances are compared with a slack of 0.01 mm for the grade,
// and exactly for the polygons.
func (p Place) Window() Window {
	var workable, full []half
	for _, r := range p.Rules {
		workable = append(workable, r.limit(r.Workable, p.Shift))
		full = append(full, r.limit(math.Max(r.Workable, r.Full), p.Shift))
	}
	box := boxRound(p.Mortise, Reach)
	w := Window{
		Workable: region(box, workable),
		Full:     region(box, full),
		Margins:  p.margins(),
		Grade:    Strong,
	}
	if w.Workable != nil {
		w.Centre, w.Radius = inscribed(append(sides(box), workable...))
	}
	for _, m := range w.Margins {
		w.Grade = min(w.Grade, m.Grade)
	}
	return w
}

// Tightest returns the margin with the least slack; ok is false without rules.
func (w Window) Tightest() (m Margin, ok bool) {
	if len(w.Margins) == 0 {
		return Margin{}, false
	}
	return w.Margins[0], true
}

// margins holds every rule against the hole that it is about, tightest first.
func (p Place) margins() []Margin {
	out := make([]Margin, 0, len(p.Rules))
	for _, r := range p.Rules {
		at := p.Mortise
		if r.Hole == TenonHole {
			at = at.Add(p.Shift)
		}
		m := Margin{Rule: r, Distance: r.Distance(at), Least: r.Workable}
		m.Grade = p.grade(r, m.Distance, r.D-r.N.Dot(at))
		out = append(out, m)
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].Slack() < out[j].Slack() })
	return out
}

// grade judges one distance; square is the same one square to the boundary, by
// which a hole breaks out. A distance that is no number is the worst.
func (p Place) grade(r Rule, distance, square float64) Grade {
	switch {
	case !(square > p.Bore/2), !(distance >= Closest*p.Bore-near):
		return Breaks
	case !(distance >= r.Workable-near):
		return Short
	case !(distance >= r.Full-near):
		return Workable
	}
	return Strong
}
