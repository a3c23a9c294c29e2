package hide

import (
	"cmp"
	"math"
	"slices"
)

// reach is how far, in millimetres, an edge may lie beside a cell's bounds in
// the picture and still be tested against it.
const reach = 1e-4

// grid lists, for each square of the picture, the shadows whose cells may be
// seen there. It only saves time: what it leaves out cannot hide the edge.
type grid struct {
	x, y, step float64
	nx, ny     int
	squares    []square
	links      []link
	seen       []int32 // the last query that met each shadow
	query      int32
}

// square is the first and the last link of the chain of shadows in a square of
// the picture. Link 0 stands for none.
type square struct{ first, last int32 }

type link struct{ shadow, next int32 }

// newGrid spreads the shadows over about as many squares as there are shadows.
// They come the nearest first, and a cell that one before it hides is left out:
// of bents that stand behind each other all but the first hide nothing.
func newGrid(shadows []shadow) *grid {
	g := &grid{nx: 1, ny: 1, step: 1, seen: make([]int32, len(shadows))}
	if len(shadows) == 0 {
		g.squares = make([]square, 1)
		return g
	}
	x0, y0, x1, y1 := math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	for i := range shadows {
		s := &shadows[i]
		x, y := s.across[0], s.across[1]
		x0, y0, x1, y1 = min(x0, x.lo), min(y0, y.lo), max(x1, x.hi), max(y1, y.hi)
	}
	g.x, g.y = x0-reach, y0-reach
	wide, high := x1-x0+2*reach, y1-y0+2*reach
	n := float64(min(len(shadows), 200_000))
	g.step = max(math.Sqrt(wide*high/n), wide/4000, high/4000)
	g.nx, g.ny = int(wide/g.step)+1, int(high/g.step)+1
	g.squares, g.links = make([]square, g.nx*g.ny), make([]link, 1, 2*len(shadows)+1)
	for _, i := range byDepth(shadows) {
		if !g.swallowed(shadows, i) {
			g.put(&shadows[i], i)
		}
	}
	return g
}

// put adds a shadow to the squares in which its cell is seen.
func (g *grid) put(s *shadow, i int32) {
	x, y := s.across[0], s.across[1]
	c0, c1 := g.col(x.lo-reach), g.col(x.hi+reach)
	for r := g.row(y.lo - reach); r <= g.row(y.hi+reach); r++ {
		for c := c0; c <= c1; c++ {
			q, n := &g.squares[r*g.nx+c], int32(len(g.links))
			g.links = append(g.links, link{shadow: i})
			if q.first == 0 {
				q.first = n
			} else {
				g.links[q.last].next = n
			}
			q.last = n
		}
	}
}

// swallowed reports whether a shadow in the grid hides the whole cell of
// shadow i: such a one is met in every square that the cell is seen in.
func (g *grid) swallowed(shadows []shadow, i int32) bool {
	s := &shadows[i]
	x, y := s.across[0], s.across[1]
	q := g.squares[g.row((y.lo+y.hi)/2)*g.nx+g.col((x.lo+x.hi)/2)]
	for n := q.first; n != 0; n = g.links[n].next {
		if shadows[g.links[n].shadow].swallows(s) {
			return true
		}
	}
	return false
}

// byDepth returns the numbers of the shadows, the nearest to the viewer first:
// those that hide most are met before the others.
func byDepth(shadows []shadow) []int32 {
	order := make([]int32, len(shadows))
	for i := range order {
		order[i] = int32(i)
	}
	slices.SortFunc(order, func(a, b int32) int {
		if c := cmp.Compare(shadows[a].near, shadows[b].near); c != 0 {
			return c
		}
		return cmp.Compare(a, b)
	})
	return order
}

// col returns the column of x, held inside the grid.
func (g *grid) col(x float64) int { return hold((x-g.x)/g.step, g.nx) }

// row returns the row of y, held inside the grid.
func (g *grid) row(y float64) int { return hold((y-g.y)/g.step, g.ny) }

func hold(t float64, n int) int {
	switch {
	case t <= 0:
		return 0
	case t >= float64(n-1):
		return n - 1
	}
	return int(t)
}

// along calls visit once for every shadow in the squares that the segment
// meets, in a fixed order, until one of the calls returns false.
func (g *grid) along(ax, ay, bx, by float64, visit func(int) bool) {
	g.query++
	if ax > bx {
		ax, ay, bx, by = bx, by, ax, ay
	}
	for c, last := g.col(ax), g.col(bx); c <= last; c++ {
		if y0, y1 := g.strip(c, ax, ay, bx, by); !g.column(c, y0, y1, visit) {
			return
		}
	}
}

// over does what along does for all squares that a box in the picture meets.
func (g *grid) over(box *extents, visit func(int) bool) {
	g.query++
	x, y := box[0], box[1]
	for c, last := g.col(x.lo), g.col(x.hi); c <= last; c++ {
		if !g.column(c, y.lo, y.hi, visit) {
			return
		}
	}
}

// column calls visit for every shadow in the squares of column c from y0 to y1
// that this query has not met, and reports whether all calls returned true.
func (g *grid) column(c int, y0, y1 float64, visit func(int) bool) bool {
	for r, last := g.row(y0-reach), g.row(y1+reach); r <= last; r++ {
		for n := g.squares[r*g.nx+c].first; n != 0; n = g.links[n].next {
			if i := g.links[n].shadow; g.seen[i] != g.query {
				g.seen[i] = g.query
				if !visit(int(i)) {
					return false
				}
			}
		}
	}
	return true
}

// strip returns the least and greatest y of the segment inside column c.
func (g *grid) strip(c int, ax, ay, bx, by float64) (y0, y1 float64) {
	if bx-ax > g.step*1e-6 {
		k := (by - ay) / (bx - ax)
		left, right := g.x+float64(c)*g.step-reach, g.x+float64(c+1)*g.step+reach
		if left > ax && c > 0 {
			ay, ax = ay+k*(left-ax), left
		}
		if right < bx && c < g.nx-1 {
			by = ay + k*(right-ax)
		}
	}
	return min(ay, by), max(ay, by)
}
