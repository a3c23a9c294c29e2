package solve_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/samples"
	"pegwright/samples/trial"
)

// written gives every setting that not all joints heed another value than the
// usual one.
var written = map[string]string{"thickness": "1 3/8 in", "from reference": "1 7/8 in", "tenon length": "2 1/8 in", "through": "yes", "housing": "3/8 in",
	"hold back start": "7/8 in", "hold back end": "7/8 in", "clearance": "1/32 in", "steps": "2", "haunch": "1/2 in", "proud": "1/2 in",
	"diminished": "yes", "square end": "yes", "drop": "1/4 in", "taper": "9", "lap depth": "1 in", "into face": "3", "flare": "1 in 9", "wedge": "yes",
	"bearing": "1 3/4 in", "pocket depth": "3 in", "off shoulder": "1 3/8 in", "along": "1 7/8 in", "draw": "square", "scarf": "{length: 31 in}", "legs": "20 in x 20 in"}

// adjusted is a sample with one more adjustment, the last of it.
func adjusted(t *testing.T, sample, line string) *geom.Frame {
	t.Helper()
	src, _ := samples.Source(sample)
	text := strings.TrimRight(string(src), "\n") + "\n"
	if i := strings.Index(text, "\nadjust:\n"); i >= 0 {
		at := i + len("\nadjust:\n")
		text = text[:at] + line + text[at:]
	} else {
		text += "adjust:\n" + line
	}
	return trial.Frame(t, sample+".yaml", text)
}

// What is noted as without effect has none: with all of it written at once the
// frame is the same, cut for cut. One joint of each kind that the samples show.
func TestSettingsWithoutEffect(t *testing.T) {
	seen := map[string]bool{}
	for i, f := range trial.Samples(t) {
		sample := samples.Names()[i]
		for _, j := range f.Joints {
			if seen[j.Kind] {
				continue
			}
			seen[j.Kind] = true
			pick := fmt.Sprintf("  - {joints: %s into %s, ", j.Of.ID, j.Into.ID)
			var idle []string
			for name := range written {
				if !heeded(name, j.Kind) {
					idle = append(idle, name)
				}
			}
			slices.Sort(idle)
			var all []string
			for _, name := range idle {
				all = append(all, name+": "+written[name])
			}
			got := adjusted(t, sample, pick+strings.Join(all, ", ")+"}\n")
			if got.Dump() != f.Dump() {
				t.Errorf("%s, %s: the frame is another with %v", sample, j.Kind, idle)
			}
			var noted []string
			for _, n := range got.Notes {
				if n.Rule == "setting" {
					name, _, _ := strings.Cut(n.Text, " has no effect")
					noted = append(noted, name)
					if n.Severity != finding.Note || n.At.Line == 0 || !slices.Contains(n.Joints, j.ID) {
						t.Errorf("%+v", n)
					}
				}
			}
			slices.Sort(noted)
			if !slices.Equal(noted, idle) {
				t.Errorf("%s: noted %v, want %v", j.Kind, noted, idle)
			}
		}
	}
	if len(seen) < 12 {
		t.Errorf("only %d kinds", len(seen))
	}
}

// heeded tells by the words of the trade whether a printed kind of joint has
// what a setting shapes. It is written apart from the table of the program.
func heeded(name, kind string) bool {
	has := func(words ...string) bool {
		return slices.ContainsFunc(words, func(w string) bool { return strings.Contains(strings.ToLower(kind), w) })
	}
	square := has("sill corner") || kind == "Mortise and tenon"
	angled, wedged := has("angled"), has("wedged")
	switch name {
	case "thickness", "from reference", "clearance":
		return square || angled || wedged || has("bridle")
	case "housing", "off shoulder", "along":
		return square || angled || wedged
	case "tenon length", "through":
		return square || angled
	case "hold back start", "hold back end", "proud":
		return square || wedged
	case "haunch":
		return square
	case "diminished", "square end", "draw":
		return angled
	case "drop", "taper":
		return wedged
	case "steps":
		return has("step-lap")
	case "lap depth":
		return has("cross lap", "half lap", "corner lap", "half-dovetail lap")
	case "into face":
		return has("cross lap", "half lap", "corner lap", "half-dovetail lap", "pocket")
	case "flare", "wedge":
		return has("half-dovetail lap")
	case "bearing", "pocket depth":
		return has("pocket")
	case "scarf":
		return has("scarf")
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
