package scheme

import (
	"math"

	"pegwright/geom/joint"
	"pegwright/geom/spec"
)

// IsScarf reports whether a joint of this kind lengthens a stick.
func IsScarf(kind string) bool { return kind == "half-lap scarf" || kind == "splayed scarf" }

// tenoned reports the kinds that have a tenon in a mortise.
func tenoned(kind string) bool {
	switch kind {
	case "mortise and tenon", "sill corner", "brace mortise and tenon", "wedged through tenon":
		return true
	}
	return false
}

// usualPegs is how many pegs a joint has where nothing is written: two in a
// scarf and in a deep angled enterer, else one.
func (s *Scheme) usualPegs(p *Pact) int {
	if IsScarf(p.Kind) {
		return 2
	}
	if p.Kind == "brace mortise and tenon" && p.E.Timber.Role != "brace" && p.E.Timber.Section[p.E.DepthAxis()] > s.Std.Deep-1e-6 {
		return 2
	}
	return 1
}

// Undercut and key of a half-lap scarf where nothing is written: 1 in 5, and a
// sixth of the depth (common practice, no source).
const (
	usualUndercut = 5
	keyShare      = 1.0 / 6
)

// shapes settles the numbers of scarfs, wedged tenons and the variants of the
// mortise and tenon.
func (s *Scheme) shapes(p *Pact, u spec.JointSettings, set *joint.Settings) {
	set.Haunch, set.Proud = u.Haunch.Or(0), u.Proud.Or(0)
	set.Diminished, set.SquareEnd = u.Diminished.Or(false), u.SquareEnd.Or(false)
	c := u.Scarf
	set.Scarf = joint.Scarf{Length: c.Length.Or(0), Butt: c.Butt.Or(0), Upright: c.Upright.Or(false), Squint: 0}
	if n := c.Undercut.Or(usualUndercut); n > 0 {
		set.Scarf.Squint = 1 / n
	}
	if k := c.Key.Or("none"); k != "none" {
		set.Scarf.Key = c.KeySize.Or(keyShare * min(p.R.Timber.Section[0], p.R.Timber.Section[1]))
		set.Scarf.Wedges = k == "wedges"
	}
	set.Drop = u.Drop.Or(0)
	if p.Kind == "wedged through tenon" && !u.Drop.Set {
		run := p.R.Across(p.Away()) - set.Housing + set.Proud
		set.Drop = max(math.Round(run/6/s.Std.Shop), 1) * s.Std.Shop
	}
	if n := u.Taper.Or(0); n > 0 {
		set.Taper = 1 / n
	}
	set.Centred = p.Kind == "wedged through tenon"
}
