package font

import (
	"bytes"
	"encoding/binary"
	"math"
	"slices"
	"strings"
	"testing"

	xfont "golang.org/x/image/font"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
	"pegwright/draw"
	"pegwright/geom/vec"
)

// Widths against the opentype package's own measure of the same font, at a
// size of one em = 2048 so that nothing is rounded.
func TestMeasureAgainstOpentype(t *testing.T) {
	for _, bold := range []bool{false, true} {
		f, err := opentype.Parse(TTF(bold))
		if err != nil {
			t.Fatal(err)
		}
		face, err := opentype.NewFace(f, &opentype.FaceOptions{Size: 2048, DPI: 72, Hinting: xfont.HintingNone})
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range []string{"post-2-north", "Ø 25", "WAVE Toyota", "≤ 12 — x", "ii"} {
			want := float64(xfont.MeasureString(face, s)) / 64 / 2048 * Size(3.5, bold)
			if got := Measure(s, 3.5, bold); math.Abs(got-want) > 0.01 {
				t.Errorf("%q: %.4f mm, opentype %.4f", s, got, want)
			}
		}
	}
}

// The height is that of a flat capital: the outline of H, E and I read from the
// font file.
func TestCapitalHeight(t *testing.T) {
	for _, bold := range []bool{false, true} {
		f, _ := sfnt.Parse(TTF(bold))
		for _, r := range "HEI" {
			g, _ := f.GlyphIndex(nil, r)
			b, _, err := f.GlyphBounds(nil, g, fixed.I(2048), xfont.HintingNone)
			if err != nil {
				t.Fatal(err)
			}
			got := float64(-b.Min.Y) / 64 / 2048 * Size(3.5, bold)
			if math.Abs(got-3.5) > 0.02 {
				t.Errorf("%c is %.3f mm high, want 3.5", r, got)
			}
		}
	}
}

func TestFractions(t *testing.T) {
	for _, c := range []struct {
		in   string
		want string // runs, raised ones as ^x, lowered ones as _x
	}{
		{`6 1/2"`, `6 |^1|⁄|_2|"`},
		{`7'-6 1/2"`, `7'-6 |^1|⁄|_2|"`},
		{`1/2"`, `^1|⁄|_2|"`},
		{`3/32 in`, `^3|⁄|_32 |in`},
		{`15/16″ bore`, `^15|⁄|_16|″ bore`},
		{`12-3/4`, `12-|^3|⁄|_4`},
		{`(4 3/4 below face)`, `(4 |^3|⁄|_4 |below face)`},
		{`arris 1/4, near`, `arris 1/4, near`},
		{`faces 1/2 and 3/4`, `faces 1/2 and 3/4`},
		{`1/2 inches?`, `1/2 inches?`},
		{`2026/1/2`, `2026/1/2`},
		{`on 3 1/2/2026`, `on 3 1/2/2026`},
		{`6 2/4"`, `6 2/4"`},
		{`6 5/4"`, `6 5/4"`},
		{`6 1/3"`, `6 1/3"`},
		{`6 1⁄3`, `6 |^1|⁄|_3`},
		{`6½`, `6 |^1|⁄|_2`},
		{`M1 1/2`, `M1 1/2`},
		{`1/2`, `1/2`},
		{``, ``},
		{`/`, `/`},
		{`1 1/2" 2 1/4"`, `1 |^1|⁄|_2|" 2 |^1|⁄|_4|"`},
	} {
		var got []string
		for _, r := range Layout(c.in, 3.5, false) {
			mark := ""
			if r.Y != 0 {
				mark = map[bool]string{true: "^", false: "_"}[r.Y > 0]
				if math.Abs(r.Height-2.5) > 1e-9 { // ISO 3098: 2.5 is the step under 3.5
					t.Errorf("%q: figures %.3f high, want 2.5", c.in, r.Height)
				}
			} else if r.Height != 3.5 {
				t.Errorf("%q: %q is %v high", c.in, r.S, r.Height)
			}
			got = append(got, mark+r.S)
		}
		if s := strings.Join(got, "|"); s != c.want {
			t.Errorf("%q: runs %s, want %s", c.in, s, c.want)
		}
	}
}

// Runs never turn back over each other's ink by more than the small overlap
// with the slash, and the measure is the end of the last run.
func TestLayoutRunsOn(t *testing.T) {
	for _, s := range []string{`6 1/2"`, `12 15/16 in and 3/8" more`, "plain", `1 1/2"`} {
		runs := Layout(s, 3.5, true)
		for i, r := range runs[1:] {
			prev := runs[i]
			if end := prev.X + Measure(strings.TrimRight(prev.S, " "), prev.Height, true); r.X < end-0.1*3.5 {
				t.Errorf("%q: run %q starts at %.3f, %q ends at %.3f", s, r.S, r.X, prev.S, end)
			}
		}
		last := runs[len(runs)-1]
		if end := last.X + Measure(last.S, last.Height, true); math.Abs(end-Measure(s, 3.5, true)) > 1e-9 {
			t.Errorf("%q: ends at %.4f, measures %.4f", s, end, Measure(s, 3.5, true))
		}
	}
}

func TestNormaliseLaws(t *testing.T) {
	hostile := []string{"⌀25 ⅓ ∠ ✓ 😀", "\xff\xfe", "a\x00b\x7f", "thin\u2009space\u202f", "6½ ⅞ 3⅔", "\u200b\u202e", "日本", "é × ± °", "tab\tnew\nline", "″′‴", "\ufffd", "\U0010ffff", "<&>\"'"}
	for _, s := range hostile {
		n := Normalise(s)
		if m := Missing(n); len(m) > 0 {
			t.Errorf("%q -> %q lacks %q", s, n, m)
		}
		if again := Normalise(n); again != n {
			t.Errorf("%q -> %q -> %q", s, n, again)
		}
		for _, r := range Layout(s, 3.5, true) {
			if m := Missing(r.S); len(m) > 0 {
				t.Errorf("%q: run %q lacks %q", s, r.S, m)
			}
		}
	}
	for in, want := range map[string]string{"⌀25": "Ø25", "6½": "6 1⁄2", "½": "1⁄2", "é × ± ° – — ≤ →": "é × ± ° – — ≤ →",
		"😀": "?", "\xff": "?", "a\x01": "a?", "a\nb": "a b", "日本": "??"} {
		if got := Normalise(in); got != want {
			t.Errorf("Normalise(%q) = %q, want %q", in, got, want)
		}
	}
}

func FuzzNormalise(f *testing.F) {
	f.Add("6½\" ⌀\xff😀")
	f.Add("1/2 ⁄ 3⁄4")
	f.Fuzz(func(t *testing.T, s string) {
		n := Normalise(s)
		if len(Missing(n)) > 0 || Normalise(n) != n {
			t.Errorf("%q -> %q", s, n)
		}
		joined := ""
		for _, r := range Layout(s, 3.5, false) {
			joined += r.S
		}
		if strings.ReplaceAll(joined, "⁄", "/") != strings.ReplaceAll(n, "⁄", "/") {
			t.Errorf("%q: runs join to %q, not %q", s, joined, n)
		}
	})
}

// Missing against sfnt's own index.
func TestMissing(t *testing.T) {
	f, _ := sfnt.Parse(goregular.TTF)
	for r := rune(0x20); r < 0x2600; r++ {
		g, _ := f.GlyphIndex(nil, r)
		if (g == 0) != !has(r) {
			t.Fatalf("%U: glyph %d, has %v", r, g, has(r))
		}
	}
	if got := Missing("a⌀b⌀⅓"); string(got) != "⌀⅓" {
		t.Errorf("missing %q", got)
	}
}

func TestWrap(t *testing.T) {
	text := `Prick and bore before cutting the housing; the line runs 3 1/2" past it both ways. Extraordinarilylongwordthatdoesnotfit ok`
	lines := Wrap(text, 40, 2.5)
	if strings.Join(lines, " ") != text {
		t.Errorf("words lost: %q", lines)
	}
	for _, l := range lines {
		if Measure(l, 2.5, false) > 40 && strings.Contains(strings.ReplaceAll(l, `3 1/2"`, "x"), " ") {
			t.Errorf("%q is %.1f mm wide", l, Measure(l, 2.5, false))
		}
		if strings.HasPrefix(l, "1/2") {
			t.Errorf("a fraction was parted from its number: %q", lines)
		}
	}
	if got := Wrap("a\n\nb", 40, 2.5); !slices.Equal(got, []string{"a", "", "b"}) {
		t.Errorf("paragraphs %q", got)
	}
	if Wrap(" \n ", 40, 2.5) != nil {
		t.Error("empty text gives lines")
	}
}

// A subset has the same outlines and advances as the font it was cut from, as
// sfnt reads both, has no other rune, and is small.
func TestSubset(t *testing.T) {
	var all []rune
	for r := rune(' '); r < 0x250; r++ {
		all = append(all, r)
	}
	for _, bold := range []bool{false, true} {
		for _, runes := range [][]rune{[]rune(`0123456789/⁄"'-ØéÅ½ abcXYZ`), {'H'}, {}, all[:95], append([]rune("Øé⁄″′×±°→←≤≥–—"), all[:95]...)} {
			sub, err := SubsetFace(bold, runes)
			if err != nil {
				t.Fatal(err)
			}
			if len(sub) > 40_000 {
				t.Errorf("%d runes: %d bytes", len(runes), len(sub))
			}
			sameGlyphs(t, TTF(bold), sub, runes)
			back := slices.Clone(runes)
			slices.Reverse(back)
			if again, _ := SubsetFace(bold, append(back, back...)); !bytes.Equal(sub, again) {
				t.Error("order of runes changes the bytes")
			}
		}
	}
}

func sameGlyphs(t *testing.T, whole, sub []byte, runes []rune) {
	t.Helper()
	a, err := sfnt.Parse(whole)
	if err != nil {
		t.Fatal(err)
	}
	b, err := sfnt.Parse(sub)
	if err != nil {
		t.Fatal(err)
	}
	em := fixed.I(2048)
	for r := rune(' '); r < 0x2300; r++ {
		ga, _ := a.GlyphIndex(nil, r)
		gb, _ := b.GlyphIndex(nil, r)
		if !slices.Contains(runes, r) {
			if gb != 0 {
				t.Fatalf("%U was not asked for", r)
			}
			continue
		}
		sa, err1 := a.LoadGlyph(new(sfnt.Buffer), ga, em, nil)
		sb, err2 := b.LoadGlyph(new(sfnt.Buffer), gb, em, nil)
		wa, _ := a.GlyphAdvance(nil, ga, em, xfont.HintingNone)
		wb, _ := b.GlyphAdvance(nil, gb, em, xfont.HintingNone)
		if err1 != nil || err2 != nil || !slices.Equal(sa, sb) || wa != wb {
			t.Fatalf("%U (%c): outline or advance differs (%v, %v)", r, r, err1, err2)
		}
	}
}

// The sum over a whole font file is 0xB1B0AFBA (OpenType, chapter head).
func TestSubsetChecksum(t *testing.T) {
	sub, err := SubsetFace(false, []rune("check"))
	if err != nil {
		t.Fatal(err)
	}
	var sum uint32
	for i := 0; i+3 < len(sub); i += 4 {
		sum += uint32(sub[i])<<24 | uint32(sub[i+1])<<16 | uint32(sub[i+2])<<8 | uint32(sub[i+3])
	}
	if len(sub)%4 != 0 || sum != 0xB1B0AFBA {
		t.Errorf("sum %#x", sum)
	}
}

// The directory tells of every table, in the order of the tags, where it begins and
// how its words add up, the check sum of the whole in head left out (OpenType,
// chapter otff); and a font is the same wherever it is appended.
func TestSubsetDirectory(t *testing.T) {
	sub, err := AppendSubset([]byte("xyz"), true, []rune("Øé directory"))
	alone, _ := SubsetFace(true, []rune("Øé directory"))
	if err != nil || !bytes.Equal(sub[3:], alone) {
		t.Fatalf("%v, or not the same font", err)
	}
	word := func(at int) uint32 { return binary.BigEndian.Uint32(alone[at:]) }
	before := ""
	for i := range int(binary.BigEndian.Uint16(alone[4:])) {
		r := 12 + 16*i
		tag, sum, at, size := string(alone[r:r+4]), word(r+4), int(word(r+8)), int(word(r+12))
		if tag == "head" {
			sum += word(at + 8)
		}
		for k := at; k < at+size; k += 4 {
			sum -= word(k)
		}
		if sum != 0 || at%4 != 0 || tag <= before {
			t.Errorf("table %s at %d: sum off by %d, after %s", tag, at, sum, before)
		}
		before = tag
	}
	if before != "post" {
		t.Errorf("the last table is %q", before)
	}
}

// A font that is cut short or damaged is an error, never a panic.
func TestSubsetDamaged(t *testing.T) {
	ttf := TTF(false)
	for _, n := range []int{0, 4, 12, 100, 1000, 140000} {
		if _, err := Subset(ttf[:n], []rune("a")); err == nil {
			t.Errorf("cut to %d bytes: no error", n)
		}
	}
	for i := 12; i < 2000; i += 3 {
		bad := slices.Clone(ttf)
		bad[i] ^= 0xff
		_, _ = Subset(bad, []rune("aéØ½"))
	}
}

// Every line of text without fractions takes as many words as fit, measured
// whole: the next word would not fit any more.
func TestWrapFillsLines(t *testing.T) {
	text := "Prick and bore – before cutting; the ridge line runs past “both” cheeks on a tie of 7 × 9, Øre and all; Extraordinarilylongwordthatdoesnotfit then on"
	for _, bold := range []bool{false, true} {
		for width := 3.0; width < 250; width += 1.7 {
			var want []string
			line := ""
			for _, w := range strings.Fields(text) {
				if line != "" && Measure(line+" "+w, 2.5, bold) > width {
					want, line = append(want, line), ""
				}
				line = strings.TrimLeft(line+" "+w, " ")
			}
			want = append(want, line)
			if got := WrapFace(text, width, 2.5, bold); !slices.Equal(got, want) {
				t.Fatalf("%.1f mm: %q, want %q", width, got, want)
			}
		}
	}
}

// A quarter turn about At carries (x, y) to (-y, x), and a half turn to (-x, -y): the
// sides of the turned box are those of the box at rest, by hand.
func TestTurned(t *testing.T) {
	at := vec.At(30, 40)
	text := &draw.Text{At: at, Height: 3.5, S: "shoulder"}
	b := Turned(text)
	b.Min, b.Max = b.Min.Sub(at), b.Max.Sub(at)
	for _, c := range []struct {
		rot      float64
		min, max vec.P
	}{
		{0, b.Min, b.Max},
		{math.Pi / 2, vec.At(-b.Max.Y, b.Min.X), vec.At(-b.Min.Y, b.Max.X)},
		{math.Pi, vec.At(-b.Max.X, -b.Max.Y), vec.At(-b.Min.X, -b.Min.Y)},
	} {
		text.Rot = c.rot
		if got := Turned(text); got.Min.Sub(at).Dist(c.min) > 1e-9 || got.Max.Sub(at).Dist(c.max) > 1e-9 {
			t.Errorf("turned by %.2f: %v, want %v and %v about %v", c.rot, got, c.min, c.max, at)
		}
	}
}
