package font

import (
	"encoding/binary"
	"errors"
	"fmt"
	"slices"

	"golang.org/x/image/font/sfnt"
)

// Subset returns a TrueType font of the glyphs of runes only, cut from ttf (a
// TrueType font with glyf outlines). Glyphs are numbered anew, in their old
// order; hinting, kerning and glyph names are dropped. The cmap has one table,
// format 4 for the basic plane (OpenType 1.9, chapters cmap, glyf, loca, head,
// maxp, post). Runes that the font does not have, or beyond U+FFFF, are left out.
// The result is the same for the same set of runes, in whatever order. It fails if
// ttf cannot be read.
func Subset(ttf []byte, runes []rune) ([]byte, error) {
	src, err := readTables(ttf)
	if err != nil {
		return nil, err
	}
	return src.appendSubset(nil, runes)
}

// SubsetFace is Subset on the regular or the bold face, which can always be
// read.
func SubsetFace(bold bool, runes []rune) ([]byte, error) { return AppendSubset(nil, bold, runes) }

// AppendSubset appends to b what SubsetFace returns.
func AppendSubset(b []byte, bold bool, runes []rune) ([]byte, error) {
	return faceOf(bold).src.appendSubset(b, runes)
}

func (t *tables) appendSubset(b []byte, runes []rune) ([]byte, error) {
	pairs, err := t.glyphsOf(runes)
	if err != nil {
		return nil, err
	}
	keep, place, err := t.withParts(pairs)
	if err != nil {
		return nil, err
	}
	for i, p := range pairs {
		pairs[i].gid = int(place[p.gid])
	}
	f := begin(b, 10)
	f.b = append(f.b, t.tab["OS/2"]...)
	f.end("OS/2")
	f.b = appendCmap(f.b, pairs)
	f.end("cmap")
	var ends []int
	if f.b, ends, err = t.appendGlyphs(f.b, keep, place); err != nil {
		return nil, err
	}
	f.end("glyf")
	f.b = changed(f.b, t.tab["head"], 8, 0, 10, 0, 50, locaFormat(ends)) // no check sum yet
	f.end("head")
	f.b = changed(f.b, t.tab["hhea"], 34, len(keep))
	f.end("hhea")
	f.b = t.appendMetrics(f.b, keep)
	f.end("hmtx")
	f.b = appendLoca(f.b, ends)
	f.end("loca")
	// One zone, and nothing of twilight points to instructions.
	f.b = changed(f.b, t.tab["maxp"], 4, len(keep), 14, 1, 16, 0, 18, 0, 20, 0, 22, 0, 24, 0, 26, 0)
	f.end("maxp")
	f.b = append(f.b, t.name...)
	f.end("name")
	f.b = append(appendWords(f.b, 3, 0), make([]byte, 28)...) // format 3: no names of glyphs
	f.end("post")
	return f.close(), nil
}

// tables are the tables of a font that is read, and the glyphs' bounds.
type tables struct {
	sf   *sfnt.Font
	tab  map[string][]byte
	glyf []byte
	loca []uint32
	name []byte // the name table of a subset
}

var errFont = errors.New("font cannot be read")

func u16(b []byte) int { return int(binary.BigEndian.Uint16(b)) }

func readTables(ttf []byte) (*tables, error) {
	if len(ttf) < 12 || binary.BigEndian.Uint32(ttf) != 0x00010000 {
		return nil, errFont
	}
	t := &tables{tab: map[string][]byte{}, name: nameTable("Go subset")}
	n := u16(ttf[4:])
	if len(ttf) < 12+16*n {
		return nil, errFont
	}
	for i := range n {
		e := ttf[12+16*i:]
		off, length := uint64(binary.BigEndian.Uint32(e[8:])), uint64(binary.BigEndian.Uint32(e[12:]))
		if off+length > uint64(len(ttf)) {
			return nil, errFont
		}
		t.tab[string(e[:4])] = ttf[off : off+length]
	}
	least := map[string]int{"head": 54, "hhea": 36, "maxp": 32, "OS/2": 78, "hmtx": 4, "loca": 2, "glyf": 0}
	for tag, size := range least {
		if len(t.tab[tag]) < size {
			return nil, fmt.Errorf("%w: table %s", errFont, tag)
		}
	}
	if full := u16(t.tab["hhea"][34:]); full == 0 || 4*full > len(t.tab["hmtx"]) {
		return nil, fmt.Errorf("%w: table hmtx", errFont)
	}
	t.glyf = t.tab["glyf"]
	if err := t.readLoca(); err != nil {
		return nil, err
	}
	sf, err := sfnt.Parse(ttf)
	t.sf = sf
	return t, err
}

func (t *tables) readLoca() error {
	raw, count := t.tab["loca"], u16(t.tab["maxp"][4:])
	long := u16(t.tab["head"][50:]) == 1
	size := 2
	if long {
		size = 4
	}
	if len(raw) < size*(count+1) {
		return errFont
	}
	for i := range count + 1 {
		v := 2 * uint32(u16(raw[2*i:]))
		if long {
			v = binary.BigEndian.Uint32(raw[4*i:])
		}
		if int(v) > len(t.glyf) || i > 0 && v < t.loca[i-1] {
			return errFont
		}
		t.loca = append(t.loca, v)
	}
	return nil
}

// pair is a rune and its glyph.
type pair struct {
	r   rune
	gid int
}

// glyphsOf returns the runes that the font has and their glyphs, sorted by
// rune, each once.
func (t *tables) glyphsOf(runes []rune) ([]pair, error) {
	if !slices.IsSorted(runes) {
		runes = slices.Clone(runes)
		slices.Sort(runes)
	}
	out := make([]pair, 0, len(runes))
	last := rune(0)
	for _, r := range runes {
		if r <= last || r >= 0xffff {
			continue
		}
		last = r
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

// withParts returns the glyphs of pairs, glyph 0, and all glyphs that these are
// composed of, sorted; and the place of each glyph among them, by its old number.
func (t *tables) withParts(pairs []pair) (keep []int, place []uint16, err error) {
	place = make([]uint16, len(t.loca)-1)
	queue := make([]int, 1, len(pairs)+8)
	for _, p := range pairs {
		queue = append(queue, p.gid)
	}
	for i := 0; i < len(queue); i++ {
		g := queue[i]
		if g >= len(place) {
			return nil, nil, errFont
		}
		if place[g] > 0 {
			continue
		}
		place[g] = 1
		if queue, err = appendParts(queue, t.glyph(g)); err != nil {
			return nil, nil, err
		}
	}
	keep = make([]int, 0, len(queue))
	for g, wanted := range place {
		if wanted > 0 {
			place[g] = uint16(len(keep))
			keep = append(keep, g)
		}
	}
	return keep, place, nil
}

func (t *tables) glyph(g int) []byte { return t.glyf[t.loca[g]:t.loca[g+1]] }
