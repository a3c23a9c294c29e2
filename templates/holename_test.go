package templates

import (
	"fmt"
	"strings"
	"testing"

	"pegwright/draw"
)

// Where a joint has two pegs or more, every page that shows one of its holes
// says which it is, by the order of the joint's pegs.
func TestHolesOfSeveralPegsAreToldApart(t *testing.T) {
	kinds := map[string]bool{}
	for _, d := range all(t) {
		for _, s := range d.sheets {
			text := textOf(s)
			for _, it := range s.Items {
				c, ok := it.(*draw.Circle)
				if !ok || !strings.HasPrefix(c.Mark, "hole:") {
					continue
				}
				m := strings.Split(c.Mark, ":") // hole, kind, joint, peg
				j := d.f.Joint(m[2])
				if len(j.Pegs) < 2 || m[1] == "mortise-on-tenon" {
					continue
				}
				kinds[m[1]] = true
				for i, g := range j.Pegs {
					if g.ID == m[3] && !strings.Contains(text, fmt.Sprintf("|hole %d  Ø", i+1)) {
						t.Errorf("%s %s does not say which is hole %d", d.name, s.ID, i+1)
					}
				}
			}
		}
	}
	for _, k := range []string{"near", "far", "mate", "tenon"} {
		if !kinds[k] {
			t.Errorf("no joint of several pegs has a template of kind %s", k)
		}
	}
}
