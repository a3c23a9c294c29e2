package spec

import (
	"regexp"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"
)

// Limits of texts, in characters.
const (
	maxName = 60
	maxLine = 120
	maxNote = 2000
)

var idPattern = regexp.MustCompile(`^[a-z0-9-]{1,60}$`)

func plain(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// line reads free text for one line of a title block.
func (r *reader) line(n *yaml.Node, limit int) Text {
	s, ok := r.scalar(n, "text")
	if !ok {
		return Text{}
	}
	if n.Style&(yaml.LiteralStyle|yaml.FoldedStyle) != 0 {
		s = strings.Join(strings.Fields(s), " ")
	}
	s = strings.TrimSpace(s)
	if !r.printable(n, s, limit) {
		return Text{}
	}
	return Text{S: s, At: r.pos(n), Set: true}
}

// printable reports text that is too long or that the drawings cannot letter.
func (r *reader) printable(n *yaml.Node, s string, limit int) bool {
	if len([]rune(s)) > limit {
		r.fault(n, s, "this text is longer than "+itoa(limit)+" characters", "shorten it")
		return false
	}
	for i, c := range []rune(s) {
		if !Printable(c) {
			what := "the lettering of the drawings has no such character"
			if c < 0x20 || c == 0x7f {
				what = "a control character cannot be printed"
			}
			r.faultAt(n.Line, r.column(n, i), codePoint(c), what, "use letters, figures and common punctuation")
			return false
		}
	}
	return true
}

// name reads text that may end in a file name.
func (r *reader) name(n *yaml.Node) Text {
	t := r.line(n, maxName)
	if !t.Set {
		return t
	}
	if i := strings.IndexAny(t.S, `/\:*?"<>|`); i >= 0 || strings.HasPrefix(t.S, ".") {
		r.fault(n, t.S, `a name cannot hold / \ : * ? " < > | or begin with a point`, "use letters, figures, spaces and hyphens")
		return Text{}
	}
	return t
}

// id reads the id of a timber or joint.
func (r *reader) id(n *yaml.Node) Text {
	s, ok := r.scalar(n, "an id such as post-1-north")
	if !ok || !r.validID(n) {
		return Text{}
	}
	return Text{S: s, At: r.pos(n), Set: true}
}

func (r *reader) validID(n *yaml.Node) bool {
	if idPattern.MatchString(n.Value) {
		return true
	}
	r.fault(n, n.Value, "an id has 1 to 60 small letters, figures and hyphens", "write for example post-1-north")
	return false
}
