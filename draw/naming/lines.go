package naming

import (
	"math"

	"pegwright/draw"
	"pegwright/draw/page"
	"pegwright/geom/vec"
)

// lineSet is the straight lines of a sheet, sorted into squares of the paper, so
// that what stands in a small box is found without looking at them all.
type lineSet struct {
	all   []drawnLine
	bins  map[[2]int][]int
	stamp []int // by line: the last search that met it
	turn  int
}

// drawnLine is a straight line with whose it is and what it means.
type drawnLine struct {
	a, b  vec.P
	owner string
	class draw.Class
	level bool // leads to a height in its column
}

// binSize is the side of a square, mm.
const binSize = 8.0

func newLineSet(items []draw.Item) *lineSet {
	l := &lineSet{bins: map[[2]int][]int{}}
	for _, it := range items {
		h := it.Head()
		if h.LayerName() == "border" || h.LayerName() == "title" {
			continue
		}
		for _, s := range strokes(it) {
			l.add(drawnLine{s[0], s[1], h.Owner, h.Class, h.Mark == "level"})
		}
	}
	return l
}

// strokes returns the straight lines of an item; of a round one the sides of
// the box round it.
func strokes(it draw.Item) [][2]vec.P {
	var pts []vec.P
	closed := true
	switch t := it.(type) {
	case *draw.Text:
		return nil
	case *draw.Path:
		pts, closed = t.Pts, t.Closed
	default:
		b := draw.ItemBounds(it)
		pts = []vec.P{b.Min, vec.At(b.Max.X, b.Min.Y), b.Max, vec.At(b.Min.X, b.Max.Y)}
	}
	var out [][2]vec.P
	for i := range pts {
		switch {
		case i+1 < len(pts):
			out = append(out, [2]vec.P{pts[i], pts[i+1]})
		case closed && len(pts) > 2:
			out = append(out, [2]vec.P{pts[i], pts[0]})
		}
	}
	return out
}

func (l *lineSet) add(d drawnLine) {
	n := len(l.all)
	l.all, l.stamp = append(l.all, d), append(l.stamp, 0)
	box := draw.NoBox().With(d.a, d.b)
	each(box, func(c [2]int) {
		sq := draw.Box{Min: vec.At(float64(c[0]), float64(c[1])).Mul(binSize), Max: vec.At(float64(c[0]+1), float64(c[1]+1)).Mul(binSize)}
		if page.Crosses(d.a, d.b, sq) {
			l.bins[c] = append(l.bins[c], n)
		}
	})
}

// each visits the squares that a box touches.
func each(b draw.Box, visit func(c [2]int)) {
	lo, hi := b.Min.Mul(1/binSize), b.Max.Mul(1/binSize)
	for i := int(math.Floor(lo.X)); i <= int(math.Floor(hi.X)); i++ {
		for k := int(math.Floor(lo.Y)); k <= int(math.Floor(hi.Y)); k++ {
			visit([2]int{i, k})
		}
	}
}

// near visits the lines in the squares that a box touches, each once, until
// visit returns false.
func (l *lineSet) near(b draw.Box, visit func(d drawnLine) bool) {
	l.turn++
	more := true
	each(b, func(c [2]int) {
		for _, n := range l.bins[c] {
			if more && l.stamp[n] != l.turn {
				l.stamp[n] = l.turn
				more = visit(l.all[n])
			}
		}
	})
}
