package solve

import (
	"fmt"
	"math"

	"pegwright/geom"
	"pegwright/geom/joint"
	"pegwright/geom/spec"
	"pegwright/geom/vec"
)

var words = map[string]vec.V{"top": up, "bottom": down, "north": north, "south": south, "east": east, "west": west}

// explicit adds the timbers and joints that the description names one by one.
func (s *solver) explicit() {
	for _, t := range s.d.Timbers {
		if len(t.Between) == 0 {
			s.explicitTimber(t)
		}
	}
	for _, t := range s.d.Timbers {
		if len(t.Between) == 2 {
			s.explicitBrace(t)
		}
	}
	if len(s.order) == 0 && len(s.faults) == 0 {
		s.fault(s.d.Title.At, "", "the description holds no timber", "add a building or a list of timbers")
	}
	first := len(s.pacts)
	for _, j := range s.d.Joints {
		s.explicitJoint(j)
	}
	s.hold(s.pacts[first:])
}

// hold marks the described joints that must hold tension: those of a tie,
// collar or king post that is joined at both its ends and so keeps two timbers
// from parting.
func (s *solver) hold(described []*pact) {
	for _, p := range described {
		role := p.e.t.Role
		if role != "tie" && role != "collar" && role != "king post" {
			continue
		}
		for _, q := range s.pacts {
			p.tension = p.tension || q != p && q.e == p.e && q.end != p.end
		}
	}
}

func point(p spec.Point) vec.V { return vec.V{X: p.X.MM, Y: p.Y.MM, Z: p.Z.MM} }

func (s *solver) explicitTimber(t spec.Timber) {
	from, to := point(t.From), point(t.To)
	if !t.From.Set || !t.To.Set {
		s.fault(t.At, t.ID.S, fmt.Sprintf("%s has no line", t.ID.S), "give from: [x, y, z] and to: [x, y, z], the ends of its reference arris")
		return
	}
	if from.Dist(to) < 25 {
		s.fault(t.To.At, t.ID.S, "from and to are the same place", "give two points at least an inch apart")
		return
	}
	dir := to.Sub(from).Unit()
	o1, n1, o2, n2, ok := s.references(t, dir)
	if !ok {
		return
	}
	role := t.Role.Or("post")
	a, b := t.Section.A, t.Section.B
	if !t.Section.Set {
		a, b = s.size(role)
	}
	size1, size2 := a, b
	// Level and sloping sticks are written width x depth: depth off the face
	// that looks up or down, whichever order the faces are named in.
	if math.Abs(dir.Z) < 0.999 && math.Abs(o1.Z) > math.Abs(o2.Z) {
		size1, size2 = b, a
	}
	l := line{at: from, dir: dir, out1: o1, out2: o2, size1: size1, size2: size2, name1: n1, name2: n2, name3: contrary(n1), name4: contrary(n2)}
	s.add(t.ID.S, role, t.At, l, 0, from.Dist(to), t.TimberSettings)
}

func contrary(w string) string {
	return map[string]string{"top": "underside", "bottom": "top", "north": "south", "south": "north", "east": "west", "west": "east"}[w]
}

// references returns the outward directions of a timber's two reference faces.
func (s *solver) references(t spec.Timber, dir vec.V) (o1 vec.V, n1 string, o2 vec.V, n2 string, ok bool) {
	names := []string{"south", "west"}
	switch {
	case len(t.Faces) == 2:
		names = []string{t.Faces[0].S, t.Faces[1].S}
	case math.Abs(dir.Z) > 0.999:
	case math.Abs(dir.X) > math.Abs(dir.Y):
		names = []string{"top", "south"}
	default:
		names = []string{"top", "west"}
	}
	at := t.At
	if len(t.Faces) == 2 {
		at = t.Faces[0].At
	}
	square := func(d vec.V) vec.V { return d.Sub(dir.Mul(d.Dot(dir))) }
	o1, o2 = square(words[names[0]]), square(words[names[1]])
	if o1.Len() < 0.05 || o2.Len() < 0.05 || math.Abs(o1.Unit().Dot(o2.Unit())) > 1e-6 {
		s.fault(at, names[0]+", "+names[1], fmt.Sprintf("%s cannot have these two reference faces", t.ID.S),
			"name two neighbouring faces along its length, such as [top, south]")
		return
	}
	return o1.Unit(), names[0], o2.Unit(), names[1], true
}

func (s *solver) explicitBrace(t spec.Timber) {
	a, okA := s.sticks[t.Between[0].S]
	b, okB := s.sticks[t.Between[1].S]
	if !okA {
		s.unknown(t.Between[0])
	}
	if !okB {
		s.unknown(t.Between[1])
	}
	if !okA || !okB {
		return
	}
	if !plumb(a) {
		a, b = b, a
	}
	if !plumb(a) || math.Abs(b.t.Place.X.Z) > 1e-6 {
		s.fault(t.Between[0].At, t.ID.S, "a brace stands between one plumb and one level timber", "for other places give it from and to, and write its joints")
		return
	}
	h := b.t.Place.X
	if t.Toward.Set {
		h = words[t.Toward.S]
	} else {
		mid := b.t.Place.Out(vec.V{X: (b.lo + b.hi) / 2})
		if mid.Sub(a.t.Place.O).Dot(h) < 0 {
			h = h.Neg()
		}
	}
	if math.Abs(a.t.IdealPlane(a.t.FaceToward(h)).Moved(a.t.Place).N.Dot(h)) < 1-1e-8 {
		s.fault(t.Between[0].At, t.ID.S, "a brace runs square to a face of its post, and "+b.t.ID+" does not", "for other places give it from and to, and write its joints")
		return
	}
	var off *float64
	if t.OffReference.Set {
		off = &t.OffReference.MM
	}
	legs := t.Legs
	if !legs.Set {
		s.fault(t.At, t.ID.S, "the brace has no legs", "add legs: 24\" x 24\"")
		return
	}
	if st := s.braceBetween(t.ID.S, a, b, h, legs, off, t.TimberSettings); st != nil {
		st.t.At = t.At
	}
}

// plumb reports whether a stick stands upright, to 1 mm in ten metres. A brace
// is laid out against faces that are plumb and level.
func plumb(s *stick) bool {
	x := s.t.Place.X
	return math.Hypot(x.X, x.Y) < 1e-4
}

func (s *solver) explicitJoint(j spec.Joint) {
	e, okE := s.sticks[j.Of.S]
	r, okR := s.sticks[j.Into.S]
	if !okE {
		s.unknown(j.Of)
	}
	if !okR {
		s.unknown(j.Into)
	}
	if _, ok := joint.Lookup(j.Kind.S); !ok {
		s.fault(j.Kind.At, j.Kind.S, "there is no such joint kind", "use one of: "+join(joint.Names()))
		return
	}
	if !okE || !okR {
		return
	}
	if e == r {
		s.fault(j.Into.At, j.Into.S, "a timber cannot be joined to itself", "name another timber")
		return
	}
	p := &pact{id: j.ID.Or(jointID(e, r)), kind: j.Kind.S, r: r, e: e, end: geom.End(j.End.S), user: j.JointSettings, at: j.At}
	s.byKind(p)
	for _, q := range s.pacts {
		if q.id == p.id {
			s.fault(j.At, p.id, "there is already a joint of this name", "give this one an id of its own")
			return
		}
	}
	s.pacts = append(s.pacts, p)
}

// byKind finds the ends that meet in a described joint, where its kind tells, and
// what its kind has of its own.
func (s *solver) byKind(p *pact) {
	none := spec.Drawbore{Mode: spec.DrawNone, Set: true}
	switch p.kind {
	case "step-lap seat", "birdsmouth seat":
		p.end, p.pegOff = geom.Mid, 1.5*s.std.smallBore
		p.user.Drawbore = none
	case "bridle":
		p.rEnd = s.nearEnd(p.r, p.e, p.end)
		if !p.user.Thickness.Set {
			third := min(p.r.t.Section[0], p.r.t.Section[1]) / 3
			p.own.Thickness, p.own.FromReference = set(third), set(third)
		}
		if !p.user.Drawbore.Set {
			p.own.Drawbore = none
		}
	case "cross lap":
		p.end = geom.Mid
	case "corner lap":
		s.someEnd(p)
		p.rEnd = s.nearEnd(p.r, p.e, p.end)
	default:
		s.someEnd(p)
	}
}

// someEnd takes the end of the enterer that is nearer where none is written.
func (s *solver) someEnd(p *pact) {
	if p.end == geom.Mid {
		p.end = s.nearEnd(p.e, p.r, "")
	}
}

// nearEnd is the end of a that lies nearer to b's line, or to b's given end.
func (s *solver) nearEnd(a, b *stick, bEnd geom.End) geom.End {
	far := func(p vec.V) float64 {
		d := p.Sub(b.t.Place.O)
		if bEnd != "" {
			x := b.lo
			if bEnd == geom.Finish {
				x = b.hi
			}
			return p.Dist(b.t.Place.Out(vec.V{X: x}))
		}
		return d.Sub(b.t.Place.X.Mul(d.Dot(b.t.Place.X))).Len()
	}
	if far(a.t.Place.Out(vec.V{X: a.lo})) <= far(a.t.Place.Out(vec.V{X: a.hi})) {
		return geom.Start
	}
	return geom.Finish
}
