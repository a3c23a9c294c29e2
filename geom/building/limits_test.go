package building_test

import (
	"strings"
	"testing"

	"pegwright/geom/finding"
	"pegwright/samples/trial"
)

// wide is a building whose keys are those given.
func wide(span, bays, eave, more string) string {
	return "frame: Wide\nunits: mm\nbuilding:\n  span: " + span + "\n  bays: [" + bays + "]\n  eave: " + eave + "\n  sills: yes\n  " + more + "\n"
}

// What would need more wood than a frame cut by hand has is refused, at the
// number that asks for it, before the work is begun. Counts by hand: 3,000 mm
// over 0.1 mm is 30,000, for both slopes of a roof 60,000.
func TestLimits(t *testing.T) {
	bays := strings.Repeat("3000, ", 199) + "3000"
	trial.RefusedSoon(t, "rafters", wide("4000", "3000", "2400", "roof: {shape: gable, pitch: 9 in 12, rafter spacing: 0.1}"), "spacing", "0.1", "about 60000 rafters")
	trial.RefusedSoon(t, "rafters in each other", wide("4000", "3000", "2400", "roof: {shape: gable, pitch: 9 in 12, rafter spacing: 40}"), "spacing", "40", "half in each other")
	trial.RefusedSoon(t, "purlins", wide("9000", "3000, 3000", "2400", "roof: {shape: gable, pitch: 45 deg, truss: queen posts, purlin spacing: 0.1}"), "spacing", "0.1", "purlins")
	trial.RefusedSoon(t, "joists", wide("4000", "3000", "2400", "floor: {spacing: 0.001}"), "spacing", "0.001", "joists")
	trial.RefusedSoon(t, "joists in each other", wide("4000", "3000", "2400", "floor: {spacing: 20}"), "spacing", "20", "half in each other")
	trial.RefusedSoon(t, "loft joists", wide("4000", "3000", "2400", "loft: {spacing: 0.01}"), "spacing", "0.01", "about 400000 loft joists")
	trial.RefusedSoon(t, "piers", wide("4000", "3000", "2400", "piers: {spacing: 0.01}"), "spacing", "0.01", "piers")
	trial.RefusedSoon(t, "feet without a mark", strings.Replace(wide("8", "10'", "7'", "roof: {shape: gable, pitch: 9 in 12}"), "mm", "in", 1), "span", "8", `this makes 8" of building`)
	trial.RefusedSoon(t, "metres without a unit", wide("2400", "3", "2100", "roof: {shape: gable, pitch: 9 in 12}"), "bays", "3", "this makes 3 mm of building")
	trial.RefusedSoon(t, "span", wide("31 m", "3000", "2400", "roof: {shape: gable, pitch: 9 in 12}"), "span", "31 m", "no timber may be longer than")
	trial.RefusedSoon(t, "eave", wide("4000", "3000", "40 m", "roof: {shape: gable, pitch: 9 in 12}"), "eave", "40 m", "no timber may be longer than")
	trial.RefusedSoon(t, "bay", wide("4000", "3000, 30001", "2400", "roof: {shape: gable, pitch: 9 in 12}"), "bays", "30001", "no timber may be longer than")
	trial.RefusedSoon(t, "length", wide("4000", strings.Repeat("29 m, ", 34)+"29 m", "2400", "roof: {shape: gable, pitch: 9 in 12}"), "bays", "29 m", "building of more than")
	trial.RefusedSoon(t, "rafters of many bays", wide("4000", bays, "2400", "roof: {shape: gable, pitch: 9 in 12, rafter spacing: 200}"), "spacing", "200", "about 6000 rafters")
}

// Rafters that stand close, but not in each other, are laid.
func TestDenseRaftersAreNotRefused(t *testing.T) {
	trial.Frame(t, "test.yaml", wide("4000", "3000", "2400", "roof: {shape: gable, pitch: 9 in 12, rafter spacing: 150}"))
}

// A span, a bay or an eave of more than 40 ft, 12 m, is asked about at its own
// word, with the length that a slip would have made so long: a tenth of it, or a
// twelfth where inches became feet. 80/10 = 8, 96/12 = 8, and 41 ft come from
// neither.
func TestUnlikelySizesAreAskedAbout(t *testing.T) {
	feet := func(span, bay, eave string) string {
		return "frame: Wide\nunits: in\nbuilding:\n  span: " + span + "\n  bays: [" + bay + "]\n  eave: " + eave + "\n"
	}
	for _, c := range []struct{ name, src, line, text, mend string }{
		{"a figure too many", feet("80'", "10'", "8'"), "span", "a span of 80'-0\"", "did you mean 8'-0\"?"},
		{"feet for inches", feet("8'", "96'", "8'"), "bays", "a bay of 96'-0\"", "did you mean 8'-0\"?"},
		{"no likely slip", feet("8'", "10'", "41'"), "eave", "an eave of 41'-0\"", "check the unit"},
		{"millimetres", wide("24000", "3000", "2400", ""), "span", "a span of 24000 mm", "did you mean 2400 mm?"},
	} {
		f := trial.Frame(t, "test.yaml", c.src)
		n := 0
		for _, x := range f.Notes {
			if x.Rule != "size" {
				continue
			}
			n++
			at := strings.Split(c.src, "\n")[x.At.Line-1]
			if x.Severity != finding.Warn || !strings.Contains(at, c.line) || !strings.HasPrefix(x.Text, c.text) || !strings.HasPrefix(x.Mend, c.mend) {
				t.Errorf("%s, at %q: %v %s (%s)", c.name, at, x.Severity, x.Text, x.Mend)
			}
		}
		if n != 1 {
			t.Errorf("%s: %d questions", c.name, n)
		}
	}
	for _, src := range []string{feet("40'", "40'", "20'"), wide("12000", "12000", "6000", "")} {
		for _, x := range trial.Frame(t, "test.yaml", src).Notes {
			if x.Rule == "size" {
				t.Errorf("%s: %s", src, x.Text)
			}
		}
	}
}
