package spec

import (
	"bytes"
	"errors"
	"io"
	"regexp"
	"strconv"
	"strings"
	"unicode/utf8"

	"gopkg.in/yaml.v3"

	"pegwright/geom/finding"
)

// Limits of one file.
const (
	maxBytes = 1 << 20
	maxLevel = 50 // keys and lists within each other
)

// open turns the bytes of a file into a tree of nodes, or says why it cannot.
func (r *reader) open(src []byte) *yaml.Node {
	text, ok := r.text(src)
	if !ok {
		return nil
	}
	r.lines = strings.Split(text, "\n")
	dec := yaml.NewDecoder(strings.NewReader(text))
	var doc, second yaml.Node
	err := dec.Decode(&doc)
	if errors.Is(err, io.EOF) || err == nil && isNull(doc.Content[0]) {
		r.faultAt(1, 1, "", "the description is empty", "write at least frame, units, and building or timbers")
		return nil
	}
	if err == nil {
		err = dec.Decode(&second)
		if err == nil {
			r.fault(&second, "", "a file holds one description, and a second begins here", "put it into a file of its own")
			return nil
		}
	}
	if !errors.Is(err, io.EOF) {
		r.notYAML(err)
		return nil
	}
	return doc.Content[0]
}

func isNull(n *yaml.Node) bool { return n.Kind == yaml.ScalarNode && n.Tag == "!!null" }

// text checks that src is readable text and returns it with plain line ends
// and without a byte order mark.
func (r *reader) text(src []byte) (string, bool) {
	if len(src) > maxBytes {
		r.faultAt(1, 1, "", "the file is larger than 1 MiB", "no frame needs that much; check that it is the right file")
		return "", false
	}
	if bytes.HasPrefix(src, []byte{0xff, 0xfe}) || bytes.HasPrefix(src, []byte{0xfe, 0xff}) {
		r.faultAt(1, 1, "", "the file is written in UTF-16", "save it as UTF-8")
		return "", false
	}
	if bytes.IndexByte(src, 0) >= 0 {
		r.faultAt(1, 1, "", "this is not a text file", "give the name of a frame description in YAML")
		return "", false
	}
	src = bytes.TrimPrefix(src, []byte("\ufeff"))
	src = bytes.ReplaceAll(src, []byte("\r\n"), []byte("\n"))
	src = bytes.ReplaceAll(src, []byte("\r"), []byte("\n"))
	return string(src), r.readable(src)
}

// readable reports the first character that cannot stand in a text file.
func (r *reader) readable(src []byte) bool {
	line, col := 1, 1
	for len(src) > 0 {
		c, n := utf8.DecodeRune(src)
		if c == utf8.RuneError && n == 1 {
			r.faultAt(line, col, "", "this byte is not UTF-8 text", "save the file as UTF-8")
			return false
		}
		if !legible(c) {
			r.faultAt(line, col, codePoint(c), "an invisible control character", "take it away")
			return false
		}
		col++
		if c == '\n' {
			line, col = line+1, 1
		}
		src = src[n:]
	}
	return true
}

// legible holds for the characters that YAML allows, less those that end a
// line without looking like it (YAML 1.2.2, section 5.1).
func legible(c rune) bool {
	switch {
	case c == '\n' || c == '\t':
		return true
	case c < 0x20 || c >= 0x7f && c < 0xa0:
		return false
	case c == 0x2028 || c == 0x2029 || c == 0xfeff || c == 0xfffe || c == 0xffff:
		return false
	}
	return true
}

func codePoint(c rune) string {
	s := strings.ToUpper(strconv.FormatInt(int64(c), 16))
	return "U+" + strings.Repeat("0", max(0, 4-len(s))) + s
}

var (
	yamlLine   = regexp.MustCompile(`^yaml: (?:line (\d+): )?(.*)$`)
	yamlParser = regexp.MustCompile(`^did not find expected (node content|key|',' or|'-' indicator|<document start>)`)
	yamlAlias  = regexp.MustCompile(`^unknown anchor '(.*)' referenced`)
)

// notYAML reports what the YAML library could not read, with its line.
func (r *reader) notYAML(err error) {
	line, what := 0, err.Error()
	if m := yamlLine.FindStringSubmatch(what); m != nil {
		what = m[2]
		if n, e := strconv.Atoi(m[1]); e == nil {
			line = n
		}
	}
	if yamlParser.MatchString(what) && line > 0 {
		line++ // the library counts these lines from nought
	}
	line = min(max(line, 1), len(r.lines))
	if m := yamlAlias.FindStringSubmatch(what); m != nil {
		r.lostAlias(m[1])
		return
	}
	if strings.Contains(what, "exceeded max depth") {
		r.tooDeep(line, 1)
		return
	}
	if s := findSlip(r.lines); s != nil && s.line <= line+1 {
		r.faultAt(s.line, s.col, s.source, s.text, s.mend)
		return
	}
	shown := strings.TrimSpace(r.lines[line-1])
	r.faultAt(line, 1, shorten(shown), "this is not YAML ("+what+")", "check indentation, colons, quotes and brackets on this line and the one before")
}

// lostAlias reports an alias without an anchor, which the YAML library refuses
// without saying where it stands.
func (r *reader) lostAlias(name string) {
	for i, l := range r.lines {
		if at := strings.Index(l, "*"+name); at >= 0 {
			r.faultAt(i+1, utf8.RuneCountInString(l[:at])+1, "*"+name, "anchors and aliases are not used in a description", "name a parameter, or write the value again")
			return
		}
	}
	r.faultAt(1, 1, "*"+name, "anchors and aliases are not used in a description", "name a parameter, or write the value again")
}

func (r *reader) tooDeep(line, col int) {
	r.faultAt(line, col, "", "keys and lists lie more than 50 deep within each other", "check the brackets and the indentation here")
}

func shorten(s string) string {
	c := []rune(s)
	if len(c) > 60 {
		return string(c[:57]) + "..."
	}
	return s
}

// tree checks what holds everywhere in a file: no anchors, no tags, plain
// keys, each key once, not too deep. It reports whether reading can go on.
func (r *reader) tree(n *yaml.Node, level int) bool {
	if level > maxLevel {
		r.tooDeep(n.Line, n.Column)
		return false
	}
	if n.Anchor != "" {
		r.fault(n, "&"+n.Anchor, "anchors and aliases are not used in a description", "name a parameter, or write the value again")
	}
	if n.Style&yaml.TaggedStyle != 0 {
		r.fault(n, n.Tag, "tags are not used in a description", "take the tag away")
	}
	if n.Kind == yaml.MappingNode {
		r.keysOnce(n)
	}
	for _, c := range n.Content {
		if !r.tree(c, level+1) {
			return false
		}
	}
	return true
}

// keysOnce reports keys that stand twice in one mapping, or are no words.
func (r *reader) keysOnce(n *yaml.Node) {
	seen := map[string]int{}
	for i := 0; i < len(n.Content); i += 2 {
		k := n.Content[i]
		if k.Kind != yaml.ScalarNode {
			if k.Kind != yaml.AliasNode {
				r.fault(k, "", "a key must be a word", "write key: value")
			}
			continue
		}
		if line, twice := seen[k.Value]; twice {
			r.fault(k, k.Value, "this key was written before, on line "+strconv.Itoa(line), "keep one of the two")
			continue
		}
		seen[k.Value] = k.Line
	}
}

// pos is the place of a node.
func (r *reader) pos(n *yaml.Node) finding.Pos {
	return finding.Pos{File: r.file, Line: n.Line, Col: n.Column}
}
