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

// face is a parsed font; it is never changed after the faces are loaded.
type face struct {
	ttf  []byte
	src  *tables
	sf   *sfnt.Font
	upem float64
	cap  float64       // height of the capitals, font units
	full fixed.Int26_6 // one em, so that measures come out in font units
	wide [slots]int    // what a rune that has a slot takes, 64ths of a font unit
	ways *[slots]way   // how it is set
}

// family is the two faces, and how the runes that have slots are set in them.
type family struct {
	regular, bold *face
	ways          [slots]way
	other         [slots]string // the stand-ins
}

var faces = sync.OnceValue(func() *family {
	p := &family{regular: load(goregular.TTF), bold: load(gobold.TTF)}
	p.settle()
	return p
})

func faceOf(bold bool) *face {
	if bold {
		return faces().bold
	}
	return faces().regular
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
	return f
}

// lookUp returns the advance of r, 64ths of a font unit, and whether r has a
// glyph.
func (f *face) lookUp(r rune) (int, bool) {
	g, err := f.sf.GlyphIndex(nil, r)
	if err != nil || g == 0 {
		return 0, false
	}
	a, err := f.sf.GlyphAdvance(nil, g, f.full, xfont.HintingNone)
	return int(a), err == nil
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
	_, a := faceOf(false).lookUp(r)
	_, b := faceOf(true).lookUp(r)
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
