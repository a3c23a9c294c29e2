package font

import "strings"

// The runes of which it is kept how they are set: those before near, and from
// signs on as many as signCount (dashes, quotes, primes, arrows, signs of
// mathematics). Each has a slot.
const (
	near      = 0x250
	signs     = 0x2000
	signCount = 0x300
	slots     = near + signCount
)

// slotOf returns the slot of a rune, less than 0 where it has none.
func slotOf(r rune) int {
	switch {
	case r < near:
		return int(r)
	case r >= signs && r < signs+signCount:
		return near + int(r-signs)
	}
	return -1
}

// way is how a rune is set.
type way byte

const (
	asItself way = iota
	asOther      // by its stand-in
	asStroke     // as itself, and it may make a fraction
	asParts      // by a stand-in with a stroke
)

// asGiven reports whether the rune comes back from Normalise unchanged.
func (w way) asGiven() bool { return w == asItself || w == asStroke }

// adds reports whether the rune makes a text longer by the same length wherever
// it stands.
func (w way) adds() bool { return w == asItself || w == asOther }

// settle finds out how the runes that have slots are set, and what they take.
func (p *family) settle() {
	for _, from := range [2]rune{0, signs} {
		for r := from; slotOf(r) >= 0; r++ {
			k := slotOf(r)
			var a, b bool
			p.regular.wide[k], a = p.regular.lookUp(r)
			p.bold.wide[k], b = p.bold.lookUp(r)
			given := string(r)
			switch out := standIn(r, given, false, a && b); {
			case out == given && !strings.ContainsAny(out, strokes):
			case out == given:
				p.ways[k] = asStroke
			case strings.ContainsAny(out, strokes):
				p.ways[k] = asParts
			default:
				p.ways[k], p.other[k] = asOther, out
				p.regular.wide[k], p.bold.wide[k] = p.regular.lookUpAll(out), p.bold.lookUpAll(out)
			}
		}
	}
	p.regular.ways, p.bold.ways = &p.ways, &p.ways
}

// lookUpAll returns the sum of the advances of the runes of s, 64ths of a font
// unit.
func (f *face) lookUpAll(s string) int {
	units := 0
	for _, r := range s {
		a, _ := f.lookUp(r)
		units += a
	}
	return units
}

// plain returns the width of a text, 64ths of a font unit, where that is the sum
// of what its runes take each for itself; of a text that may hold a fraction it
// tells that it is not.
func (f *face) plain(s string) (units int, ok bool) {
	for _, r := range s {
		k := slotOf(r)
		if k < 0 || !f.ways[k].adds() {
			return 0, false
		}
		units += f.wide[k]
	}
	return units, true
}

// width returns the advance width of a normalised text at the given height,
// millimetres. The font has no kerning: the width is the sum of the advances.
func (f *face) width(s string, height float64) float64 {
	units := 0
	for _, r := range s {
		if k := slotOf(r); k >= 0 {
			units += f.wide[k]
		} else {
			a, _ := f.lookUp(r)
			units += a
		}
	}
	return f.mm(units, height)
}

// mm returns how long a number of 64ths of a font unit is at the given height.
func (f *face) mm(units int, height float64) float64 {
	return float64(units) / 64 * height / f.cap
}
