package pdf

import (
	"encoding/binary"
	"hash/adler32"
	"math/bits"
)

// deflater compresses the contents of pages (RFC 1950 and RFC 1951), one after
// the other. compress/zlib took half of the time of a PDF file, most of it for
// counting every page and making codes for it alone. But all pages are figures and
// the same few operators, so the codes for them stand fixed in codes.go: that takes
// less than half of the time and adds 4 % to the pages. Any bytes can be compressed.
type deflater struct {
	seen  [1 << hashBits]int32 // by the hash of four bytes: where they stood last, counted over all pages
	past  int                  // bytes of the pages before
	out   []byte
	acc   uint64 // bits that wait to be written, the first lowest
	count uint   // how many
	codes *codes
}

const (
	hashBits  = 14
	leastCopy = 4       // bytes that are worth a reference
	mostCopy  = 258     // RFC 1951, 3.2.5
	window    = 1 << 15 // how far back a reference reaches
)

func newDeflater() *deflater { return &deflater{codes: newCodes()} }

// squeeze returns the data compressed, good until the next call.
func (d *deflater) squeeze(data []byte) []byte {
	if d.past > 1<<30 {
		*d = deflater{codes: d.codes}
	}
	d.out, d.acc, d.count = append(d.out[:0], 0x78, 0x01), 0, 0
	for _, b := range d.codes.head {
		d.put(b)
	}
	d.body(data)
	d.put(d.codes.symbols[endOfBlock])
	for ; d.count > 0; d.count -= min(8, d.count) {
		d.out = append(d.out, byte(d.acc))
		d.acc >>= 8
	}
	d.past += len(data)
	d.out = binary.BigEndian.AppendUint32(d.out, adler32.Checksum(data))
	return d.out
}

// body writes data as literals and as references to what was the same before.
func (d *deflater) body(data []byte) {
	at, base := 0, d.past+1 // so that 0 stands for nowhere
	for at+leastCopy <= len(data) {
		four := binary.LittleEndian.Uint32(data[at:])
		place := &d.seen[four*0x9e3779b1>>(32-hashBits)]
		before := int(*place) - base
		*place = int32(base + at)
		if before < 0 || at-before > window || binary.LittleEndian.Uint32(data[before:]) != four {
			d.put(d.codes.symbols[data[at]])
			at++
			continue
		}
		n := leastCopy + same(data[before+leastCopy:], data[at+leastCopy:min(len(data), at+mostCopy)])
		d.put(d.codes.lengths[n])
		d.distance(at - before)
		at += n
	}
	for _, b := range data[at:] {
		d.put(d.codes.symbols[b])
	}
}

// same returns how many bytes a and b begin with that are the same; b is no
// longer than a.
func same(a, b []byte) int {
	n := 0
	for ; n+8 <= len(b); n += 8 {
		if x := binary.LittleEndian.Uint64(a[n:]) ^ binary.LittleEndian.Uint64(b[n:]); x != 0 {
			return n + bits.TrailingZeros64(x)/8
		}
	}
	for n < len(b) && a[n] == b[n] {
		n++
	}
	return n
}

// distance writes how far back a reference reaches (RFC 1951, 3.2.5: two codes
// for each power of two, the lower bits after the code).
func (d *deflater) distance(back int) {
	back--
	if back < 4 {
		d.put(d.codes.distances[back])
		return
	}
	extra := uint(bits.Len(uint(back)) - 2)
	c := d.codes.distances[2*extra+uint(back)>>extra]
	d.put(code{c.bits | uint32(back)&(1<<extra-1)<<c.n, c.n + uint8(extra)})
}

// put writes a code.
func (d *deflater) put(c code) {
	d.acc |= uint64(c.bits) << d.count
	d.count += uint(c.n)
	if d.count >= 32 {
		d.out = binary.LittleEndian.AppendUint32(d.out, uint32(d.acc))
		d.acc >>= 32
		d.count -= 32
	}
}
