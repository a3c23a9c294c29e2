package finding

import (
	"strings"
	"testing"
)

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
	for word, want := range map[string]string{"bilding": "building", "section": "sections", "papers": "paper", "roof": "", "b": "building", "sec": "sections", "": ""} {
		if got := Nearest(word, words); got != want {
			t.Errorf("Nearest(%q) = %q, want %q", word, got, want)
		}
	}
}

// A beginning that several words share names none of them.
func TestNearestOfBeginnings(t *testing.T) {
	if got := Nearest("s", []string{"south", "sill"}); got != "" {
		t.Errorf("Nearest is %q", got)
	}
	if got := Nearest("s", []string{"north", "south", "east", "west"}); got != "south" {
		t.Errorf("Nearest is %q", got)
	}
}

// Faults of one place and one mend are one; what the words name already is not
// said again.
func TestGathered(t *testing.T) {
	at := Pos{File: "f", Line: 3, Col: 1}
	fs := Faults{
		{At: at, Source: "7", Text: "a does not fit", Mend: "make it smaller"},
		{At: at, Text: "b does not fit", Mend: "make it smaller"},
		{At: at, Text: "b is lost", Mend: "find it"},
		{At: at, Text: "c does not fit", Mend: "make it smaller"},
		{At: Pos{File: "f", Line: 4, Col: 1}, Source: "beem", Text: "nothing is called beem", Mend: "make it smaller"},
	}
	want := "f:3:1: a does not fit; the same in 2 more places: 7 (make it smaller)\nf:3:1: b is lost (find it)\nf:4:1: nothing is called beem (make it smaller)"
	if got := fs.Gathered().Error(); got != want {
		t.Errorf("%s\nwant\n%s", got, want)
	}
	if !strings.Contains(fs[:2].Gathered().Error(), "in 1 more place:") {
		t.Error(fs[:2].Gathered())
	}
}
