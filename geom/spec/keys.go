package spec

import "gopkg.in/yaml.v3"

// Key is one key of the description language, for a schema or a manual.
type Key struct {
	Path     string   // from the top, such as building.roof.pitch; <…> is a name, [] an item of a list
	Type     string   // what kind of value it takes
	Words    []string // the words it may take, where the choice is closed
	Doc      string   // one line
	Required bool     // wherever what it belongs to is written
}

// field is one row of a table of keys: how it is called, and how its value is
// read into the description.
type field struct {
	name, kind, doc string
	words           []string
	required        bool
	inner           []field
	suffix          string // what joins inner keys to the path: "" or "[]" or ".<id>"
	read            func(r *reader, n *yaml.Node)
}

func (f field) must() field { f.required = true; return f }

// Keys returns every key of the language, in the order of its tables.
func Keys() []Key {
	return appendKeys(nil, "", topFields(&Description{}))
}

func appendKeys(out []Key, prefix string, fields []field) []Key {
	for _, f := range fields {
		out = append(out, Key{Path: prefix + f.name, Type: f.kind, Words: f.words, Doc: f.doc, Required: f.required})
		out = appendKeys(out, prefix+f.name+f.suffix+".", f.inner)
	}
	return out
}

func lengthKey(name, doc string, dst *Length, b bound) field {
	kind := [...]string{"a length", "a length of zero or more", "a length above zero"}[b]
	return field{name: name, kind: kind, doc: doc, read: func(r *reader, n *yaml.Node) {
		if r.first(n, dst.Set) {
			*dst = r.length(n, b)
		}
	}}
}

func flagKey(name, doc string, dst *Flag) field {
	return field{name: name, kind: "yes or no", doc: doc, words: []string{"yes", "no"},
		read: func(r *reader, n *yaml.Node) { *dst = r.flag(n) }}
}

func countKey(name, doc string, dst *Number, low, high float64) field {
	return field{name: name, kind: "a whole number", doc: doc, read: func(r *reader, n *yaml.Node) {
		if r.first(n, dst.Set) {
			*dst = r.number(n, low, high, true)
		}
	}}
}

func wordKey(name, doc string, dst *Text, words ...string) field {
	return field{name: name, kind: "a word", doc: doc, words: words,
		read: func(r *reader, n *yaml.Node) { *dst = r.word(n, words) }}
}

func textKey(name, doc string, dst *Text, limit int) field {
	return field{name: name, kind: "text", doc: doc,
		read: func(r *reader, n *yaml.Node) { *dst = r.line(n, limit) }}
}

func idKey(name, doc string, dst *Text) field {
	return field{name: name, kind: "an id", doc: doc,
		read: func(r *reader, n *yaml.Node) { *dst = r.id(n) }}
}

func sizeKey(name, doc string, dst *Section) field {
	return field{name: name, kind: "a section", doc: doc, read: func(r *reader, n *yaml.Node) {
		if r.first(n, dst.Set) {
			*dst = r.section(n)
		}
	}}
}

func legsKey(name, doc string, dst *Section) field {
	return field{name: name, kind: "two lengths", doc: doc,
		read: func(r *reader, n *yaml.Node) {
			*dst = r.pair(n, "two legs such as 24 x 24", "the legs of any brace", 0, maxLegs)
		}}
}

func seasoningKey(name, doc string, dst *Seasoning) field {
	return field{name: name, kind: "a seasoning", doc: doc,
		read: func(r *reader, n *yaml.Node) { *dst = r.seasoning(n) }}
}

// wordsKey reads one or more of a choice of words, each once.
func wordsKey(name, doc string, dst *[]Text, words ...string) field {
	return field{name: name, kind: "words", doc: doc, words: words, read: func(r *reader, n *yaml.Node) {
		r.items(n, name, len(words), true, func(_ int, v *yaml.Node) {
			t := r.word(v, words)
			for _, d := range *dst {
				if t.Set && d.S == t.S {
					r.fault(v, t.S, "this word was written before", "write it once")
					return
				}
			}
			if t.Set {
				*dst = append(*dst, t)
			}
		})
	}}
}

// group is a key with keys of its own. mark, if given, learns where it stands.
func group(name, doc string, inner []field, mark func(r *reader, n *yaml.Node)) field {
	return field{name: name, kind: "keys", doc: doc, inner: inner, read: func(r *reader, n *yaml.Node) {
		if mark != nil {
			mark(r, n)
		}
		r.mapping(n, name, inner, nil)
	}}
}

// first reports a setting that was given before under another key.
func (r *reader) first(n *yaml.Node, set bool) bool {
	if set {
		r.fault(n, sourceOf(n), "this was set before under another key", "keep one of the two")
	}
	return !set
}
