package finding

import "testing"

// Textbook distances; swapped neighbours count once (optimal string alignment).
func TestEdits(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int
	}{{"kitten", "sitting", 3}, {"", "abc", 3}, {"flaw", "lawn", 2}, {"post", "psot", 1}, {"sill", "sill", 0}} {
		if got := Edits(c.a, c.b); got != c.want {
			t.Errorf("Edits(%q, %q) = %d, want %d", c.a, c.b, got, c.want)
		}
	}
}

func TestNearest(t *testing.T) {
	words := []string{"building", "sections", "paper"}
	for word, want := range map[string]string{"bilding": "building", "section": "sections", "papers": "paper", "roof": ""} {
		if got := Nearest(word, words); got != want {
			t.Errorf("Nearest(%q) = %q, want %q", word, got, want)
		}
	}
}
