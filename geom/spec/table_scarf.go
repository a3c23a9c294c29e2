package spec

// scarfKey reads the settings of a scarf.
func scarfKey(s *Scarf) field {
	return group("scarf", "table, butts and key of a scarf", []field{
		lengthKey("length", "length of the table, 3 to 6 times the depth", &s.Length, positive),
		countKey("undercut", "butts of a half-lap scarf lean 1 in this many; 0 for square butts", &s.Undercut, 0, 12),
		lengthKey("butt", "height of the butts of a splayed scarf", &s.Butt, positive),
		wordKey("key", "what is driven through the table of a half-lap scarf", &s.Key, "none", "key", "wedges"),
		lengthKey("key size", "thickness of the key", &s.KeySize, positive),
		flagKey("upright", "the table stands on edge instead of lying level", &s.Upright),
	}, nil)
}

// with returns the settings of s with everything that over sets laid over
// them.
func (s Scarf) with(over Scarf) Scarf {
	for _, p := range []struct{ dst, src *Length }{{&s.Length, &over.Length}, {&s.Butt, &over.Butt}, {&s.KeySize, &over.KeySize}} {
		if p.src.Set {
			*p.dst = *p.src
		}
	}
	if over.Undercut.Set {
		s.Undercut = over.Undercut
	}
	if over.Key.Set {
		s.Key = over.Key
	}
	if over.Upright.Set {
		s.Upright = over.Upright
	}
	return s
}
