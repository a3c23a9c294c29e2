package templates

import (
	"math"

	"pegwright/draw"
	"pegwright/geom/vec"
)

// overlap is how much of the wood two neighbouring tiles both show, mm.
const overlap = 10.0

// choice is how a template goes on paper: the layout, the part of the view that
// shows, whether it needs tiles, and where its words stand.
type choice struct {
	layout
	box   draw.Box
	tiled bool
	dealt
}

// listPlace says where the list of joints stands.
type listPlace int

const (
	inColumn    listPlace = iota // below the other words
	underWindow                  // in a strip cut from the window
	onServedSheet
)

// fit chooses how a template with the given words, and extra mm of column below
// them, goes on paper. A list on the same sheet is worth more than a larger part
// of the view: all that should show, else most of it, else the ends of its
// dimensions, else all that must. Where no layout shows that much, the one that
// needs fewest tiles is taken.
func fit(p plan, head, list words, extra float64, ways []layout) choice {
	for _, try := range []struct {
		places []listPlace
		parts  [][]vec.P
	}{
		{[]listPlace{inColumn, underWindow}, [][]vec.P{p.want, p.most, p.ends}},
		{[]listPlace{inColumn, underWindow}, [][]vec.P{p.need}},
		{[]listPlace{onServedSheet}, [][]vec.P{p.want, p.most, p.ends, p.need}},
	} {
		for _, place := range try.places {
			if len(list) == 0 && place != inColumn {
				continue
			}
			for _, pts := range try.parts {
				for _, l := range ways {
					if k, ok := holds(p, l, draw.NoBox().With(pts...), head, list, extra, place); ok && len(pts) > 0 {
						return k
					}
				}
			}
		}
	}
	return fewest(p, head, list, extra, ways)
}

// middle returns the point of the view that lies in the middle of the window: that
// of all that is wanted, or as near to it as lets more show that matters more.
func (k choice) middle(p plan) vec.P {
	at, half := draw.NoBox().With(p.want...).Mid(), vec.P{X: k.win.W() / 2, Y: k.win.H() / 2}
	within := func(x, lo, hi float64) float64 {
		if lo > hi { // not all of it shows
			return (lo + hi) / 2
		}
		return min(max(x, lo), hi)
	}
	for _, box := range []draw.Box{draw.NoBox().With(p.need...).With(p.ends...), k.box} {
		lo, hi := box.Max.Sub(half), box.Min.Add(half)
		at = vec.P{X: within(at.X, lo.X, hi.X), Y: within(at.Y, lo.Y, hi.Y)}
	}
	return at
}

// holds reports whether the layout has room for the box and the words, and the
// choice that it makes.
func holds(p plan, l layout, box draw.Box, head, list words, extra float64, place listPlace) (choice, bool) {
	if box.W() > l.win.W() || box.H() > l.win.H() {
		return choice{}, false // known without setting any words
	}
	var d dealt
	column := head
	switch place {
	case inColumn:
		column = both(head, list)
	case underWindow:
		l.win.Min.Y += list.height(l.win.W(), l.known) + 4
		d.strip = list
	case onServedSheet:
		column = both(head, words{servedSheet(len(p.serves))})
		d.later = list
	}
	d.columns = []words{column}
	ok := box.H() <= l.win.H() && l.room(column, extra)
	return choice{layout: l, box: box, dealt: d}, ok
}

// fewest chooses the layout that needs the fewest sheets, one more counted for
// words that find no room; of those that need as many the one that parts the
// words least.
func fewest(p plan, head, list words, extra float64, ways []layout) choice {
	box := draw.NoBox().With(p.need...)
	for _, d := range p.dims {
		n := d.b.Sub(d.a).Unit().Left().Mul(d.off)
		n = n.Add(n.Unit().Mul(4))
		box = box.With(d.a.Add(n), d.b.Add(n))
	}
	var best choice
	least, order := math.MaxInt, 0
	for _, l := range ways {
		rows := tiles(box.H(), l.win.H())
		n := tiles(box.W(), l.win.W()) * rows
		spare := extra
		if n > 1 {
			spare += keyHigh(rows)
		}
		d := deal(p, l, head, list, spare, n)
		sheets := n
		if d.how == overflowing {
			sheets++
		}
		if sheets < least || sheets == least && int(d.how) < order {
			least, order = sheets, int(d.how)
			best = choice{layout: l, box: box, tiled: n > 1, dealt: d}
		}
	}
	return best
}

// tiles returns how many windows of the given size, overlapping, cover long mm.
func tiles(long, size float64) int {
	if long <= size+1e-9 {
		return 1
	}
	return int(math.Ceil((long - overlap - 1e-9) / (size - overlap)))
}

// tile is one page's part of a template: its place in the grid, and the view's
// origin relative to the window's lower left corner.
type tile struct {
	col, row, cols, rows int
	o                    vec.P
}

func (t tile) one() bool { return t.cols == 1 && t.rows == 1 }

// cut lays tiles over the box, row by row from the lower left, so that every
// hole lies whole on one of them.
func cut(p plan, box draw.Box, win draw.Box) []tile {
	xs := starts(box.Min.X, box.Max.X, win.W(), p.holes, func(h hole) float64 { return h.c.X })
	ys := starts(box.Min.Y, box.Max.Y, win.H(), p.holes, func(h hole) float64 { return h.c.Y })
	var out []tile
	for r, y := range ys {
		for c, x := range xs {
			out = append(out, tile{c, r, len(xs), len(ys), vec.P{X: -x, Y: -y}})
		}
	}
	return out
}

// starts returns where the windows begin along one axis. The spare length is
// shared out before the first window in the way that leaves every hole whole;
// where none does, one window more is laid.
func starts(lo, hi, size float64, holes []hole, of func(hole) float64) []float64 {
	n := tiles(hi-lo, size)
	for ; ; n++ {
		spare := float64(n)*(size-overlap) + overlap - (hi - lo)
		for i := range 21 {
			k := [21]int{10, 9, 11, 8, 12, 7, 13, 6, 14, 5, 15, 4, 16, 3, 17, 2, 18, 1, 19, 0, 20}[i]
			first := lo - spare*float64(k)/20
			if whole(first, size, n, holes, of) {
				out := make([]float64, n)
				for j := range n {
					out[j] = first + float64(j)*(size-overlap)
				}
				return out
			}
		}
		if n > 20 {
			return []float64{lo}
		}
	}
}

// whole reports whether every hole lies, with 2 mm to spare, in one of n
// windows.
func whole(first, size float64, n int, holes []hole, of func(hole) float64) bool {
	for _, h := range holes {
		ok := false
		for j := range n {
			a := first + float64(j)*(size-overlap)
			ok = ok || of(h)-h.bore/2-2 >= a && of(h)+h.bore/2+2 <= a+size
		}
		if !ok {
			return false
		}
	}
	return true
}
