package solve

import (
	"fmt"
	"math"
	"strings"

	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/joint"
	"pegwright/geom/scheme"
	"pegwright/geom/spec"
	"pegwright/geom/vec"
)

// reach checks that each joint's timbers lie as the kind needs, and runs their
// lines on to the tips it gives.
func (s *solver) reach() {
	type tip struct {
		st  *scheme.Stick
		end geom.End
		x   float64
	}
	var tips []tip
	for _, p := range s.joints {
		k, _ := joint.Lookup(p.Kind)
		p.meet = p.Meeting()
		site := p.site()
		if bad := k.Fits(site); bad != "" {
			s.Fault(p.At, p.E.Timber.ID+" into "+p.R.Timber.ID, "these timbers do not meet as a "+p.Kind+" needs: "+bad,
				"move one of the timbers, or choose another kind: "+strings.Join(joint.Names(), ", "))
			continue
		}
		t := k.Reach(site)
		if !math.IsNaN(t.E) {
			tips = append(tips, tip{p.E, p.End, t.E})
		}
		if !math.IsNaN(t.R) {
			tips = append(tips, tip{p.R, p.REnd, t.R})
		}
	}
	for _, t := range tips {
		if t.end == geom.Start {
			t.st.Lo = t.x
		} else {
			t.st.Hi = t.x
		}
	}
}

// lay gives each timber its origin, length and blank.
func (s *solver) lay() {
	for _, st := range s.Order {
		t := st.Timber
		t.Length = st.Hi - st.Lo
		if t.Length < 25 {
			s.Fault(t.At, t.ID, fmt.Sprintf("%s would be %s long", t.ID, s.Frame.Units.Format(t.Length)),
				"its joints lie too near each other or the wrong way round; check the points, the bay or the legs")
			continue
		}
		if t.Length > scheme.MaxLength {
			s.long(t.At, t.ID, t.Length)
			continue
		}
		t.Place.O = t.Place.O.Add(t.Place.X.Mul(st.Lo))
		a, b := t.Section, t.Section
		for i, m := range s.measured[st] {
			if m == nil {
				continue
			}
			size := asSection(st, *m)
			if i == 0 {
				a = size
			} else {
				b = size
			}
		}
		// A stick that measures under its ideal is laid at its ideal and reported.
		t.Blank = geom.BlankOf(t.Length, atLeast(a, t.Ideal), atLeast(b, t.Ideal))
		s.underIdeal(st, a, b)
		s.Frame.Timbers = append(s.Frame.Timbers, t)
	}
	s.meet()
}

// atLeast is the larger of two sections, either way.
func atLeast(a, b [2]float64) [2]float64 { return [2]float64{max(a[0], b[0]), max(a[1], b[1])} }

// meet faults joints whose timbers do not reach each other.
func (s *solver) meet() {
	for _, p := range s.joints {
		r := p.R.Timber
		o := p.E.Timber.Place.O
		if p.End == geom.Finish {
			o = p.E.Timber.Place.Out(vec.V{X: p.E.Timber.Length})
		}
		if p.End == geom.Mid {
			s.crosses(p)
			s.seated(p)
			continue
		}
		reach := p.E.Timber.Section[0] + p.E.Timber.Section[1]
		c := r.Place.In(o)
		if c.X < -reach || c.X > r.Length+reach || c.Y < -reach || c.Y > r.Section[0]+reach || c.Z < -reach || c.Z > r.Section[1]+reach {
			s.Fault(p.At, p.E.Timber.ID+" into "+r.ID, fmt.Sprintf("%s and %s do not meet", p.E.Timber.ID, r.ID),
				"move one of them so that the line of the first runs into the second, or name another timber")
		}
	}
}

// underIdeal reports a stick that measures less than its ideal timber.
func (s *solver) underIdeal(st *scheme.Stick, a, b [2]float64) {
	t := st.Timber
	for i, m := range [2][2]float64{a, b} {
		for k := range 2 {
			if m[k] >= t.Ideal[k]-1e-6 {
				continue
			}
			at := t.At
			if given := s.measured[st][i]; given != nil {
				at = given.At
			}
			s.Frame.Notes = append(s.Frame.Notes, finding.Finding{Severity: finding.Stop, Rule: "stick", Timbers: []string{t.ID}, At: at,
				Text: fmt.Sprintf("%s measures %s, which is under its ideal %s: no square-rule joint can be cut to it",
					t.ID, s.Frame.Units.FormatJoint(m[k]), s.Frame.Units.FormatJoint(t.Ideal[k])),
				Mend: "use another stick, or set a larger reduce for this timber"})
			return
		}
	}
}

// crosses faults joints along the length of both timbers that do not reach
// each other there.
func (s *solver) crosses(p *settled) {
	r, e := p.R.Timber, p.E.Timber
	// Nearest points of the two middle lines.
	mid := func(t *geom.Timber) vec.V { return t.Place.Out(vec.V{Y: t.Ideal[0] / 2, Z: t.Ideal[1] / 2}) }
	a, b, d := r.Place.X, e.Place.X, mid(e).Sub(mid(r))
	c := a.Dot(b)
	if math.Abs(c) > 1-1e-9 {
		return
	}
	x := (d.Dot(a) - c*d.Dot(b)) / (1 - c*c)
	y := x*c - d.Dot(b)
	if x < 0 || x > r.Length || y < 0 || y > e.Length {
		s.Fault(p.At, e.ID+" into "+r.ID, fmt.Sprintf("%s and %s do not cross", e.ID, r.ID),
			"move one of them or make it longer, so that each runs past the other")
	}
}

// seated faults a seat depth that is written and that the lines of rafter and
// plate do not give: only a building lays its rafters to it.
func (s *solver) seated(p *settled) {
	if p.Kind != "step-lap seat" && p.Kind != "birdsmouth seat" {
		return
	}
	want, deep := s.Asked(p.Pact).SeatDepth, p.site().SeatDepth()
	if !want.Set || math.Abs(want.MM-deep) < 0.5 {
		return
	}
	show := s.Frame.Units.FormatJoint
	s.Fault(s.saidAt(p, func(j spec.JointSettings) spec.Length { return j.SeatDepth }), want.Src,
		fmt.Sprintf("the seat of %s on %s is %s deep, as the two lie, and not %s", p.E.Timber.ID, p.R.Timber.ID, show(deep), show(want.MM)),
		"move the line of the rafter; under layout, rafter it holds for all rafters of a building")
}
