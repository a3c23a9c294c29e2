package pdf

import (
	"fmt"
	"math/bits"

	"pegwright/draw/font"
)

// family is what the library knows the faces by.
const family = "peggo"

// fontName is the name of a face in the contents of pages.
func fontName(bold bool) string {
	if bold {
		return "/B"
	}
	return "/R"
}

// runeSet holds runes up to U+FFFF, a bit for each.
type runeSet [1 << 16 / 64]uint64

func (s *runeSet) add(r rune) { s[r>>6] |= 1 << (r & 63) }

// runes returns the runes of the set in order.
func (s *runeSet) runes() []rune {
	var out []rune
	for i, word := range s {
		for ; word != 0; word &= word - 1 {
			out = append(out, rune(64*i+bits.TrailingZeros64(word)))
		}
	}
	return out
}

// usedRunes are the runes that the pages so far use of the two faces.
type usedRunes struct{ regular, bold runeSet }

func (u *usedRunes) of(bold bool) *runeSet {
	if bold {
		return &u.bold
	}
	return &u.regular
}

// fonts has the library embed the faces, when all pages are there: it is given
// no more of a face than the pages use, and a text of all that. What the text
// writes on the page is replaced.
func (p *writer) fonts() error {
	for _, bold := range []bool{false, true} {
		style := ""
		if bold {
			style = "B"
		}
		runes := p.content.used.of(bold).runes()
		if len(runes) == 0 {
			continue
		}
		ttf, err := font.SubsetFace(bold, runes)
		if err != nil {
			return fmt.Errorf("pdf: %w", err)
		}
		p.f.AddUTF8FontFromBytes(family, style, ttf)
		p.f.SetFont(family, style, 1)
		p.f.Text(0, 0, string(runes))
	}
	return nil
}
