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
	lay(&s.Length, over.Length)
	lay(&s.Undercut, over.Undercut)
	lay(&s.Butt, over.Butt)
	lay(&s.Key, over.Key)
	lay(&s.KeySize, over.KeySize)
	lay(&s.Upright, over.Upright)
	return s
}
