// Package plain puts names and errors into words as people read them on a
// terminal: nothing in them moves the cursor, and an error of the system says
// what is wrong and not in which call.
package plain

import (
	"errors"
	"fmt"
	"io/fs"
	"strings"
	"syscall"
	"unicode"
	"unicode/utf8"
)

// Visible makes control characters and bytes that are not text visible, so
// that a name or a description cannot move the cursor of a terminal.
func Visible(text string) string {
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

// Quoted puts a word of the command line in quotes, shortened to 60 characters.
func Quoted(word string) string {
	if r := []rune(word); len(r) > 60 {
		word = string(r[:60]) + "…"
	}
	return "“" + word + "”"
}

// Typed writes a name as it is typed in a shell: in quotes where it needs them.
func Typed(name string) string {
	bare := func(c rune) bool {
		return unicode.IsLetter(c) || unicode.IsDigit(c) || strings.ContainsRune("./_-+,:@%", c)
	}
	if strings.IndexFunc(name, func(c rune) bool { return !bare(c) }) < 0 {
		return name
	}
	return "'" + strings.ReplaceAll(name, "'", `'\''`) + "'"
}

// Reason says in plain words why a file could not be used.
func Reason(err error) string {
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
