package spec

import "unicode"

// repertoire is the set of characters that the drawings can letter: those of
// the WGL4 set that the lettering has, less invisible ones. A test holds it to
// the font.
var repertoire = &unicode.RangeTable{R16: []unicode.Range16{
	{Lo: 0x0020, Hi: 0x007e, Stride: 1},
	{Lo: 0x00a0, Hi: 0x00ac, Stride: 1},
	{Lo: 0x00ae, Hi: 0x017f, Stride: 1},
	{Lo: 0x0192, Hi: 0x0192, Stride: 1},
	{Lo: 0x01cd, Hi: 0x01dc, Stride: 1},
	{Lo: 0x01fa, Hi: 0x01ff, Stride: 1},
	{Lo: 0x0218, Hi: 0x021b, Stride: 1},
	{Lo: 0x0384, Hi: 0x038a, Stride: 1},
	{Lo: 0x038c, Hi: 0x038c, Stride: 1},
	{Lo: 0x038e, Hi: 0x03a1, Stride: 1},
	{Lo: 0x03a3, Hi: 0x03ce, Stride: 1},
	{Lo: 0x0400, Hi: 0x045f, Stride: 1},
	{Lo: 0x0490, Hi: 0x0491, Stride: 1},
	{Lo: 0x1e80, Hi: 0x1e85, Stride: 1},
	{Lo: 0x1ef2, Hi: 0x1ef3, Stride: 1},
	{Lo: 0x2013, Hi: 0x2015, Stride: 1},
	{Lo: 0x2018, Hi: 0x201e, Stride: 1},
	{Lo: 0x2020, Hi: 0x2022, Stride: 1},
	{Lo: 0x2026, Hi: 0x2026, Stride: 1},
	{Lo: 0x2032, Hi: 0x2033, Stride: 1},
	{Lo: 0x2044, Hi: 0x2044, Stride: 1},
	{Lo: 0x20ac, Hi: 0x20ac, Stride: 1},
	{Lo: 0x2116, Hi: 0x2116, Stride: 1},
	{Lo: 0x2122, Hi: 0x2122, Stride: 1},
	{Lo: 0x215b, Hi: 0x215e, Stride: 1},
	{Lo: 0x2190, Hi: 0x2193, Stride: 1},
	{Lo: 0x2212, Hi: 0x2212, Stride: 1},
	{Lo: 0x2248, Hi: 0x2248, Stride: 1},
	{Lo: 0x2264, Hi: 0x2265, Stride: 1},
}}

// Printable reports whether the drawings can letter the character.
func Printable(c rune) bool { return unicode.Is(repertoire, c) }
