package check

import (
	"fmt"
	"slices"
	"strings"

	"pegwright/geom"
	"pegwright/geom/finding"
)

// cause is what like findings have in common: the same rule at the same place
// of the description, in the same words.
type cause struct {
	severity finding.Severity
	rule     string
	at       finding.Pos
	also     string
	about    string
}

// gather makes one finding of all that have one cause: the first, with the
// timbers and joints of the others added to it.
func (p *proof) gather() {
	first := map[cause]int{}
	more := map[int]int{}
	var list []finding.Finding
	for _, f := range p.list {
		c := p.cause(f)
		i, seen := first[c]
		if !seen || f.At == (finding.Pos{}) {
			first[c] = len(list)
			list = append(list, f)
			continue
		}
		p.merge(&list[i], f)
		more[i]++
	}
	for i := range list {
		if n := more[i]; n == 1 {
			list[i].Text += "; the same in 1 more place"
		} else if n > 1 {
			list[i].Text += fmt.Sprintf("; the same in %d more places", n)
		}
		list[i].Timbers, list[i].Joints = once(list[i].Timbers), once(list[i].Joints)
	}
	p.list = list
}

// cause reduces a finding to its cause: ids and numbers are left out of its
// words.
func (p *proof) cause(f finding.Finding) cause {
	c := cause{severity: f.Severity, rule: f.Rule, at: f.At, also: fmt.Sprint(f.Also)}
	words := strings.Fields(f.Text)
	for i, w := range words {
		w = strings.Trim(w, ",;:")
		if p.ids[w] || strings.ContainsAny(w, "0123456789") {
			words[i] = "#"
		}
	}
	c.about = strings.Join(words, " ")
	return c
}

// merge adds the timbers and joints of g to f. A finding without joints is
// about all joints of its timbers, so they are named once the two are one.
func (p *proof) merge(f *finding.Finding, g finding.Finding) {
	if (len(f.Joints) == 0) != (len(g.Joints) == 0) {
		f.Joints, g.Joints = p.meant(*f), p.meant(g)
	}
	f.Timbers = append(f.Timbers, g.Timbers...)
	f.Joints = append(f.Joints, g.Joints...)
}

// meant returns the joints that a finding is about.
func (p *proof) meant(f finding.Finding) []string {
	if len(f.Joints) > 0 {
		return f.Joints
	}
	var r []string
	for _, id := range f.Timbers {
		for _, j := range p.of[p.timber[id]] {
			r = append(r, j.ID)
		}
	}
	return r
}

// once returns the list with every id once, in order of first appearance.
func once(list []string) []string {
	if len(list) < 2 {
		return list
	}
	seen := make(map[string]bool, len(list))
	return slices.DeleteFunc(slices.Clone(list), func(id string) bool {
		had := seen[id]
		seen[id] = true
		return had
	})
}

// idsOf returns the ids of a frame's timbers, joints and pegs.
func idsOf(f *geom.Frame) map[string]bool {
	ids := map[string]bool{}
	for _, t := range f.Timbers {
		ids[t.ID] = true
	}
	for _, j := range f.Joints {
		ids[j.ID] = true
		for _, g := range j.Pegs {
			ids[g.ID] = true
		}
	}
	return ids
}
