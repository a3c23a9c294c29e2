package font

import "encoding/binary"

// Flags of a composite glyph (OpenType, chapter glyf).
const (
	argsAreWords = 0x0001
	haveScale    = 0x0008
	moreParts    = 0x0020
	haveXYScale  = 0x0040
	have2x2      = 0x0080
	haveInstr    = 0x0100
)

func isComposite(g []byte) bool { return len(g) >= 10 && g[0] >= 0x80 }

// eachPart calls fn with the offset of every component record of a composite
// glyph and returns the offset after the last.
func eachPart(g []byte, fn func(at int)) (int, error) {
	at := 10
	for {
		if at+4 > len(g) {
			return 0, errFont
		}
		flags := u16(g[at:])
		fn(at)
		at += 6
		if flags&argsAreWords != 0 {
			at += 2
		}
		switch {
		case flags&haveScale != 0:
			at += 2
		case flags&haveXYScale != 0:
			at += 4
		case flags&have2x2 != 0:
			at += 8
		}
		if at > len(g) {
			return 0, errFont
		}
		if flags&moreParts == 0 {
			return at, nil
		}
	}
}

// components returns the glyphs that g is composed of, none for a simple one.
func components(g []byte) ([]int, error) {
	if !isComposite(g) {
		return nil, nil
	}
	var out []int
	_, err := eachPart(g, func(at int) { out = append(out, u16(g[at+2:])) })
	return out, err
}

// appendBare appends glyph g without its hinting instructions, its parts numbered
// by their places in keep.
func appendBare(out, g []byte, keep []int) ([]byte, error) {
	if len(g) == 0 {
		return out, nil
	}
	if len(g) < 10 {
		return nil, errFont
	}
	if isComposite(g) {
		from := len(out)
		out = append(out, g...)
		c := out[from:]
		end, err := eachPart(c, func(at int) {
			binary.BigEndian.PutUint16(c[at:], uint16(u16(c[at:])&^haveInstr))
			binary.BigEndian.PutUint16(c[at+2:], uint16(placeOf(keep, u16(c[at+2:]))))
		})
		return out[:from+end], err
	}
	at := 10 + 2*u16(g)
	if at+2 > len(g) || at+2+u16(g[at:]) > len(g) {
		return nil, errFont
	}
	out = append(append(out, g[:at]...), 0, 0)
	return append(out, g[at+2+u16(g[at:]):]...), nil
}

// cutGlyphs returns the glyf table with the outlines of the glyphs in keep
// (sorted), and the long loca table that goes with it.
func (t *tables) cutGlyphs(keep []int) (glyf, loca []byte, err error) {
	room := 0
	for _, g := range keep {
		room += len(t.glyph(g)) + 3
	}
	glyf, loca = make([]byte, 0, room), make([]byte, 0, 4*len(keep)+4)
	for _, g := range keep {
		loca = binary.BigEndian.AppendUint32(loca, uint32(len(glyf)))
		if glyf, err = appendBare(glyf, t.glyph(g), keep); err != nil {
			return nil, nil, err
		}
		for len(glyf)%4 != 0 {
			glyf = append(glyf, 0)
		}
	}
	return glyf, binary.BigEndian.AppendUint32(loca, uint32(len(glyf))), nil
}
