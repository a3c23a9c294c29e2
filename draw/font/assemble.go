package font

import (
	"encoding/binary"
	"slices"
	"unicode/utf16"
)

// glyphsOf returns the runes that the font has and their glyphs, sorted by
// rune, each once.
func (t *tables) glyphsOf(runes []rune) ([]pair, error) {
	sorted := slices.Clone(runes)
	slices.Sort(sorted)
	var out []pair
	for _, r := range slices.Compact(sorted) {
		if r <= 0 || r >= 0xffff {
			continue
		}
		g, err := t.sf.GlyphIndex(nil, r)
		if err != nil {
			return nil, err
		}
		if g != 0 {
			out = append(out, pair{r, int(g)})
		}
	}
	return out, nil
}

func (t *tables) head() []byte {
	h := slices.Clone(t.tab["head"])
	binary.BigEndian.PutUint32(h[8:], 0)  // checkSumAdjustment, set by assemble
	binary.BigEndian.PutUint16(h[50:], 1) // long loca
	return h
}

func (t *tables) hhea(count int) []byte {
	h := slices.Clone(t.tab["hhea"])
	binary.BigEndian.PutUint16(h[34:], uint16(count))
	return h
}

// hmtx returns a full record for each of the glyphs; the last advance of the
// source holds for the glyphs after it.
func (t *tables) hmtx(glyphs []int) []byte {
	raw, full := t.tab["hmtx"], u16(t.tab["hhea"][34:])
	out := make([]byte, 0, 4*len(glyphs))
	for _, g := range glyphs {
		if g < full && 4*g+4 <= len(raw) {
			out = append(out, raw[4*g:4*g+4]...)
			continue
		}
		bearing := []byte{0, 0}
		if at := 4*full + 2*(g-full); at+2 <= len(raw) {
			bearing = raw[at : at+2]
		}
		out = append(append(out, raw[4*full-4:4*full-2]...), bearing...)
	}
	return out
}

// maxp returns the table for count glyphs without instructions.
func (t *tables) maxp(count int) []byte {
	m := slices.Clone(t.tab["maxp"])
	binary.BigEndian.PutUint16(m[4:], uint16(count))
	binary.BigEndian.PutUint16(m[14:], 1) // maxZones
	for at := 16; at < 28; at += 2 {      // twilight points to instructions
		binary.BigEndian.PutUint16(m[at:], 0)
	}
	return m
}

// cmapOf returns a cmap of one format 4 table, one segment for each run of
// runes whose glyphs run along.
func cmapOf(pairs []pair) []byte {
	type seg struct{ from, to, delta int }
	var segs []seg
	for _, p := range pairs {
		if n := len(segs); n > 0 && segs[n-1].to+1 == int(p.r) && segs[n-1].delta == p.gid-int(p.r) {
			segs[n-1].to++
			continue
		}
		segs = append(segs, seg{int(p.r), int(p.r), p.gid - int(p.r)})
	}
	segs = append(segs, seg{0xffff, 0xffff, 1})
	pow, log := 1, 0
	for 2*pow <= len(segs) {
		pow, log = 2*pow, log+1
	}
	var ends, starts, deltas, offsets []uint16
	for _, s := range segs {
		ends, starts = append(ends, uint16(s.to)), append(starts, uint16(s.from))
		deltas, offsets = append(deltas, uint16(s.delta)), append(offsets, 0)
	}
	words := []uint16{0, 1, 3, 1, 0, 12} // version, one table, platform 3 encoding 1, offset 12
	words = append(words, 4, uint16(16+8*len(segs)), 0,
		uint16(2*len(segs)), uint16(2*pow), uint16(log), uint16(2*(len(segs)-pow)))
	words = append(append(words, ends...), 0)
	words = append(append(append(words, starts...), deltas...), offsets...)
	return bigEndian(words)
}

// nameTable returns a name table that names the family and style, as a checker
// of fonts asks for.
func nameTable(family string) []byte {
	values := []struct {
		id   uint16
		text string
	}{{1, family}, {2, "Regular"}, {4, family}, {6, "GoSubset"}}
	words := []uint16{0, uint16(len(values)), uint16(6 + 12*len(values))}
	var text []uint16
	for _, v := range values {
		u := utf16.Encode([]rune(v.text))
		words = append(words, 3, 1, 0x409, v.id, uint16(2*len(u)), uint16(2*len(text)))
		text = append(text, u...)
	}
	return bigEndian(append(words, text...))
}

// postTable returns a post table without glyph names (format 3).
func postTable() []byte {
	p := make([]byte, 32)
	binary.BigEndian.PutUint32(p, 0x00030000)
	return p
}

func bigEndian(words []uint16) []byte {
	var out []byte
	for _, w := range words {
		out = binary.BigEndian.AppendUint16(out, w)
	}
	return out
}

// assemble joins the tables, sorted by tag, into a font with its check sums.
func assemble(tabs []table) []byte {
	pow, log := 1, 0
	for 2*pow <= len(tabs) {
		pow, log = 2*pow, log+1
	}
	out := bigEndian([]uint16{1, 0, uint16(len(tabs)), uint16(16 * pow), uint16(log), uint16(16 * (len(tabs) - pow))})
	at, headAt := 12+16*len(tabs), 0
	for _, t := range tabs {
		if t.tag == "head" {
			headAt = at
		}
		out = append(out, t.tag...)
		out = binary.BigEndian.AppendUint32(out, checksum(t.data))
		out = binary.BigEndian.AppendUint32(out, uint32(at))
		out = binary.BigEndian.AppendUint32(out, uint32(len(t.data)))
		at += (len(t.data) + 3) / 4 * 4
	}
	out = slices.Grow(out, at-len(out))
	for _, t := range tabs {
		out = append(out, t.data...)
		for len(out)%4 != 0 {
			out = append(out, 0)
		}
	}
	binary.BigEndian.PutUint32(out[headAt+8:], 0xb1b0afba-checksum(out))
	return out
}

// checksum is the sum of the 32-bit words of b, padded with zeros.
func checksum(b []byte) uint32 {
	var sum uint32
	for len(b) >= 4 {
		sum += binary.BigEndian.Uint32(b)
		b = b[4:]
	}
	var rest [4]byte
	copy(rest[:], b)
	return sum + binary.BigEndian.Uint32(rest[:])
}
