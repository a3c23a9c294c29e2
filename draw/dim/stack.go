package dim

import (
	"math"
	"slices"
	"sort"

	"pegwright/draw"
	"pegwright/geom/vec"
)

// Side is the side of a view on which dimensions stand.
type Side int

// The four sides of a view.
const (
	Below Side = iota
	Above
	RightOf
	LeftOf
)

// How far the first dimension line stands off the view, and each further one off
// the one before, millimetres.
const (
	firstOff = 7.0
	rowPitch = 8.0
)

// axes returns the direction that the side's dimensions measure along and the
// one in which its lines are stacked.
func (sd Side) axes() (along, out vec.P) {
	switch sd {
	case Above:
		return vec.P{X: 1}, vec.P{Y: 1}
	case RightOf:
		return vec.P{Y: 1}, vec.P{X: 1}
	case LeftOf:
		return vec.P{Y: 1}, vec.P{X: -1}
	}
	return vec.P{X: 1}, vec.P{Y: -1}
}

// Depth returns how much room the requests need beside a view, millimetres.
func Depth(sd Side, reqs []Request) float64 {
	rows, _ := rowsOf(sd, reqs)
	n := 0
	for _, r := range rows {
		n = max(n, r+1)
	}
	if n == 0 {
		return 0
	}
	text := Text*1.3 + above
	if sd == Below || sd == RightOf { // text stands toward the view
		text = 1.5
	}
	return firstOff + float64(n-1)*rowPitch + text
}

// Reach returns the extent along the side's direction that the requests take,
// texts past the arrowheads included.
func Reach(sd Side, reqs []Request) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	d, _ := sd.axes()
	for _, r := range reqs {
		l := layoutOf(d, r)
		lo, hi = min(lo, l.lo), max(hi, l.hi)
	}
	return lo, hi
}

// rowsOf gives every request a row, shorter dimensions nearer to the view, and
// its layout. No two on a row share any length of it.
func rowsOf(sd Side, reqs []Request) ([]int, []laid) {
	d, _ := sd.axes()
	order := make([]int, len(reqs))
	ls := make([]laid, len(reqs))
	for i, r := range reqs {
		order[i], ls[i] = i, layoutOf(d, r)
	}
	sort.SliceStable(order, func(i, j int) bool {
		a, b := &ls[order[i]], &ls[order[j]]
		return a.b-a.a < b.b-b.a-1e-6
	})
	rows := make([]int, len(reqs))
	for n, i := range order {
		meets := func(k int) bool { return rows[k] == rows[i] && ls[k].meets(&ls[i]) }
		for slices.ContainsFunc(order[:n], meets) {
			rows[i]++
		}
	}
	return rows, ls
}

// meets reports whether two dimensions cannot stand on a row. They may share an
// end.
func (l *laid) meets(o *laid) bool {
	gap := between
	if o.inside && l.inside && o.hi == o.b && l.hi == l.b {
		gap = -1e-6
	}
	return l.lo < o.hi+gap && o.lo < l.hi+gap
}

// Stack draws the requests as parallel dimension lines on a side of a view
// whose edge lies at edge (the y of a lower or upper edge, the x of a left or
// right one), shorter ones nearer, so that no texts meet.
func Stack(s *draw.Sheet, sd Side, edge float64, reqs []Request) {
	d, out := sd.axes()
	rows, ls := rowsOf(sd, reqs)
	on := func(i int) vec.P {
		off := firstOff + float64(rows[i])*rowPitch
		return vec.P{X: edge + out.X*off, Y: edge + out.Y*off}
	}
	for i, r := range reqs {
		lines(s, d, on(i), r, ls[i])
	}
	for i, r := range reqs {
		figures(s, d, on(i), r, ls[i])
	}
}
