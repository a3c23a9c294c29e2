// Package legible is for tests only: it walks the display list of a sheet and
// tells what a reader would trip over. Drawing sheets and full-size sheets are
// held to it by the same code, each with Rules of its own.
package legible

import (
	"fmt"
	"regexp"
	"strings"

	"pegwright/draw"
	"pegwright/draw/font"
	"pegwright/geom/vec"
)

// Rules are what a kind of sheet must keep. Lengths are millimetres.
type Rules struct {
	// Items is the area that no item leaves, Words the area that no lettering
	// leaves.
	Items, Words draw.Box
	// Least is the least height of lettering, Figures that of the figures of a
	// fraction (ISO 3098 nominal heights).
	Least, Figures float64
	// Loose names layers whose lettering may be of any height and may stand on
	// anything: a title block has heights of its own, a word that is laid
	// under the whole sheet is no lettering of it.
	Loose map[string]bool
	// Lines asks that no wide line runs through lettering; lines of the layers
	// of Apart do not count.
	Lines bool
	Apart map[string]bool
	// Holes asks that no lettering lies on a circle.
	Holes bool
	// Together asks that lettering that stands together is of one height.
	Together bool
}

// claims are words that no sheet may print: what they say is for the local
// authority and a licensed engineer.
var claims = regexp.MustCompile(`(?i)\b(safe|safely|approved|code.compliant|engineered|certified)\b`)

// Faults returns what is wrong with a sheet by the rules, one sentence each
// that begins with the sheet's id.
func (r Rules) Faults(s *draw.Sheet) []string {
	w := &walk{Rules: r, s: s}
	for _, it := range s.Items {
		if b := draw.ItemBounds(it); !b.Empty() && !inside(b, r.Items) {
			w.say("%s item leaves the border: %v", it.Head().Class, b)
		}
		if x, ok := it.(*draw.Text); ok {
			w.read(x)
		}
	}
	w.overlaps()
	if r.Lines {
		w.struck()
	}
	if r.Holes {
		w.holes()
	}
	if r.Together {
		w.mixed()
	}
	return w.out
}

// walk is one sheet under examination.
type walk struct {
	Rules
	s     *draw.Sheet
	texts []*draw.Text
	boxes []draw.Box // of the texts
	out   []string
}

func (w *walk) say(format string, a ...any) {
	w.out = append(w.out, w.s.ID+": "+fmt.Sprintf(format, a...))
}

// read looks at one line of lettering by itself.
func (w *walk) read(x *draw.Text) {
	if x.Layer == draw.LayerUnder {
		return
	}
	b := boxOf(x)
	w.texts, w.boxes = append(w.texts, x), append(w.boxes, b)
	if !inside(b, w.Words) {
		w.say("%q leaves the border: %v", x.S, b)
	}
	if !w.Loose[x.Layer] && x.Height < w.Least-1e-9 {
		w.say("%q is %.2f mm high", x.S, x.Height)
	}
	for _, run := range font.Layout(x.S, x.Height, x.Bold) {
		if run.Height < w.Figures-1e-9 {
			w.say("%q has figures of %.2f mm", x.S, run.Height)
			break
		}
	}
	if claims.MatchString(x.S) {
		w.say("%q claims what only others may say", x.S)
	}
	if m := font.Missing(x.S); len(m) > 0 {
		w.say("no glyph for %q in %q", m, x.S)
	}
}

// overlaps finds lettering that lies on other lettering, clear room about it
// counted in.
func (w *walk) overlaps() {
	for i, a := range w.texts {
		for k, b := range w.texts[:i] {
			if dx, dy := shared(w.boxes[i], w.boxes[k]); dx <= slip || dy <= slip {
				continue
			}
			if deep := overlap(a, b); deep > slip {
				w.say("%q and %q overlap by %.1f mm at %v and %v", a.S, b.S, deep, a.At, b.At)
			}
		}
	}
}

// struck finds wide lines that run through lettering: the line has a part well
// inside the box of the lettering, turned as that is.
func (w *walk) struck() {
	wide := draw.PenFor(draw.Part, w.s.Step).Width - 1e-9
	for _, it := range w.s.Items {
		l, ok := it.(*draw.Path)
		if !ok || l.Filled || l.PenAt(w.s.Step).Width < wide || w.Apart[l.LayerName()] {
			continue
		}
		for _, t := range w.texts {
			if !w.Loose[t.Layer] && through(l, t) {
				w.say("a wide line of %s runs through %q at %v", l.Owner, t.S, t.At)
			}
		}
	}
}

// through reports whether a side of the path lies a tenth of a millimetre or
// more inside the box of the text.
func through(l *draw.Path, t *draw.Text) bool {
	b := grown(font.Box(t), -0.1)
	for i, p := range l.Pts {
		if i+1 == len(l.Pts) && !l.Closed {
			break
		}
		if crosses(b, upright(t, p), upright(t, l.Pts[(i+1)%len(l.Pts)])) {
			return true
		}
	}
	return false
}

// crosses reports whether the way from p to q has a point inside the box, found
// by halving the way until its ends lie on one outer side of the box or one of
// them lies inside.
func crosses(b draw.Box, p, q vec.P) bool {
	in := func(p vec.P) bool { return p.X > b.Min.X && p.X < b.Max.X && p.Y > b.Min.Y && p.Y < b.Max.Y }
	if in(p) || in(q) {
		return true
	}
	if max(p.X, q.X) <= b.Min.X || min(p.X, q.X) >= b.Max.X || max(p.Y, q.Y) <= b.Min.Y || min(p.Y, q.Y) >= b.Max.Y || p.Dist(q) < 0.01 {
		return false
	}
	m := p.Lerp(q, 0.5)
	return crosses(b, p, m) || crosses(b, m, q)
}

// holes finds lettering on a circle: its clear room apart, it reaches into the
// square about seven tenths of the radius, in the text's own axes.
func (w *walk) holes() {
	for _, x := range w.texts {
		for _, it := range w.s.Items {
			c, ok := it.(*draw.Circle)
			if !ok || w.Loose[x.Layer] {
				continue
			}
			if dx, dy := shared(grown(font.Box(x), -0.8), grown(draw.NoBox().With(upright(x, c.C)), 0.7*c.R)); dx > 1e-9 && dy > 1e-9 {
				w.say("%q lies on a hole at %v", x.S, c.C)
			}
		}
	}
}

// Sparse tells that a sheet is left nearly empty: what is drawn on it, the
// layers of apart not counted, spans less than a third of the field's width or
// height. The share is ours.
func Sparse(s *draw.Sheet, field draw.Box, apart map[string]bool) []string {
	ink := draw.NoBox()
	for _, it := range s.Items {
		b := draw.ItemBounds(it)
		if x, ok := it.(*draw.Text); ok {
			b = boxOf(x)
		}
		if !b.Empty() && !apart[it.Head().LayerName()] {
			ink = ink.With(b.Min, b.Max)
		}
	}
	w, h := field.W(), field.H()
	if ink.Empty() || ink.W() < w/3 || ink.H() < h/3 {
		return []string{fmt.Sprintf("%s: nearly empty: %.0f x %.0f of %.0f x %.0f mm", s.ID, ink.W(), ink.H(), w, h)}
	}
	return nil
}

// boxOf returns the upright box on paper about a text, turned as it is, with
// the clear room that font.Box gives it.
func boxOf(t *draw.Text) draw.Box { return draw.NoBox().With(corners(t)...) }

// inside reports whether box a lies in box b.
func inside(a, b draw.Box) bool {
	const slack = 1e-9
	return a.Min.X >= b.Min.X-slack && a.Min.Y >= b.Min.Y-slack && a.Max.X <= b.Max.X+slack && a.Max.Y <= b.Max.Y+slack
}

// shared returns the width and height that two boxes have in common; one of
// them is negative where there is none.
func shared(a, b draw.Box) (w, h float64) {
	return min(a.Max.X, b.Max.X) - max(a.Min.X, b.Min.X), min(a.Max.Y, b.Max.Y) - max(a.Min.Y, b.Min.Y)
}

// grown returns the box moved out by d on every side.
func grown(b draw.Box, d float64) draw.Box {
	e := vec.P{X: d, Y: d}
	return draw.Box{Min: b.Min.Sub(e), Max: b.Max.Add(e)}
}

// Words returns every text of the sheets, each on a line of its own.
func Words(sheets []*draw.Sheet) string {
	var b strings.Builder
	for _, s := range sheets {
		for _, it := range s.Items {
			if x, ok := it.(*draw.Text); ok {
				b.WriteString(x.S + "\n")
			}
		}
	}
	return b.String()
}

// Line returns every text of the sheets in one line, so that wrapped texts are
// whole.
func Line(sheets []*draw.Sheet) string { return strings.Join(strings.Fields(Words(sheets)), " ") }
