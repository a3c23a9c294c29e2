package building_test

import (
	"strings"
	"testing"

	"pegwright/samples/trial"
)

// Buildings that can be read and not be built.
func TestBuildingsRefused(t *testing.T) {
	trial.Refused(t, "opening wider than its bay", trial.Hut("", "  openings:\n    - {name: barn door, wall: south, bay: 1, width: 9' 6\", height: 5'}\n"), "barn door", "clear")
	trial.Refused(t, "opening in a bay of the gable", strings.Replace(trial.Hut("", "  openings:\n    - {name: door, wall: west, bay: 2, width: 3', height: 5'}\n"), "[10']", "[10', 10']", 1), "bay: 2", "no bay 2")
	trial.Refused(t, "opening past its bay", trial.Hut("", "  openings:\n    - {name: door, wall: south, bay: 1, width: 3', height: 5', from: 7'}\n"), "from: 7'", "clear")
	trial.Refused(t, "opening higher than the wall", trial.Hut("", "  openings:\n    - {name: door, wall: south, bay: 1, width: 3', height: 8'}\n"), "height: 8'}", "high")
	trial.Refused(t, "openings overlap", trial.Hut("", "  openings:\n    - {name: door, wall: west, width: 3', height: 5'}\n    - {name: slit, wall: west, width: 1', height: 5', sill: 3'}\n"), "name: slit", "overlap")
	trial.Refused(t, "window without height", trial.Hut("", "  openings:\n    - {name: slit, wall: east, width: 1', height: 4', sill: 4'}\n"), "sill: 4'", "head at")
	trial.Refused(t, "girt above its wall", trial.Hut("", "  girts: {height: [9'], in: [south]}\n"), "height: [9']", "starts at")
	trial.Refused(t, "girt below its wall", trial.Hut("", "  girts: {height: [3], in: [south]}\n"), "height: [3]", "below the foot")
	trial.Refused(t, "floor without sills", trial.Hut("", "  floor: {spacing: 2'}\n"), "floor:", "no sills")
	trial.Refused(t, "joists deeper than sills", trial.Hut("", "  sills: yes\n  floor: {joists: 4 x 12}\n"), "joists: 4 x 12", "carries them")
	trial.Refused(t, "braces down to no sill", trial.Hut("", "  braces: {legs: 2' x 2', go: down}\n"), "go: down", "no sills")
	trial.Refused(t, "braces of no bent", trial.Hut("", "  braces: {legs: 2' x 2', bents: [3]}\n"), "bents: [3]", "only 2 bents")
	trial.Refused(t, "loft of no bay", trial.Hut("", "  loft: {bays: [2]}\n"), "bays: [2]", "last bay of the building is bay 1")
	trial.Refused(t, "legs in feet", trial.Hut("", "  braces: {legs: 24' x 24'}\n"), "24' x 24'", "longer than the posts")
	trial.Refused(t, "second leg in feet", trial.Hut("", "  braces: {legs: 24\" x 24'}\n"), "24\" x 24'", "longer than the timber it runs along")
	trial.Refused(t, "bays counted", strings.Replace(trial.Hut("", ""), "bays: [10']", "bays: 3", 1), "bays: 3", "makes 3\" of building")
	trial.Refused(t, "ridge of a shed roof", strings.Replace(trial.Hut("", ""), "shape: gable", "ridge: beam, shape: shed", 1), "shape: shed", "no ridge")
	trial.Refused(t, "high wall of a gable roof", strings.Replace(trial.Hut("", ""), "shape: gable", "high wall: north, shape: gable", 1), "high wall: north", "one height")
	trial.Refused(t, "king posts without a ridge", strings.Replace(trial.Hut("", ""), "shape: gable", "king posts: gables, shape: gable", 1), "king posts: gables", "no ridge beam")
	trial.Refused(t, "trusses of a shed roof", strings.Replace(trial.Hut("", ""), "shape: gable", "truss: king post, shape: shed", 1), "truss: king post", "no trusses")
	trial.Refused(t, "king post truss without a ridge", strings.Replace(trial.Hut("", ""), "shape: gable", "ridge: none, truss: king post, shape: gable", 1), "truss: king post", "ridge beam")
	trial.Refused(t, "king post truss in a narrow span", strings.Replace(trial.Hut("", ""), "span: 10'\n  bays: [10']\n  eave: 8'\n  roof: {", "span: 6'\n  bays: [10']\n  eave: 8'\n  roof: {truss: king post, ", 1), "truss: king post", "no room for a truss")
	trial.Refused(t, "heel too short for the ridge", strings.Replace(trial.Hut("", "  tie height: 92\n"), "shape: gable", "truss: king post, heel: 1, ridge: beam, shape: gable", 1), "truss: king post", "below the ridge")
	trial.Refused(t, "queen posts under a flat roof", strings.Replace(trial.Hut("", ""), "shape: gable, pitch: 9 in 12", "truss: queen posts, shape: gable, pitch: 4 in 12", 1), "truss: queen posts", "high")
	trial.Refused(t, "ties over the plates under a ridge", strings.Replace(trial.Hut("", "  ties: over plates\n"), "shape: gable", "ridge: beam, shape: gable", 1), "ties: over plates", "ridge beam")
	trial.Refused(t, "height of ties over the plates", trial.Hut("", "  ties: over plates\n  tie height: 9'\n"), "tie height", "no height of their own")
	trial.Refused(t, "collars at the plates", strings.Replace(trial.Hut("", ""), "shape: gable", "collars: {height: 1}, shape: gable", 1), "collars", "closer")
	trial.Refused(t, "collars at the peak", strings.Replace(trial.Hut("", ""), "shape: gable", "collars: {height: 40}, shape: gable", 1), "collars", "peak")
	trial.Refused(t, "collars of a shed roof", strings.Replace(trial.Hut("", ""), "shape: gable", "collars: {height: 12}, shape: shed", 1), "collars", "no pairs")
	trial.Refused(t, "lean-to too low", trial.Hut("", "  lean-tos:\n    - {wall: north, span: 10', pitch: 6 in 12}\n"), "wall: north", "above the datum")
	trial.Refused(t, "lean-to above the braces", trial.Hut("", "  braces: {in: [walls]}\n  lean-tos:\n    - {wall: north, span: 3', pitch: 3 in 12, height: 7'}\n"), "height: 7'", "braces")
	trial.Refused(t, "lean-to over a door", trial.Hut("", "  lean-tos:\n    - {wall: north, span: 3', pitch: 3 in 12}\n  openings:\n    - {name: door, wall: north, bay: 1, width: 3', height: 5'}\n"), "name: door", "cross the posts")
	trial.Refused(t, "two lean-tos on a wall", trial.Hut("", "  lean-tos:\n    - {wall: south, span: 3', pitch: 3 in 12}\n    - {wall: south, span: 4', pitch: 3 in 12}\n"), "span: 4'", "already")
	trial.Refused(t, "no room under the ridge", strings.Replace(trial.Hut("", "  tie height: 8'\n"), "shape: gable, pitch: 9 in 12", "shape: gable, ridge: beam, pitch: 2 in 12", 1), "ridge: beam", "no room")
}
