package permit

import (
	"fmt"
	"sort"

	"pegwright/draw/scene"
	"pegwright/geom"
	"pegwright/geom/measure"
)

// members returns the schedule of timbers: by role, section and wood, with the
// longest of each and a blank for the grade.
func (p *set) members() *schedule {
	unit := "in"
	if p.f.Units == measure.Metric {
		unit = "mm"
	}
	return &schedule{id: "members", title: "Schedule of timbers", shows: "sections as ordered, lengths with tenons",
		note: "an empty cell is for the designer of record to fill in",
		form: &form{heads: []string{"timbers", "how many", "nominal section (" + unit + ")", "ideal section (" + unit + ")", "longest, about", "wood", "grade"},
			shares: []float64{0.18, 0.08, 0.15, 0.17, 0.12, 0.17, 0.13}, rows: memberRows(p.f), least: 6.5}}
}

// memberRows returns the rows by role in frame order, larger sections first.
func memberRows(f *geom.Frame) [][]string {
	type group struct {
		t       *geom.Timber
		n, role int
		long    float64
	}
	roles := map[string]int{}
	at := map[string]*group{}
	var all []*group
	for _, t := range f.Timbers {
		if _, ok := roles[t.Role]; !ok {
			roles[t.Role] = len(roles)
		}
		key := fmt.Sprintf("%s|%s|%s|%s", t.Role, scene.SectionWords(f.Units, t.Section), scene.SectionWords(f.Units, t.Ideal), t.Wood.Name)
		g := at[key]
		if g == nil {
			g = &group{t: t, role: roles[t.Role]}
			at[key], all = g, append(all, g)
		}
		g.n++
		g.long = max(g.long, t.Length)
	}
	sort.SliceStable(all, func(i, k int) bool {
		a, b := all[i], all[k]
		if a.role != b.role {
			return a.role < b.role
		}
		return a.t.Section[0]*a.t.Section[1] > b.t.Section[0]*b.t.Section[1]
	})
	var out [][]string
	for _, g := range all {
		out = append(out, []string{g.t.Role, fmt.Sprint(g.n), scene.SectionWords(f.Units, g.t.Section), scene.SectionWords(f.Units, g.t.Ideal), roughly(f.Units, g.long), g.t.Wood.Name, ""})
	}
	return out
}
