package spec

import "gopkg.in/yaml.v3"

const maxLeanTos = 4

// leanTosKey reads the list of lower roofs against the eave walls.
func leanTosKey(b *Building) field {
	table := func(l *LeanTo) []field {
		return []field{
			wordKey("wall", "the eave wall that it leans against", &l.Wall, "north", "south").must(),
			lengthKey("span", "wall to the outside of its posts", &l.Span, positive).must(),
			{name: "pitch", kind: "a pitch", doc: "slope, as 4 in 12 or 18 deg", required: true,
				read: func(r *reader, n *yaml.Node) { l.Pitch = r.pitch(n) }},
			lengthKey("height", "top of the ledger above the datum; left out, it lies below the braces of the wall", &l.Height, positive),
		}
	}
	return field{name: "lean-tos", kind: "a list", doc: "lower roofs against the eave walls", inner: table(&LeanTo{}), suffix: "[]",
		read: func(r *reader, n *yaml.Node) {
			r.items(n, "lean-tos", maxLeanTos, false, func(_ int, v *yaml.Node) {
				l := LeanTo{At: r.pos(v)}
				r.mapping(v, "a lean-to", table(&l), nil)
				b.LeanTos = append(b.LeanTos, l)
			})
		}}
}
