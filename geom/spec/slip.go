package spec

import "strings"

// slip is a mistake in the writing of YAML itself, found in the text: the
// library says only near which line it gave up, and in words of its own.
type slip struct {
	line, col  int // 1-based, in runes
	source     string
	text, mend string
}

// slipFinder reads a text line by line as a framer does: keys, values, quotes,
// brackets, columns. It stops at the first slip.
type slipFinder struct {
	found   *slip
	line    int // 1-based
	row     []rune
	open    []mark // brackets that are open
	keys    []key  // keys that the next line may belong to, outermost first
	literal int    // column of a key whose value is a block of text; 0 outside
}

// mark is a bracket and where it stands.
type mark struct {
	sign      rune
	line, col int
}

// key is a key of the block style: where it stands and whether its line gives
// it a value.
type key struct {
	name   string
	line   int
	col    int
	valued bool
}

// findSlip returns the first slip in the lines, nil when there is none that it
// knows. It is asked only about text that is not YAML.
func findSlip(lines []string) *slip {
	f := &slipFinder{}
	for i, l := range lines {
		f.line, f.row = i+1, []rune(l)
		if f.read(); f.found != nil {
			return f.found
		}
	}
	if len(f.open) > 0 {
		b := f.open[len(f.open)-1]
		f.line = b.line
		f.slip(b.col, string(b.sign), "this bracket is never closed", "close it with "+string(closing(b.sign))+" where its list or its set of keys ends")
	}
	return f.found
}

func (f *slipFinder) slip(col int, source, text, mend string) {
	if f.found == nil {
		f.found = &slip{f.line, col + 1, source, text, mend}
	}
}

// read takes one line.
func (f *slipFinder) read() {
	at := f.indent()
	switch {
	case len(f.open) > 0:
		f.flow(at)
		return
	case at == len(f.row) || f.row[at] == '#' || f.row[at] == '\t' && strings.TrimSpace(string(f.row)) == "":
		return
	case f.literal > 0 && at >= f.literal:
		return
	}
	f.literal = 0
	switch text := string(f.row[at:]); {
	case f.row[at] == '\t':
		f.slip(at, "", "this line is indented with a tab", "indent with spaces, not with tabs")
	case at == 0 && (text == "---" || text == "..." || strings.HasPrefix(text, "--- ") || strings.HasPrefix(text, "%")):
		f.keys = nil
	default:
		f.block(at)
	}
}

func (f *slipFinder) indent() int {
	at := 0
	for at < len(f.row) && f.row[at] == ' ' {
		at++
	}
	return at
}

// block reads a line outside brackets: dashes, a key, a value.
func (f *slipFinder) block(at int) {
	dashed := false
	for f.dash(at) {
		dashed = true
		for at++; at < len(f.row) && f.row[at] == ' '; at++ {
		}
	}
	if at == len(f.row) || f.row[at] == '#' {
		return
	}
	if strings.ContainsRune("[{", f.row[at]) {
		f.flow(at)
		return
	}
	colon := f.colon(at)
	switch {
	case colon < 0 && dashed:
		f.value(at)
	case colon < 0:
		f.keyless(at)
	default:
		f.keyed(at, colon, dashed)
	}
}

func (f *slipFinder) dash(at int) bool {
	return at < len(f.row) && f.row[at] == '-' && (at+1 == len(f.row) || f.row[at+1] == ' ')
}

// colon returns where the colon of a key stands, -1 when there is none.
func (f *slipFinder) colon(at int) int {
	if end := f.quoted(at); end > 0 {
		at = end
	}
	for i := at; i < len(f.row); i++ {
		if f.comment(i) {
			return -1
		}
		if f.row[i] == ':' && (i+1 == len(f.row) || f.row[i+1] == ' ' || f.row[i+1] == '\t') {
			return i
		}
	}
	return -1
}

func (f *slipFinder) comment(i int) bool {
	return f.row[i] == '#' && (i == 0 || f.row[i-1] == ' ' || f.row[i-1] == '\t')
}

// quoted returns the offset behind the quoted text that begins at i, 0 when
// none begins there or it does not end on this line.
func (f *slipFinder) quoted(i int) int {
	if i >= len(f.row) || f.row[i] != '"' && f.row[i] != '\'' {
		return 0
	}
	q := f.row[i]
	for j := i + 1; j < len(f.row); j++ {
		switch {
		case q == '"' && f.row[j] == '\\':
			j++
		case f.row[j] == q && q == '\'' && j+1 < len(f.row) && f.row[j+1] == q:
			j++
		case f.row[j] == q:
			return j + 1
		}
	}
	return 0
}

// keyless judges a line that holds no key: it may go on with the text above.
func (f *slipFinder) keyless(at int) {
	for len(f.keys) > 0 && f.keys[len(f.keys)-1].col >= at {
		f.keys = f.keys[:len(f.keys)-1]
	}
	if n := len(f.keys); n > 0 && f.keys[n-1].valued {
		return
	}
	end := at
	for end < len(f.row) && !f.comment(end) {
		end++
	}
	word, rest, tight := strings.Cut(string(f.row[at:end]), ":")
	if tight && word != "" && !strings.ContainsAny(word, "\"'[{") {
		f.slip(at+len([]rune(word)), "", "a space is missing after this colon", "write "+shorten(word+": "+strings.TrimSpace(rest)))
		return
	}
	f.slip(at, "", "this line has no colon after its key", "write key: value, as in units: in")
}

// keyed judges a line with a key: its column, then its value.
func (f *slipFinder) keyed(at, colon int, dashed bool) {
	above := len(f.keys) - 1
	for len(f.keys) > 0 && f.keys[len(f.keys)-1].col > at {
		f.keys = f.keys[:len(f.keys)-1]
	}
	mend := "begin the keys that belong together in the same column"
	n := len(f.keys) - 1
	switch {
	case n >= 0 && f.keys[n].col < at && f.keys[n].valued && !dashed:
		f.slip(at, "", "this line begins farther right than "+f.keys[n].name+" on line "+itoa(f.keys[n].line)+", which already has a value", mend)
	case n >= 0 && n < above && f.keys[n].col < at && !dashed:
		f.slip(at, "", "this line begins in no column of the keys above it", mend)
	}
	if n >= 0 && f.keys[n].col == at {
		f.keys = f.keys[:n]
	}
	i := colon + 1
	for i < len(f.row) && (f.row[i] == ' ' || f.row[i] == '\t') {
		i++
	}
	valued := i < len(f.row) && !f.comment(i)
	f.keys = append(f.keys, key{shorten(string(f.row[at:colon])), f.line, at, valued})
	if !valued {
		return
	}
	if strings.ContainsRune("|>", f.row[i]) {
		f.literal = at + 1
		return
	}
	f.value(i)
}

// value judges what stands after a key or a dash, outside brackets.
func (f *slipFinder) value(at int) {
	switch c := f.row[at]; {
	case c == '[' || c == '{':
		f.flow(at)
	case c == '"' || c == '\'':
		f.afterQuote(at)
	case strings.ContainsRune("@`%", c):
		f.slip(at, string(c), "text cannot begin with "+string(c), `put it in quotes: "`+shorten(string(f.row[at:]))+`"`)
	default:
		if i := f.colon(at); i > 0 {
			f.slip(i, "", "a second colon on this line", "put text that holds a colon in quotes, and each key on a line of its own")
		}
	}
}

// afterQuote judges quoted text that begins at i, and returns what comes after.
func (f *slipFinder) afterQuote(i int) int {
	end := f.quoted(i)
	if end == 0 {
		f.slip(i, "", "this quote is not closed on its line", "close it, or leave both quotes away; a foot or inch mark stands after its number")
		return len(f.row)
	}
	j := end
	for j < len(f.row) && f.row[j] == ' ' {
		j++
	}
	if j == len(f.row) || f.comment(j) || strings.ContainsRune(",]}:", f.row[j]) {
		return end
	}
	f.slip(j, "", "the text goes on after its closing quote", "put the whole of it in quotes, or none")
	return len(f.row)
}

// flow reads brackets from i to the end of the line or of the outermost one.
func (f *slipFinder) flow(i int) {
	fresh := true // a value or key may begin here
	for ; i < len(f.row) && f.found == nil; i++ {
		c := f.row[i]
		switch {
		case f.comment(i):
			return
		case fresh && (c == '"' || c == '\''):
			i = f.afterQuote(i) - 1
			fresh = false
		case fresh && (c == '[' || c == '{'):
			f.open = append(f.open, mark{c, f.line, i})
		case c == ']' || c == '}':
			if f.shut(i); len(f.open) == 0 {
				return
			}
			fresh = false
		case c == ',' || c == ':' && i+1 < len(f.row) && f.row[i+1] == ' ':
			fresh = true
		case c != ' ' && c != '\t':
			fresh = false
		}
	}
}

// shut closes the innermost bracket with the one at i.
func (f *slipFinder) shut(i int) {
	n := len(f.open) - 1
	if b := f.open[n]; closing(b.sign) != f.row[i] {
		f.slip(i, string(f.row[i]), "this bracket does not fit the "+string(b.sign)+" that is open since line "+itoa(b.line), "close that one first with "+string(closing(b.sign)))
	}
	f.open = f.open[:n]
}

func closing(b rune) rune {
	if b == '[' {
		return ']'
	}
	return '}'
}
