package plan

import (
	"strings"

	"pegwright/draw"
	"pegwright/geom"
)

// Sized is a plan, elevation or section for a reader who asks for sizes: timbers
// are told by role and section, and what a crew tapes is left out.
type Sized struct {
	Title string // what the view is called
	Bent  bool   // it is of a bent
	f     *geom.Frame
	v     *survey
}

// Sized returns the views that Sheets draws, in their order, with sizes. Their
// sheets are of the kind given, which also begins their ids.
func (s *Set) Sized(kind string) []Sized {
	var out []Sized
	for _, v := range s.list() {
		w := *v
		w.kind, w.id = kind, kind+"-"+v.id
		w.bySize, w.diagonals = true, nil
		out = append(out, Sized{v.title, strings.HasPrefix(v.id, "bent-"), s.f, &w})
	}
	return out
}

// Page is the view, or a part of one that is long for its paper.
type Page struct {
	// Title is what is drawn, and Shows from where.
	Title, Shows string
	p            *surveyPage
}

// Pages lays the view out: one page, or an overview and its parts.
func (v Sized) Pages() []Page {
	var out []Page
	for _, p := range v.v.pages(v.f) {
		out = append(out, Page{p.title, p.shows, p})
	}
	return out
}

// Sheet draws the page on one sheet under a title.
func (p Page) Sheet(title string) *draw.Sheet {
	s := *p.p.survey
	s.title = title
	page := *p.p
	page.survey = &s
	return page.drawSheets()[0]
}
