package spec

// With returns the settings of s with everything that over sets laid over
// them.
func (s JointSettings) With(over JointSettings) JointSettings {
	for _, p := range []struct{ dst, src *Length }{
		{&s.Thickness, &over.Thickness},
		{&s.FromReference, &over.FromReference},
		{&s.TenonLength, &over.TenonLength},
		{&s.Housing, &over.Housing},
		{&s.HoldBackStart, &over.HoldBackStart},
		{&s.HoldBackEnd, &over.HoldBackEnd},
		{&s.Bore, &over.Bore},
		{&s.OffShoulder, &over.OffShoulder},
		{&s.Head, &over.Head},
		{&s.Lead, &over.Lead},
		{&s.Clearance, &over.Clearance},
		{&s.SeatDepth, &over.SeatDepth},
		{&s.LapDepth, &over.LapDepth},
		{&s.Bearing, &over.Bearing},
		{&s.PocketDepth, &over.PocketDepth},
		{&s.Haunch, &over.Haunch},
		{&s.Proud, &over.Proud},
		{&s.Drop, &over.Drop},
	} {
		if p.src.Set {
			*p.dst = *p.src
		}
	}
	return s.withOthers(over)
}

func (s JointSettings) withOthers(over JointSettings) JointSettings {
	for _, p := range []struct{ dst, src *Flag }{{&s.Through, &over.Through}, {&s.Stub, &over.Stub}, {&s.Wedge, &over.Wedge}, {&s.Diminished, &over.Diminished}, {&s.SquareEnd, &over.SquareEnd}} {
		if p.src.Set {
			*p.dst = *p.src
		}
	}
	for _, p := range []struct{ dst, src *Number }{
		{&s.Pegs, &over.Pegs}, {&s.FromFace, &over.FromFace}, {&s.Steps, &over.Steps}, {&s.Taper, &over.Taper}, {&s.IntoFace, &over.IntoFace},
	} {
		if p.src.Set {
			*p.dst = *p.src
		}
	}
	if over.Along.Set {
		s.Along = over.Along
	}
	if over.Drawbore.Set {
		s.Drawbore = over.Drawbore
	}
	if over.Draw.Set {
		s.Draw = over.Draw
	}
	if over.Legs.Set {
		s.Legs = over.Legs
	}
	if over.Flare.Set {
		s.Flare = over.Flare
	}
	s.Scarf = s.Scarf.with(over.Scarf)
	return s
}

// With returns the settings of s with everything that over sets laid over
// them.
func (s TimberSettings) With(over TimberSettings) TimberSettings {
	if over.Section.Set {
		s.Section = over.Section
	}
	if over.Species.Set {
		s.Species = over.Species
	}
	if over.Seasoning.Set {
		s.Seasoning = over.Seasoning
	}
	if over.Planed.Set {
		s.Planed = over.Planed
	}
	if over.Reduce.Set {
		s.Reduce = over.Reduce
	}
	if over.Trim.Set {
		s.Trim = over.Trim
	}
	return s
}
