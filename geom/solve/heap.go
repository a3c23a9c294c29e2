package solve

import (
	"cmp"
	"fmt"
	"math"
	"slices"
)

// heaped refuses a frame in which far more timbers lie about each other than in
// any frame that stands. Proving how each lies to each would take for ever, and
// tell nothing new. It counts the pairs whose boxes in frame axes overlap; a
// timber of a frame meets about six others.
func (s *solver) heaped() {
	boxes := make([][6]float64, len(s.Frame.Timbers))
	order := make([]int, len(boxes))
	for i, t := range s.Frame.Timbers {
		b := [6]float64{math.Inf(1), math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1), math.Inf(-1)}
		for _, v := range t.Blank.V {
			v = t.Place.Out(v)
			for k, x := range [3]float64{v.X, v.Y, v.Z} {
				b[k], b[k+3] = min(b[k], x), max(b[k+3], x)
			}
		}
		boxes[i], order[i] = b, i
	}
	slices.SortFunc(order, func(i, j int) int { return cmp.Or(cmp.Compare(boxes[i][0], boxes[j][0]), cmp.Compare(i, j)) })
	pairs, most, about := 0, 0, 0
	for k, i := range order {
		n := 0
		for _, j := range order[k+1:] {
			if boxes[j][0] > boxes[i][3] {
				break
			}
			if boxes[j][1] <= boxes[i][4] && boxes[i][1] <= boxes[j][4] && boxes[j][2] <= boxes[i][5] && boxes[i][2] <= boxes[j][5] {
				n++
			}
		}
		pairs += n
		if n > most {
			most, about = n, i
		}
	}
	if pairs > 5000+30*len(boxes) {
		t := s.Frame.Timbers[about]
		s.Fault(t.At, t.ID, fmt.Sprintf("%d other timbers lie about %s, in one heap", most, t.ID), "check their points, and give each timber a place of its own")
	}
}
