package spec

import "gopkg.in/yaml.v3"

const maxTimbers = 5000

// timberFields are the settings of a timber, for timbers and adjust.
func timberFields(t *TimberSettings) []field {
	return []field{
		sizeKey("section", "nominal size of the stick", &t.Section),
		textKey("species", "its wood", &t.Species, maxName),
		seasoningKey("seasoning", "how dry it is when cut", &t.Seasoning),
		flagKey("planed", "planed to size", &t.Planed),
		lengthKey("reduce", "what the ideal timber is thinner than the stick", &t.Reduce, notNegative),
		lengthKey("trim", "extra length ordered at each end", &t.Trim, notNegative),
	}
}

func oneTimber(t *Timber) []field {
	return append([]field{
		{name: "role", kind: "a role", words: roleNames(), doc: "what the timber is", required: true,
			read: func(r *reader, n *yaml.Node) { t.Role = r.role(n) }},
		pointKey("from", "start of the reference arris", &t.From),
		pointKey("to", "end of the reference arris", &t.To),
		facesKey(t),
		betweenKey(t),
		legsKey("legs", "legs of a brace, on the first receiver and on the second", &t.Legs),
		lengthKey("off reference", "receivers' reference face to the brace's own", &t.OffReference, anyLength),
		wordKey("toward", "side of the first receiver on which a brace stands", &t.Toward, compass()...),
	}, timberFields(&t.TimberSettings)...)
}

func pointKey(name, doc string, dst *Point) field {
	return field{name: name, kind: "a point [x, y, z]", doc: doc,
		read: func(r *reader, n *yaml.Node) { *dst = r.point(n) }}
}

func facesKey(t *Timber) field {
	sides := []string{"top", "bottom", "north", "south", "east", "west"}
	return field{name: "faces", kind: "two words", words: sides, doc: "the two reference faces", read: func(r *reader, n *yaml.Node) {
		t.Faces = pair(r, n, "faces", "[top, south]", func(v *yaml.Node) Text { return r.word(v, sides) })
		if len(t.Faces) == 2 && axis(t.Faces[0].S) == axis(t.Faces[1].S) {
			r.fault(n, t.Faces[0].S+", "+t.Faces[1].S, "two reference faces must meet in an arris", "name two faces that are neighbours, such as top and south")
		}
	}}
}

// axis numbers the direction in which a face looks, opposite faces alike.
func axis(side string) int {
	switch side {
	case "east", "west":
		return 0
	case "north", "south":
		return 1
	}
	return 2
}

// pair reads a list of exactly two words; nil when it is not one.
func pair(r *reader, n *yaml.Node, what, example string, read func(v *yaml.Node) Text) []Text {
	if n.Kind == yaml.SequenceNode && len(n.Content) != 2 {
		r.fault(n, "", what+" takes exactly two words", "write for example "+example)
		return nil
	}
	var out []Text
	r.items(n, what, 2, false, func(_ int, v *yaml.Node) {
		if t := read(v); t.Set {
			out = append(out, t)
		}
	})
	if len(out) != 2 {
		return nil
	}
	return out
}

func betweenKey(t *Timber) field {
	return field{name: "between", kind: "two ids", doc: "the two timbers a brace stands between", read: func(r *reader, n *yaml.Node) {
		t.Between = pair(r, n, "between", "[post-1-north, tie-1]", r.id)
		if len(t.Between) == 2 && t.Between[0].S == t.Between[1].S {
			r.fault(n, t.Between[0].S, "a brace stands between two different timbers", "name the post, then the level timber")
		}
	}}
}

func timbersKey(d *Description) field {
	return field{name: "timbers", kind: "timbers by id", doc: "sticks described one by one", inner: oneTimber(&Timber{}), suffix: ".<id>",
		read: func(r *reader, n *yaml.Node) {
			if n.Kind == yaml.MappingNode && len(n.Content)/2 > maxTimbers {
				r.fault(n.Content[2*maxTimbers], "", "more than 5000 timbers", "divide the frame into several descriptions")
				return
			}
			r.pairs(n, "timbers", func(k, v *yaml.Node) { r.timber(d, k, v) })
		}}
}

func (r *reader) timber(d *Description, k, v *yaml.Node) {
	if !r.validID(k) || v.Kind == yaml.AliasNode {
		return
	}
	t := Timber{ID: Text{S: k.Value, At: r.pos(k), Set: true}, At: r.pos(k)}
	before := len(r.faults)
	r.mapping(v, "timber "+k.Value, oneTimber(&t), nil)
	if len(r.faults) == before {
		r.placed(k, &t)
	}
	d.Timbers = append(d.Timbers, t)
}

// placed reports a timber whose place in the frame is not said once.
func (r *reader) placed(k *yaml.Node, t *Timber) {
	ends := t.From.Set || t.To.Set
	switch {
	case ends && t.Between != nil:
		r.fault(k, k.Value, "this timber is placed twice", "write from and to, or between")
	case ends && !(t.From.Set && t.To.Set), !ends && t.Between == nil:
		r.fault(k, k.Value, "it is not said where this timber lies", "write from and to, or, for a brace, between")
	case t.Between != nil && t.Role.S != "brace":
		r.fault(k, k.Value, "only a brace is placed between two timbers", "write from and to")
	case ends && t.From.X.MM == t.To.X.MM && t.From.Y.MM == t.To.Y.MM && t.From.Z.MM == t.To.Z.MM:
		r.fault(k, k.Value, "from and to are the same place", "write the other end of the reference arris")
	}
}

func measuredKey(d *Description) field {
	table := func(m *Measured) []field {
		return []field{
			sizeKey("foot", "size at the foot", &m.Start), sizeKey("start", "size at the start end", &m.Start),
			sizeKey("top", "size at the top", &m.End), sizeKey("end", "size at the other end", &m.End),
		}
	}
	return field{name: "measured", kind: "sizes by id", doc: "true sizes of sticks at their ends", inner: table(&Measured{}), suffix: ".<id>",
		read: func(r *reader, n *yaml.Node) {
			if n.Kind == yaml.MappingNode && len(n.Content)/2 > maxTimbers {
				r.fault(n.Content[2*maxTimbers], "", "more than 5000 measured timbers", "divide the frame into several descriptions")
				return
			}
			r.pairs(n, "measured", func(k, v *yaml.Node) {
				if !r.validID(k) || v.Kind == yaml.AliasNode {
					return
				}
				m := Measured{ID: Text{S: k.Value, At: r.pos(k), Set: true}}
				r.mapping(v, "the measured "+k.Value, table(&m), nil)
				d.Measured = append(d.Measured, m)
			})
		}}
}
