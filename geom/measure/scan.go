package measure

import (
	"strings"
	"unicode"
)

// kind is what a token is.
type kind int

const (
	tokEnd   kind = iota
	tokValue      // a number or a length as written
	tokName
	tokOp // + - * /
	tokOpen
	tokClose
)

// token is one word of an expression.
type token struct {
	kind  kind
	at    int // rune offset
	op    rune
	name  string
	value Value
}

// scanner cuts an expression into tokens. last is the token before the next
// one, because hyphens and fractions are read by what stands before them.
type scanner struct {
	src  []rune
	pos  int
	last token
}

// at returns the rune at offset i, 0 past the end.
func (s *scanner) at(i int) rune {
	if i < len(s.src) {
		return s.src[i]
	}
	return 0
}

// skip returns the offset of the first rune from i on that is no space.
func (s *scanner) skip(i int) int {
	for isSpace(s.at(i)) {
		i++
	}
	return i
}

// next returns the next token.
func (s *scanner) next() (token, *Error) {
	t, err := s.scan()
	s.last = t
	return t, err
}

// scan reads a token from where the scanner stands.
func (s *scanner) scan() (token, *Error) {
	s.pos = s.skip(s.pos)
	at, r := s.pos, s.at(s.pos)
	switch {
	case at >= len(s.src):
		return token{kind: tokEnd, at: at}, nil
	case isDigit(r) || r == '.' || vulgar(r) != 0:
		return s.quantity()
	case isNameStart(r):
		return s.name()
	case r == '(':
		s.pos++
		return token{kind: tokOpen, at: at}, nil
	case r == ')':
		s.pos++
		return token{kind: tokClose, at: at}, nil
	case isHyphen(r):
		r = '-'
	case r == '+' || r == '*' || r == '/':
	default:
		return token{at: at}, strange(at, r)
	}
	s.pos++
	return token{kind: tokOp, op: r, at: at}, nil
}

// strange tells what is wrong with a rune that begins no token.
func strange(at int, r rune) *Error {
	switch {
	case r == ',':
		return &Error{Offset: at, Text: "a comma cannot stand in a length", Mend: "write a decimal point, and no marks between thousands"}
	case feetMark(r) || inchMark(r):
		return &Error{Offset: at, Text: "a foot or inch mark without a number before it", Mend: `write for example 7' 6 1/2"`}
	}
	return &Error{Offset: at, Text: "'" + string(r) + "' cannot stand in a length", Mend: `write for example 7' 6 1/2", 2299 mm or (width - 6") / 2`}
}

// name reads a name. A unit is none: it belongs behind a number.
func (s *scanner) name() (token, *Error) {
	at := s.pos
	word := s.word(at)
	s.pos += len([]rune(word))
	if _, ok := unitWord(word); ok {
		return token{at: at}, &Error{Offset: at, Text: "the unit " + word + " has no number before it", Mend: "write the number, then its unit"}
	}
	return token{kind: tokName, at: at, name: word}, nil
}

// word returns the name that starts at offset i, "" if none does.
func (s *scanner) word(i int) string {
	if !isNameStart(s.at(i)) {
		return ""
	}
	j := i
	for isNamePart(s.at(j)) {
		j++
	}
	return string(s.src[i:j])
}

// unitWord returns how many millimetres a unit has that is written as a word.
// An inch is 25.4 mm exactly.
func unitWord(w string) (mm float64, ok bool) {
	switch strings.ToLower(w) {
	case "in", "inch", "inches":
		return 25.4, true
	case "ft", "foot", "feet":
		return 304.8, true
	case "mm", "millimetre", "millimetres", "millimeter", "millimeters":
		return 1, true
	case "cm", "centimetre", "centimetres", "centimeter", "centimeters":
		return 10, true
	case "m", "metre", "metres", "meter", "meters":
		return 1000, true
	}
	return 0, false
}

// IsName reports whether s can name a parameter: a letter, then letters,
// digits and underscores, at most 40, and neither a unit nor a word that
// expressions use themselves.
func IsName(s string) bool {
	if len([]rune(s)) > 40 || !isNameStart(firstRune(s)) {
		return false
	}
	for _, r := range s {
		if !isNamePart(r) {
			return false
		}
	}
	w := strings.ToLower(s)
	if _, unit := unitWord(w); unit {
		return false
	}
	switch w {
	case "x", "by", "deg", "degrees", "auto", "none", "yes", "no", "true", "false", "centred", "omitted":
		return false
	}
	return !(w[0] == 'x' && isDigit(rune(w[1])))
}

func firstRune(s string) rune {
	for _, r := range s {
		return r
	}
	return 0
}

func isSpace(r rune) bool     { return r == ' ' || r == '\t' || r == '\u00a0' }
func isDigit(r rune) bool     { return r >= '0' && r <= '9' }
func isHyphen(r rune) bool    { return r == '-' || r == '\u2212' || r == '\u2013' }
func isNameStart(r rune) bool { return r == '_' || unicode.IsLetter(r) }
func isNamePart(r rune) bool  { return isNameStart(r) || isDigit(r) }
func feetMark(r rune) bool    { return r == '\'' || r == '′' || r == '’' }
func inchMark(r rune) bool    { return r == '"' || r == '″' || r == '”' }

// vulgar returns the value of a fraction that is one character, or 0.
func vulgar(r rune) float64 {
	switch r {
	case '½':
		return 0.5
	case '¼':
		return 0.25
	case '¾':
		return 0.75
	case '⅛':
		return 0.125
	case '⅜':
		return 0.375
	case '⅝':
		return 0.625
	case '⅞':
		return 0.875
	}
	return 0
}
