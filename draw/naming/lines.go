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
	all    []drawnLine
	x0, y0 int       // the first column and row of squares
	nx, ny int       // how many there are
	bins   [][]int32 // by column, then by row: the lines that run through it
	stamp  []int     // by line: the last search that met it
	turn   int
	met    int // the line that a box met last, and may meet next
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
	l := &lineSet{}
	all := draw.NoBox()
	for _, it := range items {
		h := it.Head()
		if h.LayerName() == "border" || h.LayerName() == "title" {
			continue
		}
		for _, s := range strokes(it) {
			l.all = append(l.all, drawnLine{s[0], s[1], h.Owner, h.Class, h.Mark == "level"})
			all = all.With(s[0], s[1])
		}
	}
	if len(l.all) == 0 {
		return l
	}
	x1, y1 := 0, 0
	l.x0, l.y0, x1, y1 = binsOf(all)
	l.nx, l.ny = x1-l.x0+1, y1-l.y0+1
	l.bins, l.stamp = make([][]int32, l.nx*l.ny), make([]int, len(l.all))
	for i, d := range l.all {
		l.sort(i, d)
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

// sort puts line i into the squares that it runs through.
func (l *lineSet) sort(i int, d drawnLine) {
	x0, y0, x1, y1 := binsOf(draw.NoBox().With(d.a, d.b))
	for x := x0; x <= x1; x++ {
		for y := y0; y <= y1; y++ {
			sq := draw.Box{Min: vec.At(float64(x), float64(y)).Mul(binSize), Max: vec.At(float64(x+1), float64(y+1)).Mul(binSize)}
			if page.Crosses(d.a, d.b, sq) {
				in := &l.bins[(x-l.x0)*l.ny+y-l.y0]
				*in = append(*in, int32(i))
			}
		}
	}
}

// binsOf returns the first and the last column and row of squares that a box
// touches.
func binsOf(b draw.Box) (x0, y0, x1, y1 int) {
	at := func(v float64) int { return int(math.Floor(v / binSize)) }
	return at(b.Min.X), at(b.Min.Y), at(b.Max.X), at(b.Max.Y)
}

// near visits the lines in the squares that a box touches, each once, until
// visit returns false.
func (l *lineSet) near(b draw.Box, visit func(d *drawnLine) bool) {
	l.turn++
	x0, y0, x1, y1 := binsOf(b)
	for x := max(x0-l.x0, 0); x <= min(x1-l.x0, l.nx-1); x++ {
		for y := max(y0-l.y0, 0); y <= min(y1-l.y0, l.ny-1); y++ {
			for _, n := range l.bins[x*l.ny+y] {
				if l.stamp[n] == l.turn {
					continue
				}
				l.stamp[n] = l.turn
				if !visit(&l.all[n]) {
					return
				}
			}
		}
	}
}

// meets reports whether a line has a point in a box.
func (l *lineSet) meets(b draw.Box) bool {
	x0, y0, x1, y1 := binsOf(b)
	for x := max(x0-l.x0, 0); x <= min(x1-l.x0, l.nx-1); x++ {
		for y := max(y0-l.y0, 0); y <= min(y1-l.y0, l.ny-1); y++ {
			for _, n := range l.bins[x*l.ny+y] {
				if d := &l.all[n]; page.Crosses(d.a, d.b, b) {
					l.met = int(n)
					return true
				}
			}
		}
	}
	return false
}

// meetsAgain reports whether the line that a box met last has a point in this one.
func (l *lineSet) meetsAgain(b draw.Box) bool {
	return l.met < len(l.all) && page.Crosses(l.all[l.met].a, l.all[l.met].b, b)
}
