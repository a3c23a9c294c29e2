package sheet

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/font"
	"pegwright/geom/vec"
)

// wide lines may not run through these sheets' words; joint and drawbore sheets
// are held apart by tests of their own.
func linesCount(s *draw.Sheet) bool {
	return s.Kind == "timber" || s.Kind == "plan" || s.Kind == "elevation" || s.Kind == "view" || s.Kind == "raise"
}

// claims are words that no sheet may print: what they say is for the local
// authority and a licensed engineer.
var claims = regexp.MustCompile(`(?i)\b(safe|safely|approved|code.compliant|engineered|certified)\b`)

// layoutFaults walks the display list of a sheet and tells what spoils its
// layout. Lettering after ISO 3098: 2.5 mm at least, fraction figures too.
func layoutFaults(s *draw.Sheet) []string {
	var out []string
	say := func(format string, a ...any) { out = append(out, s.ID+": "+fmt.Sprintf(format, a...)) }
	var texts []*draw.Text
	for _, it := range s.Items {
		if b := draw.ItemBounds(it); !b.Empty() && (b.Min.X < block.Left-0.3 || b.Max.X > s.W-block.Other+0.3 || b.Min.Y < block.Other-0.3 || b.Max.Y > s.H-block.Other+5) {
			say("%s item leaves the border: %v", it.Head().Class, b)
		}
		x, ok := it.(*draw.Text)
		if !ok || x.Layer == "under" {
			continue
		}
		texts = append(texts, x)
		for _, r := range font.Layout(x.S, x.Height, x.Bold) {
			if r.Height < dim.Small-1e-9 {
				say("%q has figures of %.2f mm", x.S, r.Height)
			}
		}
		if claims.MatchString(x.S) {
			say("%q claims what only others may say", x.S)
		}
		if m := font.Missing(x.S); len(m) > 0 {
			say("no glyph for %q", m)
		}
	}
	for i, a := range texts {
		p := dim.BoxOf(a)
		if p.Min.X < block.Left || p.Max.X > s.W-block.Other || p.Min.Y < block.Other-0.01 || p.Max.Y > s.H-block.Other+5 {
			say("%q leaves the border: %v", a.S, p)
		}
		for _, b := range texts[:i] {
			q := dim.BoxOf(b)
			if dx, dy := min(p.Max.X, q.Max.X)-max(p.Min.X, q.Min.X), min(p.Max.Y, q.Max.Y)-max(p.Min.Y, q.Min.Y); dx > 0.05 && dy > 0.05 {
				say("%q and %q overlap by %.1f x %.1f mm at %v and %v", a.S, b.S, dx, dy, a.At, b.At)
			}
		}
	}
	if linesCount(s) {
		out = append(out, struckFaults(s, texts)...)
	}
	return out
}

// struckFaults tells which words a wide line runs through: the line has points
// well inside the box of the capitals, found by steps of a tenth of a
// millimetre.
func struckFaults(s *draw.Sheet, texts []*draw.Text) []string {
	var out []string
	for _, it := range s.Items {
		l, ok := it.(*draw.Path)
		if !ok || l.Head().PenAt(s.Step).Width < draw.PenFor(draw.Part, s.Step).Width-1e-9 || l.LayerName() == "border" || l.LayerName() == "key view" {
			continue
		}
		for _, t := range texts {
			if t.Layer == "title" {
				continue
			}
			b := dim.BoxOf(t)
			b.Min, b.Max = b.Min.Add(vec.P{X: 0.1, Y: 0.1}), b.Max.Sub(vec.P{X: 0.1, Y: 0.1})
			if through(l.Pts, b) {
				out = append(out, fmt.Sprintf("%s: a wide line of %s runs through %q at %v", s.ID, l.Owner, t.S, t.At))
			}
		}
	}
	return out
}

func through(pts []vec.P, b draw.Box) bool {
	for i := 1; i < len(pts); i++ {
		n := int(pts[i].Dist(pts[i-1])*10) + 1
		for k := range n + 1 {
			q := pts[i-1].Lerp(pts[i], float64(k)/float64(n))
			if q.X > b.Min.X && q.X < b.Max.X && q.Y > b.Min.Y && q.Y < b.Max.Y {
				return true
			}
		}
	}
	return false
}

// emptyFaults tells that a sheet with a drawing is left nearly empty: what is
// drawn on it, the key view apart, spans less than a third of the field's width
// or height (the share is ours). The rest of a list that goes on from the sheet
// before is as long as it is.
func emptyFaults(s *draw.Sheet) []string {
	switch s.Kind {
	case "timber", "plan", "elevation", "joint", "drawbore", "frame":
	default:
		return nil
	}
	if strings.Contains(s.ID, "-served-") {
		return nil
	}
	ink := draw.NoBox()
	for _, it := range s.Items {
		switch it.Head().LayerName() {
		case "border", "title", "key view", "under":
			continue
		}
		if b := draw.ItemBounds(it); !b.Empty() {
			ink = ink.With(b.Min, b.Max)
		}
	}
	w, h := s.W-block.Left-block.Other, s.H-2*block.Other
	if ink.Empty() || ink.W() < w/3 || ink.H() < h/3 {
		return []string{fmt.Sprintf("%s: nearly empty: %.0f x %.0f of %.0f x %.0f mm", s.ID, ink.W(), ink.H(), w, h)}
	}
	return nil
}

func checkLayout(t *testing.T, s *draw.Sheet) {
	t.Helper()
	for _, f := range layoutFaults(s) {
		t.Error(f)
	}
}

// The checker finds every kind of fault that is planted.
func TestLayoutCheckerFindsFaults(t *testing.T) {
	plant := map[string]func(s *draw.Sheet){
		"": func(s *draw.Sheet) { s.Text(vec.P{X: 50, Y: 100}, 3.5, `fits 6 1/2"`) },
		"overlap": func(s *draw.Sheet) {
			s.Text(vec.P{X: 50, Y: 100}, 3.5, "one")
			s.Text(vec.P{X: 53, Y: 101}, 3.5, "two")
		},
		"leaves the border": func(s *draw.Sheet) { s.Text(vec.P{X: s.W - 20, Y: 100}, 3.5, "far too long a word for here") },
		"figures of":        func(s *draw.Sheet) { s.Text(vec.P{X: 50, Y: 100}, 2.5, `6 1/2"`) },
		"no glyph":          func(s *draw.Sheet) { s.Text(vec.P{X: 50, Y: 100}, 3.5, "漢") },
		"runs through": func(s *draw.Sheet) {
			s.Text(vec.P{X: 50, Y: 100}, 3.5, "struck")
			s.Line(draw.Part, vec.P{X: 40, Y: 101}, vec.P{X: 90, Y: 102})
		},
		"claims": func(s *draw.Sheet) { s.Text(vec.P{X: 50, Y: 100}, 3.5, "Safe to stand on") },
		"nearly empty": func(s *draw.Sheet) {
			s.Items = s.Items[:0]
			s.Line(draw.Part, vec.P{X: 60, Y: 100}, vec.P{X: 90, Y: 120})
		},
		"item leaves": func(s *draw.Sheet) { s.Line(draw.Part, vec.P{X: 2, Y: 101}, vec.P{X: 90, Y: 102}) },
	}
	for want, fault := range plant {
		s, _ := block.New("letter", true, "timber", "x", block.Title{Frame: "f", Sheet: "s"})
		fault(s)
		got := strings.Join(layoutFaults(s), "\n")
		if want == "nearly empty" {
			got = strings.Join(emptyFaults(s), "\n")
		}
		if want == "" && got != "" || want != "" && !strings.Contains(got, want) {
			t.Errorf("%q: found %q", want, got)
		}
	}
}
