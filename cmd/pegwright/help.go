package main

import (
	"fmt"
	"strings"

	"pegwright/cmd/pegwright/plain"
	"pegwright/geom/finding"
)

// screen is the width of the help screens, in columns.
const screen = 80

func helpCommand() command {
	return command{name: "help", short: "this screen, or help on one command", operands: "[COMMAND]",
		about: "Prints the help screen, or help on one command.", run: runHelp}
}

func runHelp(s *streams, a given) int {
	switch len(a.rest) {
	case 0:
		s.data([]byte(overview()))
		return exitDone
	case 1:
		if c, ok := commandNamed(a.rest[0]); ok {
			s.data([]byte(c.help()))
			return exitDone
		}
		return s.refuse("there is no command %s%s; try: pegwright help", plain.Quoted(a.rest[0]), nearest(a.rest[0], commandNames()))
	}
	return s.refuse("help takes one command at most")
}

// help is the screen on one command.
func (c command) help() string {
	var b strings.Builder
	b.WriteString(wrapped(c.line(), screen, 0, 2+len("pegwright")+1+len(c.name)))
	b.WriteString("\n")
	for _, p := range strings.Split(c.about, "\n") {
		b.WriteString(wrapped(p, screen, 0, 0))
	}
	wide := 0
	for _, o := range c.options {
		wide = max(wide, len(o.head()))
	}
	if wide > 0 {
		b.WriteString("\n")
	}
	for _, o := range c.options {
		b.WriteString(wrapped(fmt.Sprintf("%-*s  %s", wide, o.head(), o.about), screen, 2, 4+wide))
	}
	if len(c.examples) > 0 {
		b.WriteString("\n")
	}
	for _, e := range c.examples {
		b.WriteString("  " + e + "\n")
	}
	return b.String()
}

// line is how the command is called.
func (c command) line() string {
	parts := []string{"pegwright", c.name}
	if c.operands != "" {
		parts = append(parts, c.operands)
	}
	for _, o := range c.options {
		parts = append(parts, "["+o.head()+"]")
	}
	return strings.Join(parts, " ")
}

// head is an option with what it takes.
func (o option) head() string {
	if o.value == "" {
		return "--" + o.name
	}
	return "--" + o.name + " " + o.value
}

// wrapped breaks a paragraph between words into lines of at most wide columns,
// the first indented by first, the others by rest. Runs of spaces and what
// stands in brackets stay whole.
func wrapped(text string, wide, first, rest int) string {
	var b strings.Builder
	line, at := strings.Repeat(" ", first), first
	empty := true
	for _, word := range pieces(text) {
		n := len([]rune(word))
		if !empty && at+n > wide {
			b.WriteString(strings.TrimRight(line, " ") + "\n")
			line, at = strings.Repeat(" ", rest), rest
			word = strings.TrimLeft(word, " ")
			n = len([]rune(word))
		}
		line, at, empty = line+word, at+n, false
	}
	b.WriteString(strings.TrimRight(line, " ") + "\n")
	return b.String()
}

// pieces cuts a text into words, each with the spaces before it; a pair of
// brackets is one word.
func pieces(text string) []string {
	var out []string
	start, depth, blank := 0, 0, true
	for i, c := range text {
		switch {
		case c == '[':
			depth++
		case c == ']':
			depth--
		}
		if c == ' ' && !blank && depth == 0 {
			out = append(out, text[start:i])
			start = i
		}
		blank = c == ' '
	}
	return append(out, text[start:])
}

// overview is the help screen.
func overview() string {
	var b strings.Builder
	b.WriteString(`pegwright: sheets, full-size templates and lists for a small pegged timber frame
  pegwright COMMAND [FRAME.yaml] [flags]

`)
	for _, c := range commands() {
		fmt.Fprintf(&b, "  %-9s %s\n", c.name, c.short)
	}
	b.WriteString(`
Without FRAME the built-in sample is used. pegwright help COMMAND says more.

  pegwright start store.yaml                     a description to change
  pegwright view store.yaml                      it drawn while you change it
  pegwright draw store.yaml                      the packet, in ./store-packet

` + exitCodes + `
Measure twice: check every number against the stick before you cut.
`)
	return b.String()
}

const exitCodes = `Exit codes: 0 done; 1 a finding says stop; 2 the description or the command
line cannot be used; 3 cannot read or write, or interrupted.`

// nearest returns ", did you mean …?" for the candidate that is nearest to the
// word, or nothing when none is near.
func nearest(word string, candidates []string) string {
	best := finding.Nearest(word, candidates)
	if best == "" {
		return ""
	}
	return " (did you mean " + best + "?)"
}
