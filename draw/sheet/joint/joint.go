package joint

import (
	"fmt"
	"math"
	"slices"

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
	left, right, under := divide(g, f, field)
	if under {
		left = servedUnder(f, s, left, g)
	}
	bare := closing(f, draw.NewSheet("", "", "", s.W, s.H), left, g)
	left, strip := strips(left, overrun(g, f, left, right, !under), bare.H()-field.H()/2)
	explode(s, closing(f, s, left, g), j, f.Paper.Hidden)
	out := []*draw.Sheet{s}
	more := beside(f, g, s, right, strip, !under)
	if len(j.Dims) > 0 {
		out = append(out, halves(f, g)...)
	}
	out = append(out, more...)
	g.Warn(stops, out...)
	return out
}

// divide parts the field of a joint sheet between the exploded view and the table
// beside it, and reports whether the joints served are listed under the view, for
// want of room under the table. The view gives way, down to about half the width,
// where the table then ends on the sheet.
func divide(g scene.Group, f *geom.Frame, field block.Field) (left, right block.Field, under bool) {
	if left, right = page.Split(field, field.X0+field.W()*0.61, 5); overrun(g, f, left, right, true) == 0 {
		return left, right, false
	}
	for _, share := range []float64{0.61, 0.58, 0.55, 0.52, 0.61} {
		left, right = page.Split(field, field.X0+field.W()*share, 5)
		under = servedBelow(g, f, left)
		if overrun(g, f, left, right, !under) == 0 {
			break
		}
	}
	return left, right, under
}

// overrun is the height, at the width of left, of what is told beside the exploded
// view and finds no room there, 0 for nothing.
func overrun(g scene.Group, f *geom.Frame, left, right block.Field, list bool) float64 {
	s := draw.NewSheet("", "", "", 1, 1)
	w := &page.Flow{Pen: besideHead(g, s, right), Cols: 1, Field: right, Sheets: []*draw.Sheet{s}}
	w.Next = func(int) (*draw.Sheet, block.Field) { return s, block.Field{X1: left.W(), Y0: math.Inf(-1)} }
	tell(w, f, g, list)
	if len(w.Sheets) == 1 {
		return 0
	}
	return -w.Y
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
func explode(s *draw.Sheet, f block.Field, j *geom.Joint, hidden bool) {
	parts := scene.Exploded(j)
	pic := scene.TakePicture(scene.Camera(j, parts, f.W()-30, f.H()), parts, hidden)
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

// keyHigh is the height of the key view over the table.
const keyHigh = 25.0

// besideHead sets the joiner's mark at the left of the key view's place and
// returns the pen below both.
func besideHead(g scene.Group, s *draw.Sheet, right block.Field) page.Pen {
	j := g.First()
	p := page.Pen{S: s, X: right.X0, Y: right.Y1, W: right.W()}
	head := p
	head.W = p.W/2 - 2
	head.Para("joiner's mark")
	head.Skip(0.5)
	head.Line(block.Fit(j.Mark, head.W, page.Big, true), page.Big, true)
	head.Skip(1)
	head.Para(fmt.Sprintf("%s into %s", j.Of.ID, j.Into.ID))
	p.Y = min(head.Y, p.Y-keyHigh) - 1.5
	return p
}

// beside sets what is told beside the exploded view, its end in the strip under
// that where there is one, and returns the sheets that it runs on to.
func beside(f *geom.Frame, g scene.Group, s *draw.Sheet, right, strip block.Field, list bool) []*draw.Sheet {
	j := g.First()
	block.KeyView(s, block.Field{X0: right.Mid().X, Y0: right.Y1 - keyHigh, X1: right.X1, Y1: right.Y1}, f, g.Dark())
	w := &page.Flow{Pen: besideHead(g, s, right), Cols: 1, Gap: 6, Field: right, Sheets: []*draw.Sheet{s}}
	w.Next = func(n int) (*draw.Sheet, block.Field) {
		if n == 2 && strip.H() > 0 {
			return s, strip
		}
		t := block.TitleFor(f, j.Kind, "continued, "+served(g), "none")
		t.Note = ""
		w.Cols = 2 // wider than the table's column, so that what has been wrapped fits
		return block.ForFrame(f, "joint", fmt.Sprintf("%s-served-%d", j.ID, n-1), t)
	}
	tell(w, f, g, list)
	return slices.DeleteFunc(w.Sheets, func(x *draw.Sheet) bool { return x == s })
}

// tell sets the tables of both timbers and, where asked for, the joints served.
func tell(w *page.Flow, f *geom.Frame, g scene.Group, list bool) {
	j := g.First()
	dimsOf(w, f, j.Into.ID+" (cut into)", g, j.Into)
	dimsOf(w, f, j.Of.ID+" (enters)", g, j.Of)
	leanOf(w, f, j)
	if list {
		servedList(w, f, g)
	}
}

// closing says at the foot of the field how the joint closes and what holds it,
// and returns the field above.
func closing(f *geom.Frame, s *draw.Sheet, field block.Field, g scene.Group) block.Field {
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
	p := page.Pen{S: s, X: field.X0, W: field.W(), Letters: dim.Group{Name: "closing", Height: dim.Text}}
	lines := font.Wrap(t, p.W, dim.Text)
	field.Y0 += float64(len(lines))*dim.Text*page.Pitch + 2
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
