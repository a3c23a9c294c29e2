package templates

import (
	"math"
	"strings"
	"testing"

	"pegwright/geom/measure"
)

// Holes that lie far from line J, or from each other, come in parts of one page
// each. Every part with a line of its own says how far that is from line J: a
// whole number of inches or of tens of millimetres, not farther than the hole,
// which the measuring test then finds from there.
func TestFarHolesComeInParts(t *testing.T) {
	parts := 0
	for _, d := range all(t) {
		for _, g := range d.groups {
			if g.kind == "end" || g.part.of == 0 {
				continue
			}
			parts++
			_, word := g.title()
			id := g.joint.ID + "-" + word
			if d.read[id] == nil {
				t.Errorf("%s %s is not one page", d.name, id)
			}
			from, whole := math.Abs(g.part.from), 25.4
			if d.f.Units == measure.Metric {
				whole = 10
			}
			if math.Abs(math.Remainder(from, whole)) > 1e-6 {
				t.Errorf("%s %s: line J%d stands off by %v", d.name, id, g.part.n, from)
			}
			if want := d.f.Units.FormatJoint(from) + " from line " + letterOf(g.kind); g.part.own != strings.Contains(flow(d.sheets, id), want) {
				t.Errorf("%s %s: own line %v, %q", d.name, id, g.part.own, want)
			}
		}
	}
	if parts < 6 {
		t.Errorf("%d parts", parts)
	}
}

// Holes are grouped by how far each lies from the next, from line J outward.
func TestHoleGroups(t *testing.T) {
	var holes []hole
	for i, x := range []float64{500, 150, -400, 560, -40} {
		h := hole{n: i + 1, bore: 20}
		h.c.X = x
		holes = append(holes, h)
	}
	var got [][]int
	for _, g := range holeGroups(holes, 100) {
		var ns []int
		for _, h := range g {
			ns = append(ns, h.n)
		}
		got = append(got, ns)
	}
	want := [][]int{{5}, {2}, {3}, {1, 4}}
	if len(got) != len(want) {
		t.Fatalf("%v, want %v", got, want)
	}
	for i := range want {
		if len(got[i]) != len(want[i]) || got[i][0] != want[i][0] {
			t.Errorf("%v, want %v", got, want)
		}
	}
}
