package solve

import (
	"fmt"
	"math"

	"pegwright/geom"
	"pegwright/geom/vec"
)

// leastTenon is the length under which a shortened tenon is no tenon: 3/4 in
// (common practice, no source).
const leastTenon = 0.75 * inch

// shareOpposed shortens square tenons that meet in a receiver from opposite
// faces, where their lengths were not written: together they take what lies
// between the bearing planes, less the web and what the mortises are deeper.
// What is left wrong when both are written is found by the proofs.
func (s *solver) shareOpposed() {
	for i, p := range s.joints {
		for _, q := range s.joints[i+1:] {
			if p.R != q.R || !s.opposite(p, q) {
				continue
			}
			room := p.R.Across(p.Away()) - p.set.Housing - q.set.Housing - s.Std.Web - p.set.Deeper - q.set.Deeper
			if p.set.TenonLength+q.set.TenonLength <= room+1e-6 {
				continue
			}
			fixP, fixQ := s.fixed(p), s.fixed(q)
			switch {
			case fixP && fixQ:
			case fixP:
				s.shorten(q, p, room-p.set.TenonLength)
			case fixQ:
				s.shorten(p, q, room-q.set.TenonLength)
			default:
				s.shorten(p, q, min(room/2, p.set.TenonLength))
				s.shorten(q, p, room-p.set.TenonLength)
			}
		}
	}
}

// shorten gives p's tenon the length and says so. The hole moves toward the
// shoulder with the tenon's end, not past 1.5 bores; a tenon shorter than four
// bores gets the smaller bore.
func (s *solver) shorten(p, other *settled, length float64) {
	if length < leastTenon || length >= p.set.TenonLength {
		return
	}
	p.set.TenonLength = length
	if length < 4*p.set.Bore && !s.Asked(p.Pact).Bore.Set {
		p.set.Bore = min(p.set.Bore, s.Std.SmallBore)
	}
	if !s.Asked(p.Pact).OffShoulder.Set {
		p.set.OffShoulder = max(1.5*p.set.Bore, min(p.set.OffShoulder, length-2*p.set.Bore))
	}
	s.Note(p.At, fmt.Sprintf("the tenon of %s would meet that of %s in %s: made %s long", p.E.Timber.ID, other.E.Timber.ID, p.R.Timber.ID, s.Frame.Units.FormatJoint(length)),
		"write tenon length on one of the two joints to choose another", p.E.Timber.ID, other.E.Timber.ID, p.R.Timber.ID)
}

// fixed reports whether a joint's tenon length is not the program's to choose.
func (s *solver) fixed(p *settled) bool { return p.set.Through || s.Asked(p.Pact).TenonLength.Set }

// opposite reports whether two square joints enter opposite faces of one
// receiver where their tenons would meet.
func (s *solver) opposite(p, q *settled) bool {
	const kind = "mortise and tenon"
	d := p.Away()
	if p.Kind != kind || q.Kind != kind || p.End == geom.Mid || q.End == geom.Mid || d.Dot(q.Away()) > -1+1e-9 || math.Abs(d.Dot(p.R.Timber.Place.X)) > 1e-6 {
		return false
	}
	along := func(x *settled) (lo, hi float64) {
		u := p.R.Timber.Place.X
		lo, hi = math.Inf(1), math.Inf(-1)
		for k := range 4 {
			h := u.Dot(x.E.Timber.Place.Out(vec.V{Y: x.E.Timber.Ideal[0] * float64(k&1), Z: x.E.Timber.Ideal[1] * float64(k>>1)}))
			lo, hi = min(lo, h), max(hi, h)
		}
		return lo + x.set.HoldStart, hi - x.set.HoldEnd
	}
	a, b := along(p)
	c, e := along(q)
	f0, f1 := max(p.set.FromRef, q.set.FromRef), min(p.set.FromRef+p.set.Thickness, q.set.FromRef+q.set.Thickness)
	return min(b, e)-max(a, c) > 1 && f1-f0 > 1
}
