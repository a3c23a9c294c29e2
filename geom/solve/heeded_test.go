package solve_test

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/samples"
	"pegwright/samples/trial"
)

// values gives every setting of a joint values of which at most one can be what
// the joint has anyway.
var values = map[string][]string{"thickness": {"1 3/8 in", "1 1/4 in"}, "from reference": {"1 7/8 in", "1 3/4 in"}, "tenon length": {"2 1/8 in", "2 1/4 in"},
	"through": {"yes", "no"}, "stub": {"yes", "no"}, "housing": {"3/8 in", "1/4 in"}, "hold back start": {"7/8 in", "3/4 in"}, "hold back end": {"7/8 in", "3/4 in"},
	"clearance": {"1/32 in", "1/16 in"}, "steps": {"1", "2"}, "haunch": {"1/2 in", "5/8 in"}, "proud": {"1/2 in", "5/8 in"}, "seat depth": {"1 1/8 in", "1 1/4 in"},
	"diminished": {"yes", "no"}, "square end": {"yes", "no"}, "drop": {"1/4 in", "3/8 in"}, "taper": {"9", "11"}, "lap depth": {"1 in", "1 1/8 in"},
	"into face": {"1", "2", "3", "4"}, "flare": {"1 in 9", "1 in 8"}, "wedge": {"yes", "no"}, "bearing": {"1 3/4 in", "1 5/8 in"}, "pocket depth": {"3 in", "2 3/4 in"},
	"off shoulder": {"1 3/8 in", "1 5/8 in"}, "along": {"1 7/8 in", "2 1/8 in"}, "draw": {"square", "along the brace"}, "scarf": {"{length: 31 in}", "{length: 33 in}"},
	"legs": {"20 in x 20 in", "21 in x 21 in"}, "pegs": {"1", "2", "3", "4"}, "bore": {"7/8 in", "5/8 in"}, "head": {"1 3/8 in", "1 5/8 in"}, "lead": {"1 7/8 in", "1 5/8 in"},
	"from face": {"1", "2", "3", "4"}, "drawbore": {"1/32 in", "3/32 in"}}

// adjusted is a sample with one more adjustment, the first of it, or nothing if
// that is a fault.
func adjusted(sample, line string) *geom.Frame {
	src, _ := samples.Source(sample)
	text := strings.TrimRight(string(src), "\n") + "\n"
	if i := strings.Index(text, "\nadjust:\n"); i >= 0 {
		at := i + len("\nadjust:\n")
		text = text[:at] + line + text[at:]
	} else {
		text += "adjust:\n" + line
	}
	f, _ := trial.Solve(sample+".yaml", text)
	return f
}

// A setting has an effect, or is told: as a fault or as a note. Whether it has
// one is seen from the frame itself, cut for cut, with the one line more. A
// value may be what the joint has anyway, but not two of them. One joint of each
// kind that the samples show, from the smallest that shows it.
func TestASettingHasAnEffectOrANote(t *testing.T) {
	kinds := kindsShown(t)
	if len(kinds) < 14 {
		t.Errorf("only %d kinds", len(kinds))
	}
	for _, k := range kinds {
		if !long() && len(k.frame.Timbers) > 16 {
			continue // some seventy frames for each kind
		}
		t.Run(k.joint.Kind, func(t *testing.T) {
			t.Parallel()
			base := k.frame.Dump()
			for name, vs := range values {
				var silent []string
				for _, v := range vs {
					got := adjusted(k.sample, fmt.Sprintf("  - {joints: %s into %s, %s: %s}\n", k.joint.Of.ID, k.joint.Into.ID, name, v))
					if got == nil {
						continue // a fault, which tells enough
					}
					same, noted := got.Dump() == base, told(t, got, name, k.joint.ID)
					switch {
					case same && !noted:
						silent = append(silent, v)
					case noted && !same:
						t.Errorf("%s: the note says that %s: %s has no effect, and the frame is another", k.sample, name, v)
					}
				}
				if len(silent) > 1 {
					t.Errorf("%s: %s has no effect as %s, and nothing is said", k.sample, name, strings.Join(silent, ", "))
				}
			}
		})
	}
}

// shown is a joint of a sample.
type shown struct {
	sample string
	frame  *geom.Frame
	joint  *geom.Joint
}

// kindsShown returns a joint of each kind, with a peg where there is such a one,
// from the sample of the fewest timbers.
func kindsShown(t *testing.T) []shown {
	best := map[string]shown{}
	for _, name := range samples.Names() {
		f := trial.Sample(t, name)
		for _, j := range f.Joints {
			b, ok := best[j.Kind]
			if !ok || len(f.Timbers) < len(b.frame.Timbers) || f == b.frame && len(b.joint.Pegs) == 0 && len(j.Pegs) > 0 {
				best[j.Kind] = shown{name, f, j}
			}
		}
	}
	return slices.SortedFunc(maps.Values(best), func(a, b shown) int { return strings.Compare(a.joint.Kind, b.joint.Kind) })
}

// told reports whether a note says that a setting of a joint has no effect.
func told(t *testing.T, f *geom.Frame, setting, id string) bool {
	for _, n := range f.Notes {
		if n.Rule == "setting" && strings.HasPrefix(n.Text, setting+" has no effect") {
			if n.Severity != finding.Note || n.At.Line == 0 || !slices.Contains(n.Joints, id) || n.Mend == "" {
				t.Errorf("%+v", n)
			}
			return true
		}
	}
	return false
}

// A setting that one of the joints picked heeds is not noted.
func TestASettingForSomeOfManyJoints(t *testing.T) {
	f := trial.Frame(t, "test.yaml", trial.Hut("", "adjust:\n  - {joints: all, housing: 1/4}\n"))
	for _, n := range f.Notes {
		if n.Rule == "setting" {
			t.Errorf("%s", n.Text)
		}
	}
}
