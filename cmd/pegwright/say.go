package main

import (
	"errors"
	"fmt"
	"io/fs"
	"strings"
	"syscall"
	"unicode"
	"unicode/utf8"

	"pegwright/geom/finding"
)

// say writes one line for people on the error stream.
func (s *streams) say(format string, args ...any) {
	fmt.Fprintln(s.errs, visible(fmt.Sprintf(format, args...)))
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

// visible makes control characters and bytes that are not text visible, so
// that a name or a description cannot move the cursor of a terminal.
func visible(text string) string {
	var b strings.Builder
	for i, c := range text {
		switch {
		case c == utf8.RuneError:
			if _, n := utf8.DecodeRuneInString(text[i:]); n == 1 {
				fmt.Fprintf(&b, `\x%02x`, text[i])
				continue
			}
			b.WriteRune(c)
		case unicode.IsControl(c) || unicode.Is(unicode.Bidi_Control, c):
			fmt.Fprintf(&b, `\u%04x`, c)
		default:
			b.WriteRune(c)
		}
	}
	return b.String()
}

// quoted puts a word of the command line in quotes, shortened.
func quoted(word string) string {
	if r := []rune(word); len(r) > 60 {
		word = string(r[:60]) + "…"
	}
	return "“" + word + "”"
}

// typed writes a name as it is typed in a shell: in quotes where it needs them.
func typed(name string) string {
	plain := func(c rune) bool {
		return unicode.IsLetter(c) || unicode.IsDigit(c) || strings.ContainsRune("./_-+,:@%", c)
	}
	if strings.IndexFunc(name, func(c rune) bool { return !plain(c) }) < 0 {
		return name
	}
	return "'" + strings.ReplaceAll(name, "'", `'\''`) + "'"
}

// reason says in plain words why a file could not be used.
func reason(err error) string {
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return "there is no such file or folder"
	case errors.Is(err, fs.ErrPermission):
		return "permission denied"
	case errors.Is(err, fs.ErrExist):
		return "it exists already"
	case errors.Is(err, syscall.EISDIR):
		return "it is a folder"
	case errors.Is(err, syscall.ENOTDIR):
		return "part of the path is not a folder"
	case errors.Is(err, syscall.ENOSPC):
		return "the disk is full"
	case errors.Is(err, syscall.ENAMETOOLONG):
		return "the name is too long"
	}
	var p *fs.PathError
	if errors.As(err, &p) {
		return p.Err.Error()
	}
	return err.Error()
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
