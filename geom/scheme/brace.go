package scheme

import (
	"math"

	"pegwright/geom"
	"pegwright/geom/solid"
	"pegwright/geom/spec"
	"pegwright/geom/vec"
)

// corner is where a brace stands: the ideal faces of its two receivers meet at
// a point of their reference side, and the legs run from there.
type corner struct {
	at   vec.V // where the ideal faces meet, on the reference side
	vert vec.V // from the brace toward the level receiver: up or down
	side vec.V // outward from the reference side of the brace's plane
}

// cornerOf finds the corner between a plumb and a level stick.
func (s *Scheme) cornerOf(post, head *Stick, h vec.V) corner {
	pt, ht := post.Timber, head.Timber
	c := corner{vert: vec.V{Z: 1}}
	if s.headBelow(post, head) {
		c.vert = vec.V{Z: -1}
	}
	across := vec.V{X: -1}
	if h.X != 0 {
		across = vec.V{Y: -1}
	}
	side := pt.IdealPlane(1).Moved(pt.Place)
	if math.Abs(side.N.Dot(across)) < 0.5 {
		side = pt.IdealPlane(2).Moved(pt.Place)
	}
	c.side = side.N
	c.at = solid.Meet(pt.IdealPlane(pt.FaceToward(h)).Moved(pt.Place), ht.IdealPlane(ht.FaceToward(c.vert.Neg())).Moved(ht.Place), side)
	return c
}

// Brace plans a brace and its two joints between a plumb and a level stick:
// legs.A along the post from the level stick's ideal face, legs.B along h from
// the post's. The brace is centred on its tenons unless off says how far its
// reference side lies inside the receivers', mm.
func (s *Scheme) Brace(id string, post, head *Stick, h vec.V, legs spec.Section, off *float64, own spec.TimberSettings) *Stick {
	c := s.cornerOf(post, head, h)
	lo, hi := c.at.Sub(c.vert.Mul(legs.A)), c.at.Add(h.Mul(legs.B))
	first, second := post, head
	if c.vert.Z < 0 {
		lo, hi, first, second = hi, lo, head, post
	}
	w, d := s.Size("brace")
	if own.Section.Set {
		w, d = own.Section.A, own.Section.B
	}
	set := s.Settings(&Pact{Kind: "brace mortise and tenon", R: post, E: &Stick{Timber: &geom.Timber{Role: "brace", Section: [2]float64{w, d}}}})
	lay := set.FromRef + set.Thickness/2 - w/2
	if off != nil {
		lay = *off
	}
	dir := hi.Sub(lo).Unit()
	in := c.at.Sub(lo)
	inward := in.Sub(dir.Mul(in.Dot(dir))).Unit()
	name := "bent side"
	if h.X != 0 {
		name = "outside"
	}
	l := Line{At: lo.Sub(c.side.Mul(lay)), Dir: dir, Out1: c.side, Out2: inward.Neg(), Size1: w, Size2: d,
		Name1: name, Name2: "outer edge", Name3: "far side", Name4: "inner edge"}
	st := s.Add(id, "brace", legs.At, l, 0, hi.Dist(lo), own)
	s.Join("brace mortise and tenon", first, st, geom.Start, s.braceTenon(first, dir, set.Housing), legs.At)
	s.Join("brace mortise and tenon", second, st, geom.Finish, s.braceTenon(second, dir, set.Housing), legs.At)
	return st
}

// braceTenon is shorter in an interior post, where another brace's tenon may
// come from the other side. The hole moves toward the shoulder with it, not
// past 1.5 diameters, so that two remain along the grain to the tenon's end. On
// a sill tenon and housing together are no deeper than the tenon is elsewhere:
// the foot may have to turn up with its bent.
func (s *Scheme) braceTenon(r *Stick, dir vec.V, housing float64) spec.JointSettings {
	n := r.Timber.FaceToward(dir)
	between := r.Across(dir)
	own := spec.JointSettings{TenonLength: spec.LengthOf(min(s.Std.BraceTenon, between-s.Std.Deeper-2*s.Std.Web))}
	sill := (r.Timber.Role == "sill" || r.Timber.Role == "cross sill") && (housing > 0 || own.TenonLength.MM > 3*inch)
	opposed := r.Timber.Role == "post" && r.Timber.Bent > 1 && r.Timber.Bent <= len(s.Description.Building.Bays) && dir.X != 0
	if sill {
		if own.TenonLength.MM > 3*inch { // the longest that turns up
			own.TenonLength = spec.LengthOf(75)
		}
		own.TenonLength = spec.LengthOf(own.TenonLength.MM - housing)
	}
	if opposed {
		own.TenonLength = spec.LengthOf(min(own.TenonLength.MM, (between-s.Std.Web)/2-s.Std.Deeper))
	}
	if sill || opposed {
		bore := s.Std.SmallBore
		sin := math.Abs(r.Timber.IdealPlane(n).Moved(r.Timber.Place).N.Dot(dir))
		if off := max(1.5*bore, own.TenonLength.MM-2*bore*sin); off < s.Std.OffShoulder {
			own.OffShoulder = spec.LengthOf(off)
		}
	}
	return own
}

// headBelow reports whether the brace goes down from the level stick.
func (s *Scheme) headBelow(post, head *Stick) bool {
	low := post.Timber.Place.O.Z
	return head.Timber.Role == "sill" || head.Timber.Role == "cross sill" || head.Timber.Place.O.Z < low+300 && post.Hi > 1200
}
