package joint

import (
	"fmt"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/font"
	"pegwright/draw/page"
	"pegwright/draw/scene"
	"pegwright/geom"
	"pegwright/geom/measure"
	"pegwright/geom/vec"
)

// Sheets returns the sheets of a group of joints that are cut alike: the
// exploded view with what is served and the table of dimensions, then both
// halves in orthographic views with the peg window where there is anything to
// cut. A group with a joint that a stop finding names says so in large letters.
func Sheets(f *geom.Frame, g scene.Group, stops map[string]int) []*draw.Sheet {
	j := g.First()
	t := block.TitleFor(f, j.Kind, served(g), "pictorial")
	t.Note = "exploded view, " + block.HiddenNote(f) + "; dashed: from a part to its seat"
	s, field := block.ForFrame(f, "joint", j.ID, t)
	told := newTelling(f, g)
	left, right, under, over := told.divide(field)
	if under {
		left = told.servedUnder(s, left)
	}
	last := font.Wrap(closing(f, g), left.W(), dim.Text)
	left, strip := strips(left, over, left.H()-closingHigh(last)-field.H()/2)
	explode(s, setClosing(s, left, last), g, f.Paper.Hidden)
	out := []*draw.Sheet{s}
	more := told.beside(s, right, strip, !under)
	if len(j.Dims) > 0 {
		out = append(out, halves(f, g)...)
	}
	out = append(out, more...)
	g.Warn(stops, out...)
	return out
}

// strips parts the field of the exploded view from a strip under it for the end
// of the table beside it; the strip is empty where the end is higher than the view
// can spare.
func strips(left block.Field, high, spare float64) (view, strip block.Field) {
	if high == 0 || high+4.1 > spare {
		return left, block.Field{}
	}
	view, strip = left, left
	strip.Y1 = left.Y0 + high + 0.1
	view.Y0 = strip.Y1 + 4
	return view, strip
}

// served says in a line which joints a sheet is for.
func served(g scene.Group) string {
	j := g.First()
	t := j.Mark + " " + j.Of.ID + " into " + j.Into.ID
	return t + g.Alike()
}

// explode draws the exploded view into the field, with the names of its parts
// in a lane on its right.
func explode(s *draw.Sheet, f block.Field, g scene.Group, hidden bool) {
	j, pic := g.First(), g.Apart().Picture(f.W()-30, f.H(), hidden)
	var labels []dim.Label
	wide := 0.0
	for i, id := range pic.Order[:len(pic.Order)-1] {
		p, ok := rightmost(pic, id)
		if !ok {
			continue
		}
		t := id
		if i >= 2 {
			t = smallName(j, i-2)
		}
		labels = append(labels, dim.Label{Text: t, At: p, Owner: id, Bold: i < 2})
		wide = max(wide, font.Measure(t, dim.Small, i < 2))
	}
	room := f
	room.X1 -= wide + 8
	place := pic.Fill(s, room)
	for i := range labels {
		labels[i].At = place(labels[i].At)
	}
	dim.Lane(s, f.X1-wide-2, true, labels, dim.Group{Name: "parts", Height: dim.Small}, f.Y0, f.Y1)
}

// rightmost returns the middle of the visible line of an owner that lies
// farthest to the right of a picture, short lines apart.
func rightmost(p scene.Picture, id string) (vec.P, bool) {
	b, ok := p.Best[id]
	at := b[0].Lerp(b[1], 0.5)
	for _, it := range p.Items {
		l, is := it.(*draw.Path)
		if !is || l.Owner != id || len(l.Pts) != 2 || l.Class == draw.Hidden || l.Pts[0].Dist(l.Pts[1]) < 0.4*b[0].Dist(b[1]) {
			continue
		}
		if m := l.Pts[0].Lerp(l.Pts[1], 0.5); m.X > at.X {
			at = m
		}
	}
	return at, ok
}

// closing says how the joint closes and what holds it.
func closing(f *geom.Frame, g scene.Group) string {
	u, j := f.Units, g.First()
	t := ""
	for i, m := range j.Moves {
		t += wayIn(f, g, i) + "by " + u.FormatJoint(m.Distance)
		if i == 0 && rears(f, g) {
			t += ", as it is turned up about its feet"
		}
		t += "."
	}
	if len(j.Moves) == 1 && j.Moves[0].Distance < 0.5 {
		t = "Stands on " + onto(g) + "; nothing is let in."
	}
	t += driven(g) + pegged(u, j)
	for _, w := range j.Words {
		t += " " + w
	}
	return t
}

// closingHigh is the height of the lines at the foot of the field.
func closingHigh(lines []string) float64 { return float64(len(lines))*dim.Text*page.Pitch + 2 }

// setClosing sets the lines at the foot of the field and returns the field above.
func setClosing(s *draw.Sheet, field block.Field, lines []string) block.Field {
	p := page.Pen{S: s, X: field.X0, W: field.W(), Letters: dim.Group{Name: "closing", Height: dim.Text}}
	field.Y0 += closingHigh(lines)
	p.Y = field.Y0 - 2
	for _, l := range lines {
		p.Set(p.Letters, l)
	}
	return field
}

// pegged says how many pegs hold the joint and whether they draw it.
func pegged(u measure.Units, j *geom.Joint) string {
	n := len(j.Pegs)
	if n == 0 {
		return " No pegs."
	}
	word := "pegs"
	if n == 1 {
		word = "peg"
	}
	a := j.Pegs[0]
	t := fmt.Sprintf(" %d %s Ø %s, %s long", n, word, u.FormatJoint(a.Bore), u.FormatJoint(a.Length))
	if a.Offset > 0 {
		t += fmt.Sprintf("; tenon hole set %s %s (see the drawbore sheet).", u.FormatJoint(a.Offset), a.Words)
	} else {
		t += ", no draw: the two holes line up."
	}
	if a.Flush {
		t += " Peg: " + scene.FlushWords(&a) + "."
	}
	return t
}
