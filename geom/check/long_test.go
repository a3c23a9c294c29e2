package check_test

import (
	"strings"
	"testing"

	"pegwright/geom/check"
	"pegwright/geom/finding"
	"pegwright/samples/trial"
)

// Sticks of more than 40 ft are noted once, by the longest; those of 40 ft are
// not. The lengths are the distances of the points written.
func TestLongSticksAreNoted(t *testing.T) {
	sticks := func(feet ...string) string {
		src := "frame: Long\nunits: in\ntimbers:\n"
		for i, x := range feet {
			id := string(rune('a' + i))
			src += "  " + id + ": {role: beam, section: 8 x 8, from: [0, " + strings.Repeat("10 + ", i) + "0, 0], to: [" + x + ", " + strings.Repeat("10 + ", i) + "0, 0], faces: [top, south]}\n"
		}
		return src
	}
	noted := func(src string) (list []finding.Finding) {
		for _, x := range check.Check(trial.Frame(t, "test.yaml", src)) {
			if x.Rule == "length" {
				list = append(list, x)
			}
		}
		return list
	}
	if got := noted(sticks("40'", "12'")); len(got) > 0 {
		t.Errorf("40 ft is noted: %v", got)
	}
	got := noted(sticks("41'", "60'", "12'"))
	if len(got) != 1 || strings.Join(got[0].Timbers, " ") != "a b" || got[0].Severity != finding.Note || got[0].At.Line != 5 {
		t.Fatalf("%+v", got)
	}
	if want := `2 timbers are longer than 40'-0", and few are sawn so long: b is 60'-0" in one piece`; got[0].Text != want {
		t.Errorf("%s, want %s", got[0].Text, want)
	}
}
