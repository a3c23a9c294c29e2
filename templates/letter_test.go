package templates

import (
	"math"
	"testing"
)

// letterOf is the letter of the line that a kind of template is laid on.
func letterOf(kind string) string {
	for k, letter := range map[string]string{"end": "E", "mate": "H", "through": "P"} {
		if k == kind {
			return letter
		}
	}
	return "J"
}

// A letter means one line: all templates of a joint that are laid on one stick by
// the same letter have that line in one place, and line J is the main line of the
// joint, which the joint sheet calls J.
func TestALetterIsOneLine(t *testing.T) {
	type line struct{ frame, joint, timber, letter string }
	at := map[line]float64{}
	n := 0
	for _, d := range all(t) {
		for _, g := range d.groups {
			for _, q := range g.serves {
				if q.kind == "tenon" {
					continue // laid on the shoulder
				}
				k, x := line{d.name, q.joint.ID, q.v.t.ID, letterOf(q.kind)}, q.v.x0-q.part.from
				if before, ok := at[k]; ok && math.Abs(before-x) > 0.01 {
					t.Errorf("%s: line %s of %s on %s lies at %.2f and at %.2f", k.frame, k.letter, k.joint, k.timber, before, x)
				}
				at[k] = x
				if k.letter != "J" {
					continue
				}
				for _, l := range q.joint.Lines {
					if l.Main {
						n++
						if q.v.t != q.joint.Into || math.Abs(l.X-x) > 0.01 {
							t.Errorf("%s: line J of %s lies at %.2f of %s, the main line at %.2f", k.frame, k.joint, x, k.timber, l.X)
						}
					}
				}
			}
		}
	}
	if n == 0 {
		t.Error("no line J")
	}
}
