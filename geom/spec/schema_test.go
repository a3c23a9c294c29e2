package spec_test

import (
	"bytes"
	"maps"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"gopkg.in/yaml.v3"

	"pegwright/geom/spec"
	"pegwright/samples"
)

// compiled is the published schema in a general-purpose validator of JSON
// Schema, which also holds it to the draft it names.
func compiled(t *testing.T) (*jsonschema.Schema, map[string]any) {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(spec.Schema()))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	c.DefaultDraft(jsonschema.Draft2020)
	if err := c.AddResource("mem:schema", doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("mem:schema")
	if err != nil {
		t.Fatal(err)
	}
	return s, doc.(map[string]any)
}

// plain is a description as an editor sees it: maps, lists and scalars.
func plain(t *testing.T, text string) any {
	t.Helper()
	var v any
	if err := yaml.Unmarshal([]byte(text), &v); err != nil {
		t.Fatalf("%v in\n%s", err, text)
	}
	return scalarsOnly(v)
}

func scalarsOnly(v any) any {
	switch v := v.(type) {
	case map[string]any:
		for k, x := range v {
			v[k] = scalarsOnly(x)
		}
	case []any:
		for i, x := range v {
			v[i] = scalarsOnly(x)
		}
	case time.Time:
		return v.Format(time.DateOnly)
	case int:
		return float64(v)
	}
	return v
}

func TestSchemaTakesEverySample(t *testing.T) {
	s, _ := compiled(t)
	for _, name := range samples.Names() {
		src, _ := samples.Source(name)
		if err := s.Validate(plain(t, string(src))); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// What the reader refuses for its shape or words, the schema refuses too.
func TestSchemaRefuses(t *testing.T) {
	s, _ := compiled(t)
	for _, bad := range []string{
		"units: in", "frame: x\nunits: cubits", "frame: x\nunits: in\nbuildng: {}",
		"frame: x\nunits: in\nbuilding: {span: 8', bays: [9'], eave: 7', roof: {shape: dome, pitch: 9 in 12}}",
		"frame: x\nunits: in\nbuilding: {bays: [9'], eave: 7'}",
		"frame: x\nunits: in\nbuilding: {span: 8', bays: [], eave: 7'}",
		"frame: x\nunits: in\nbuilding: {span: 8', bays: [9'], eave: 7', sills: maybe}",
		"frame: x\nunits: in\nsections: {mast: 6 x 6}",
		"frame: x\nunits: in\nlayout: {posts: {bohre: 1}}",
		"frame: x\nunits: in\njoints: [{kind: glue, of: a, end: start, into: b}]",
		"frame: x\nunits: in\ntimbers: {Post 1: {role: post}}",
		"frame: x\nunits: in\ntimbers: {a: {role: post, from: [1, 2]}}",
	} {
		if _, faults := spec.Read("f.yaml", []byte(bad), nil); len(faults) == 0 {
			t.Errorf("the reader takes\n%s", bad)
		}
		if s.Validate(plain(t, bad)) == nil {
			t.Errorf("the schema takes\n%s", bad)
		}
	}
}

// with nests a value under a path such as building.openings[].wall.
func with(path string, value any) any {
	head, rest, deeper := strings.Cut(path, ".")
	name, list := strings.CutSuffix(head, "[]")
	switch name {
	case "<id>":
		name = "some-id"
	case "<role>":
		name = "posts"
	}
	if deeper {
		value = with(rest, value)
	}
	if list {
		value = []any{value}
	}
	return map[string]any{name: value}
}

// unknown reports whether the reader knows no such key at the end of a path.
func unknown(t *testing.T, path string) bool {
	t.Helper()
	text, err := yaml.Marshal(with(path, "0"))
	if err != nil {
		t.Fatal(err)
	}
	_, faults := spec.Read("f.yaml", text, nil)
	for _, f := range faults {
		if strings.Contains(f.Text, "no such key") {
			return true
		}
	}
	return false
}

// nodes are the schemas of all keys of a schema object, by their places.
func nodes(prefix string, o map[string]any) map[string]map[string]any {
	out := map[string]map[string]any{}
	add := func(name string, v any) {
		s := v.(map[string]any)
		out[prefix+name] = s
		kinds := []any{s}
		if any, ok := s["anyOf"].([]any); ok {
			kinds = any
		}
		for _, k := range kinds {
			k := k.(map[string]any)
			maps.Copy(out, nodes(prefix+name+".", k))
			if items, ok := k["items"].(map[string]any); ok {
				maps.Copy(out, nodes(prefix+name+"[].", items))
			}
			if more, ok := k["additionalProperties"].(map[string]any); ok {
				maps.Copy(out, nodes(prefix+name+".<id>.", more))
			}
		}
	}
	props, _ := o["properties"].(map[string]any)
	for name, v := range props {
		add(name, v)
	}
	if pattern, ok := o["patternProperties"].(map[string]any); ok && len(props) > 0 {
		for _, v := range pattern {
			add("<role>", v)
		}
	}
	return out
}

// paths lists every key of a schema object with its place.
func paths(prefix string, o map[string]any) []string {
	return slices.Collect(maps.Keys(nodes(prefix, o)))
}

func TestSchemaAndReaderKnowTheSameKeys(t *testing.T) {
	_, doc := compiled(t)
	published := paths("", doc)
	var read []string
	for _, k := range spec.Keys() {
		read = append(read, k.Path)
		if !slices.Contains(published, k.Path) {
			t.Errorf("the schema lacks %s", k.Path)
		}
	}
	for _, p := range published {
		if unknown(t, p) {
			t.Errorf("the reader knows no %s", p)
		}
		// A key that takes one set or a list of sets lists its keys once.
		if !slices.Contains(read, p) && !slices.Contains(read, strings.ReplaceAll(p, "braces[].", "braces.")) {
			t.Errorf("the table of keys lacks %s", p)
		}
	}
	if !unknown(t, "building.roof.pich") || !unknown(t, "joints[].offf") {
		t.Error("the reader takes keys that nobody wrote for it")
	}
}

// Every reference of the schema leads somewhere, and nothing is left open: a
// kind of value without a definition would let an editor accept anything.
func TestSchemaDefinesEveryKind(t *testing.T) {
	_, doc := compiled(t)
	defs := doc["$defs"].(map[string]any)
	var walk func(v any)
	walk = func(v any) {
		switch v := v.(type) {
		case map[string]any:
			if ref, ok := v["$ref"].(string); ok && defs[strings.TrimPrefix(ref, "#/$defs/")] == nil {
				t.Errorf("%s leads nowhere", ref)
			}
			for _, x := range v {
				walk(x)
			}
		case []any:
			for _, x := range v {
				walk(x)
			}
		}
	}
	walk(doc)
	if len(defs) < 10 {
		t.Errorf("only %d definitions", len(defs))
	}
}

// listed collects the words and the keys that a schema lists, references
// followed.
func listed(doc map[string]any, v any) (words []string) {
	switch v := v.(type) {
	case map[string]any:
		if ref, ok := v["$ref"].(string); ok {
			words = listed(doc, doc["$defs"].(map[string]any)[strings.TrimPrefix(ref, "#/$defs/")])
		}
		enum, _ := v["enum"].([]any)
		for _, w := range enum {
			if w, ok := w.(string); ok {
				words = append(words, w)
			}
		}
		props, _ := v["properties"].(map[string]any)
		words = append(words, slices.Collect(maps.Keys(props))...)
		for _, x := range []any{v["anyOf"], v["items"], v["propertyNames"]} {
			words = append(words, listed(doc, x)...)
		}
	case []any:
		for _, x := range v {
			words = append(words, listed(doc, x)...)
		}
	}
	return words
}

// offered are the words that the reader offers for one that has no meaning, at
// the end of a path: as a value, as an item of a list, or as a key.
func offered(t *testing.T, path string) (words []string) {
	t.Helper()
	const no = "zzzzqq"
	for _, value := range []any{no, []string{no, no}, map[string]any{no: "1"}} {
		text, err := yaml.Marshal(with(path, value))
		if err != nil {
			t.Fatal(err)
		}
		_, faults := spec.Read("f.yaml", text, nil)
		for _, f := range faults {
			list, choice := strings.CutPrefix(f.Mend, "write one of: ")
			if choice && f.Source == no {
				words = append(words, strings.Split(list, ", ")...)
			}
		}
	}
	return words
}

// A word that the reader knows for a key stands in the schema, where an editor
// finds it to offer: what the reader names when it is given nonsense, and what
// the kind of a value says in its own name.
func TestSchemaListsEveryChoice(t *testing.T) {
	_, doc := compiled(t)
	all := nodes("", doc)
	named := map[string][]string{"yes or no": {"yes", "no"}, "auto, none or a length": {"auto", "none"}, "a length or centred": {"centred"},
		"keys, or no": {"no"}, "keys, a list of keys, or no": {"no"}}
	choices := 0
	for _, k := range spec.Keys() {
		want := append(offered(t, k.Path), named[k.Type]...)
		if len(want) == 0 {
			continue
		}
		choices++
		have := listed(doc, all[k.Path])
		for _, w := range want {
			if !slices.Contains(have, w) {
				t.Errorf("%s takes %q, and its schema lists %q", k.Path, w, have)
			}
		}
	}
	if choices < 100 {
		t.Errorf("only %d keys with a choice", choices)
	}
}
