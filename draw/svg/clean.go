package svg

import (
	"strings"
	"unicode/utf8"
)

// attr returns name="value" for the SVG library, which writes attributes raw.
func attr(name, value string) string {
	var room [80]byte // most are shorter
	b := append(append(room[:0], name...), `="`...)
	return string(append(appendValue(b, value), '"'))
}

// appendValue appends s as it stands between double quotes.
func appendValue(b []byte, s string) []byte { return appendEscaped(b, s, "&#34;") }

// appendText appends s as it stands between two tags, where a quotation mark is no
// markup: lengths have many.
func appendText(b []byte, s string) []byte { return appendEscaped(b, s, `"`) }

// appendEscaped appends s with its signs of markup escaped, and a quotation mark as
// given. Bytes that are not UTF-8 and characters that XML 1.0 does not allow
// (production 2, Char) become '?'.
func appendEscaped(b []byte, s, quote string) []byte {
	done := 0
	for i := 0; i < len(s); {
		if c := s[i]; c >= ' ' && c < utf8.RuneSelf && c != '"' && c != '&' && c != '<' && c != '>' {
			i++
			continue
		}
		c, n := rune(s[i]), 1
		if c >= utf8.RuneSelf {
			c, n = utf8.DecodeRuneInString(s[i:])
		}
		if by := standIn(c, quote); by != "" {
			b = append(append(b, s[done:i]...), by...)
			done = i + n
		}
		i += n
	}
	return append(b, s[done:]...)
}

// standIn returns what is written for c, "" if that is c itself. White space other
// than a space is a reference, or else a reader makes a space of it (XML 1.0, 3.3.3).
func standIn(c rune, quote string) string {
	switch c {
	case '"':
		return quote
	case '&':
		return "&amp;"
	case '<':
		return "&lt;"
	case '>':
		return "&gt;"
	case '\t':
		return "&#9;"
	case '\n':
		return "&#10;"
	case '\r':
		return "&#13;"
	case utf8.RuneError, 0xfffe, 0xffff:
		return "?"
	}
	if c < ' ' {
		return "?"
	}
	return ""
}

// name returns s as an XML id: letters, figures, hyphen, underscore and stop;
// all else becomes a hyphen, and a letter stands in front if there is none.
func name(s string) string {
	out := strings.Map(func(c rune) rune {
		switch {
		case c >= 'a' && c <= 'z', c >= 'A' && c <= 'Z', c >= '0' && c <= '9', c == '_', c == '.':
			return c
		}
		return '-'
	}, s)
	if out == "" || out[0] < 'A' {
		out = "g" + out
	}
	return out
}
