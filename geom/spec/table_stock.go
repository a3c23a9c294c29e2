package spec

import "gopkg.in/yaml.v3"

const (
	maxWoods   = 40
	maxLengths = 20
)

// woodsKey reads woods that are not in the program's table.
func woodsKey(d *Description) field {
	table := func(w *OwnWood) []field {
		return []field{
			textKey("name", "what it is called", &w.Name, maxName).must(),
			numberKey("specific gravity", "oven-dry mass over green volume", &w.Gravity, 0.2, 1.2).must(),
			numberKey("tangential", "shrinkage along the rings, green to oven-dry, percent", &w.Tangential, 0.5, 20).must(),
			numberKey("radial", "shrinkage across the rings, green to oven-dry, percent", &w.Radial, 0.5, 20).must(),
			numberKey("volumetric", "shrinkage of volume, green to oven-dry, percent", &w.Volumetric, 1, 40),
			numberKey("green moisture", "moisture content when fresh from the saw, percent", &w.Moisture, 30, 250),
			flagKey("hardwood", "it is a hardwood", &w.Hardwood),
		}
	}
	return field{name: "woods", kind: "a list", doc: "woods that are not in the table", inner: table(&OwnWood{}), suffix: "[]",
		read: func(r *reader, n *yaml.Node) {
			r.items(n, "woods", maxWoods, false, func(_ int, v *yaml.Node) {
				var w OwnWood
				r.mapping(v, "a wood", table(&w), nil)
				d.Woods = append(d.Woods, w)
			})
		}}
}

func stockFields(s *Stock) []field {
	return []field{
		lengthsKey("lengths", "stock lengths of timber on offer", &s.Lengths, maxLengths),
		pricesKey(s),
		lengthKey("kerf", "wood that a saw cut takes between two pieces", &s.Kerf, notNegative),
		{name: "billet", kind: "two lengths", doc: "square billets for pegs, side x length",
			read: func(r *reader, n *yaml.Node) {
				s.Billet = r.pair(n, "a size such as 10 x 12", "any billet", minSection, maxLegs)
			}},
		lengthKey("lead screw", "length of the bits' lead screws", &s.LeadScrew, notNegative),
	}
}

// pricesKey reads prices by the names of woods.
func pricesKey(s *Stock) field {
	return field{name: "prices", kind: "names with numbers", doc: "price of a board foot, or of a cubic metre in files in mm or m",
		read: func(r *reader, n *yaml.Node) {
			r.pairs(n, "prices", func(k, v *yaml.Node) {
				if v.Kind == yaml.AliasNode {
					return
				}
				name, cost := r.line(k, maxName), r.number(v, 0, 1e6, false)
				if name.Set && cost.Set {
					s.Prices = append(s.Prices, Price{name, cost})
				}
			})
		}}
}

func numberKey(name, doc string, dst *Number, low, high float64) field {
	return field{name: name, kind: "a number", doc: doc + ", " + plain(low) + " to " + plain(high), read: func(r *reader, n *yaml.Node) {
		if r.first(n, dst.Set) {
			*dst = r.number(n, low, high, false)
		}
	}}
}
