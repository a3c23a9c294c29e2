package templates

import (
	"testing"

	"pegwright/draw"
	"pegwright/samples"
)

// TestAllPapers draws the templates on every paper and roll that can be named:
// nothing lies in the outer 1/4 in, no lettering lies on other lettering, and
// every hole of every template is drawn whole on some page.
func TestAllPapers(t *testing.T) {
	texts := map[string]string{"hard": hard["housed in a reference face, two pegs"]}
	src, _ := samples.Source("rail-and-post")
	texts["rail-and-post"] = string(src)
	texts["stout"] = hard["far from the arris, bored from face 3"]
	for name, text := range texts {
		f, err := solveText(name, []byte(text))
		if err != nil {
			t.Fatal(err)
		}
		groups := gather(plans(f, nil))
		for _, p := range append(draw.Papers(), draw.Rolls()...) {
			f.Paper.Templates, f.Paper.Poles = p.Name, name == "rail-and-post"
			holes := map[string]int{}
			for _, s := range Sheets(f, nil) {
				where := name + " on " + p.Name
				readable(t, where, s)
				for _, it := range s.Items {
					if c, ok := it.(*draw.Circle); ok {
						holes[c.Mark]++
					}
				}
				if min(s.W, s.H) > max(p.W, p.H)+0.01 {
					t.Errorf("%s: a page of %v by %v", where, s.W, s.H)
				}
			}
			for _, g := range groups {
				for _, h := range g.holes {
					if holes[h.mark] == 0 {
						t.Errorf("%s on %s: %s is on no page", name, p.Name, h.mark)
					}
				}
			}
		}
	}
}
