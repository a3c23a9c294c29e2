// Package font holds the one font of all sheets and its measures: the embedded
// Go faces, regular and bold. Both renderers set text from the runs that Layout
// returns, so a line of text has the same place and width in each of them.
//
// Heights are nominal heights as in ISO 3098, the height of a capital letter,
// in millimetres.
package font

import (
	"fmt"
	"sync"

	xfont "golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// The runes whose advances are kept: those before near, and from signs on as
// many as signCount (dashes, quotes, primes, arrows, signs of mathematics).
const (
	near      = 0x250
	signs     = 0x2000
	signCount = 0x300
)

// face is a parsed font; it is never changed after it is loaded.
type face struct {
	ttf  []byte
	src  *tables
	sf   *sfnt.Font
	upem float64
	cap  float64                   // height of the capitals, font units
	adv  [near + signCount]float64 // advance, font units; 0 where there is no glyph
	has  [near + signCount]bool    // whether there is a glyph
	full fixed.Int26_6             // one em, so that measures come out in font units
}

var (
	regular = sync.OnceValue(func() *face { return load(goregular.TTF) })
	bold    = sync.OnceValue(func() *face { return load(gobold.TTF) })
)

func faceOf(b bool) *face {
	if b {
		return bold()
	}
	return regular()
}

// load parses an embedded font. The fonts are part of the program, so a fault
// in one is a fault in the build, not in any input.
func load(ttf []byte) *face {
	src, err := readTables(ttf)
	if err != nil {
		panic(fmt.Sprintf("embedded font: %v", err))
	}
	sf := src.sf
	f := &face{ttf: ttf, src: src, sf: sf, upem: float64(sf.UnitsPerEm())}
	f.full = fixed.I(int(sf.UnitsPerEm()))
	m, err := sf.Metrics(nil, f.full, xfont.HintingNone)
	if err != nil || m.CapHeight <= 0 {
		panic(fmt.Sprintf("embedded font has no capital height: %v", err))
	}
	f.cap = float64(m.CapHeight) / 64
	for r := range rune(near) {
		f.adv[r], f.has[r] = f.lookUp(r)
	}
	for k := range rune(signCount) {
		f.adv[near+k], f.has[near+k] = f.lookUp(signs + k)
	}
	return f
}

// lookUp returns the advance of r in font units and whether r has a glyph.
func (f *face) lookUp(r rune) (float64, bool) {
	g, err := f.sf.GlyphIndex(nil, r)
	if err != nil || g == 0 {
		return 0, false
	}
	a, err := f.sf.GlyphAdvance(nil, g, f.full, xfont.HintingNone)
	return float64(a) / 64, err == nil
}

func (f *face) advance(r rune) (float64, bool) {
	if r >= 0 && r < near {
		return f.adv[r], f.has[r]
	}
	if r >= signs && r < signs+signCount {
		return f.adv[near+r-signs], f.has[near+r-signs]
	}
	return f.lookUp(r)
}

// width returns the advance width of s at the given height, millimetres. The
// font has no kerning: the width is the sum of the advances.
func (f *face) width(s string, height float64) float64 { return f.units(s) * height / f.cap }

// units returns the advance width of s in font units, a whole number of 64ths:
// a sum of parts is exact.
func (f *face) units(s string) float64 {
	units := 0.0
	for _, r := range s {
		a, _ := f.advance(r)
		units += a
	}
	return units
}

// plainUnits is units for a text of printable ASCII without a stroke, which most
// are, and tells of others.
func (f *face) plainUnits(s string) (units float64, ok bool) {
	for i := range len(s) {
		c := s[i]
		if c < ' ' || c > '~' || c == '/' {
			return 0, false
		}
		units += f.adv[c]
	}
	return units, true
}

// Size returns the em size (the font size of SVG and PDF) that gives capitals
// of the given height; same unit out as in.
func Size(height float64, bold bool) float64 {
	f := faceOf(bold)
	return height * f.upem / f.cap
}

// TTF returns the bytes of the regular or the bold face. They must not be
// changed.
func TTF(bold bool) []byte { return faceOf(bold).ttf }

// has reports whether both faces have a glyph for r.
func has(r rune) bool {
	_, a := regular().advance(r)
	_, b := bold().advance(r)
	return a && b
}

// Missing returns the runes of s that the font has no glyph for, each once, in
// the order in which they come.
func Missing(s string) []rune {
	var out []rune
	seen := map[rune]bool{}
	for _, r := range s {
		if !seen[r] && !has(r) {
			out = append(out, r)
		}
		seen[r] = true
	}
	return out
}
