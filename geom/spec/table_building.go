package spec

import "gopkg.in/yaml.v3"

const (
	maxBays     = 200
	maxHeights  = 20
	maxOpenings = 500
)

func buildingFields(b *Building) []field {
	return []field{
		lengthKey("span", "across the building, out to out", &b.Span, positive).must(),
		lengthsKey("bays", "widths of the bays along the building", &b.Bays, maxBays).must(),
		lengthKey("eave", "top of plate above the datum", &b.Eave, positive).must(),
		lengthKey("tie height", "top of tie above the datum", &b.TieHeight, positive),
		group("roof", "the roof", roofFields(&b.Roof), func(r *reader, n *yaml.Node) { b.Roof.At, b.Roof.Set = r.pos(n), true }),
		flagKey("sills", "the posts stand on sills", &b.Sills),
		group("piers", "blocks under posts or sills", []field{
			sizeKey("size", "size of a pier, in plan", &b.Piers.Size),
			lengthKey("height", "height of a pier", &b.Piers.Height, positive),
		}, func(r *reader, n *yaml.Node) { b.Piers.At, b.Piers.Set = r.pos(n), true }),
		girtsKey(&b.Girts),
		bracesKey(&b.Braces),
		openingsKey(b),
	}
}

func roofFields(f *Roof) []field {
	return []field{
		wordKey("shape", "shape of the roof", &f.Shape, "gable", "shed").must(),
		{name: "pitch", kind: "a pitch", doc: "slope, as 9 in 12 or 37 deg",
			read: func(r *reader, n *yaml.Node) { f.Pitch = r.pitch(n) }, required: true},
		lengthKey("overhang", "rafter tail beyond the wall, level", &f.Overhang, notNegative),
		lengthKey("gable overhang", "plate beyond the gable", &f.GableOverhang, notNegative),
		lengthKey("rafter spacing", "middle to middle of rafters", &f.RafterSpacing, positive),
		wordKey("seat", "how rafters sit on the plate", &f.Seat, "step-lap", "birdsmouth"),
		wordKey("high wall", "of a shed roof, the wall that its rafters rise to", &f.HighWall, "north", "south"),
		wordKey("ridge", "a ridge beam on king posts, or none", &f.Ridge, "beam", "none"),
		wordKey("king posts", "which bents carry the ridge beam", &f.KingPosts, "every bent", "gables"),
		wordKey("tail", "how rafter tails are cut", &f.Tail, "square", "plumb"),
	}
}

func lengthsKey(name, doc string, dst *[]Length, limit int) field {
	return field{name: name, kind: "one or more lengths above zero", doc: doc, read: func(r *reader, n *yaml.Node) {
		r.items(n, name, limit, true, func(_ int, v *yaml.Node) {
			if l := r.length(v, positive); l.Set {
				*dst = append(*dst, l)
			}
		})
	}}
}

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
		wordsKey("in", "which walls have them", &g.In, "eave walls", "gable walls"),
	}, func(n *yaml.Node, r *reader, no bool) { g.At, g.Set, g.No = r.pos(n), true, no })
}

func bracesKey(b *Braces) field {
	return unless("braces", "knee braces", []field{
		legsKey("legs", "legs, on the post and on the level timber", &b.Legs),
		wordsKey("in", "where they stand", &b.In, "bents", "walls"),
	}, func(n *yaml.Node, r *reader, no bool) { b.At, b.Set, b.No = r.pos(n), true, no })
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
