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
	return src.subset(runes)
}

func (src *tables) subset(runes []rune) ([]byte, error) {
	gids, err := src.glyphsOf(runes)
	if err != nil {
		return nil, err
	}
	keep, err := src.withParts(gids)
	if err != nil {
		return nil, err
	}
	glyf, loca, err := src.cutGlyphs(keep)
	if err != nil {
		return nil, err
	}
	for i, p := range gids {
		gids[i].gid = placeOf(keep, p.gid)
	}
	return assemble([]table{
		{"OS/2", src.tab["OS/2"]},
		{"cmap", cmapOf(gids)},
		{"glyf", glyf},
		{"head", src.head()},
		{"hhea", src.hhea(len(keep))},
		{"hmtx", src.hmtx(keep)},
		{"loca", loca},
		{"maxp", src.maxp(len(keep))},
		{"name", nameTable("Go subset")},
		{"post", postTable()},
	}), nil
}

// SubsetFace is Subset on the regular or the bold face, which can always be
// read.
func SubsetFace(bold bool, runes []rune) ([]byte, error) { return faceOf(bold).src.subset(runes) }

// table is a named table of a font.
type table struct {
	tag  string
	data []byte
}

// tables are the tables of a font that is read, and the glyphs' bounds.
type tables struct {
	ttf  []byte
	sf   *sfnt.Font
	tab  map[string][]byte
	loca []uint32
}

var errFont = errors.New("font cannot be read")

func u16(b []byte) int { return int(binary.BigEndian.Uint16(b)) }

func readTables(ttf []byte) (*tables, error) {
	if len(ttf) < 12 || binary.BigEndian.Uint32(ttf) != 0x00010000 {
		return nil, errFont
	}
	t := &tables{ttf: ttf, tab: map[string][]byte{}}
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
		if int(v) > len(t.tab["glyf"]) || i > 0 && v < t.loca[i-1] {
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

// withParts returns the glyphs of pairs, glyph 0, and all glyphs that these are
// composed of, sorted.
func (t *tables) withParts(pairs []pair) ([]int, error) {
	seen := make([]bool, len(t.loca))
	queue := make([]int, 1, len(pairs)+8)
	for _, p := range pairs {
		queue = append(queue, p.gid)
	}
	out := make([]int, 0, len(queue))
	for i := 0; i < len(queue); i++ {
		g := queue[i]
		if g+1 >= len(t.loca) {
			return nil, errFont
		}
		if seen[g] {
			continue
		}
		seen[g] = true
		out = append(out, g)
		parts, err := components(t.glyph(g))
		if err != nil {
			return nil, err
		}
		queue = append(queue, parts...)
	}
	slices.Sort(out)
	return out, nil
}

// placeOf returns the new number of glyph g: its place in keep, which is sorted
// and has it.
func placeOf(keep []int, g int) int {
	i, _ := slices.BinarySearch(keep, g)
	return i
}

func (t *tables) glyph(g int) []byte { return t.tab["glyf"][t.loca[g]:t.loca[g+1]] }
