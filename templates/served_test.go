package templates

import (
	"fmt"
	"strings"
	"testing"

	"pegwright/draw"
)

// TestLongListsAreWhole: a list of more joints than a sheet holds goes on from
// column to column. Every word is there once and in order, no sheet is without
// words of the list, and nothing stands below the foot of its column.
func TestLongListsAreWhole(t *testing.T) {
	f := sample(t)
	g := plans(f, nil)[0]
	g.serves = []plan{g}
	var want []string
	for i := range 900 {
		want = append(want, fmt.Sprintf("post-%d-north (%s) J\u00a0%d' 7 1/2\",", i, strings.Repeat("X", i%7+1), i%13))
	}
	w := words{{"Serves 900 joints:", lettering, true}, {strings.Join(want, " "), lettering, false}, {"the last", lettering, false}}
	sheets := servedSheets(f, []plan{g}, []words{w})
	_, word := g.title()
	owner := g.joint.ID + "-" + word
	text := ""
	for _, s := range sheets {
		had := len(text)
		for _, it := range s.Items {
			x, ok := it.(*draw.Text)
			if !ok || x.Owner != owner {
				continue
			}
			text += x.S + " "
			if x.At.Y < fieldOf(layouts(f)[0].paper).Y0 {
				t.Errorf("%s: %q stands at %.1f mm", s.ID, x.S, x.At.Y)
			}
		}
		if len(text) == had {
			t.Errorf("%s holds no word of the list", s.ID)
		}
	}
	_, list, _ := strings.Cut(text, "joints: ")
	text = strings.ReplaceAll(strings.Join(want, " ")+" the last ", "\u00a0", " ")
	if strings.ReplaceAll(list, "- ", "-") != text {
		t.Errorf("the list is %d bytes of %d: ends in %.60q", len(list), len(text), list[max(0, len(list)-60):])
	}
}
