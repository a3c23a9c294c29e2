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

// appendParts appends the glyphs that g is composed of, none for a simple one.
func appendParts(out []int, g []byte) ([]int, error) {
	if !isComposite(g) {
		return out, nil
	}
	_, err := eachPart(g, func(at int) { out = append(out, u16(g[at+2:])) })
	return out, err
}

// appendBare appends glyph g without its hinting instructions, its parts numbered
// by their new places.
func appendBare(out, g []byte, place []uint16) ([]byte, error) {
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
			binary.BigEndian.PutUint16(c[at+2:], place[u16(c[at+2:])])
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

// appendGlyphs appends a glyf table with the outlines of the glyphs in keep, and
// returns where each of them ends in it, after a zero.
func (t *tables) appendGlyphs(b []byte, keep []int, place []uint16) (out []byte, ends []int, err error) {
	from := len(b)
	ends = make([]int, 1, len(keep)+1)
	for _, g := range keep {
		if b, err = appendBare(b, t.glyph(g), place); err != nil {
			return nil, nil, err
		}
		if (len(b)-from)%2 != 0 {
			b = append(b, 0) // a short loca counts in twos
		}
		ends = append(ends, len(b)-from)
	}
	return b, ends, nil
}

// locaFormat returns 0 for a short loca table, where that can reach the last end,
// and 1 for a long one.
func locaFormat(ends []int) int {
	if ends[len(ends)-1] <= 2*0xffff {
		return 0
	}
	return 1
}

// appendLoca appends the loca table that goes with a glyf table.
func appendLoca(b []byte, ends []int) []byte {
	short := locaFormat(ends) == 0
	for _, at := range ends {
		if short {
			b = binary.BigEndian.AppendUint16(b, uint16(at/2))
		} else {
			b = binary.BigEndian.AppendUint32(b, uint32(at))
		}
	}
	return b
}
