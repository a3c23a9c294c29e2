package main

import (
	"fmt"
	"strings"
)

func manualCommand() command {
	return command{name: "manual", short: "the manual page, for man", operands: "",
		about:    "Prints the manual page in the format that man reads, made from the same table as this help.",
		examples: []string{"pegwright manual > pegwright.1 && man ./pegwright.1"}, run: runManual}
}

func runManual(s *streams, a given) int {
	if len(a.rest) > 0 {
		return s.refuse("manual takes no arguments")
	}
	s.data([]byte(manual()))
	return exitDone
}

// manual is the page in the man macros of troff.
func manual() string {
	var b strings.Builder
	b.WriteString(".TH PEGWRIGHT 1 \"\" \"pegwright " + version + "\" \"User Commands\"\n.SH NAME\n" +
		troff("pegwright - sheets, full-size templates and lists for a small pegged timber frame") + "\n.SH SYNOPSIS\n")
	for _, c := range commands() {
		b.WriteString(`\fBpegwright ` + c.name + `\fP ` + troff(strings.TrimPrefix(c.line(), "pegwright "+c.name)) + "\n.br\n")
	}
	b.WriteString(".SH DESCRIPTION\n" + troff("Reads the description of a timber frame joined by mortise, tenon and pegs, and writes what is needed to cut it. "+
		readsFrame) + "\n")
	for _, c := range commands() {
		fmt.Fprintf(&b, ".SS %s\n", troff(c.name))
		for _, p := range strings.Split(c.about, "\n") {
			b.WriteString(".PP\n" + troff(p) + "\n")
		}
		for _, o := range c.options {
			fmt.Fprintf(&b, ".TP\n.B %s\n%s\n", troff(o.head()), troff(o.about))
		}
		for _, e := range c.examples {
			b.WriteString(".PP\n.nf\n" + troff(e) + "\n.fi\n")
		}
	}
	b.WriteString(".SH \"EXIT STATUS\"\n" + troff(strings.ReplaceAll(exitCodes, "\n", " ")) + "\n" +
		".SH CAUTION\n" + troff("Measure twice: check every number against the stick before you cut. Nothing here is a structural design; ask a licensed engineer and your local code.") + "\n")
	return b.String()
}

// troff escapes what the macros would take for themselves.
func troff(text string) string {
	text = strings.NewReplacer(`\`, `\e`, "-", `\-`, "“", `\(lq`, "”", `\(rq`, "…", "...").Replace(text)
	text = strings.TrimLeft(text, " ")
	if strings.HasPrefix(text, ".") || strings.HasPrefix(text, "'") {
		text = `\&` + text
	}
	return text
}
