package solve_test

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"pegwright/samples/trial"
)

// many is a frame of n posts, each step millimetres beside the last.
func many(n int, step string) string {
	var b strings.Builder
	b.WriteString("frame: Many\nunits: mm\ntimbers:\n")
	for i := range n {
		fmt.Fprintf(&b, "  t%d: {role: post, section: 150 x 150, from: [%d * %s, 0, 0], to: [%d * %s, 0, 2000]}\n", i, i, step, i, step)
	}
	return b.String()
}

// ladder is a post with n rails let into it.
func ladder(n int) string {
	var b, j strings.Builder
	b.WriteString("frame: Ladder\nunits: mm\ntimbers:\n  p: {role: post, section: 150 x 150, from: [0, 0, 0], to: [0, 0, 25000], faces: [south, west]}\n")
	for i := range n {
		fmt.Fprintf(&b, "  r%d: {role: tie, section: 40 x 40, from: [0, 150, %d], to: [0, 2000, %d], faces: [top, west]}\n", i, 300+60*i, 300+60*i)
		fmt.Fprintf(&j, "  - {kind: mortise and tenon, of: r%d, end: start, into: p}\n", i)
	}
	return b.String() + "joints:\n" + j.String()
}

// wide is a building whose keys are those given.
func wide(span, bays, eave, more string) string {
	return "frame: Wide\nunits: mm\nbuilding:\n  span: " + span + "\n  bays: [" + bays + "]\n  eave: " + eave + "\n  sills: yes\n  " + more + "\n"
}

// What would need more wood than a frame cut by hand has is refused, at the
// number that asks for it, before the work is begun. Counts by hand: 3,000 mm
// over 0.1 mm is 30,000, for both slopes of a roof 60,000.
func TestLimits(t *testing.T) {
	bays := strings.Repeat("3000, ", 199) + "3000"
	for _, c := range []struct {
		name, src, line, source, says string
	}{
		{"rafters", wide("4000", "3000", "2400", "roof: {shape: gable, pitch: 9 in 12, rafter spacing: 0.1}"), "spacing", "0.1", "about 60000 rafters"},
		{"rafters in each other", wide("4000", "3000", "2400", "roof: {shape: gable, pitch: 9 in 12, rafter spacing: 40}"), "spacing", "40", "half in each other"},
		{"purlins", wide("9000", "3000, 3000", "2400", "roof: {shape: gable, pitch: 45 deg, truss: queen posts, purlin spacing: 0.1}"), "spacing", "0.1", "purlins"},
		{"joists", wide("4000", "3000", "2400", "floor: {spacing: 0.001}"), "spacing", "0.001", "joists"},
		{"joists in each other", wide("4000", "3000", "2400", "floor: {spacing: 20}"), "spacing", "20", "half in each other"},
		{"loft joists", wide("4000", "3000", "2400", "loft: {spacing: 0.01}"), "spacing", "0.01", "about 400000 loft joists"},
		{"piers", wide("4000", "3000", "2400", "piers: {spacing: 0.01}"), "spacing", "0.01", "piers"},
		{"feet without a mark", strings.Replace(wide("8", "10'", "7'", "roof: {shape: gable, pitch: 9 in 12}"), "mm", "in", 1), "span", "8", `this makes 8" of building`},
		{"metres without a unit", wide("2400", "3", "2100", "roof: {shape: gable, pitch: 9 in 12}"), "bays", "3", "this makes 3 mm of building"},
		{"span", wide("31 m", "3000", "2400", "roof: {shape: gable, pitch: 9 in 12}"), "span", "31 m", "no timber may be longer than"},
		{"eave", wide("4000", "3000", "40 m", "roof: {shape: gable, pitch: 9 in 12}"), "eave", "40 m", "no timber may be longer than"},
		{"bay", wide("4000", "3000, 30001", "2400", "roof: {shape: gable, pitch: 9 in 12}"), "bays", "30001", "no timber may be longer than"},
		{"length", wide("4000", strings.Repeat("29 m, ", 34)+"29 m", "2400", "roof: {shape: gable, pitch: 9 in 12}"), "bays", "29 m", "building of more than"},
		{"rafters of many bays", wide("4000", bays, "2400", "roof: {shape: gable, pitch: 9 in 12, rafter spacing: 200}"), "spacing", "200", "about 6000 rafters"},
		{"joints of one timber", ladder(401), "of: r400", "r400-into-p", "p has more than 400 joints"},
		{"one place", many(400, "0"), "t0:", "t0", "399 other timbers lie about t0"},
		{"nearly one place", many(400, "0.2"), "t0:", "t0", "in one heap"},
	} {
		t.Run(c.name, func(t *testing.T) {
			begun := time.Now()
			_, faults := trial.Solve("test.yaml", c.src)
			if took := time.Since(begun); took > 5*time.Second {
				t.Errorf("it took %v to refuse it", took)
			}
			if len(faults) == 0 {
				t.Fatal("it is not refused")
			}
			x := faults[0]
			line := strings.Split(c.src, "\n")[max(x.At.Line-1, 0)]
			if !strings.Contains(line, c.line) || x.Source != c.source || !strings.Contains(x.Text, c.says) || x.Mend == "" {
				t.Errorf("at %q: %q, %s (%s)", line, x.Source, x.Text, x.Mend)
			}
		})
	}
}

// Frames that are dense, but no heap, are solved.
func TestDenseFramesAreNotRefused(t *testing.T) {
	for name, src := range map[string]string{
		"a palisade": many(300, "150"),
		"a crowd":    many(60, "0"),
		"rafters side by side": wide("4000", "3000", "2400",
			"roof: {shape: gable, pitch: 9 in 12, rafter spacing: 150}"),
	} {
		if _, faults := trial.Solve("test.yaml", src); len(faults) > 0 {
			t.Errorf("%s: %v", name, faults)
		}
	}
}
