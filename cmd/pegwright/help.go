package main

import (
	"fmt"
	"strings"

	"pegwright/geom/finding"
)

const helpUsage = `pegwright help [COMMAND]

Prints the help screen, or help on one command.
`

func runHelp(s *streams, args []string) int {
	f := flags("help")
	if err := f.Parse(args); err != nil && len(args) > 0 && args[0] != "-h" && args[0] != "--help" {
		return s.refuse("%s; try: pegwright help", err.Error())
	}
	switch f.NArg() {
	case 0:
		s.data([]byte(overview()))
		return exitDone
	case 1:
		if c, ok := commandNamed(f.Arg(0)); ok {
			s.data([]byte(c.usage))
			return exitDone
		}
		return s.refuse("there is no command %s%s; try: pegwright help", quoted(f.Arg(0)), nearest(f.Arg(0), commandNames()))
	}
	return s.refuse("help takes one command at most")
}

// overview is the help screen.
func overview() string {
	var b strings.Builder
	b.WriteString(`pegwright: sheets, full-size templates and lists for a small pegged timber frame

  pegwright COMMAND [FRAME.yaml] [flags]

`)
	for _, c := range commands() {
		fmt.Fprintf(&b, "  %-8s %s\n", c.name, c.short)
	}
	b.WriteString(`
Without FRAME the built-in sample is used; "-" reads standard input.
--set name=value replaces a parameter wherever a frame is read.

  pegwright start store.yaml                     a description to change
  pegwright check store.yaml                     what is wrong with it
  pegwright draw store.yaml                      the packet, in ./store-packet
  pegwright draw store.yaml --set "width=9'" --out wide
  pegwright lists bores store.yaml --as csv      one list for a spreadsheet

Exit codes: 0 done; 1 a finding says stop; 2 the description or the command
line cannot be used; 3 cannot read or write, or interrupted.
Measure twice: check every number against the stick before you cut.
`)
	return b.String()
}

// nearest returns ", did you mean …?" for the candidate that is nearest to the
// word, or nothing when none is near.
func nearest(word string, candidates []string) string {
	best := finding.Nearest(word, candidates)
	if best == "" {
		return ""
	}
	return " (did you mean " + best + "?)"
}
