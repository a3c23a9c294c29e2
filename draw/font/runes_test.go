package font

import (
	"math"
	"slices"
	"testing"
)

// A text is as wide as the sum of the advances that sfnt reads for what Normalise
// makes of it, one for each rune: stand-ins, runes without a slot and bytes that
// are no text at all.
func TestMeasureOfStandIns(t *testing.T) {
	for _, s := range []string{"⌀25", "tie\x01with\x01ties", "tab\tand\u2009thin", "日本", "Δ Я", "\xff", "\U0001f600", "∙⋅‑", "a/b"} {
		for _, bold := range []bool{false, true} {
			f, want := faceOf(bold), 0.0
			for _, r := range Normalise(s) {
				a, ok := f.lookUp(r)
				if !ok {
					t.Fatalf("%q: no glyph for %q", s, r)
				}
				want += float64(a) / 64 * 3.5 / f.cap
			}
			if got := Measure(s, 3.5, bold); math.Abs(got-want) > 1e-9 {
				t.Errorf("%q: %.6f mm, want %.6f", s, got, want)
			}
		}
	}
}

// A fraction has a run that is set smaller; Layout tells where one is.
func TestFractured(t *testing.T) {
	for _, s := range []string{"", "plain", `6 1/2"`, "arris 1/2 of", "6½", "1⁄3", "and/or", `a / 3/4 in`, "2026/1/2", "⌀"} {
		want := slices.ContainsFunc(Layout(s, 3.5, false), func(r Run) bool { return r.Height < 3.5 })
		if got := Fractured(s); got != want {
			t.Errorf("%q: %v, want %v", s, got, want)
		}
	}
}

// Whatever parts the words of a text, in a line they have one space between them.
func TestWrapOfUntidyText(t *testing.T) {
	for in, want := range map[string]string{"  a\tb\u00a0\u2003c  ": "a b c", "a  1 \t1/2\" b ": `a 1 1/2" b`, " a": "a", "a ": "a"} {
		if got := Wrap(in, 100, 3.5); !slices.Equal(got, []string{want}) {
			t.Errorf("%q: %q, want %q", in, got, want)
		}
	}
	if got := Wrap("a 1 1/2\" b\n \nc", 1, 3.5); !slices.Equal(got, []string{"a", `1 1/2"`, "b", "", "c"}) {
		t.Errorf("%q", got)
	}
}
