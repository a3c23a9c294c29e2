package check_test

import (
	"fmt"
	"math/rand/v2"
	"os"
	"strconv"
	"strings"
	"testing"

	"pegwright/geom/finding"
	"pegwright/geom/solve"
	"pegwright/geom/spec"
	"pegwright/samples/trial"
)

// roofKinds are the roofs that a description can ask for, each on a building
// that suits it.
var roofKinds = []struct{ name, building, roof string }{
	{"ridge", "span: %s, bays: [10', 9'], eave: 8'", "shape: gable, pitch: %s, ridge: beam"},
	{"ridge with braces", "span: %s, bays: [10'], eave: 8', braces: [{legs: 20 x 20, in: [ridge]}]", "shape: gable, pitch: %s, ridge: beam"},
	{"ridge on the gables", "span: %s, bays: [8', 8'], eave: 8'", "shape: gable, pitch: %s, ridge: beam, king posts: gables"},
	{"ties over plates", "span: %s, bays: [10'], eave: 8', ties: over plates", "shape: gable, pitch: %s"},
	{"low collars", "span: %s, bays: [9'], eave: 8'", "shape: gable, pitch: %s, collars: {height: 6\"}"},
	{"king posts", "span: %s, bays: [12', 12'], eave: 9'", "shape: gable, pitch: %s, truss: king post"},
	{"queen posts", "span: %s, bays: [12', 11'], eave: 9'", "shape: gable, pitch: %s, truss: queen posts"},
	{"shed", "span: %s, bays: [9', 10'], eave: 7'", "shape: shed, pitch: %s"},
	{"shed to the south", "span: %s, bays: [9'], eave: 7'", "shape: shed, pitch: %s, high wall: south"},
	{"lean-tos", "span: %s, bays: [10', 10'], eave: 11', lean-tos: [{wall: north, span: 6', pitch: 3 in 12}, {wall: south, span: 4', pitch: 4 in 12}]", "shape: gable, pitch: %s, ridge: beam"},
}

// shaped describes a building under roof kind i.
func shaped(i int, span, pitch, more, wood string) string {
	k := roofKinds[i]
	return fmt.Sprintf("frame: Roof\nunits: in\nwood: {timbers: %s}\nbuilding: {%s, roof: {%s}%s}\n", wood,
		fmt.Sprintf(k.building, span), fmt.Sprintf(k.roof, pitch), more)
}

// Each roof by its defaults is a sound frame: nothing but notes.
func TestRoofsByDefaultAreSound(t *testing.T) {
	spans := map[string]string{"king posts": "20'", "queen posts": "20'", "shed": "9'", "shed to the south": "10'", "low collars": "9'"}
	pitches := map[string]string{"shed": "4 in 12", "shed to the south": "5 in 12", "low collars": "12 in 12"}
	for i, k := range roofKinds {
		span, pitch := "12'", "9 in 12"
		if s := spans[k.name]; s != "" {
			span = s
		}
		if s := pitches[k.name]; s != "" {
			pitch = s
		}
		t.Run(k.name, func(t *testing.T) {
			f := trial.Frame(t, "roof", shaped(i, span, pitch, "", "{species: white oak, seasoning: dry}"))
			for _, x := range proofs(f) {
				if x.Severity != finding.Note {
					t.Errorf("%v: %s", x.Rule, x.Text)
				}
			}
		})
	}
}

// Roofs of random sizes have no stop, or are refused with a mend. More of them
// run with PEGWRIGHT_ROOFS=n.
func TestRandomRoofs(t *testing.T) {
	n := len(roofKinds)
	if s, err := strconv.Atoi(os.Getenv("PEGWRIGHT_ROOFS")); err == nil {
		n = s
	} else if long() {
		n = 60
	}
	r := rand.New(rand.NewPCG(11, 4))
	refused := 0
	for i := range n {
		kind := i % len(roofKinds)
		lo, hi, flat, steep := 96, 192, 6, 13
		switch name := roofKinds[kind].name; {
		case strings.Contains(name, "posts"):
			lo, hi = 192, 288
		case strings.Contains(name, "shed"):
			lo, hi, flat, steep = 84, 144, 3, 8
		case name == "low collars":
			flat, steep = 9, 14
		}
		more := ""
		if r.IntN(2) == 0 && !strings.Contains(roofKinds[kind].building, "braces") {
			more = fmt.Sprintf(", braces: {legs: %d x %d, in: [%s]}", 22+r.IntN(8), 22+r.IntN(8), []string{"bents", "walls", "bents, walls"}[r.IntN(3)])
		}
		if r.IntN(3) == 0 && !strings.Contains(roofKinds[kind].building, "lean-tos") {
			more += ", sills: yes"
		}
		src := shaped(kind, fmt.Sprint(lo+r.IntN(hi-lo)), fmt.Sprintf("%d in 12", flat+r.IntN(steep-flat)), more,
			[]string{"{species: eastern white pine}", "{species: douglas-fir}", "{species: white oak, seasoning: dry}"}[r.IntN(3)])
		d, faults := spec.Read("roof", []byte(src), nil)
		if len(faults) > 0 {
			t.Fatalf("%v\n%s", faults, src)
		}
		f, faults := solve.Solve(d)
		if len(faults) > 0 {
			refused++
			t.Logf("refused: %v\n%s", faults, src)
			continue
		}
		for _, x := range proofs(f) {
			if x.Severity == finding.Stop {
				t.Errorf("%s: %s: %s\n%s", roofKinds[kind].name, x.Rule, x.Text, src)
			}
		}
	}
	if refused > n/5 {
		t.Errorf("%d of %d roofs refused", refused, n)
	}
}
