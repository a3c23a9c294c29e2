package solve

import (
	"fmt"

	"pegwright/geom"
	"pegwright/geom/joint"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// void is wood that a joint takes from its receiver, in frame axes.
type void struct {
	solid.Convex
	lo, hi vec.V
	bore   *solid.Bore // of which it is the room, if any
	shell  bool        // a housing, which only bores keep clear of
}

func newVoid(c solid.Convex) void {
	lo, hi := c.Bounds()
	return void{Convex: c, lo: lo, hi: hi}
}

// meets reports whether less than gap lies between two volumes.
func (a *void) meets(b *void, gap float64) bool {
	if !a.near(b, gap) {
		return false
	}
	for _, f := range a.Faces {
		if lo, _ := b.Extent(f.Plane.N); lo >= f.Plane.D+gap {
			return false
		}
	}
	return solid.Common(a.Grow(gap), b.Convex).Thickness() > 1e-3
}

// near reports whether no more than gap lies between the boxes of two volumes.
func (a *void) near(b *void, gap float64) bool {
	return a.lo.X-b.hi.X <= gap && b.lo.X-a.hi.X <= gap &&
		a.lo.Y-b.hi.Y <= gap && b.lo.Y-a.hi.Y <= gap &&
		a.lo.Z-b.hi.Z <= gap && b.lo.Z-a.hi.Z <= gap
}

// body is the stick between its tentative ends, in frame axes, cut off at the
// ideal faces of the sticks that its ends enter.
func (s *solver) body(st *stick) *void {
	if st.hull != nil && st.hullAt == [2]float64{st.lo, st.hi} {
		return st.hull
	}
	t := st.laid()
	c := t.Blank.Moved(t.Place)
	for _, p := range s.pacts {
		if p.e != st || p.end == geom.Mid {
			continue
		}
		away := t.Place.X
		if p.end == geom.Finish {
			away = away.Neg()
		}
		r := p.r.t
		face := r.IdealPlane(r.FaceToward(away)).Moved(r.Place)
		if cut := c.Clip(face.Flip(), ""); face.N.Dot(away) > 0.1 && !cut.Empty() {
			c = cut
		}
	}
	v := newVoid(c)
	st.hull, st.hullAt = &v, [2]float64{st.lo, st.hi}
	return &v
}

// laid is a copy of the stick's timber, cut off at its tentative ends.
func (st *stick) laid() *geom.Timber {
	t := *st.t
	t.Place.O = t.Place.O.Add(t.Place.X.Mul(st.lo))
	t.Length = max(st.hi-st.lo, 1)
	t.Blank = geom.BlankOf(t.Length, t.Section, t.Section)
	t.Cuts, t.Bores = nil, nil
	return &t
}

// reaching is a copy of the stick, longer at one end.
func (st *stick) reaching(end geom.End, by float64) *stick {
	c := *st
	if end == geom.Start {
		c.lo -= by
	} else {
		c.hi += by
	}
	return &c
}

// takes returns what a joint takes from its receiver: its mortise, pocket or
// notch, and its bores with the wood that must stand round them.
func (s *solver) takes(p *pact) []void {
	if p.taken != nil {
		return p.taken
	}
	k, ok := joint.Lookup(p.kind)
	set := s.settingsOf(p)
	set.Auto, set.Offset = false, 0
	site := joint.Site{ID: p.id, R: p.r.laid(), E: p.e.laid(), End: p.end, REnd: p.rEnd, Set: set, Meet: p.meeting()}
	if isScarf(p.kind) { // each stick still ends where they meet: it will reach to the far end of the table
		site.R, site.E = p.r.reaching(p.rEnd, set.Scarf.Length).laid(), p.e.reaching(p.end, set.Scarf.Length).laid()
	}
	p.taken = []void{}
	if !ok || k.Fits(site) != "" {
		return p.taken
	}
	res := k.Cut(site)
	for _, c := range res.R {
		v := newVoid(solid.Common(c.Solid, site.R.Blank).Moved(site.R.Place))
		v.shell = c.Name == "housing"
		p.taken = append(p.taken, v)
	}
	if isScarf(p.kind) { // both sides of it are kept clear
		for _, c := range res.E {
			p.taken = append(p.taken, newVoid(solid.Common(c.Solid, site.E.Blank).Moved(site.E.Place)))
		}
	}
	for _, h := range res.Bores {
		if h.On == site.R {
			b := solid.Bore{From: site.R.Place.Out(h.Bore.From), To: site.R.Place.Out(h.Bore.To), Diameter: h.Bore.Diameter}
			v := newVoid(b.Prism())
			v.bore = &b
			p.taken = append(p.taken, v)
		}
	}
	return p.taken
}

// attempt lays sticks and joints and takes them back when they cannot stay:
// when a stick would run into another that it is not joined to, or a joint's
// void into another joint's. Sticks that are not joined stay gap apart. It
// returns what is in the way, "" when nothing is.
func (s *solver) attempt(gap float64, lay func()) string {
	ns, np := len(s.order), len(s.pacts)
	lay()
	if ns > maxSticks {
		return "" // the frame is refused: see crowded
	}
	why := s.inTheWay(ns, np, gap)
	if why != "" {
		s.takeBack(ns, np)
	}
	return why
}

func (s *solver) takeBack(ns, np int) {
	for _, st := range s.order[ns:] {
		delete(s.sticks, st.t.ID)
	}
	s.order, s.pacts = s.order[:ns], s.pacts[:np]
}

// inTheWay names the first thing that sticks and joints from the given places
// in the lists on run into.
func (s *solver) inTheWay(ns, np int, gap float64) string {
	for i := ns; i < len(s.order); i++ {
		a := s.order[i]
		hull := s.body(a)
		for _, b := range s.order[:i] {
			other := s.body(b)
			if hull.near(other, gap) && !s.joined(a, b, np) && hull.meets(other, gap) {
				return b.t.ID
			}
		}
	}
	for i := np; i < len(s.pacts); i++ {
		p := s.pacts[i]
		for _, q := range s.pacts[:i] {
			if (q.r == p.r || isScarf(q.kind) && q.e == p.r) && s.collide(p, q) {
				return fmt.Sprintf("the joint of %s in %s", q.e.t.ID, q.r.t.ID)
			}
		}
	}
	return ""
}

// joined reports whether a joint from the given place on holds a and b
// together.
func (s *solver) joined(a, b *stick, np int) bool {
	for _, p := range s.pacts[np:] {
		if p.r == a && p.e == b || p.r == b && p.e == a {
			return true
		}
	}
	return false
}

// collide reports whether two joints leave less than the usual web between
// their voids.
func (s *solver) collide(p, q *pact) bool {
	left, right := s.takes(p), s.takes(q)
	for i := range left {
		a := &left[i]
		for k := range right {
			b := &right[k]
			if (!a.shell && !b.shell || a.bore != nil || b.bore != nil) && a.meets(b, s.std.web) {
				return true
			}
		}
	}
	return false
}

// flushPegs saws a joint's pegs flush where another stick stands before their
// heads or leads.
func (s *solver) flushPegs() {
	for _, p := range s.pacts {
		for _, v := range s.takes(p) {
			if v.bore == nil || p.flush {
				continue
			}
			dir := v.bore.To.Sub(v.bore.From).Unit()
			long := newVoid(solid.Bore{From: v.bore.From.Sub(dir.Mul(s.std.head)), To: v.bore.To.Add(dir.Mul(s.std.lead)), Diameter: v.bore.Diameter}.Prism())
			for _, st := range s.order {
				if st != p.r && st != p.e && s.body(st).meets(&long, 0) {
					p.flush = true
					break
				}
			}
		}
	}
}

// place is how much has been planned at a moment.
type place struct{ sticks, pacts int }

func (s *solver) mark() place { return place{len(s.order), len(s.pacts)} }

// putLast moves what was planned between two moments behind what came after.
func (s *solver) putLast(from, to place) {
	s.order = append(append(append([]*stick(nil), s.order[:from.sticks]...), s.order[to.sticks:]...), s.order[from.sticks:to.sticks]...)
	s.pacts = append(append(append([]*pact(nil), s.pacts[:from.pacts]...), s.pacts[to.pacts:]...), s.pacts[from.pacts:to.pacts]...)
}
