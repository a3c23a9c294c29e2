package building_test

import (
	"strings"
	"testing"

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
