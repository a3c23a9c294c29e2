package joint

import (
	"fmt"
	"math"
	"slices"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/page"
	"pegwright/draw/scene"
	"pegwright/geom"
)

// telling is what a joint sheet tells beside its exploded view. It is laid out more
// than once, until it has its room.
type telling struct {
	f      *geom.Frame
	g      scene.Group
	tables [2]table               // of the receiver and of the enterer
	lean   []row                  // the angle between the timbers, where they lean
	at     map[*geom.Joint]string // of the joints served: which, and where they lie
	high   map[float64]float64    // of the list of the joints served, by its width
}

// table is what is cut and scribed on one timber.
type table struct {
	head string
	rows []row
}

func newTelling(f *geom.Frame, g scene.Group) *telling {
	j := g.First()
	return &telling{f: f, g: g, lean: leanOf(f, j), at: servedAt(f, g), high: map[float64]float64{}, tables: [2]table{
		{j.Into.ID + " (cut into)", rowsOf(f, g, j.Into)},
		{j.Of.ID + " (enters)", rowsOf(f, g, j.Of)},
	}}
}

// divide parts the field of a joint sheet between the exploded view and the table
// beside it, and tells whether the joints served are listed under the view, for
// want of room under the table, and what is over of the table, see overrun. The
// view gives way, down to about half the width, where the table then ends on the
// sheet.
func (t *telling) divide(field block.Field) (left, right block.Field, under bool, over float64) {
	left, right = page.Split(field, field.X0+field.W()*0.61, 5)
	if over = t.overrun(left, right, true); over == 0 {
		return left, right, false, 0
	}
	for _, share := range []float64{0.61, 0.58, 0.55, 0.52, 0.61} {
		left, right = page.Split(field, field.X0+field.W()*share, 5)
		under = t.servedBelow(left)
		if over = t.overrun(left, right, !under); over == 0 {
			break
		}
	}
	return left, right, under, over
}

// overrun is the height, at the width of left, of what is told beside the exploded
// view and finds no room there, 0 for nothing.
func (t *telling) overrun(left, right block.Field, list bool) float64 {
	s := draw.NewSheet("", "", "", 1, 1)
	w := &page.Flow{Pen: t.head(s, right), Cols: 1, Field: right, Sheets: []*draw.Sheet{s}}
	w.Next = func(int) (*draw.Sheet, block.Field) { return s, block.Field{X1: left.W(), Y0: math.Inf(-1)} }
	t.tell(w, list)
	if len(w.Sheets) == 1 {
		return 0
	}
	return -w.Y
}

// keyHigh is the height of the key view over the table.
const keyHigh = 25.0

// head sets the joiner's mark at the left of the key view's place and returns the
// pen below both.
func (t *telling) head(s *draw.Sheet, right block.Field) page.Pen {
	j := t.g.First()
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
func (t *telling) beside(s *draw.Sheet, right, strip block.Field, list bool) []*draw.Sheet {
	f, j := t.f, t.g.First()
	block.KeyView(s, block.Field{X0: right.Mid().X, Y0: right.Y1 - keyHigh, X1: right.X1, Y1: right.Y1}, f, t.g.Dark())
	w := &page.Flow{Pen: t.head(s, right), Cols: 1, Gap: 6, Field: right, Sheets: []*draw.Sheet{s}}
	w.Next = func(n int) (*draw.Sheet, block.Field) {
		if n == 2 && strip.H() > 0 {
			return s, strip
		}
		title := block.TitleFor(f, j.Kind, "continued, "+served(t.g), "none")
		title.Note = ""
		w.Cols = 2 // wider than the table's column, so that what has been wrapped fits
		return block.ForFrame(f, "joint", fmt.Sprintf("%s-served-%d", j.ID, n-1), title)
	}
	t.tell(w, list)
	return slices.DeleteFunc(w.Sheets, func(x *draw.Sheet) bool { return x == s })
}

// tell sets the tables of both timbers and, where asked for, the joints served.
func (t *telling) tell(w *page.Flow, list bool) {
	for _, x := range t.tables {
		x.set(w)
	}
	if len(t.lean) > 0 {
		rowOf(w, t.lean[0])
		w.Skip(1.5)
	}
	if list {
		w.Need(min(t.servedHeight(w.W), w.Field.H())) // in one place where it can be
		t.served(w)
	}
}
