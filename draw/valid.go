package draw

import (
	"fmt"
	"math"

	"pegwright/geom/vec"
)

// Valid returns an error that names the first item of the sheet with a number
// that cannot be drawn: a coordinate or size that is not finite or is beyond
// 100 m, a negative radius, or a pen that is not a pen. Renderers refuse such a
// sheet: a wrong line is worse than no sheet.
func (s *Sheet) Valid() error {
	if !(s.W > 0 && s.H > 0 && s.W < limit && s.H < limit) {
		return fmt.Errorf("sheet %q: paper of %v by %v mm", s.ID, s.W, s.H)
	}
	for i, it := range s.Items {
		if fault := itemFault(it); fault != "" {
			return fmt.Errorf("sheet %q: item %d: %s", s.ID, i+1, fault)
		}
	}
	for i, l := range s.Links {
		if !plain(l.Rect.Min, l.Rect.Max) {
			return fmt.Errorf("sheet %q: link %d: area is not finite", s.ID, i+1)
		}
	}
	return nil
}

// limit is the largest coordinate that is taken seriously, millimetres.
const limit = 1e5

// plain reports whether all coordinates are finite and within the limit.
func plain(pts ...vec.P) bool {
	for _, p := range pts {
		if !(math.Abs(p.X) <= limit && math.Abs(p.Y) <= limit) {
			return false
		}
	}
	return true
}

// size reports whether all lengths are finite, not negative, within the limit.
func size(xs ...float64) bool {
	for _, x := range xs {
		if !(x >= 0 && x <= limit) {
			return false
		}
	}
	return true
}

// itemFault returns what is wrong with an item, "" if nothing is. The pens of
// the classes are good: only a pen that is given is looked at.
func itemFault(it Item) string {
	if it == nil {
		return "nothing"
	}
	if p := it.Head().Pen; p != nil && (!size(p.Width, p.Grey) || !size(p.Dash...) || p.Grey > 1) {
		return "not a pen"
	}
	ok := false
	switch t := it.(type) {
	case *Path:
		ok = plain(t.Pts...) && shade(t.Grey)
		for _, h := range t.Holes {
			ok = ok && plain(h...)
		}
	case *Circle:
		ok = plain(t.C) && size(t.R) && shade(t.Grey)
	case *Arc:
		ok = plain(t.C, vec.P{X: t.From, Y: t.To}) && size(t.R)
	case *Ellipse:
		ok = plain(t.C, vec.P{X: t.From, Y: t.To}, vec.P{X: t.Rot}) && size(t.RX, t.RY) && shade(t.Grey)
	case *Text:
		ok = plain(t.At, vec.P{X: t.Rot}) && size(t.Height)
	default:
		return fmt.Sprintf("%T is not a kind of item", it)
	}
	if !ok {
		return "a coordinate or size that cannot be drawn"
	}
	return ""
}

func shade(g float64) bool { return g >= 0 && g <= 1 }
