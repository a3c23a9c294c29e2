package spec

import "gopkg.in/yaml.v3"

// unless reads a group that may also be refused with the word no.
func unless(name, doc string, inner []field, mark func(at *yaml.Node, r *reader, no bool)) field {
	return field{name: name, kind: "keys, or no", doc: doc, inner: inner, read: func(r *reader, n *yaml.Node) {
		if n.Kind != yaml.ScalarNode || isNull(n) {
			mark(n, r, false)
			r.mapping(n, name, inner, nil)
			return
		}
		if on, known := yesNo(n.Value); known && !on {
			mark(n, r, true)
			return
		}
		r.fault(n, n.Value, name+" takes keys with values, or no", "write no, or its keys")
	}}
}

func girtsKey(g *Girts) field {
	return unless("girts", "level timbers between posts", []field{
		lengthsKey("height", "tops of the girts above the datum", &g.Heights, maxHeights),
		wordsKey("in", "which walls have them", &g.In, append([]string{"eave walls", "gable walls"}, compass()...)...),
	}, func(n *yaml.Node, r *reader, no bool) { g.At, g.Set, g.No = r.pos(n), true, no })
}

// bracesKey reads one set of braces, or a list of sets.
func bracesKey(b *Braces) field {
	inner := braceFields(&BraceSet{})
	return field{name: "braces", kind: "keys, a list of keys, or no", doc: "knee braces", inner: inner, read: func(r *reader, n *yaml.Node) {
		b.At, b.Set = r.pos(n), true
		one := func(v *yaml.Node) {
			set := BraceSet{At: r.pos(v)}
			r.mapping(v, "braces", braceFields(&set), nil)
			b.Sets = append(b.Sets, set)
		}
		switch {
		case n.Kind == yaml.SequenceNode:
			r.items(n, "braces", maxHeights, false, func(_ int, v *yaml.Node) { one(v) })
		case n.Kind == yaml.ScalarNode && !isNull(n):
			if on, known := yesNo(n.Value); known && !on {
				b.No = true
				return
			}
			r.fault(n, n.Value, "braces takes keys with values, or no", "write no, or its keys")
		default:
			one(n)
		}
	}}
}

func braceFields(s *BraceSet) []field {
	return []field{
		legsKey("legs", "legs, on the post and on the level timber", &s.Legs),
		wordsKey("in", "where they stand", &s.In, "bents", "gables", "inner bents", "walls", "ridge"),
		wordKey("go", "which way they run from the post", &s.Go, "up", "down"),
		countsKey("bents", "bents whose posts have them, counted from 1", &s.Bents),
		countsKey("bays", "bays of the eave walls that have them, counted from 1", &s.Bays),
		wordsKey("sides", "walls whose posts have them", &s.Sides, compass()...),
	}
}

// countsKey reads one or more whole numbers from 1.
func countsKey(name, doc string, dst *[]Number) field {
	return field{name: name, kind: "one or more whole numbers", doc: doc, read: func(r *reader, n *yaml.Node) {
		r.items(n, name, maxBays+1, true, func(_ int, v *yaml.Node) {
			if x := r.number(v, 1, maxBays+1, true); x.Set {
				*dst = append(*dst, x)
			}
		})
	}}
}

func floorKey(f *Floor) field {
	return group("floor", "joists between the sills", []field{
		sizeKey("joists", "section of the joists", &f.Joists),
		lengthKey("spacing", "most from middle to middle of the joists", &f.Spacing, positive),
		wordKey("direction", "which way the joists run", &f.Direction, "across", "along"),
	}, func(r *reader, n *yaml.Node) { f.At, f.Set = r.pos(n), true })
}

func loftKey(f *Loft) field {
	return group("loft", "joists between the ties", []field{
		sizeKey("joists", "section of the joists", &f.Joists),
		lengthKey("spacing", "most from middle to middle of the joists", &f.Spacing, positive),
		lengthKey("top", "tops of the joists above the datum", &f.Top, positive),
		countsKey("bays", "bays that have it, counted from 1", &f.Bays),
	}, func(r *reader, n *yaml.Node) { f.At, f.Set = r.pos(n), true })
}

func openingsKey(b *Building) field {
	table := func(o *Opening) []field {
		return []field{
			{name: "name", kind: "text", doc: "what it is called", required: true,
				read: func(r *reader, n *yaml.Node) { o.Name = r.name(n) }},
			wordKey("wall", "the wall it is in", &o.Wall, compass()...).must(),
			countKey("bay", "the bay it is in, counted from 1", &o.Bay, 1, maxBays),
			lengthKey("width", "clear width", &o.Width, positive).must(),
			lengthKey("height", "top above the datum", &o.Height, positive).must(),
			lengthKey("sill", "bottom above the datum; left out for a door", &o.Sill, notNegative),
			lengthKey("from", "offset from the bay's first post; left out when centred", &o.From, notNegative),
		}
	}
	return field{name: "openings", kind: "a list", doc: "doors and windows", inner: table(&Opening{}), suffix: "[]",
		read: func(r *reader, n *yaml.Node) {
			r.items(n, "openings", maxOpenings, false, func(_ int, v *yaml.Node) {
				o := Opening{At: r.pos(v)}
				r.mapping(v, "an opening", table(&o), nil)
				b.Openings = append(b.Openings, o)
			})
		}}
}
