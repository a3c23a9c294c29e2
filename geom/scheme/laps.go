package scheme

import (
	"pegwright/geom/joint"
	"pegwright/geom/spec"
)

// Lapped reports whether a joint of this kind is let into a face, without a
// tenon: its holes are in line.
func Lapped(kind string) bool {
	switch kind {
	case "cross lap", "half lap", "corner lap", "half-dovetail lap", "drop-in pocket":
		return true
	}
	return false
}

// lapSettings gives a lap or a pocket its numbers. A pocket has no peg unless
// it is asked for.
func (s *Scheme) lapSettings(p *Pact, u spec.JointSettings, set *joint.Settings) {
	set.LapDepth, set.IntoFace = u.LapDepth.Or(0), int(u.IntoFace.Or(0))
	set.Flare, set.Wedge = s.Std.Flare, u.Wedge.Or(false)
	if u.Flare.Set {
		set.Flare = u.Flare.Run
	}
	set.Bearing, set.PocketDepth = u.Bearing.Or(s.Std.Bearing), u.PocketDepth.Or(0)
	set.Bore = u.Bore.Or(s.Std.SmallBore)
	if p.Kind == "drop-in pocket" && !u.Pegs.Set {
		set.Pegs = 0
	}
	set.Auto, set.Offset, set.Housing = false, 0, 0
}
