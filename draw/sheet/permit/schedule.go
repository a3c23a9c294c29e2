package permit

import (
	"fmt"
	"strings"

	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/page"
	"pegwright/geom/vec"
)

// schedule is a form with what the title block says of it.
type schedule struct {
	id, title, shows, note string
	*form
}

// headed is the height of a heading over a schedule that shares a sheet, and apart
// the space between two, mm.
const (
	headed = dim.Text * page.Pitch
	apart  = 9.0
)

// schedules sets the schedules that have rows: on one sheet, each under its
// heading, where they have room there, else each on sheets of its own.
func (p *set) schedules(list ...*schedule) {
	field := block.FieldFor(p.f)
	var kept []*schedule
	var titles []string
	high := -apart
	for _, m := range list {
		if len(m.rows) > 0 {
			kept, titles = append(kept, m), append(titles, m.title)
			high += headed + m.high(field) + apart
		}
	}
	if len(kept) < 2 || high > field.H() {
		for _, m := range kept {
			p.alone(m)
		}
		return
	}
	title := titles[0] + ", " + strings.ToLower(strings.Join(titles[1:], ", "))
	s, field := p.sheet(kept[0].id, title, "", "none", kept[0].note)
	for _, m := range kept {
		s.Text(vec.At(field.X0, field.Y1-dim.Text), dim.Text, m.title+": "+m.shows).Bold = true
		field.Y1 -= headed
		y, _ := m.set(s, field)
		field.Y1 = y - apart
	}
}

// alone sets a schedule on as many sheets as it takes.
func (p *set) alone(m *schedule) {
	for n := 1; len(m.rows) > 0; n++ {
		id, title := m.id, m.title
		if n > 1 {
			id, title = fmt.Sprintf("%s-%d", m.id, n), title+furtherPage+fmt.Sprint(n)
		}
		s, field := p.sheet(id, title, m.shows, "none", m.note)
		_, m.rows = m.set(s, field)
	}
}
