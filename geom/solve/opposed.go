package solve

import (
	"fmt"
	"math"

	"pegwright/geom"
	"pegwright/geom/spec"
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
	for i, p := range s.pacts {
		for _, q := range s.pacts[i+1:] {
			if p.r != q.r || !s.opposite(p, q) {
				continue
			}
			room := s.between(p.r, outOf(p)) - p.set.Housing - q.set.Housing - s.std.web - p.set.Deeper - q.set.Deeper
			if p.set.TenonLength+q.set.TenonLength <= room+1e-6 {
				continue
			}
			fixP, fixQ := s.written(p), s.written(q)
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
func (s *solver) shorten(p, other *pact, length float64) {
	if length < leastTenon || length >= p.set.TenonLength {
		return
	}
	p.set.TenonLength = length
	if length < 4*p.set.Bore && !s.laid(p).Bore.Set {
		p.set.Bore = min(p.set.Bore, s.std.smallBore)
	}
	if !s.laid(p).OffShoulder.Set {
		p.set.OffShoulder = max(1.5*p.set.Bore, min(p.set.OffShoulder, length-2*p.set.Bore))
	}
	s.note(p.at, fmt.Sprintf("the tenon of %s would meet that of %s in %s: made %s long", p.e.t.ID, other.e.t.ID, p.r.t.ID, s.f.Units.FormatJoint(length)),
		"write tenon length on one of the two joints to choose another", p.e.t.ID, other.e.t.ID, p.r.t.ID)
}

// laid are all the settings that were written for a joint or planned with it.
func (s *solver) laid(p *pact) spec.JointSettings {
	return s.d.Layout.All.With(p.own).With(s.roleLayout(p.e.t.Role)).With(p.user)
}

// written reports whether a joint's tenon length is not the program's to choose.
func (s *solver) written(p *pact) bool { return p.set.Through || s.laid(p).TenonLength.Set }

// outOf is the direction of the enterer from its jointed end into its length.
func outOf(p *pact) vec.V {
	if p.end == geom.Finish {
		return p.e.t.Place.X.Neg()
	}
	return p.e.t.Place.X
}

// between is the receiver's ideal size along d.
func (s *solver) between(r *stick, d vec.V) float64 {
	return r.t.Ideal[(r.t.FaceToward(d)+1)%2]
}

// opposite reports whether two square joints enter opposite faces of one
// receiver where their tenons would meet.
func (s *solver) opposite(p, q *pact) bool {
	const kind = "mortise and tenon"
	d := outOf(p)
	if p.kind != kind || q.kind != kind || p.end == geom.Mid || q.end == geom.Mid || d.Dot(outOf(q)) > -1+1e-9 || math.Abs(d.Dot(p.r.t.Place.X)) > 1e-6 {
		return false
	}
	along := func(x *pact) (lo, hi float64) {
		u := p.r.t.Place.X
		lo, hi = math.Inf(1), math.Inf(-1)
		for k := range 4 {
			h := u.Dot(x.e.t.Place.Out(vec.V{Y: x.e.t.Ideal[0] * float64(k&1), Z: x.e.t.Ideal[1] * float64(k>>1)}))
			lo, hi = min(lo, h), max(hi, h)
		}
		return lo + x.set.HoldStart, hi - x.set.HoldEnd
	}
	a, b := along(p)
	c, e := along(q)
	f0, f1 := max(p.set.FromRef, q.set.FromRef), min(p.set.FromRef+p.set.Thickness, q.set.FromRef+q.set.Thickness)
	return min(b, e)-max(a, c) > 1 && f1-f0 > 1
}
