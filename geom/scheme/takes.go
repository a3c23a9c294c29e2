package scheme

import (
	"math"

	"pegwright/geom/joint"
	"pegwright/geom/peg"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// takes returns what a joint takes from its receiver: its mortise, pocket or
// notch, and its bores with the wood that must stand round them.
func (s *Scheme) takes(p *Pact) []void {
	if p.taken != nil {
		return p.taken
	}
	k, ok := joint.Lookup(p.Kind)
	set := s.Settings(p)
	set.Auto, set.Offset = false, 0
	site := joint.Site{ID: p.ID, R: p.R.laid(), E: p.E.laid(), End: p.End, REnd: p.REnd, Set: set, Meet: p.Meeting()}
	if IsScarf(p.Kind) { // each stick still ends where they meet: it will reach to the far end of the table
		site.R, site.E = p.R.reaching(p.REnd, set.Scarf.Length).laid(), p.E.reaching(p.End, set.Scarf.Length).laid()
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
	if IsScarf(p.Kind) { // both sides of it are kept clear
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

// collide reports whether two joints leave less than the usual web between
// their voids.
func (s *Scheme) collide(p, q *Pact) bool {
	left, right := s.takes(p), s.takes(q)
	for i := range left {
		a := &left[i]
		for k := range right {
			b := &right[k]
			if (!a.shell && !b.shell || a.bore != nil || b.bore != nil) && a.meets(b, s.Std.Web) {
				return true
			}
		}
	}
	return false
}

// DeepenBores gives blind bores that were planned shallower than a peg wants
// the usual depth where no other joint has taken the wood: a void of another
// joint stays the usual web away.
func (s *Scheme) DeepenBores() {
	for _, p := range s.Pacts {
		usual := peg.BlindDepth(s.Settings(p).Bore, s.Std.BlindStep)
		if p.Blind == 0 || p.Blind >= usual {
			continue
		}
		was := *p
		p.Blind, p.taken = usual, nil
		for _, q := range s.Pacts {
			if q != p && (q.R == p.R || IsScarf(q.Kind) && q.E == p.R) && s.collide(p, q) {
				*p = was
				break
			}
		}
	}
}

// FlushPegs saws a joint's pegs flush where another stick stands before their
// heads or leads.
func (s *Scheme) FlushPegs() {
	for _, p := range s.Pacts {
		for _, v := range s.takes(p) {
			if v.bore == nil || p.Flush {
				continue
			}
			dir := v.bore.To.Sub(v.bore.From).Unit()
			long := newVoid(solid.Bore{From: v.bore.From.Sub(dir.Mul(s.Std.Head)), To: v.bore.To.Add(dir.Mul(s.Std.Lead)), Diameter: v.bore.Diameter}.Prism())
			for _, st := range s.Order {
				if st != p.R && st != p.E && s.body(st).meets(&long, 0) {
					p.Flush = true
					break
				}
			}
		}
	}
}

// Span is a stretch of a stick, from Lo to Hi along its line, mm.
type Span struct{ Lo, Hi float64 }

// Taken are the stretches of a stick that the joints it receives take wood
// from.
func (s *Scheme) Taken(st *Stick) []Span {
	o, dir := st.Timber.Place.O, st.Timber.Place.X
	var r []Span
	for _, q := range s.Pacts {
		if q.R != st {
			continue
		}
		for _, v := range s.takes(q) {
			a := Span{math.Inf(1), math.Inf(-1)}
			for _, c := range v.V {
				u := c.Sub(o).Dot(dir)
				a.Lo, a.Hi = min(a.Lo, u), max(a.Hi, u)
			}
			r = append(r, a)
		}
	}
	return r
}

// Place is the middle of what a joint takes from its receiver, in frame axes,
// or the start of its enterer's line where it takes nothing.
func (s *Scheme) Place(p *Pact) vec.V {
	if v := s.takes(p); len(v) > 0 {
		return v[0].lo.Lerp(v[0].hi, 0.5)
	}
	return p.E.Timber.Place.O
}
