package raise

import (
	"fmt"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/page"
	"pegwright/geom"
	"pegwright/geom/vec"
)

// Sheets returns the raising sheets: the order of the work with the things to
// have at hand, and then one picture for each step of assembly. Steps that are
// alike, or mirror each other, share the picture of the first of them. No steps
// give no sheets.
func Sheets(f *geom.Frame) []*draw.Sheet {
	if len(f.Steps) == 0 {
		return nil
	}
	r := &raising{f: f, bodies: map[string]raisePart{}}
	r.gather()
	return append(r.overview(), r.pages()...)
}

// raiseText is the least lettering of a raising sheet, mm: it is read at arm's
// length, out of doors.
const raiseText = dim.Text

// raising is the order of assembly about to be drawn.
type raising struct {
	f      *geom.Frame
	acts   []*act
	bodies map[string]raisePart // net wood of timbers that were drawn, by id
	lo, hi vec.V                // box around the frame, once it was asked for
}

// act is a step with what is told about it, and the later steps that are like
// it.
type act struct {
	n    int // number of the step, from 1
	step geom.Step
	told []fact
	like []*act
}

// gather puts like steps together.
func (r *raising) gather() {
	first := map[string]*act{}
	for i, s := range r.f.Steps {
		a := &act{n: i + 1, step: s}
		a.told = r.tell(a)
		key := r.alike(a)
		if b := first[key]; b != nil {
			b.like = append(b.like, a)
			continue
		}
		first[key] = a
		r.acts = append(r.acts, a)
	}
}

// leastPicture is the least height of a step's picture, mm.
const leastPicture = 52.0

// pages draws the steps: two side by side on a sheet, or one alone where it has
// much to tell.
func (r *raising) pages() []*draw.Sheet {
	var out []*draw.Sheet
	for i := 0; i < len(r.acts); {
		n := 1
		if i+1 < len(r.acts) && r.fits(r.acts[i]) && r.fits(r.acts[i+1]) {
			n = 2
		}
		out = append(out, r.page(r.acts[i:i+n]))
		i += n
	}
	return out
}

// fresh begins the sheet of some steps.
func (r *raising) fresh(acts []*act) (*draw.Sheet, block.Field) {
	t := block.TitleFor(r.f, "Raising", stepsOf(acts), "pictorial")
	t.Note = "heavy and grained: moves in this step; thin: stands already; not for measuring"
	s, field := block.ForFrame(r.f, "raise", fmt.Sprintf("raise-step-%d", acts[0].n), t)
	return s, cautionBox(s, field, r.caution())
}

// fits reports whether a step's text leaves room for its picture on half a
// sheet.
func (r *raising) fits(a *act) bool {
	_, field := r.fresh([]*act{a})
	left, _ := page.Split(field, field.Mid().X, 8)
	return r.texts(nil, left, 0, a, mostLike)+placeHigh+8+leastPicture < left.H()
}

// page draws one step or two.
func (r *raising) page(acts []*act) *draw.Sheet {
	s, field := r.fresh(acts)
	if len(acts) == 1 {
		r.alone(s, field, acts[0])
		return s
	}
	left, right := page.Split(field, field.Mid().X, 8)
	s.Line(draw.Dimension, vec.At(field.Mid().X, field.Y0), vec.At(field.Mid().X, field.Y1))
	for k, half := range []block.Field{left, right} {
		half.Y1 = r.panelHead(s, half, acts[k])
		bottom := half.Y0 + r.texts(nil, half, 0, acts[k], mostLike) + 2
		r.texts(s, half, bottom-2, acts[k], mostLike)
		half.Y0 = bottom
		r.picture(s, half, acts[k])
	}
	return s
}

// alone draws one step over a whole field: the picture at the left, as wide as
// the text leaves room for it.
func (r *raising) alone(s *draw.Sheet, field block.Field, a *act) {
	var left, right block.Field
	rows := 0
	for _, share := range []float64{0.58, 0.48, 0.36} {
		left, right = page.Split(field, field.X0+share*field.W(), 8)
		for rows = mostLike; rows > 0 && r.texts(nil, right, 0, a, rows) > right.H()-1; rows-- {
		}
		if r.texts(nil, right, 0, a, rows) <= right.H()-1 {
			break
		}
	}
	left.Y1 = r.panelHead(s, left, a)
	r.picture(s, left, a)
	r.texts(s, right, right.Y1-1, a, rows)
}

// stepsOf names the steps that a sheet shows.
func stepsOf(acts []*act) string {
	if len(acts) == 1 {
		return fmt.Sprintf("step %d", acts[0].n)
	}
	return fmt.Sprintf("steps %d and %d", acts[0].n, acts[1].n)
}
