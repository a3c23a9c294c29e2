package solve

import (
	"fmt"
	"math"

	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/joint"
	"pegwright/geom/peg"
	"pegwright/geom/spec"
)

// settle gives every joint its numbers: the trade's defaults, then the
// layout's, then what the generator needs, then the layout's for the entering
// role, then the joint's own, then the adjustments that select it.
func (s *solver) settle() {
	hit := make([]bool, len(s.d.Adjust))
	for _, p := range s.pacts {
		for i, a := range s.d.Adjust {
			if a.Joints.Set && s.selects(a.Joints, p.e, p.r) {
				hit[i] = true
				p.user = p.user.With(a.Joint)
			}
		}
		s.endToEnd(p)
		p.set = s.settingsOf(p)
	}
	s.shareOpposed()
	for _, p := range s.pacts {
		s.sane(p)
		s.draw(p)
	}
	for i, a := range s.d.Adjust {
		if a.Joints.Set && !hit[i] {
			s.unmatched(a.Joints, "joint")
		}
	}
}

// settingsOf returns the numbers of one joint.
func (s *solver) settingsOf(p *pact) joint.Settings {
	std := s.std
	u := s.d.Layout.All.With(p.own).With(s.roleLayout(p.e.t.Role)).With(p.user)
	q := s.usual(p, u.Thickness)
	set := joint.Settings{
		Thickness: q.thickness, FromRef: u.FromReference.Or(std.offRef), TenonLength: u.TenonLength.Or(q.length), Through: u.Through.Or(false),
		Housing: u.Housing.Or(0), HoldStart: u.HoldBackStart.Or(0), HoldEnd: u.HoldBackEnd.Or(0), Deeper: std.deeper, Clearance: u.Clearance.Or(0),
		Bore: u.Bore.Or(q.bore), Pegs: s.usualPegs(p), OffShoulder: u.OffShoulder.Or(q.offShoulder), Along: std.along, FromFace: int(u.FromFace.Or(0)),
		Head: u.Head.Or(std.head), Lead: u.Lead.Or(std.lead), Steps: int(u.Steps.Or(1)), Depth: u.SeatDepth.Or(0),
		Square: u.Draw.Or("") == "square", BlindDepth: p.set.BlindDepth, PegOff: p.pegOff, Flush: p.flush,
	}
	s.shapes(p, u, &set)
	if u.Stub.Or(false) {
		set.Pegs = 0
		set.TenonLength = u.TenonLength.Or(std.stub)
	}
	if u.Pegs.Set {
		set.Pegs = int(u.Pegs.V)
	}
	if u.Along.Set {
		set.Centred, set.Along = u.Along.Centred, u.Along.MM
	}
	if set.BlindDepth == 0 {
		set.BlindDepth = 2 * inch
	}
	p.drawAt = u.Drawbore.At
	set.Auto = !u.Drawbore.Set || u.Drawbore.Mode == spec.DrawAuto
	if u.Drawbore.Set && u.Drawbore.Mode == spec.DrawLength {
		set.Offset = u.Drawbore.MM
	}
	if lapped(p.kind) {
		s.lapSettings(p, u, &set)
	}
	return set
}

// usualSizes are the trade's sizes for one joint, mm.
type usualSizes struct {
	thickness, length float64 // of the tenon
	bore, offShoulder float64
}

// usual returns the sizes that the joint has where nothing is written: stout
// tenons and bores between stout timbers, slight ones for what only braces or
// closes a wall. A thickness that is written moves the hole.
func (s *solver) usual(p *pact, thickness spec.Length) usualSizes {
	std, role := s.std, p.e.t.Role
	stout := min(p.r.t.Section[0], p.r.t.Section[1]) > 6.5*inch
	slight := role == "brace" || role == "girt" || role == "door post" || role == "window post" || role == "header" || role == "rail"
	q := usualSizes{thickness: std.thin, length: std.tenon, bore: std.smallBore, offShoulder: std.offShoulder}
	if stout && !slight {
		q.thickness = std.thick
	}
	q.thickness = thickness.Or(q.thickness)
	thick := q.thickness > std.thin+1e-6
	if (role == "tie" || thick || stout) && !slight {
		q.bore = std.bigBore
	}
	if thick {
		q.offShoulder = std.offShoulder2
	}
	if slight {
		q.length = std.braceTenon
	}
	return q
}

// roleLayout is what the layout says for a role, alone.
func (s *solver) roleLayout(role string) spec.JointSettings {
	for _, r := range s.d.Layout.Roles {
		if r.Role.S == role {
			return r.Settings
		}
	}
	return spec.JointSettings{}
}

// sane faults numbers that leave no joint at all.
func (s *solver) sane(p *pact) {
	r, e := p.r.t, p.e.t
	most := min(r.Ideal[0], r.Ideal[1])
	if lapped(p.kind) {
		s.saneLap(p)
		return
	}
	s.saneWedged(p)
	if isScarf(p.kind) {
		s.saneScarf(p)
		return
	}
	if p.kind == "plain bearing" || p.end == geom.Mid {
		return
	}
	if p.set.Thickness >= most {
		at := s.saidAt(p, func(j spec.JointSettings) spec.Length { return j.Thickness })
		s.fault(at, s.f.Units.FormatJoint(p.set.Thickness), fmt.Sprintf("the tenon of %s is as thick as %s itself (%s)", e.ID, r.ID, s.f.Units.FormatJoint(most)),
			"make the tenon a quarter to a third of the timber's thickness")
	}
	if p.set.Bore > most/2 {
		at := s.saidAt(p, func(j spec.JointSettings) spec.Length { return j.Bore })
		s.fault(at, "", fmt.Sprintf("a bore of %s is more than half of what %s is thick (%s)", s.f.Units.FormatJoint(p.set.Bore), r.ID, s.f.Units.FormatJoint(most)), "bore 3/4 to 1-1/4 in (20 to 30 mm)")
	}
	if p.set.Pegs > 4 {
		s.fault(p.at, fmt.Sprint(p.set.Pegs), "no more than four pegs go in one joint", "give 0 to 4")
	}
}

// saidAt is where a length of a joint's settings stands in the description: at
// the joint, in an adjustment or in the layout, else where the joint comes from.
func (s *solver) saidAt(p *pact, of func(spec.JointSettings) spec.Length) finding.Pos {
	for _, l := range []spec.Length{of(p.user), of(s.d.Layout.For(p.e.t.Role)), of(p.own)} {
		if l.Set && l.At.Line > 0 { // what the generator sets has no place
			return l.At
		}
	}
	return p.at
}

// draw chooses the offset of a joint that leaves it to the program, and says
// why.
func (s *solver) draw(p *pact) {
	set := &p.set
	if !set.Auto {
		p.why = "offset as given in the description"
		if set.Offset == 0 {
			p.why = "not drawn: the holes are in line"
		}
		return
	}
	if set.Pegs == 0 || p.end == geom.Mid || p.kind == "bridle" || undrawn(p.kind) {
		return
	}
	f, step := s.f.Units.Small, s.std.drawStep
	choice, left := s.drawChoice(p)
	usual, _ := peg.Caps(set.Bore, p.r.t.Wood.Hard)
	top := math.Floor(usual/step+1e-9) * step
	switch {
	case choice.Verdict == peg.Usual && choice.Reason == peg.Serves:
		set.Offset = choice.Offset
		p.why = fmt.Sprintf("least step that leaves %s after drying in the worst of the ring directions; it leaves %s", f(s.std.drawLeft), f(choice.Left))
	case top > 0 && left(top) >= 0:
		set.Offset = top
		p.why = fmt.Sprintf("largest usual offset for this bore; at worst it leaves %s after drying, short of %s", f(left(top)), f(s.std.drawLeft))
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
func (s *solver) drawChoice(p *pact) (choice peg.Choice, left func(offset float64) float64) {
	set, st, hard := p.set, s.f.Stock, p.r.t.Wood.Hard
	receiver, enterer := peg.Drying(p.r.t.Wood, p.r.t.Moisture, st.Service), peg.Drying(p.e.t.Wood, p.e.t.Moisture, st.Service)
	if p.kind == "brace mortise and tenon" {
		b := peg.Brace{Bearing: set.OffShoulder, Along: set.Along, Width: p.e.t.Section[1], Angle: s.angle(p)}
		if set.Square {
			b.Way = peg.SquareToShoulder
		}
		return b.Auto(set.Bore, hard, s.std.drawStep, s.std.drawLeft, receiver, enterer),
			func(e float64) float64 { b.Offset = e; return peg.Worst(b.Bounds(receiver, enterer)) }
	}
	pegs := peg.Drying(s.pegs, st.PegMC, st.Service)
	q := peg.Square{Bearing: set.OffShoulder, Bore: set.Bore, Peg: set.Bore}
	return q.Auto(hard, s.std.drawStep, s.std.drawLeft, receiver, pegs),
		func(e float64) float64 { q.Offset = e; return peg.Worst(q.Bounds(receiver, pegs)) }
}

// angle is between an angled enterer and its receiver, in radians.
func (s *solver) angle(p *pact) float64 {
	c := math.Abs(p.e.t.Place.X.Dot(p.r.t.Place.X))
	return math.Acos(math.Min(c, 1))
}

// selects reports whether a selector picks the joint of e into r; r is nil
// when it picks timbers.
func (s *solver) selects(q spec.Selector, e, r *stick) bool {
	in := func(list []string, x string) bool {
		for _, l := range list {
			if l == x {
				return true
			}
		}
		return false
	}
	t := e.t
	ok := q.All || in(q.Roles, t.Role) || in(q.IDs, t.ID) || len(q.Roles)+len(q.IDs) == 0
	if r != nil {
		if len(q.IntoRoles)+len(q.IntoIDs) > 0 {
			ok = ok && (in(q.IntoRoles, r.t.Role) || in(q.IntoIDs, r.t.ID))
		}
		ok = ok && (q.Bent == 0 || t.Bent == q.Bent || r.t.Bent == q.Bent)
		ok = ok && (q.Bay == 0 || t.Bay == q.Bay || r.t.Bay == q.Bay)
		return ok && (q.Wall == "" || t.Wall == q.Wall || r.t.Wall == q.Wall)
	}
	return ok && (q.Bent == 0 || t.Bent == q.Bent) && (q.Bay == 0 || t.Bay == q.Bay) && (q.Wall == "" || t.Wall == q.Wall)
}

// adjustTimbers applies the adjustments that select timbers.
func (s *solver) adjustTimbers() {
	for _, a := range s.d.Adjust {
		if !a.Timbers.Set {
			continue
		}
		hit := false
		for _, st := range s.order {
			if !s.selects(a.Timbers, st, nil) {
				continue
			}
			hit = true
			st.overall = st.overall.With(a.Timber)
			if sec := a.Timber.Section; sec.Set {
				st.t.Section = s.asSection(st, sec)
			}
			s.trim(st, st.overall)
		}
		if !hit {
			s.unmatched(a.Timbers, "timber")
		}
	}
}

// measure notes the sizes measured on single sticks.
func (s *solver) measure() {
	for i := range s.d.Measured {
		m := &s.d.Measured[i]
		st, ok := s.sticks[m.ID.S]
		if !ok {
			s.unknown(m.ID)
			continue
		}
		if m.Start.Set {
			st.measured[0] = &m.Start
		}
		if m.End.Set {
			st.measured[1] = &m.End
		}
		if st.measured[0] == nil {
			st.measured[0] = st.measured[1]
		}
		if st.measured[1] == nil {
			st.measured[1] = st.measured[0]
		}
	}
}

func (s *solver) unknown(id spec.Text) {
	s.fault(id.At, id.S, "there is no timber called "+id.S, s.nearestTimber(id.S))
}
