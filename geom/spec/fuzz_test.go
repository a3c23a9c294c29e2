package spec

import (
	"testing"

	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
)

// FuzzRead: any bytes are read or refused, never a panic; a fault has a place
// in the file, words and a mend; the same bytes give the same dump.
func FuzzRead(f *testing.F) {
	f.Add(apiary)
	for _, c := range badCases() {
		if len(c.src) < 2000 {
			f.Add(c.src)
		}
	}
	f.Fuzz(func(t *testing.T, src string) {
		d, faults := Read("f", []byte(src), nil)
		if d == nil {
			t.Fatal("no description")
		}
		for _, x := range faults {
			if x.At.Line < 1 || x.At.Col < 1 || x.Text == "" || x.Mend == "" {
				t.Errorf("%q: incomplete fault %+v", src, x)
			}
		}
		again, _ := Read("f", []byte(src), nil)
		if d.Dump() != again.Dump() {
			t.Errorf("%q: two readings differ", src)
		}
	})
}

// Every character that is accepted has a glyph in the font of the drawings
// (Go Regular, read with golang.org/x/image/font/sfnt).
func TestRepertoireIsInTheFont(t *testing.T) {
	font, err := sfnt.Parse(goregular.TTF)
	if err != nil {
		t.Fatal(err)
	}
	var buf sfnt.Buffer
	for c := rune(0); c < 0x20000; c++ {
		if !Printable(c) {
			continue
		}
		if g, err := font.GlyphIndex(&buf, c); err != nil || g == 0 {
			t.Errorf("%s has no glyph", codePoint(c))
		}
	}
	for _, c := range "Ångström ½ ⅛ ″ ′ – — ‘’“”• °×±" {
		if !Printable(c) {
			t.Errorf("%c refused", c)
		}
	}
}
