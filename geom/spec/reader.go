package spec

import (
	"errors"
	"strings"

	"gopkg.in/yaml.v3"

	"pegwright/geom/finding"
	"pegwright/geom/measure"
)

// maxFaults keeps the list of faults of a hopeless file readable.
const maxFaults = 100

// reader walks the nodes of one file and gathers faults.
type reader struct {
	file   string
	lines  []string
	scope  measure.Scope
	params params
	faults finding.Faults
	ids    map[string]bool // timbers that the file describes
}

func (r *reader) faultAt(line, col int, source, text, mend string) {
	at := finding.Pos{File: r.file, Line: line, Col: col}
	r.faults = append(r.faults, finding.Fault{At: at, Source: source, Text: text, Mend: mend})
}

func (r *reader) fault(n *yaml.Node, source, text, mend string) {
	r.faultAt(n.Line, n.Column, shorten(source), text, mend)
}

// misread reports an error inside an expression at its very column. Errors
// that come from a parameter already reported are left out.
func (r *reader) misread(n *yaml.Node, err error) {
	var e *measure.Error
	if errors.Is(err, errSpoilt) || !errors.As(err, &e) {
		return
	}
	r.faultAt(n.Line, r.column(n, e.Offset), shorten(n.Value), e.Text, e.Mend)
}

// column is where the rune at an offset of a scalar stands in the file. A
// value over several lines, or with escapes, is shown by its first column.
func (r *reader) column(n *yaml.Node, offset int) int {
	line := []rune(r.lines[min(n.Line, len(r.lines))-1])
	start := n.Column - 1
	if n.Style&(yaml.SingleQuotedStyle|yaml.DoubleQuotedStyle) != 0 {
		start++
	}
	if start <= len(line) && strings.HasPrefix(string(line[start:]), n.Value) {
		return start + 1 + offset
	}
	return n.Column
}

// kindWord names what a node is, for messages.
func kindWord(n *yaml.Node) string {
	switch n.Kind {
	case yaml.MappingNode:
		return "a set of keys"
	case yaml.SequenceNode:
		return "a list"
	}
	return "a single value"
}

// pairs calls each for every key and value of a mapping, duplicates and what
// was reported before left out. what names the place for messages.
func (r *reader) pairs(n *yaml.Node, what string, each func(k, v *yaml.Node)) bool {
	if n.Kind == yaml.AliasNode {
		return false
	}
	if n.Kind != yaml.MappingNode {
		if isNull(n) {
			r.fault(n, "", what+" is empty", "write its keys, or take it away")
		} else {
			r.fault(n, sourceOf(n), what+" takes keys with values, not "+kindWord(n), "write key: value, one a line, or {key: value, key: value}")
		}
		return false
	}
	seen := map[string]bool{}
	for i := 0; i+1 < len(n.Content); i += 2 {
		k, v := n.Content[i], n.Content[i+1]
		if k.Kind != yaml.ScalarNode || seen[k.Value] || r.commaNumber(n, k, v) {
			continue
		}
		seen[k.Value] = true
		each(k, v)
	}
	return true
}

// commaNumber reports a number with a comma in it, which inside braces ends the
// value there and leaves figures as a key.
func (r *reader) commaNumber(n, k, v *yaml.Node) bool {
	if n.Style&yaml.FlowStyle == 0 || !isNull(v) || k.Value == "" || k.Value[0] < '0' || k.Value[0] > '9' {
		return false
	}
	r.fault(k, k.Value, "these figures follow a comma, which ends the value before it", "write a decimal point, and no marks between thousands")
	return true
}

func sourceOf(n *yaml.Node) string {
	if n.Kind == yaml.ScalarNode {
		return n.Value
	}
	return ""
}

// mapping reads a mapping by its table of keys. other, if given, may take keys
// that are not in the table; more are further words to suggest.
func (r *reader) mapping(n *yaml.Node, what string, fields []field, other func(k, v *yaml.Node) bool, more ...string) {
	have := map[string]bool{} // misspelt keys count under the name they were meant for
	ok := r.pairs(n, what, func(k, v *yaml.Node) {
		have[k.Value] = true
		for _, f := range fields {
			if f.name == k.Value {
				r.field(f, k, v)
				return
			}
		}
		if other == nil || !other(k, v) {
			have[r.unknown(k, what, fields, more)] = true
		}
	})
	if !ok {
		return
	}
	for _, f := range fields {
		if f.required && !have[f.name] {
			r.fault(n, "", what+" needs the key "+f.name, f.name+": "+f.doc)
		}
	}
}

func (r *reader) field(f field, k, v *yaml.Node) {
	switch {
	case v.Kind == yaml.AliasNode:
	case isNull(v) && f.inner == nil:
		mend := "write " + f.kind + " after it, or take it away"
		if r.commented(k) {
			mend = "what follows # is a comment: put text that begins with # in quotes"
		}
		r.fault(k, k.Value, "this key has no value", mend)
	default:
		f.read(r, v)
	}
}

// commented reports whether a comment stands where a key's value should.
func (r *reader) commented(k *yaml.Node) bool {
	line := []rune(r.lines[min(k.Line, len(r.lines))-1])
	_, after, _ := strings.Cut(string(line[min(k.Column-1, len(line)):]), ":")
	return strings.HasPrefix(strings.TrimSpace(after), "#")
}

// unknown reports a key that is not in the table, and returns the name that it
// was meant for where one is near.
func (r *reader) unknown(k *yaml.Node, what string, fields []field, more []string) string {
	var words []string
	for _, f := range fields {
		words = append(words, f.name)
	}
	words = append(words, more...)
	r.fault(k, k.Value, what+" has no such key", suggest(k.Value, words))
	return finding.Nearest(k.Value, words)
}

// items calls each for every item of a list, no more than limit. A single
// value counts as a list of one where single is set.
func (r *reader) items(n *yaml.Node, what string, limit int, single bool, each func(i int, v *yaml.Node)) bool {
	switch {
	case n.Kind == yaml.AliasNode:
		return false
	case n.Kind == yaml.ScalarNode && single && strings.Contains(n.Value, ","):
		r.fault(n, n.Value, "several values stand in brackets", "write ["+shorten(n.Value)+"]")
		return false
	case n.Kind == yaml.ScalarNode && single && !isNull(n):
		each(0, n)
		return true
	case n.Kind != yaml.SequenceNode:
		r.fault(n, sourceOf(n), what+" takes a list, not "+kindWord(n), "put brackets round it, [ ], or a dash before each item")
		return false
	case len(n.Content) == 0:
		r.fault(n, "", what+" has an empty list", "write at least one item, or take the key away")
		return false
	case len(n.Content) > limit:
		r.fault(n.Content[limit], "", what+" has more than "+itoa(limit)+" items", "divide the frame into several descriptions")
		return false
	}
	for i, v := range n.Content {
		if v.Kind != yaml.AliasNode {
			each(i, v)
		}
	}
	return true
}
