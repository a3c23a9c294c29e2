package font

import (
	"strings"
	"unicode/utf8"
)

// slash is the fraction slash U+2044. Between figures it always makes a
// fraction, where a plain stroke does so only in a length (see Layout).
const slash = '⁄'

// strokes are the signs that a fraction may have.
const strokes = "/⁄"

// vulgar are the ready-made fractions: set from figures like all others, so
// that they are large enough to read and look alike.
var vulgar = map[rune]string{
	'½': "1⁄2", '¼': "1⁄4", '¾': "3⁄4", '⅛': "1⁄8", '⅜': "3⁄8", '⅝': "5⁄8",
	'⅞': "7⁄8", '⅓': "1⁄3", '⅔': "2⁄3", '⅕': "1⁄5", '⅖': "2⁄5", '⅗': "3⁄5",
	'⅘': "4⁄5", '⅙': "1⁄6", '⅚': "5⁄6", '⅐': "1⁄7", '⅑': "1⁄9", '⅒': "1⁄10",
}

// other are runes that have a stand-in in the font: signs of the same meaning,
// spaces of another width, dashes and quotes of another shape.
var other = map[rune]string{
	'⌀': "Ø", '∅': "Ø", '\t': " ", '\n': " ", '\r': " ", '\u2028': " ", '\u2029': " ",
	'\u2002': " ", '\u2003': " ", '\u2004': " ", '\u2005': " ", '\u2006': " ", '\u2007': " ",
	'\u2008': " ", '\u2009': " ", '\u200a': " ", '\u202f': "\u00a0", '\u205f': " ", '\u3000': " ",
	'‐': "-", '‑': "-", '‒': "–", '―': "—", '‴': "″′", '∶': ":", '∕': "/", '∙': "·",
	'⋅': "·", '⟶': "→", '⟵': "←", 'ʹ': "′", 'ʺ': "″", '\u2126': "Ω", '\u212a': "K",
	'\u212b': "Å", '⩽': "≤", '⩾': "≥", '∼': "~",
}

// Normalise returns s in runes that the font has. Laws:
//  1. every rune of the result has a glyph in both faces;
//  2. Normalise(Normalise(s)) == Normalise(s);
//  3. text whose runes all have glyphs comes back unchanged, ready-made
//     fractions apart, which become figures about a fraction slash (a space is
//     put before one that follows a figure: 6½ is not 61⁄2);
//  4. what has no stand-in (bytes that are not UTF-8, control characters, runes
//     beyond U+FFFF, other scripts) becomes '?', one for each.
func Normalise(s string) string {
	s, _ = normalised(s)
	return s
}

// normalised is Normalise that tells as well whether the result has a stroke, as
// a fraction has.
func normalised(s string) (out string, stroke bool) {
	if ok, stroke := settled(s); ok {
		return s, stroke
	}
	var b strings.Builder
	b.Grow(len(s) + 8)
	fs, digit := faces(), false
	for i := 0; i < len(s); {
		r, n := utf8.DecodeRuneInString(s[i:])
		out, w := s[i:i+n], asParts
		k := slotOf(r)
		if k >= 0 {
			w = fs.ways[k]
		}
		switch w {
		case asOther:
			out = fs.other[k]
		case asParts:
			out = standIn(r, out, digit, has(r))
			stroke = stroke || strings.ContainsAny(out, strokes)
		case asStroke:
			stroke = true
		}
		i += n
		b.WriteString(out)
		digit = isDigit(out[len(out)-1])
	}
	return b.String(), stroke
}

// standIn returns what to set for rune r, which is written as given, follows a
// figure or does not, and has a glyph in both faces or has not.
func standIn(r rune, given string, afterDigit, glyph bool) string {
	if r == utf8.RuneError && len(given) <= 1 {
		return "?"
	}
	if v, ok := vulgar[r]; ok {
		if afterDigit {
			return " " + v
		}
		return v
	}
	if o, ok := other[r]; ok && !glyph || r < ' ' && ok {
		return o
	}
	if r < ' ' || r == 0x7f || r >= 0x80 && r < 0xa0 || r > 0xffff || r == utf8.RuneError || !glyph {
		return "?"
	}
	return given
}

// settled reports whether every rune of s stands for itself, and whether one of
// them is a stroke, as a fraction has.
func settled(s string) (ok, stroke bool) {
	ways := &faces().ways
	for i, r := range s {
		switch k := slotOf(r); {
		case k >= 0 && !ways[k].asGiven():
			return false, false
		case k >= 0:
			stroke = stroke || ways[k] == asStroke
		case r > 0xffff || !has(r):
			return false, false
		case r == utf8.RuneError && !strings.HasPrefix(s[i:], string(utf8.RuneError)):
			return false, false // a byte that is not UTF-8
		}
	}
	return true, stroke
}
