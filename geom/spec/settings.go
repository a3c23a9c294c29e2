package spec

// written is a value that knows whether the description gives it.
type written interface{ isSet() bool }

func (l Length) isSet() bool    { return l.Set }
func (t Text) isSet() bool      { return t.Set }
func (n Number) isSet() bool    { return n.Set }
func (f Flag) isSet() bool      { return f.Set }
func (s Section) isSet() bool   { return s.Set }
func (f Flare) isSet() bool     { return f.Set }
func (s Seasoning) isSet() bool { return s.Set }
func (d Drawbore) isSet() bool  { return d.Set }
func (a Along) isSet() bool     { return a.Set }

// lay puts over in the place of a value where the description gives it.
func lay[T written](value *T, over T) {
	if over.isSet() {
		*value = over
	}
}

// With returns the settings of s with everything that over sets laid over
// them.
func (s JointSettings) With(over JointSettings) JointSettings {
	lay(&s.Thickness, over.Thickness)
	lay(&s.FromReference, over.FromReference)
	lay(&s.TenonLength, over.TenonLength)
	lay(&s.Housing, over.Housing)
	lay(&s.HoldBackStart, over.HoldBackStart)
	lay(&s.HoldBackEnd, over.HoldBackEnd)
	lay(&s.Bore, over.Bore)
	lay(&s.OffShoulder, over.OffShoulder)
	lay(&s.Head, over.Head)
	lay(&s.Lead, over.Lead)
	lay(&s.Clearance, over.Clearance)
	lay(&s.SeatDepth, over.SeatDepth)
	lay(&s.LapDepth, over.LapDepth)
	lay(&s.Bearing, over.Bearing)
	lay(&s.PocketDepth, over.PocketDepth)
	lay(&s.Haunch, over.Haunch)
	lay(&s.Proud, over.Proud)
	lay(&s.Drop, over.Drop)
	s = s.withOthers(over)
	s.Scarf = s.Scarf.with(over.Scarf)
	return s
}

// withOthers lays over what is not a length.
func (s JointSettings) withOthers(over JointSettings) JointSettings {
	lay(&s.Through, over.Through)
	lay(&s.Stub, over.Stub)
	lay(&s.Wedge, over.Wedge)
	lay(&s.Diminished, over.Diminished)
	lay(&s.SquareEnd, over.SquareEnd)
	lay(&s.Pegs, over.Pegs)
	lay(&s.FromFace, over.FromFace)
	lay(&s.Steps, over.Steps)
	lay(&s.Taper, over.Taper)
	lay(&s.IntoFace, over.IntoFace)
	lay(&s.Along, over.Along)
	lay(&s.Drawbore, over.Drawbore)
	lay(&s.Draw, over.Draw)
	lay(&s.Legs, over.Legs)
	lay(&s.Flare, over.Flare)
	return s
}

// With returns the settings of s with everything that over sets laid over
// them.
func (s TimberSettings) With(over TimberSettings) TimberSettings {
	lay(&s.Section, over.Section)
	lay(&s.Species, over.Species)
	lay(&s.Seasoning, over.Seasoning)
	lay(&s.Planed, over.Planed)
	lay(&s.Reduce, over.Reduce)
	lay(&s.Trim, over.Trim)
	return s
}
