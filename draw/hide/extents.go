package hide

import "math"

// extents is how far something reaches in the picture: along x, along y, and
// across the slanting lines of an isometric view either way.
type extents [4]interval

// ways returns how far along x, y and the two slanting ways a place in the
// picture lies.
func ways(x, y float64) [4]float64 {
	half, rest := x/2, float64(y*(math.Sqrt(3)/2))
	return [4]float64{x, y, half + rest, half - rest}
}

// nowhere is the extents of nothing.
func nowhere() extents {
	none := interval{math.Inf(1), math.Inf(-1)}
	return extents{none, none, none, none}
}

// add makes the extents reach to a place in the picture.
func (e *extents) add(x, y float64) {
	for i, t := range ways(x, y) {
		e[i].lo, e[i].hi = min(e[i].lo, t), max(e[i].hi, t)
	}
}

// misses reports whether something with the extents o lies beside a cell with
// these in the picture, so that the cell cannot hide it.
func (e *extents) misses(o *extents) bool {
	for i := range e {
		if o[i].lo > e[i].hi+reach || o[i].hi < e[i].lo-reach {
			return true
		}
	}
	return false
}
