package plan

import (
	"fmt"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/naming"
	"pegwright/draw/scene"
	"pegwright/geom/vec"
)

// pointable counts the timbers of the pages to which names may point.
func pointable(pages []*surveyPage) int {
	n := 0
	for _, p := range pages {
		n += p.pointable()
	}
	return n
}

// names returns the names of the timbers that show, each with places in its
// wood, about the frame's origin.
func (p *surveyPage) names() []naming.Name {
	var out []naming.Name
	count := map[string]int{}
	at := map[string]int{}
	for _, t := range p.named {
		spots := p.sight.Spots(t, vec.V{}, p.k)
		if len(spots) == 0 {
			continue
		}
		key := t.ID
		if p.bySize {
			key = t.Role + "|" + scene.SectionWords(p.f.Units, t.Section)
		}
		if count[key]++; count[key] == 1 {
			at[key] = len(out)
			out = append(out, naming.Name{Text: t.ID, Owner: t.ID, Spots: spots})
		} else {
			x := &out[at[key]]
			x.Spots = append(x.Spots, spots...)
		}
		if p.bySize {
			out[at[key]].Text = sizeName(t.Role, count[key], scene.SectionWords(p.f.Units, t.Section))
		}
	}
	return out
}

// pointable counts the timbers of which enough shows for a name to point to.
func (p *surveyPage) pointable() int {
	n := 0
	for _, t := range p.named {
		if p.sight.Points(t, vec.V{}, p.k) {
			n++
		}
	}
	return n
}

// sizeName tells how many timbers of a role there are, and their section.
func sizeName(role string, n int, across string) string {
	if n > 1 {
		return fmt.Sprintf("%d %ss %s", n, role, across)
	}
	return role + " " + across
}

// setNames sets names on the sheet, and returns those that are left. A sheet
// that has room for none has them in lanes.
func (p *surveyPage) setNames(s *draw.Sheet, field block.Field, o vec.P, names []naming.Name) []naming.Name {
	field.Y0 += p.noteHeight()
	if p.aside {
		field.X0 += asideWidth + asideGap
	}
	here := make([]naming.Name, len(names))
	for i, x := range names {
		here[i] = naming.Name{Text: x.Text, Owner: x.Owner, Spots: naming.MovedSpots(x.Spots, o)}
	}
	left := naming.Set(s, field, func(q vec.P) string { return p.sight.Owner(q.Sub(o).Mul(1 / p.k)) }, here)
	gone := naming.Without(here, left)
	return naming.Without(names, gone)
}
