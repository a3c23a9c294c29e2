package main

import (
	"encoding/json"
	"fmt"
	"io"
	"os"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"golang.org/x/term"

	"pegwright/cmd/pegwright/plain"
	"pegwright/geom/finding"
)

// page is how text for people is laid out: as wide as the terminal, with heavy
// heads; plain when nobody looks at a terminal, and then unbroken unless the
// environment gives a width in COLUMNS.
type page struct {
	b     strings.Builder
	width int // columns; 0 for no breaking
	heavy bool
}

// pageFor lays text out for a stream.
func pageFor(w io.Writer) *page {
	wide, err := strconv.Atoi(os.Getenv("COLUMNS"))
	asked := err == nil && wide >= leastColumns
	if !isTerminal(w) {
		if asked {
			return &page{width: wide}
		}
		return &page{}
	}
	if !asked {
		wide, _, err = term.GetSize(int(w.(*os.File).Fd()))
	}
	p := &page{width: screen, heavy: os.Getenv("NO_COLOR") == "" && os.Getenv("TERM") != "dumb"}
	if err == nil && wide >= leastColumns {
		p.width = min(wide, 110)
	}
	return p
}

// leastColumns is the narrowest screen that text is laid out for.
const leastColumns = 40

// head writes a line that begins a message.
func (p *page) head(text string) {
	text = plain.Visible(text)
	if !p.heavy {
		p.para(text, 0, 3)
		return
	}
	p.b.WriteString("\x1b[1m" + wrapped(text, p.width, 0, 3) + "\x1b[0m")
}

// para writes a paragraph; its first line is indented by first, others by rest.
func (p *page) para(text string, first, rest int) {
	text = plain.Visible(text)
	if p.width == 0 {
		p.b.WriteString(strings.Repeat(" ", first) + text + "\n")
		return
	}
	p.b.WriteString(wrapped(text, p.width, first, rest))
}

// snippet shows a line of the description with a mark under the place. long is
// how many runes are marked, at least one.
func (p *page) snippet(lines []string, at finding.Pos, long int) {
	if at.Line < 1 || at.Line > len(lines) {
		return
	}
	line := []rune(strings.TrimRight(strings.ReplaceAll(lines[at.Line-1], "\t", " "), "\r "))
	col := min(max(at.Col, 1), len(line)+1) - 1
	room := p.width - 9
	if p.width == 0 {
		room = 100
	}
	from := 0
	if col > room*3/4 {
		from = col - room/2
	}
	shown := slices.Clone(line[from:min(len(line), from+room)])
	mark := max(1, min(long, len(shown)-(col-from)))
	if from > 0 {
		shown[0] = '…'
	}
	if from+room < len(line) {
		shown[room-1] = '…'
	}
	fmt.Fprintf(&p.b, "%6d | %s\n", at.Line, plain.Visible(string(shown)))
	fmt.Fprintf(&p.b, "       | %s%s\n", strings.Repeat(" ", col-from), strings.Repeat("^", mark))
}

func linesOf(source []byte) []string { return strings.Split(string(source), "\n") }

// faults writes why a description cannot be used, each fault with its line of
// the file; or, where a machine reads, as JSON. All go to the error stream.
func (s *streams) faults(list finding.Faults, source []byte) int {
	if s.machine {
		s.errs.Write(faultsJSON(list))
		return exitUnusable
	}
	p := pageFor(s.errs)
	lines := linesOf(source)
	for _, f := range list {
		line := f.Said()
		if at := f.At.String(); at != "" {
			line = at + ": " + line
		}
		p.head(line)
		p.snippet(lines, f.At, markLength(lines, f))
		if f.Mend != "" {
			p.para("mend: "+f.Mend, 3, 9)
		}
	}
	io.WriteString(s.errs, p.b.String())
	return exitUnusable
}

// markLength is how much of a line a fault is about: the offending text where
// it stands at the place, else the word there.
func markLength(lines []string, f finding.Fault) int {
	if f.At.Line < 1 || f.At.Line > len(lines) {
		return 1
	}
	line := []rune(lines[f.At.Line-1])
	if f.At.Col < 1 || f.At.Col > len(line) {
		return 1
	}
	rest := line[f.At.Col-1:]
	if f.Source != "" && strings.HasPrefix(string(rest), f.Source) {
		return len([]rune(f.Source))
	}
	n := 0
	for n < len(rest) && (unicode.IsLetter(rest[n]) || unicode.IsDigit(rest[n])) {
		n++
	}
	return max(n, 1)
}

// wordAt is the length of the word at a place of the description.
func wordAt(lines []string, at finding.Pos) int { return markLength(lines, finding.Fault{At: at}) }

func faultsJSON(list finding.Faults) []byte {
	type entry struct {
		Line   int    `json:"line"`
		Column int    `json:"column"`
		File   string `json:"file"`
		Source string `json:"source"`
		Text   string `json:"text"`
		Mend   string `json:"mend"`
	}
	out := struct {
		Format string  `json:"format"`
		Faults []entry `json:"faults"`
	}{"pegwright-faults/1", []entry{}}
	for _, f := range list {
		out.Faults = append(out.Faults, entry{f.At.Line, f.At.Col, f.At.File, f.Source, f.Text, f.Mend})
	}
	b, _ := json.Marshal(out) // strings and whole numbers only: cannot fail
	return append(b, '\n')
}

// findings writes the findings on a frame on the error stream.
func (s *streams) findings(fr *solved) {
	io.WriteString(s.errs, findingsText(pageFor(s.errs), fr))
}

// findingsText returns the findings for people, numbered as on the cover, each
// with its lines of the description, and a line that counts them.
func findingsText(p *page, fr *solved) string {
	lines := linesOf(fr.source)
	for i, f := range fr.finds {
		head := fmt.Sprintf("%d. %s: %s", i+1, f.Severity, f.Rule)
		if at := f.At.String(); at != "" {
			head += ", " + at
		}
		for _, q := range f.Also {
			if q != f.At {
				head += ", also " + q.String()
			}
		}
		p.head(head)
		p.snippet(lines, f.At, wordAt(lines, f.At))
		for _, q := range f.Also {
			if q.Line != f.At.Line {
				p.snippet(lines, q, wordAt(lines, q))
			}
		}
		if ids := about(f); ids != "" {
			p.para("at "+ids, 3, 6)
		}
		p.para(f.Text, 3, 3)
		if f.Mend != "" {
			p.para("mend: "+f.Mend, 3, 9)
		}
	}
	p.b.WriteString(counted(fr.finds) + "\n")
	return p.b.String()
}
