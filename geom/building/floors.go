package building

import (
	"fmt"

	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/scheme"
	"pegwright/geom/spec"
	"pegwright/geom/vec"
)

// deck is one field of joists: from one receiver to the other, side by side
// between two coordinates.
type deck struct {
	id        string
	from, to  *scheme.Stick
	dir, side vec.V // along the joists, and across them
	top       float64
	lo, hi    float64 // clear field along side
	a, b      float64 // faces of the receivers along dir
	w, d      float64
	spacing   float64
	at        finding.Pos
	bay       int
	first     int // number of the first joist
}

// layFloor lays joists into the sills: across the building from sill to sill,
// or along it from cross sill to cross sill.
func (p *plan) layFloor() {
	f := p.b.Floor
	if !f.Set {
		return
	}
	s := p.s
	if len(p.sills) == 0 {
		s.Fault(f.At, "floor", "there are no sills for the joists of this floor", "write sills: yes")
		return
	}
	w, d := p.joistSize(f.Joists)
	n := 1
	for _, dk := range p.floorDecks() {
		dk.id, dk.top, dk.w, dk.d, dk.at, dk.first = "joist", 0, w, d, f.At, n
		dk.spacing = f.Spacing.Or(p.std.joistSpacing)
		if !p.deckFits(dk, f.Joists) {
			return
		}
		n = p.layDeck(dk)
	}
}

// joistSize is the section of joists: their own, or that of the role.
func (p *plan) joistSize(own spec.Section) (w, d float64) {
	if own.Set {
		return own.A, own.B
	}
	return p.s.Size("joist")
}

// floorDecks are the fields between the sills that cross the building.
func (p *plan) floorDecks() []*deck {
	var r []*deck
	across := p.b.Floor.Direction.Or("across") == "across"
	var last *bent
	for _, bt := range p.bents {
		st := p.cross[bt.n]
		if st == nil {
			continue
		}
		if last != nil {
			a, b := p.cross[last.n], st
			lo, hi := a.High(east), b.Low(east)
			s, n := p.sills["south"], p.sills["north"]
			if across {
				r = append(r, &deck{from: s, to: n, dir: north, side: east, lo: lo, hi: hi, a: s.High(north), b: n.Low(north), bay: last.n})
			} else {
				r = append(r, &deck{from: a, to: b, dir: east, side: north, lo: s.High(north), hi: n.Low(north), a: lo, b: hi, bay: last.n})
			}
		}
		last = bt
	}
	return r
}

// layLoft lays joists from tie to tie.
func (p *plan) layLoft() {
	f := p.b.Loft
	if !f.Set {
		return
	}
	s := p.s
	for _, x := range f.Bays {
		if int(x.V) >= len(p.bents) {
			s.Fault(x.At, x.Src, fmt.Sprintf("the last bay of the building is bay %d", len(p.bents)-1), "write the number of one of its bays")
			return
		}
	}
	w, d := p.joistSize(f.Joists)
	n := 1
	for i := 0; i+1 < len(p.bents); i++ {
		if !picked(f.Bays, i+1) {
			continue
		}
		a, b := p.bents[i], p.bents[i+1]
		if a.tie == nil || b.tie == nil {
			continue
		}
		top := f.Top.Or(p.tieTop)
		dk := &deck{id: "loft-joist", from: a.tie, to: b.tie, dir: east, side: north, top: top, w: w, d: d, spacing: f.Spacing.Or(p.std.joistSpacing),
			lo: a.post["south"].High(north), hi: a.post["north"].Low(north), a: a.tie.High(east), b: b.tie.Low(east), at: f.At, bay: i + 1, first: n}
		if !p.deckFits(dk, f.Joists) {
			return
		}
		n = p.layDeck(dk)
	}
}

// deckFits faults joists that are deeper than what carries them, or that lie
// beside it.
func (p *plan) deckFits(k *deck, own spec.Section) bool {
	s := p.s
	t := k.from.Timber
	depth := t.Ideal[k.from.DepthAxis()]
	top := k.from.High(up)
	at, src := k.at, k.id
	if own.Set {
		at, src = own.At, own.Src
	}
	if p.b.Loft.Top.Set && k.id == "loft-joist" {
		at, src = p.b.Loft.Top.At, p.b.Loft.Top.Src
	}
	if k.top > top+1e-6 || k.top-k.d < top-depth-1e-6 {
		s.Fault(at, src, fmt.Sprintf("the joists lie from %s to %s and the %s that carries them from %s to %s", s.Frame.Units.Format(k.top-k.d), s.Frame.Units.Format(k.top),
			t.Role, s.Frame.Units.Format(top-depth), s.Frame.Units.Format(top)), "make the joists shallower than what carries them, or set their tops within it")
		return false
	}
	if k.b-k.a < 4*k.d {
		s.Fault(at, src, fmt.Sprintf("the joists would be %s long", s.Frame.Units.Format(k.b-k.a)), "leave this floor out, or widen the bay")
		return false
	}
	return true
}

// joist lays one joist with its reference side at the given coordinate.
func (p *plan) joist(k *deck, id string, at float64) {
	s := p.s
	side, word, other := west, "west side", "east side"
	if k.side == north {
		side, word, other = south, "south side", "north side"
	}
	l := scheme.Line{At: k.side.Mul(at).Add(vec.V{Z: k.top}), Dir: k.dir, Out1: up, Out2: side, Size1: k.d, Size2: k.w,
		Name1: "top", Name2: word, Name3: "underside", Name4: other}
	st := s.Add(id, "joist", k.at, l, k.a, k.b, spec.TimberSettings{})
	st.Timber.Bay = k.bay
	s.Join("drop-in pocket", p.part(k.from, l.At), st, geom.Start, spec.JointSettings{}, k.at)
	s.Join("drop-in pocket", p.part(k.to, l.At), st, geom.Finish, spec.JointSettings{}, k.at)
}
