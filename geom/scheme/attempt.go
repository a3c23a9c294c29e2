package scheme

import "fmt"

// Attempt lays sticks and joints and takes them back when they cannot stay:
// when a stick would run into another that it is not joined to, or a joint's
// void into another joint's. Sticks that are not joined stay gap apart. It
// returns what is in the way, "" when nothing is.
func (s *Scheme) Attempt(gap float64, lay func()) string {
	ns, np := len(s.Order), len(s.Pacts)
	lay()
	if ns > MaxSticks {
		return "" // Solve refuses such a frame
	}
	why := s.inTheWay(ns, np, gap)
	if why != "" {
		s.takeBack(ns, np)
	}
	return why
}

// takeBack forgets the sticks and joints from the given places in the lists on.
func (s *Scheme) takeBack(ns, np int) {
	for _, st := range s.Order[ns:] {
		delete(s.Sticks, st.Timber.ID)
	}
	s.Order, s.Pacts = s.Order[:ns], s.Pacts[:np]
}

// inTheWay names the first thing that sticks and joints from the given places
// in the lists on run into.
func (s *Scheme) inTheWay(ns, np int, gap float64) string {
	for i := ns; i < len(s.Order); i++ {
		a := s.Order[i]
		hull := s.body(a)
		for _, b := range s.Order[:i] {
			other := s.body(b)
			if hull.near(other, gap) && !s.joined(a, b, np) && hull.meets(other, gap) {
				return b.Timber.ID
			}
		}
	}
	for i := np; i < len(s.Pacts); i++ {
		p := s.Pacts[i]
		for _, q := range s.Pacts[:i] {
			if (q.R == p.R || IsScarf(q.Kind) && q.E == p.R) && s.collide(p, q) {
				return fmt.Sprintf("the joint of %s in %s", q.E.Timber.ID, q.R.Timber.ID)
			}
		}
	}
	return ""
}

// joined reports whether a joint from the given place on holds a and b
// together.
func (s *Scheme) joined(a, b *Stick, np int) bool {
	for _, p := range s.Pacts[np:] {
		if p.R == a && p.E == b || p.R == b && p.E == a {
			return true
		}
	}
	return false
}

// Moment is how much has been planned at a moment.
type Moment struct{ sticks, pacts int }

// Now is the moment after all that has been planned so far.
func (s *Scheme) Now() Moment { return Moment{len(s.Order), len(s.Pacts)} }

// TakeBack forgets what was planned since a moment.
func (s *Scheme) TakeBack(to Moment) { s.takeBack(to.sticks, to.pacts) }

// PutLast moves what was planned between two moments behind what came after.
func (s *Scheme) PutLast(from, to Moment) {
	s.Order = append(append(append([]*Stick(nil), s.Order[:from.sticks]...), s.Order[to.sticks:]...), s.Order[from.sticks:to.sticks]...)
	s.Pacts = append(append(append([]*Pact(nil), s.Pacts[:from.pacts]...), s.Pacts[to.pacts:]...), s.Pacts[from.pacts:to.pacts]...)
}
