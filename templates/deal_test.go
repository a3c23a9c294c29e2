package templates

import (
	"slices"
	"strings"
	"testing"

	"pegwright/draw"
	"pegwright/geom/vec"
)

// However the words of a template are dealt out over its sheets, every paragraph
// stands on them whole.
func TestNoWordsAreLost(t *testing.T) {
	going := 0
	for _, d := range all(t) {
		for _, g := range d.groups {
			_, word := g.title()
			text := flow(d.sheets, g.joint.ID+"-"+word)
			if strings.Contains(text, "The words go on on the next tile.") {
				going++
			}
			for _, w := range both(g.words(d.f.Units), g.members(d.f.Units)) {
				if !strings.Contains(text, strings.ReplaceAll(w.text, "\u00a0", " ")) {
					t.Errorf("%s %s-%s: lost %q", d.name, g.joint.ID, word, w.text)
				}
			}
		}
	}
	if going == 0 {
		t.Error("no words go on from tile to tile")
	}
}

// Words that go on from page to page keep their order, each page is headed, and
// none is fuller than its column.
func TestGoOn(t *testing.T) {
	l := layout{col: draw.Box{Max: vec.P{X: 80, Y: 40}}, above: 1000}
	short := words{{"FLAP", 7, true}}
	var rest words
	for _, s := range []string{"one", "two", "three", "four", "five", "six", "seven"} {
		rest.add(lettering, false, s)
	}
	for n, enough := range map[int]bool{1: false, 2: false, 3: true, 4: true} {
		columns, ok := l.goOn(short, rest, 0, n)
		if ok != enough || len(columns) != n {
			t.Errorf("%d pages: %v, %d columns", n, ok, len(columns))
		}
		var got words
		for i, c := range columns {
			if c[0] != short[0] || !l.room(c, 0) {
				t.Errorf("page %d of %d: %v", i+1, n, c)
			}
			got = append(got, slices.DeleteFunc(c[1:], func(q para) bool { return strings.HasPrefix(q.text, "The words go on") })...)
		}
		if !slices.Equal(got, rest[:len(got)]) || ok && len(got) != len(rest) {
			t.Errorf("%d pages: %v", n, got)
		}
	}
}
