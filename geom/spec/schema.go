package spec

import (
	"encoding/json"
	"strings"
)

// Schema returns the JSON Schema (draft 2020-12) of the description language,
// made from the same tables that the reader goes by. It describes shape and
// words; what lengths and expressions mean is left to the reader. Words are
// given in lower case only, though the reader does not mind capitals.
func Schema() []byte {
	root := object(topFields(&Description{}))
	root["$schema"] = "https://json-schema.org/draft/2020-12/schema"
	root["title"] = "Frame description"
	root["description"] = "A small pegged timber frame, as pegwright reads it."
	defs := map[string]any{}
	for kind, s := range scalars() {
		defs[defName(kind)] = s
	}
	root["$defs"] = defs
	b, err := json.MarshalIndent(root, "", "  ")
	if err != nil {
		panic("the schema holds a value that JSON does not: " + err.Error())
	}
	return append(b, '\n')
}

// node is one object of a schema.
type node = map[string]any

func defName(kind string) string { return strings.ReplaceAll(kind, " ", "-") }

// scalars are the kinds of value that a key without keys of its own may take.
func scalars() map[string]node {
	length := func(what string) node {
		return node{"type": []string{"string", "number"}, "description": what +
			`: 7' 6 1/2", 90.5 in, 2299 mm, arithmetic on these and on parameters, or a bare number in the file's unit`}
	}
	number := node{"type": []string{"number", "string"}, "description": "a number, or arithmetic on numbers and parameters"}
	named := func(value node) node { return node{"type": "object", "additionalProperties": value} }
	ref := func(kind string) node { return node{"$ref": "#/$defs/" + defName(kind)} }
	byRole := func(value node) node {
		return node{"type": "object", "propertyNames": node{"enum": everyRole()}, "additionalProperties": value}
	}
	// Words are listed apart from what else is taken, so that an editor offers them.
	orWords := func(other node, words ...string) node { return node{"anyOf": []any{node{"enum": words}, other}} }
	id := node{"type": "string", "pattern": "^[a-z0-9-]{1,60}$"}
	return map[string]node{
		"a length":                 length("a length"),
		"a length of zero or more": length("a length of zero or more"),
		"a length above zero":      length("a length above zero"),
		"a length or centred":      orWords(length("a length"), "centred"),
		"auto, none or a length":   orWords(length("a length"), "auto", "none"),
		"a number":                 number,
		"a whole number":           number,
		"a flare":                  {"type": "string", "description": "1 in 7"},
		"a pitch":                  {"type": []string{"string", "number"}, "description": "9 in 12, or 37 deg"},
		"a seasoning":              orWords(node{"type": "string", "pattern": `%\s*$`, "description": "a moisture content such as 19%"}, seasonings()...),
		"a section":                {"type": "string", "description": "two sizes, such as 6 x 8"},
		"two lengths":              {"type": "string", "description": "two lengths, such as 30 x 24"},
		"a selector":               {"type": "string", "description": selectorGrammar},
		"yes or no":                {"enum": []any{"yes", "no", true, false}},
		"text":                     {"type": []string{"string", "number"}},
		"an id":                    id,
		"two ids":                  {"type": "array", "items": id, "minItems": 2, "maxItems": 2},
		"a point [x, y, z]":        {"type": "array", "items": ref("a length"), "minItems": 3, "maxItems": 3},
		"one or more lengths above zero": {"anyOf": []any{ref("a length above zero"),
			node{"type": "array", "items": ref("a length above zero"), "minItems": 1}}},
		"one or more whole numbers": {"anyOf": []any{ref("a whole number"),
			node{"type": "array", "items": ref("a whole number"), "minItems": 1}}},
		"sections by role":              byRole(ref("a section")),
		"a length, or lengths by role":  {"anyOf": []any{ref("a length of zero or more"), byRole(ref("a length of zero or more"))}},
		"names with lengths or numbers": named(length("a length or a number")),
		"names with numbers":            named(ref("a number")),
		"names with texts":              named(ref("text")),
	}
}

// everyRole are the names of all roles, singular and plural.
func everyRole() []string {
	var names []string
	for _, r := range Roles() {
		names = append(names, r.Name, r.Plural)
	}
	return names
}

// object is the schema of a set of keys.
func object(fields []field) node {
	props, required, names := node{}, []string{}, []string{}
	o := node{"type": "object", "additionalProperties": false}
	for _, f := range fields {
		if f.name == "<role>" {
			names = append(names, everyRole()...)
			o["patternProperties"] = node{"^(" + strings.Join(everyRole(), "|") + ")$": object(f.inner)}
			o["propertyNames"] = node{"enum": names}
			continue
		}
		names = append(names, f.name)
		props[f.name] = f.schema()
		if f.required {
			required = append(required, f.name)
		}
	}
	o["properties"] = props
	if len(required) > 0 {
		o["required"] = required
	}
	return o
}

// schema is the schema of the value of one key.
func (f field) schema() node {
	s := f.shape()
	s["description"] = f.doc
	return s
}

func (f field) shape() node {
	switch {
	case f.inner != nil:
		return f.nested()
	case f.kind == "words":
		one := node{"enum": f.words}
		return node{"anyOf": []any{one, node{"type": "array", "items": one, "minItems": 1, "uniqueItems": true}}}
	case f.kind == "two words":
		return node{"type": "array", "items": node{"enum": f.words}, "minItems": 2, "maxItems": 2}
	case f.kind == "yes or no" || len(f.words) == 0:
		return node{"$ref": "#/$defs/" + defName(f.kind)}
	}
	return node{"enum": f.words}
}

// nested is the schema of a key with keys of its own: a set of them, a list of
// sets, sets by id, or a single value instead of a set.
func (f field) nested() node {
	o := object(f.inner)
	switch {
	case f.suffix == "[]":
		return node{"type": "array", "items": o, "minItems": 1}
	case f.suffix == ".<id>":
		return node{"type": "object", "propertyNames": node{"$ref": "#/$defs/an-id"}, "additionalProperties": o}
	case f.kind == "keys, or no":
		return node{"anyOf": []any{o, node{"enum": []any{"no", false}}}}
	case f.kind == "keys, a list of keys, or no":
		return node{"anyOf": []any{o, node{"type": "array", "items": o, "minItems": 1}, node{"enum": []any{"no", false}}}}
	case f.kind == "a whole number or keys":
		return node{"anyOf": []any{node{"$ref": "#/$defs/a-whole-number"}, o}}
	}
	return o
}
