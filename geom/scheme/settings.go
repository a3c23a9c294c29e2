package scheme

import (
	"pegwright/geom/joint"
	"pegwright/geom/peg"
	"pegwright/geom/spec"
)

// Asked are all the settings that were written for a joint or planned with it:
// the layout's for all joints, then what whoever laid it asks for, then the
// layout's for the role of the enterer, then what is written for this joint. A
// stub does away with the pegs and the length that a tenon was given before.
func (s *Scheme) Asked(p *Pact) spec.JointSettings {
	u := s.Description.Layout.All
	for _, over := range []spec.JointSettings{p.Own, s.Description.Layout.Role(p.E.Timber.Role), p.User} {
		if over.Stub.Or(false) && tenoned(p.Kind) {
			u.Pegs, u.TenonLength = spec.Number{}, spec.Length{}
		}
		u = u.With(over)
	}
	return u
}

// Settings returns the numbers of one joint: as asked, or the usual ones.
func (s *Scheme) Settings(p *Pact) joint.Settings {
	std := s.Std
	u := s.Asked(p)
	q := s.usual(p, u.Thickness)
	set := joint.Settings{
		Thickness: q.thickness, FromRef: u.FromReference.Or(std.OffRef), TenonLength: u.TenonLength.Or(q.length), Through: u.Through.Or(false),
		Housing: u.Housing.Or(0), HoldStart: u.HoldBackStart.Or(0), HoldEnd: u.HoldBackEnd.Or(0), Deeper: std.Deeper, Clearance: u.Clearance.Or(0),
		Bore: u.Bore.Or(q.bore), Pegs: s.usualPegs(p), OffShoulder: u.OffShoulder.Or(q.offShoulder), Along: std.Along, FromFace: int(u.FromFace.Or(0)),
		Head: u.Head.Or(std.Head), Lead: u.Lead.Or(std.Lead), Steps: int(u.Steps.Or(1)),
		Square: u.Draw.Or("") == "square", BlindDepth: p.Blind, PegOff: p.PegOff, Flush: p.Flush,
	}
	s.shapes(p, u, &set)
	if u.Stub.Or(false) && tenoned(p.Kind) {
		set.Pegs = 0
		set.TenonLength = u.TenonLength.Or(std.Stub)
	}
	if u.Pegs.Set {
		set.Pegs = int(u.Pegs.V)
	}
	if u.Along.Set {
		set.Centred, set.Along = u.Along.Centred, u.Along.MM
	}
	if set.BlindDepth == 0 {
		set.BlindDepth = peg.BlindDepth(set.Bore, std.BlindStep)
	}
	set.Auto = !u.Drawbore.Set || u.Drawbore.Mode == spec.DrawAuto
	if u.Drawbore.Set && u.Drawbore.Mode == spec.DrawLength {
		set.Offset = u.Drawbore.MM
	}
	if Lapped(p.Kind) {
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
func (s *Scheme) usual(p *Pact, thickness spec.Length) usualSizes {
	std, role := s.Std, p.E.Timber.Role
	stout := min(p.R.Timber.Section[0], p.R.Timber.Section[1]) > 6.5*inch
	slight := role == "brace" || role == "girt" || role == "door post" || role == "window post" || role == "header" || role == "rail"
	q := usualSizes{thickness: std.Thin, length: std.Tenon, bore: std.SmallBore, offShoulder: std.OffShoulder}
	if stout && !slight {
		q.thickness = std.Thick
	}
	q.thickness = thickness.Or(q.thickness)
	thick := q.thickness > std.Thin+1e-6
	if (role == "tie" || thick || stout) && !slight {
		q.bore = std.BigBore
	}
	if thick {
		q.offShoulder = std.OffShoulder2
	}
	if slight {
		q.length = std.BraceTenon
	}
	return q
}
