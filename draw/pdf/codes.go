package pdf

import "math/bits"

// How many bits the code of each symbol has, as a hexadecimal figure: of bytes,
// of the end and of lengths of references; of distances (RFC 1951, 3.2.5); and of
// the symbols that tell of these (3.2.7). The first two are Huffman's, for what
// was counted in the pages of the default sample, at most 14 bits.
const (
	symbolBits = "4eeeeeeeee7eeeeeeeedeeeeeeeeddee5ebeecdcabbdb9495455555555bbdeee" +
		"ea9cbbcdcbbdbdbcbba99dcdbeebaceee898989999ab87989b9999a9cbddedee" +
		"eeeeeeeeeeeeeeeeeeeeeeeeeeeeeeeeeeeeeeeeeeeeeeeedeeeeeeeeeeeeeee" +
		"eeeeeeeeeeeeeeeeeeeeddeeceeeeeeeeeeeeeeddeeeeeeeeeedeeeeeeeeeeee" +
		"be3455556578788898abccdddeeeed"
	distanceBits = "dbdc9a754545454444454545455778"
	tellingBits  = "0004444444444330300"
)

const endOfBlock = 256

// code is a code with what may follow it; the first bit is the lowest.
type code struct {
	bits uint32
	n    uint8
}

// codes are the codes of a block.
type codes struct {
	head      []code             // how a block begins
	symbols   [286]code          // bytes and the end of the block
	lengths   [mostCopy + 1]code // lengths of references, with the bits after the code
	distances [30]code
}

func newCodes() *codes {
	c := &codes{}
	canonical(c.symbols[:], symbolBits)
	canonical(c.distances[:], distanceBits)
	c.copies()
	c.begin()
	return c
}

// figure returns the value of a hexadecimal figure.
func figure(c byte) uint8 {
	if c > '9' {
		return c - 'a' + 10
	}
	return c - '0'
}

// canonical gives codes of these lengths to symbols (RFC 1951, 3.2.2): shorter
// codes first, in the order of the symbols. Codes are written from their highest
// bit on.
func canonical(out []code, lengths string) {
	next := uint32(0)
	for n := uint8(1); n < 16; n++ {
		for i := range out {
			if figure(lengths[i]) == n {
				out[i] = code{bits.Reverse32(next) >> (32 - n), n}
				next++
			}
		}
		next <<= 1
	}
}

// copies makes the codes of lengths: eight of one length each, then four for each
// power of two, and one for the longest (RFC 1951, 3.2.5).
func (c *codes) copies() {
	for n := 3; n < mostCopy; n++ {
		v, extra := uint32(n-3), 0
		if v >= 8 {
			extra = bits.Len32(v) - 3
		}
		s := c.symbols[257+4*extra+int(v>>extra)]
		c.lengths[n] = code{s.bits | v&(1<<extra-1)<<s.n, s.n + uint8(extra)}
	}
	c.lengths[mostCopy] = c.symbols[285]
}

// begin makes the start of a block: the last one, with codes of its own, and how
// many bits these have (RFC 1951, 3.2.7). Symbol 16 says the last length three to
// six times more.
func (c *codes) begin() {
	c.head = []code{{1, 1}, {2, 2}, {286 - 257, 5}, {30 - 1, 5}, {19 - 4, 4}}
	for _, s := range [19]int{16, 17, 18, 0, 8, 7, 9, 6, 10, 5, 11, 4, 12, 3, 13, 2, 14, 1, 15} {
		c.head = append(c.head, code{uint32(figure(tellingBits[s])), 3})
	}
	var telling [19]code
	canonical(telling[:], tellingBits)
	all := symbolBits + distanceBits
	for i, more := 0, 0; i < len(all); i += 1 + more {
		c.head = append(c.head, telling[figure(all[i])])
		for more = 0; more < 6 && i+more+1 < len(all) && all[i+more+1] == all[i]; {
			more++
		}
		if more < 3 {
			more = 0
			continue
		}
		c.head = append(c.head, telling[16], code{uint32(more - 3), 2})
	}
}
