package plan

import (
	"fmt"
	"math"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/font"
	"pegwright/draw/page"
	"pegwright/geom/vec"
)

// squareNotes names the diagonals and their lengths.
func (p *surveyPage) squareNotes() []string {
	var out []string
	for i, d := range p.diagonals {
		out = append(out, fmt.Sprintf("%d. %s to %s: %s", i+1, d.NameA, d.NameB, p.f.Units.Format(d.Length())))
	}
	return out
}

func (p *surveyPage) noteHeight() float64 {
	if len(p.notes) == 0 || p.aside {
		return 0
	}
	return dim.Text*page.Pitch + math.Ceil(float64(len(p.notes))/float64(p.noteColumns()))*dim.Text*page.Pitch
}

// noteColumns is how many notes stand side by side: two where all are short.
func (p *surveyPage) noteColumns() int {
	field := block.FieldFor(p.f)
	for _, n := range p.notes {
		if p.noteLetters().Measure(n) > field.W()/2-4 {
			return 1
		}
	}
	return 2
}

// tape draws the diagonals, thin and dashed, with dots at their ends.
func (p *surveyPage) tape(s *draw.Sheet, o vec.P) {
	for _, d := range p.diagonals {
		a, b := o.Add(p.cam.Project(d.A).Mul(p.k)), o.Add(p.cam.Project(d.B).Mul(p.k))
		s.Line(draw.Trace, a, b).Mark = "diagonal"
		dim.Dot(s, a)
		dim.Dot(s, b)
	}
}

// What stands over the diagonals' names and lengths, and the width of the column
// in which they stand beside a view, with the gap to it, paper mm.
const (
	squareHead = "Check square with a tape from arris to arris, at the lines named; each reads as given here."
	asideWidth = 46.0
	asideGap   = 5.0
	asideAir   = 1.5 // over each of them
)

// noteLetters is the group of the diagonals' names and lengths, and of what
// stands over them.
func (p *surveyPage) noteLetters() dim.Group { return dim.Together("square", p.notes...) }

// asideHeight is the height that the diagonals take at the left.
func (p *surveyPage) asideHeight() float64 {
	w := page.Pen{W: asideWidth, Letters: p.noteLetters()}
	y := float64(len(asideHead(&w))) * w.Letters.Height * page.Pitch
	for _, t := range p.notes {
		y += asideAir + w.ParaHeight(t)
	}
	return y
}

// asideHead wraps what stands over the diagonals at the left.
func asideHead(p *page.Pen) []string {
	return font.WrapFace(squareHead, p.W, p.Letters.Height, true)
}

// foot sets the diagonals' names and lengths, at the foot in columns or at the
// left under each other.
func (p *surveyPage) foot(s *draw.Sheet, field block.Field) {
	if len(p.notes) == 0 {
		return
	}
	if p.aside {
		w := page.Pen{S: s, X: field.X0, Y: field.Y1, W: asideWidth, Letters: p.noteLetters()}
		for _, l := range asideHead(&w) {
			w.Set(w.Letters, l).Bold = true
		}
		for _, n := range p.notes {
			w.Skip(asideAir)
			w.Para(n)
		}
		return
	}
	y := field.Y0 + p.noteHeight() - dim.Text
	letters := p.noteLetters()
	letters.Text(s, vec.At(field.X0, y), squareHead).Bold = true
	cols := p.noteColumns()
	w := field.W()/float64(cols) - 3
	for i, n := range p.notes {
		n = block.Fit(n, w, letters.Height, false)
		letters.Text(s, vec.At(field.X0+float64(i%cols)*(w+6), y-float64(i/cols+1)*dim.Text*page.Pitch), n).Mark = "diagonal"
	}
}
