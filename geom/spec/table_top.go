package spec

import (
	"slices"
	"strings"

	"gopkg.in/yaml.v3"

	"pegwright/geom/measure"
)

func compass() []string { return []string{"north", "south", "east", "west"} }

// topFields is the table of the whole language.
func topFields(d *Description) []field {
	return []field{
		textKey("frame", "title of the frame", &d.Title, maxLine).must(),
		unitsKey(d).must(),
		textKey("drawn for", "owner or client", &d.DrawnFor, maxLine),
		textKey("drawn by", "who drew it", &d.DrawnBy, maxLine),
		textKey("place", "where it will stand", &d.Place, maxLine),
		textKey("date", "date as it shall be printed", &d.Date, maxLine),
		textKey("revision", "revision mark", &d.Revision, maxLine),
		textKey("note", "a note for the cover", &d.Note, maxNote),
		{name: "parameters", kind: "names with lengths or numbers", doc: "named values for the expressions of this file",
			read: func(*reader, *yaml.Node) {}}, // read before everything else
		group("wood", "what sticks and pegs are made of", woodFields(&d.Wood), nil),
		woodsKey(d),
		group("stock", "what can be bought, and tools that bear on how it is cut", stockFields(&d.Stock), nil),
		sectionsKey(d),
		layoutKey(&d.Layout),
		group("building", "the frame in the words of the common case", buildingFields(&d.Building), func(r *reader, n *yaml.Node) {
			d.Building.At, d.Building.Set = r.pos(n), true
		}),
		timbersKey(d),
		jointsKey(d),
		measuredKey(d),
		adjustKey(d),
		designKey(d),
		group("paper", "sizes of paper", paperFields(&d.Paper), nil),
	}
}

// unitsKey is read before everything else, because all lengths depend on it.
func unitsKey(d *Description) field {
	return field{name: "units", kind: "a word", doc: "unit of a bare number, and system in which lengths are shown",
		words: unitNames(), read: func(r *reader, n *yaml.Node) {
			if t := r.unit(n); t.Set {
				d.Unit, _ = measure.ParseUnit(t.S)
				d.Units = d.Unit.Units()
			}
		}}
}

// unit reads the file's unit. A near word is never guessed at: cm is near mm.
func (r *reader) unit(n *yaml.Node) Text {
	s, ok := r.scalar(n, "a unit")
	if !ok {
		return Text{}
	}
	w := strings.ToLower(s)
	if slices.Contains(unitNames(), w) {
		return Text{S: w, At: r.pos(n), Set: true}
	}
	mend := "write one of: " + strings.Join(unitNames(), ", ")
	if u, ok := measure.ParseUnit(w); ok {
		mend = "did you mean " + u.String() + "?"
	}
	r.fault(n, s, "this word has no meaning here", mend)
	return Text{}
}

func unitNames() []string { return []string{"in", "ft", "mm", "m"} }

func woodFields(w *Wood) []field {
	return []field{
		group("timbers", "the sticks", []field{
			textKey("species", "wood of the sticks", &w.Species, maxName),
			seasoningKey("seasoning", "how dry they are when cut", &w.Seasoning),
			flagKey("planed", "the sticks are planed to size", &w.Planed),
			reduceKey(w),
			lengthKey("longest", "longest stick to be had", &w.Longest, positive),
			{name: "service moisture", kind: "a number", doc: "moisture content in service, percent",
				read: func(r *reader, n *yaml.Node) { w.ServiceMoisture = r.number(n, 3, 30, false) }},
		}, nil),
		group("pegs", "the pegs", []field{
			textKey("species", "wood of the pegs", &w.PegSpecies, maxName),
			seasoningKey("seasoning", "how dry they are when driven", &w.PegSeasoning),
		}, nil),
	}
}

// reduceKey reads one length for all sticks, or lengths by role.
func reduceKey(w *Wood) field {
	return field{name: "reduce", kind: "a length, or lengths by role", doc: "what the ideal timber is thinner than the stick",
		read: func(r *reader, n *yaml.Node) {
			if n.Kind == yaml.ScalarNode {
				w.Reduce = r.length(n, notNegative)
				return
			}
			r.byRole(n, "reduce", func(role Text, v *yaml.Node) {
				if l := r.length(v, notNegative); l.Set {
					w.ReduceBy = append(w.ReduceBy, RoleLength{role, l})
				}
			})
		}}
}

// byRole reads a mapping whose keys are roles, each once.
func (r *reader) byRole(n *yaml.Node, what string, each func(role Text, v *yaml.Node)) {
	seen := map[string]bool{}
	r.pairs(n, what, func(k, v *yaml.Node) {
		role := r.role(k)
		switch {
		case !role.Set || v.Kind == yaml.AliasNode:
		case seen[role.S]:
			r.fault(k, k.Value, "this role was written before", "keep one of the two")
		default:
			seen[role.S] = true
			each(role, v)
		}
	})
}

func sectionsKey(d *Description) field {
	return field{name: "sections", kind: "sections by role", doc: "nominal size of the sticks of each role", suffix: "",
		read: func(r *reader, n *yaml.Node) {
			r.byRole(n, "sections", func(role Text, v *yaml.Node) {
				if s := r.section(v); s.Set {
					d.Sections = append(d.Sections, RoleSection{role, s})
				}
			})
		}}
}

const maxDesign = 200

func designKey(d *Description) field {
	return field{name: "design", kind: "names with texts", doc: "design criteria, printed as written",
		read: func(r *reader, n *yaml.Node) {
			r.pairs(n, "design", func(k, v *yaml.Node) {
				if len(d.Design) == maxDesign {
					r.fault(k, k.Value, "more than 200 design criteria", "keep those that the sheets shall print")
				}
				if v.Kind == yaml.AliasNode {
					return
				}
				name, value := r.line(k, maxName), r.line(v, maxLine)
				if name.Set && value.Set && len(d.Design) < maxDesign {
					d.Design = append(d.Design, Criterion{name, value})
				}
			})
		}}
}
