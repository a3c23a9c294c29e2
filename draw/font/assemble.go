package font

import (
	"encoding/binary"
	"unicode/utf16"
)

// file is a font under construction: its directory, with a record for each table
// that is ended, and the tables one after the other, in the order of their tags.
type file struct {
	b     []byte
	start int    // of the file in b
	from  int    // of the table at hand in b
	ended int    // tables
	head  int    // of the table head in b, which keeps the check sum of the whole
	sum   uint32 // of all words that are ended
}

// begin begins a font of so many tables at the end of b.
func begin(b []byte, tables int) *file {
	pow, log := 1, 0
	for 2*pow <= tables {
		pow, log = 2*pow, log+1
	}
	f := &file{start: len(b)}
	b = appendWords(b, 1, 0, tables, 16*pow, log, 16*(tables-pow))
	f.sum = checksum(b[f.start:])
	f.b = append(b, make([]byte, 16*tables)...)
	f.from = len(f.b)
	return f
}

// end ends the table at hand: what was appended since the last one.
func (f *file) end(tag string) {
	size := len(f.b) - f.from
	for (len(f.b)-f.from)%4 != 0 {
		f.b = append(f.b, 0)
	}
	sum := checksum(f.b[f.from:])
	r := f.b[f.start+12+16*f.ended:][:16]
	copy(r, tag)
	binary.BigEndian.PutUint32(r[4:], sum)
	binary.BigEndian.PutUint32(r[8:], uint32(f.from-f.start))
	binary.BigEndian.PutUint32(r[12:], uint32(size))
	if tag == "head" {
		f.head = f.from
	}
	f.sum += sum + checksum(r)
	f.from = len(f.b)
	f.ended++
}

// close writes the check sum of the whole, which is the sum of its parts, and
// returns the bytes.
func (f *file) close() []byte {
	binary.BigEndian.PutUint32(f.b[f.head+8:], 0xb1b0afba-f.sum)
	return f.b
}

// checksum is the sum of the 32-bit words of b, whose length is a multiple of four.
func checksum(b []byte) uint32 {
	var sum uint32
	for ; len(b) >= 4; b = b[4:] {
		sum += binary.BigEndian.Uint32(b)
	}
	return sum
}

func appendWords(b []byte, words ...int) []byte {
	for _, w := range words {
		b = binary.BigEndian.AppendUint16(b, uint16(w))
	}
	return b
}

// changed appends a table of the source with some of its words changed: pairs of
// the place of a word and its value.
func changed(b, tab []byte, words ...int) []byte {
	from := len(b)
	b = append(b, tab...)
	for i := 0; i < len(words); i += 2 {
		binary.BigEndian.PutUint16(b[from+words[i]:], uint16(words[i+1]))
	}
	return b
}

// appendMetrics appends a full record for each of the glyphs; the last advance of
// the source holds for the glyphs after it.
func (t *tables) appendMetrics(b []byte, glyphs []int) []byte {
	raw, full := t.tab["hmtx"], u16(t.tab["hhea"][34:])
	for _, g := range glyphs {
		if g < full {
			b = append(b, raw[4*g:4*g+4]...)
			continue
		}
		bearing := []byte{0, 0}
		if at := 4*full + 2*(g-full); at+2 <= len(raw) {
			bearing = raw[at : at+2]
		}
		b = append(append(b, raw[4*full-4:4*full-2]...), bearing...)
	}
	return b
}

// appendCmap appends a cmap of one format 4 table, one segment for each run of
// runes whose glyphs run along.
func appendCmap(b []byte, pairs []pair) []byte {
	type seg struct{ from, to, delta int }
	segs := make([]seg, 0, len(pairs)+1)
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
	b = appendWords(b, 0, 1, 3, 1, 0, 12) // version, one table, platform 3 encoding 1, offset 12
	b = appendWords(b, 4, 16+8*len(segs), 0, 2*len(segs), 2*pow, log, 2*(len(segs)-pow))
	for _, s := range segs {
		b = appendWords(b, s.to)
	}
	b = appendWords(b, 0)
	for _, s := range segs {
		b = appendWords(b, s.from)
	}
	for _, s := range segs {
		b = appendWords(b, s.delta)
	}
	return append(b, make([]byte, 2*len(segs))...) // no offsets
}

// nameTable returns a name table that names the family and style, as a checker
// of fonts asks for.
func nameTable(family string) []byte {
	values := []struct {
		id   int
		text string
	}{{1, family}, {2, "Regular"}, {4, family}, {6, "GoSubset"}}
	out := appendWords(nil, 0, len(values), 6+12*len(values))
	var text []byte
	for _, v := range values {
		from := len(text)
		for _, u := range utf16.Encode([]rune(v.text)) {
			text = appendWords(text, int(u))
		}
		out = appendWords(out, 3, 1, 0x409, v.id, len(text)-from, from)
	}
	return append(out, text...)
}
