package assembly_test

import (
	"fmt"
	"math/rand"
	"os"
	"strconv"
	"strings"
	"testing"

	"pegwright/geom/check"
	"pegwright/geom/finding"
	"pegwright/geom/solve"
	"pegwright/geom/spec"
)

// randomBuilding describes a building by chance: spans, bays, openings, walls
// and roofs that the generator knows.
func randomBuilding(r *rand.Rand) string {
	pick := func(words ...string) string { return words[r.Intn(len(words))] }
	var b strings.Builder
	bays := make([]string, 1+r.Intn(3))
	for i := range bays {
		bays[i] = fmt.Sprintf("%d'", 9+r.Intn(5))
	}
	fmt.Fprintf(&b, "frame: Random\nunits: in\nsections: {post: %s, plate: 8 x 8, tie: 8 x 9}\nbuilding:\n  span: %d'\n  bays: [%s]\n  eave: %d\n",
		pick("8 x 8", "8 x 8", "7 x 8"), 11+r.Intn(5), strings.Join(bays, ", "), 96+r.Intn(24))
	fmt.Fprintf(&b, "  roof: {shape: gable, pitch: %d in 12%s}\n  sills: %s\n", 7+r.Intn(6), pick("", ", ridge: beam", ", seat: birdsmouth, ridge: beam", ", truss: king post", ", truss: queen posts, purlin spacing: 4'", ", collars: {height: 2'}"), pick("yes", "no"))
	if r.Intn(4) > 0 {
		fmt.Fprintf(&b, "  girts: {height: [%d], in: [%s]}\n", 36+r.Intn(16), pick("eave walls", "gable walls", "eave walls, gable walls"))
	}
	if r.Intn(4) > 0 {
		fmt.Fprintf(&b, "  braces: {legs: %[1]d x %[1]d, in: [%[2]s]}\n", 24+r.Intn(8), pick("bents", "walls", "bents, walls"))
	}
	b.WriteString(pick("", "  floor: {joists: 4 x 5}\n  cross sills: at bents\n", "  loft: {joists: 4 x 6}\n"))
	if n := r.Intn(3); n > 0 {
		b.WriteString("  openings:\n")
		for k := range n {
			sill := pick("", ", sill: 3'")
			fmt.Fprintf(&b, "    - {name: o%d, wall: %s, bay: 1, width: %d, height: %d%s}\n", k, []string{pick("south", "west"), pick("north", "east")}[k], 28+r.Intn(10), 66+r.Intn(14), sill)
		}
	}
	return b.String()
}

// Whatever building the generator lays out, and the other proofs pass, goes
// together; every timber, joint and peg has its step. PEGWRIGHT_BUILDINGS asks
// for more than the few of an ordinary run.
func TestRandomBuildingsGoTogether(t *testing.T) {
	count := 12
	if n, err := strconv.Atoi(os.Getenv("PEGWRIGHT_BUILDINGS")); err == nil {
		count = n
	}
	sound := 0
	for seed := range count {
		src := randomBuilding(rand.New(rand.NewSource(int64(seed))))
		d, faults := spec.Read("random.yaml", []byte(src), nil)
		if len(faults) > 0 {
			t.Fatalf("seed %d cannot be read: %v\n%s", seed, faults, src)
		}
		f, faults := solve.Solve(d)
		if len(faults) > 0 {
			continue
		}
		list := against(f)
		if len(list) == 0 {
			bookkeeping(t, f)
			sound++
			if seed%6 == 0 {
				replay(t, f, 2)
			}
		} else if !otherStops(check.Check(f)) {
			t.Errorf("seed %d stopped: %s\n%s", seed, list[0].Text, src)
		}
		if t.Failed() {
			t.Fatalf("seed %d:\n%s", seed, src)
		}
	}
	if sound < count/2 {
		t.Errorf("only %d of %d buildings had an order", sound, count)
	}
}

func otherStops(list []finding.Finding) bool {
	for _, x := range list {
		if x.Severity == finding.Stop && x.Rule != "assembly" && x.Rule != "peg reach" {
			return true
		}
	}
	return false
}
