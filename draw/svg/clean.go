package svg

import (
	"encoding/xml"
	"strings"
	"unicode/utf8"
)

// attr returns name="value" for the SVG library, which writes attributes raw:
// every attribute of a document is made here. An empty value gives an attribute
// that is there but empty.
func attr(name, value string) string { return name + `="` + escape(value) + `"` }

// escape returns s safe between double quotes in XML.
func escape(s string) string {
	if harmless(s) {
		return s
	}
	var b strings.Builder
	// A strings.Builder does not fail.
	_ = xml.EscapeText(&b, []byte(clean(s)))
	return b.String()
}

// harmless reports whether s is printable ASCII without a sign of markup.
func harmless(s string) bool {
	for i := range len(s) {
		switch c := s[i]; {
		case c < ' ', c > '~', c == '"', c == '&', c == '\'', c == '<', c == '>':
			return false
		}
	}
	return true
}

// clean returns s with every byte that is not UTF-8 and every character that
// XML 1.0 does not allow (production 2, Char) replaced by '?'.
func clean(s string) string {
	return strings.Map(func(c rune) rune {
		if c == utf8.RuneError || !isXML(c) {
			return '?'
		}
		return c
	}, s)
}

func isXML(c rune) bool {
	return c == '\t' || c == '\n' || c == '\r' || c >= 0x20 && c <= 0xd7ff ||
		c >= 0xe000 && c <= 0xfffd || c >= 0x10000 && c <= 0x10ffff
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
