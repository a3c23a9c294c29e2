package permit

import (
	"strings"

	"pegwright/geom"
)

// criterion is something that a reviewer looks for, with the words by which a
// stated criterion is known to be about it: every word of one of the lines.
type criterion struct {
	name  string
	known []string
}

// criteria are what a permit application usually asks for (common practice; the
// local authority's own form governs).
func criteria() []criterion {
	return []criterion{
		{"code and edition", []string{"code"}},
		{"risk category", []string{"risk category", "occupancy category"}},
		{"use of the building", []string{"use", "occupancy"}},
		{"ground snow load", []string{"ground snow", "pg"}},
		{"wind speed", []string{"wind speed"}},
		{"wind exposure", []string{"exposure"}},
		{"seismic category", []string{"seismic", "earthquake"}},
		{"dead loads", []string{"dead"}},
		{"live loads", []string{"live"}},
		{"soil bearing", []string{"soil", "ground bearing"}},
		{"frost depth", []string{"frost"}},
		{"species and grade", []string{"grade", "grading"}},
		{"designer of record", []string{"designer of record", "engineer of record", "designer", "engineer"}},
	}
}

// about reports whether a stated criterion of that name is about c.
func (c criterion) about(name string) bool {
	have := map[string]bool{}
	for _, w := range strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return r < 'a' || r > 'z' }) {
		have[w] = true
	}
	for _, line := range c.known {
		all := true
		for _, w := range strings.Fields(line) {
			all = all && (have[w] || have[w+"s"])
		}
		if all {
			return true
		}
	}
	return false
}

// unstated returns the names of the criteria that nothing in the description
// is about.
func unstated(f *geom.Frame) []string {
	var out []string
	for _, c := range criteria() {
		stated := false
		for _, x := range f.Criteria {
			stated = stated || c.about(x.Name)
		}
		if !stated {
			out = append(out, c.name)
		}
	}
	return out
}

// openCriterion reports whether a criterion is named without being stated.
func openCriterion(text string) bool {
	t := strings.ToLower(strings.Trim(text, " .-–?"))
	return t == "" || t == "not stated" || t == "unknown" || t == "to be decided"
}
