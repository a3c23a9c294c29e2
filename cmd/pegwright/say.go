package main

import (
	"fmt"
	"strings"

	"pegwright/cmd/pegwright/plain"
	"pegwright/geom/finding"
)

// say writes one line for people on the error stream.
func (s *streams) say(format string, args ...any) {
	fmt.Fprintln(s.errs, plain.Visible(fmt.Sprintf(format, args...)))
}

// refuse says why the command line cannot be used.
func (s *streams) refuse(format string, args ...any) int {
	s.say("pegwright: "+format, args...)
	return exitUnusable
}

// fail says why something could not be read or written.
func (s *streams) fail(format string, args ...any) int {
	s.say("pegwright: "+format, args...)
	return exitFailed
}

// data writes a result on the output stream.
func (s *streams) data(b []byte) {
	if _, err := s.out.Write(b); err != nil && s.outErr == nil {
		s.outErr = err
	}
}

// about lists the joints, or the timbers where there are none.
func about(f finding.Finding) string {
	ids := f.Joints
	if len(ids) == 0 {
		ids = f.Timbers
	}
	if len(ids) > 8 {
		return strings.Join(ids[:8], ", ") + fmt.Sprintf(" and %d more", len(ids)-8)
	}
	return strings.Join(ids, ", ")
}

// counted returns "1 stop, 2 warnings, no notes" without what is none.
func counted(finds []finding.Finding) string {
	var n [3]int
	for _, f := range finds {
		n[f.Severity]++
	}
	var parts []string
	for _, s := range []finding.Severity{finding.Stop, finding.Warn, finding.Note} {
		word := map[finding.Severity]string{finding.Stop: "stop", finding.Warn: "warning", finding.Note: "note"}[s]
		if n[s] > 1 {
			word += "s"
		}
		if n[s] > 0 {
			parts = append(parts, fmt.Sprintf("%d %s", n[s], word))
		}
	}
	if len(parts) == 0 {
		return "no findings"
	}
	return strings.Join(parts, ", ")
}

// codeFor is the exit code of a solved frame.
func codeFor(finds []finding.Finding) int {
	if finding.Stops(finds) {
		return exitStop
	}
	return exitDone
}
