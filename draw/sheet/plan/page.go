package plan

import (
	"fmt"
	"slices"
	"strings"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/naming"
	"pegwright/draw/page"
	"pegwright/draw/scene"
	"pegwright/draw/setout"
	"pegwright/geom"
	"pegwright/geom/vec"
)

// surveyPage is a survey at its scale.
type surveyPage struct {
	*survey
	f       *geom.Frame
	k       float64
	scale   string
	sight   *naming.Sight
	levels  []level
	box     draw.Box // of what is seen, at full size
	notes   []string
	pic     scene.Picture
	items   []draw.Item   // at the scale
	aside   bool          // the diagonals are told at the left, not at the foot
	told    int           // heights that stand on a sheet already
	drawn   []*draw.Sheet // at the scale drawnAt
	drawnAt float64
}

// sheets draws the survey on as many sheets as its pages take.
func (v *survey) sheets(f *geom.Frame) []*draw.Sheet {
	var out []*draw.Sheet
	for _, p := range v.pages(f) {
		out = append(out, p.sheets()...)
	}
	return out
}

// pages lays the survey out at the largest customary scale at which it fits, or at
// a smaller one that leaves room for the names of all timbers. Where that would be
// less than the least scale, or there is none such, it is drawn in parts; where it
// has no parts, or none at a larger scale, its page takes further sheets for the
// names that are left.
func (v *survey) pages(f *geom.Frame) []*surveyPage {
	p := &surveyPage{survey: v, f: f}
	if !p.measure() {
		return nil
	}
	k, large := p.k, p.k > v.least(f.Units)-1e-12
	if large && p.onFew() == 1 {
		return []*surveyPage{p}
	}
	if list := v.inParts(f); len(list) > 0 && list[len(list)-1].k > k {
		return list
	}
	if !large {
		p.onFew()
	}
	return []*surveyPage{p}
}

// onFew settles on the scale, or one of the next smaller ones, at which the page
// takes the fewest sheets, and returns how many these are. No timber may be too
// thin for its name there that is not so at the first.
func (p *surveyPage) onFew() int {
	var best surveyPage
	least, shown := 0, p.pointable()
	for range 3 {
		if n := len(p.sheets()); least == 0 || n < least {
			best, least = *p, n
		}
		if least == 1 || least > mostTried || !p.smaller() || p.pointable() < shown {
			break
		}
	}
	*p = best
	return least
}

// mostTried is the number of sheets of one view beyond which no smaller scale is
// tried: it would not bring them down to one.
const mostTried = 4

// sheets returns the survey at its scale, on as many sheets as the names and
// heights take. It is drawn once at a scale.
func (p *surveyPage) sheets() []*draw.Sheet {
	if p.drawn == nil || p.drawnAt != p.k {
		p.drawn, p.drawnAt = p.drawSheets(), p.k
	}
	return p.drawn
}

func (p *surveyPage) drawSheets() []*draw.Sheet {
	var out []*draw.Sheet
	p.told = 0
	p.items = draw.Scaled(p.pic.Items, p.k, vec.P{})
	left := p.names()
	for n := 0; n == 0 || len(left) > 0 || p.told < len(p.levels); n++ {
		id, title := p.id, p.title
		if n > 0 {
			id, title = fmt.Sprintf("%s-%d", p.id, n+1), p.title+naming.More
		}
		t := block.TitleFor(p.f, title, p.shows, p.scale)
		t.Note = p.noteOr(t.Note)
		s, field := block.ForFrame(p.f, p.kind, id, t)
		left = p.draw(s, field, left)
		out = append(out, s)
	}
	return out
}

// noteOr returns what is to be said of the view, or another note where that is
// nothing.
func (p *surveyPage) noteOr(other string) string {
	var ws []string
	if p.note != "" {
		ws = append(ws, p.note)
	}
	if _, from := setout.Datum(p.f); len(p.levels) > 0 && from != "" {
		ws = append(ws, "heights "+from)
		if p.note == "" && slices.ContainsFunc(p.levels, func(l level) bool { return strings.Contains(l.what, bearingOf) }) {
			ws = append(ws, "rough wood may stand past a bearing line")
		}
	}
	if len(ws) == 0 {
		return other
	}
	return strings.Join(ws, "; ")
}

// measure settles what is seen and the largest scale at which it fits, and
// reports whether there is anything.
func (p *surveyPage) measure() bool {
	if !p.settle() {
		return false
	}
	p.pic = p.taken(p.f.Paper.Hidden).pic
	return true
}

// settle is measure without the picture.
func (p *surveyPage) settle() bool {
	s := p.stood()
	p.sight, p.box = s.sight, s.box
	if p.box.Empty() {
		return false
	}
	if p.leveled != nil {
		p.levels = p.heightsSeen(p.f)
	}
	p.notes = p.squareNotes()
	for p.smaller() && !p.fits() {
	}
	return true
}

// smaller takes the next smaller of the customary scales, the largest to begin
// with, and reports whether there was one.
func (p *surveyPage) smaller() bool {
	for _, n := range setout.Scales(p.f.Units) {
		if p.k == 0 || 1/n < p.k-1e-12 {
			p.k, p.scale = 1/n, page.Scale(n)
			return true
		}
	}
	return false
}
