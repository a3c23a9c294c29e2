package plan

import (
	"strings"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/page"
	"pegwright/geom"
	"pegwright/geom/vec"
)

// Room about two views on one sheet.
const (
	pairGap  = 6.0                     // between them, paper mm
	pairHead = dim.Text*page.Pitch + 1 // for the heading of each
	pairMost = 0.4                     // of a sheet's height that the lower one may take
)

// paired draws two plans one over the other, where the lower one would leave
// most of a sheet of its own empty and both find room with all that is said
// about them at no less than the least scale; nil where they do not. Plans of a
// long narrow building are so drawn.
func paired(f *geom.Frame, over, under *survey) *draw.Sheet {
	a, b := &surveyPage{survey: over, f: f}, &surveyPage{survey: under, f: f}
	if over.kind != "plan" || under.kind != "plan" || !a.measure() || !b.measure() {
		return nil
	}
	t := block.TitleFor(f, over.title+"; "+strings.ToLower(under.title), over.shows, "")
	_, field := block.ForFrame(f, over.kind, over.id, t)
	a.aside, b.aside = false, false
	if b.needs(field) > field.H()*pairMost {
		return nil
	}
	a.noLarger(b)
	b.noLarger(a)
	if a.k < max(over.least(f.Units), under.least(f.Units))-1e-12 {
		return nil
	}
	t.Scale, t.Note = a.scale, a.noteOr(t.Note)
	spare := field.H() - a.needs(field) - b.needs(field) - pairGap
	if spare < 0 {
		return nil
	}
	top, low := field, field
	low.Y1 = low.Y0 + b.needs(field) + spare/2
	top.Y0 = low.Y1 + pairGap
	s, _ := block.ForFrame(f, over.kind, over.id, t)
	if !a.headed(s, top) || !b.headed(s, low) {
		return nil
	}
	return s
}

// needs is the height that a view takes with its heading and all about it.
func (p *surveyPage) needs(field block.Field) float64 {
	return pairHead + field.H() - p.room(field).H() + p.box.H()*p.k
}

// noLarger takes the scale of another view where that is smaller.
func (p *surveyPage) noLarger(o *surveyPage) {
	if p.k > o.k {
		p.k, p.scale = o.k, o.scale
	}
}

// headed draws the view under its title and reports whether all its names and
// heights found room.
func (p *surveyPage) headed(s *draw.Sheet, field block.Field) bool {
	w := page.Pen{S: s, X: field.X0, Y: field.Y1, W: field.W()}
	w.Head(p.title)
	field.Y1 -= pairHead
	p.items = draw.Scaled(p.pic.Items, p.k, vec.P{})
	return len(p.draw(s, field, p.names())) == 0 && p.told >= len(p.levels)
}
