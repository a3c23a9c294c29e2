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
		wordKey("ties", "ties dropped between the posts, or laid over the plates", &b.Ties, "dropped", "over plates"),
		group("roof", "the roof", roofFields(&b.Roof), func(r *reader, n *yaml.Node) { b.Roof.At, b.Roof.Set = r.pos(n), true }),
		flagKey("sills", "the posts stand on sills", &b.Sills),
		group("piers", "blocks under posts or sills", []field{
			sizeKey("size", "size of a pier, in plan", &b.Piers.Size),
			lengthKey("height", "height of a pier", &b.Piers.Height, positive),
			lengthKey("spacing", "most from middle to middle under a sill", &b.Piers.Spacing, positive),
		}, func(r *reader, n *yaml.Node) { b.Piers.At, b.Piers.Set = r.pos(n), true }),
		wordKey("cross sills", "where sills run across the building", &b.CrossSills, "at gables", "at bents"),
		floorKey(&b.Floor),
		loftKey(&b.Loft),
		girtsKey(&b.Girts),
		bracesKey(&b.Braces),
		openingsKey(b),
		leanTosKey(b),
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
		wordKey("truss", "principal rafters on the ties, with a king post or queen posts", &f.Truss, "king post", "queen posts", "none"),
		lengthKey("heel", "wood of the tie behind the foot of a principal rafter", &f.Heel, positive),
		lengthKey("purlin spacing", "most between purlins, along the slope", &f.PurlinSpacing, positive),
		group("collars", "level timbers that tie pairs of rafters", []field{
			lengthKey("height", "underside above the plates", &f.Collars.Height, positive).must(),
			wordKey("on", "which pairs have one", &f.Collars.On, "every pair", "every second pair"),
		}, func(r *reader, n *yaml.Node) { f.Collars.At, f.Collars.Set = r.pos(n), true }),
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
