package templates

import (
	"strings"
	"testing"

	"pegwright/draw"
	"pegwright/geom/vec"
)

// The outline of a tenon that runs off the paper ends at break lines: seen as a
// chain, it closes with them.
func TestTongueThatRunsOnIsBrokenOff(t *testing.T) {
	broken := 0
	for _, d := range all(t) {
		for _, s := range d.sheets {
			if s.Kind != "tenon" || strings.Contains(s.ID, "-tile-") {
				continue
			}
			ends, torn := looseEnds(s)
			if torn {
				broken++
			}
			for _, p := range ends {
				t.Errorf("%s %s: the outline ends in the open at %v", d.name, s.ID, p)
			}
		}
	}
	if broken == 0 {
		t.Error("no tongue is longer than its paper")
	}
}

// looseEnds returns the points at which one line alone of a tenon's outline and
// its break lines ends, and whether it has break lines.
func looseEnds(s *draw.Sheet) (ends []vec.P, torn bool) {
	const near = 0.01
	var all []vec.P
	for _, it := range s.Items {
		p, ok := it.(*draw.Path)
		if !ok || p.Closed {
			continue
		}
		switch {
		case strings.HasPrefix(p.Mark, "torn:"):
			torn = true
		case !strings.HasPrefix(p.Mark, "outline:tenon:"):
			continue
		}
		all = append(all, p.Pts[0], p.Pts[len(p.Pts)-1])
	}
	for i, p := range all {
		met := false
		for k, q := range all {
			met = met || k != i && p.Dist(q) < near
		}
		if !met {
			ends = append(ends, p)
		}
	}
	return ends, torn
}

// A break line is drawn on the sides of the window past which the area goes on,
// and on no other; not where the next tile lies.
func TestBreakOff(t *testing.T) {
	area := []vec.P{{X: -50, Y: 10}, {X: 60, Y: 10}, {X: 60, Y: 60}, {X: -50, Y: 60}}
	for _, c := range []struct {
		name string
		at   tile
		want [4]float64
	}{
		{"one page", tile{cols: 1, rows: 1}, [4]float64{tornWide, 0, 0, 0}},
		{"first of two", tile{cols: 2, rows: 1}, [4]float64{tornWide, 0, 0, 0}},
		{"last of two", tile{col: 1, cols: 2, rows: 1}, [4]float64{}},
	} {
		cv := &canvas{s: draw.NewSheet("k", "s", "t", 200, 200), win: draw.Box{Max: vec.P{X: 100, Y: 100}}}
		cv.breakOff(area, c.at)
		if cv.strip != c.want || len(cv.s.Items) != map[bool]int{true: 1}[c.want[0] > 0] {
			t.Errorf("%s: %v and %d lines", c.name, cv.strip, len(cv.s.Items))
		}
	}
}
